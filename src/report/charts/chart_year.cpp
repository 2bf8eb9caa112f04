#include "report/charts/chart_year.hpp"

#include "measure/write.hpp"
#include "report/charts/chart_axis.hpp"
#include "report/drawings/svg.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kChartWide = 360, kPlotFrom = 16, kPlotTo = 344, kRowHigh = 40, kPlotTop = 46;
constexpr double kHardlyChanges = 0.04; // of a gap
constexpr int kNameColumns = 34;
constexpr std::size_t kMostRows = 14;

/// One row: a name and what it is in the three states, in the maker's unit.
struct YearRow {
    std::string name;
    double driest = 0, made = 0, dampest = 0;
};

std::optional<double> number_named(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name && std::isfinite(v.value)) return v.value;
    return std::nullopt;
}

void put_made(HtmlOut& out, double x, double y) { put_line(out, {x, y - 8}, {x, y + 8}, "today"); }

/// What the three signs stand for, above the plot.
void put_key(HtmlOut& out)
{
    put_driest(out, {kPlotFrom + 6, 14});
    put_label(out, {kPlotFrom + 16, 18.5}, "driest", Anchor::start);
    put_made(out, kPlotFrom + 84, 14);
    put_label(out, {kPlotFrom + 91, 18.5}, "made", Anchor::start);
    put_dampest(out, {kPlotFrom + 152, 14});
    put_label(out, {kPlotFrom + 162, 18.5}, "dampest", Anchor::start);
}

void put_axis(HtmlOut& out, const ChartAxis& axis, double bottom, std::string_view title)
{
    put_line(out, {kPlotFrom, bottom}, {kPlotTo, bottom}, "dim");
    for (const double tick : axis.ticks()) {
        const double x = axis.place(tick);
        put_line(out, {x, kPlotTop - 12}, {x, bottom}, std::abs(tick) < axis.step / 2 ? "zero" : "tick");
        const bool left = x<kPlotFrom + 12, right = x> kPlotTo - 12;
        put_label(out, {x, bottom + 16}, write_number(tick), left ? Anchor::start : right ? Anchor::end : Anchor::middle);
    }
    put_label(out, {(kPlotFrom + kPlotTo) / 2, bottom + 36}, title);
}

/// @param shown  what of a row is plotted: value less the made size, or the value
void put_chart(HtmlOut& out, const std::vector<YearRow>& rows, bool as_change, std::string_view title,
               std::string_view axis_title, std::string_view description)
{
    if (rows.empty()) return;
    double least = 0, most = 0;
    const auto shown = [&](const YearRow& row, double value) { return as_change ? value - row.made : value; };
    for (const YearRow& row : rows)
        for (const double v : {row.driest, row.made, row.dampest}) {
            least = std::min(least, shown(row, v));
            most = std::max(most, shown(row, v));
        }
    const ChartAxis axis = axis_over(least, most, 4, kPlotFrom + 8, kPlotTo - 8);
    const double bottom = kPlotTop + kRowHigh * static_cast<double>(rows.size()), high = bottom + 44;
    put(out, "<figure class=\"chart\">\n");
    open_drawing(out, "year", kChartWide, high, "img", title, description);
    put_key(out);
    put_axis(out, axis, bottom, axis_title);
    double y = kPlotTop;
    for (const YearRow& row : rows) {
        const double at = y + 24;
        put_label(out, {kPlotFrom, y + 10}, clipped_words(row.name, kNameColumns), Anchor::start, "name");
        put_line(out, {axis.place(shown(row, row.driest)), at}, {axis.place(shown(row, row.dampest)), at}, "span");
        put_made(out, axis.place(shown(row, row.made)), at);
        put_driest(out, {axis.place(shown(row, row.driest)), at});
        put_dampest(out, {axis.place(shown(row, row.dampest)), at});
        y += kRowHigh;
    }
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", html_text(title));
}

/// The same in words, for those who do not see the chart.
std::string described(const std::vector<YearRow>& rows, LengthUnit units)
{
    std::string words;
    for (const YearRow& row : rows) {
        const auto size = [&](double v) { return write_small_length(length_in(v, units), units); };
        words += fmt::format("{}: {} at the driest, {} as made, {} at the dampest. ", clipped_words(row.name, 60),
                             size(row.driest), size(row.made), size(row.dampest));
    }
    return words;
}

std::optional<YearRow> row_of(const Finding& finding, const char* made, const char* driest, const char* dampest, LengthUnit units)
{
    const auto m = number_named(finding, made), dry = number_named(finding, driest), damp = number_named(finding, dampest);
    if (!m || !dry || !damp) return std::nullopt;
    return YearRow{finding.subject, number_in(metres(*dry), units), number_in(metres(*m), units),
                   number_in(metres(*damp), units)};
}

} // namespace

void put_width_chart(HtmlOut& out, const ReportContent& content)
{
    std::vector<YearRow> rows;
    for (const PartLine& part : content.parts)
        for (const Finding& f : content.findings) {
            if (f.check != "seasonal-size" || f.subject != part.id || rows.size() >= kMostRows) continue;
            if (auto row = row_of(f, "size_made", "size_driest", "size_dampest", content.units)) {
                row->name += ", " + write_length(metres(part.width_m), content.units) + " wide";
                rows.push_back(std::move(*row));
            }
        }
    put_chart(out, rows, true, "Width of each part through the year",
              fmt::format("narrower or wider than made [{}]", short_name(content.units)), described(rows, content.units));
}

void put_gap_chart(HtmlOut& out, const ReportContent& content)
{
    std::vector<YearRow> rows, wide;
    for (const Finding& f : content.findings) {
        const bool gap = f.check == "slat-gap", groove = f.check == "groove-room", housing = f.check == "bind";
        if ((!gap && !groove && !housing) || rows.size() >= kMostRows) continue;
        if (auto row = row_of(f, "gap_made", "gap_driest", "gap_dampest", content.units)) {
            row->name = fmt::format("{} {}", gap ? "gaps of" : groove ? "groove of" : "room of", row->name);
            // A wide gap that the seasons hardly change would only squeeze the others together.
            const bool still = f.verdict == Verdict::pass && std::abs(row->dampest - row->driest) < kHardlyChanges * row->made;
            (still ? wide : rows).push_back(std::move(*row));
        }
    }
    if (rows.empty()) rows = std::move(wide);
    put_chart(out, rows, false, "Gaps and room through the year; under zero they press",
              fmt::format("gap or room [{}]", short_name(content.units)), described(rows, content.units));
}

} // namespace jointwright
