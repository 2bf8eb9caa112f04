#include "report/charts/chart_months.hpp"

#include "measure/write.hpp"
#include "report/charts/chart_axis.hpp"
#include "report/drawings/svg.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kWideOfMonths = 360, kFieldFrom = 50, kFieldTo = 346, kFieldTop = 30, kStrip = 52, kStripName = 28;
constexpr std::size_t kMostStrips = 6;
constexpr double kHardlyChanging = 0.04; // of a gap
constexpr int kStripColumns = 38;
constexpr const char* kMonthLetters[] = {"J", "F", "M", "A", "M", "J", "J", "A", "S", "O", "N", "D"};
constexpr const char* kMonthNames[] = {"January", "February", "March",     "April",   "May",      "June",
                                       "July",    "August",   "September", "October", "November", "December"};

/// One strip of a chart, in the numbers of its axis.
struct Strip {
    std::string name;
    std::array<double, 12> months{};
    double made = 0; ///< where the line "made" runs
    std::size_t least() const
    {
        return static_cast<std::size_t>(std::min_element(months.begin(), months.end()) - months.begin());
    }
    std::size_t most() const { return static_cast<std::size_t>(std::max_element(months.begin(), months.end()) - months.begin()); }
    double range() const { return months[most()] - months[least()]; }
};

struct MonthChart {
    std::string title, axis_title, unit, caption;
    std::vector<Strip> strips;
    bool own_scales = false; ///< strips too unlike to share one
};

double place_of_month(std::size_t m) { return kFieldFrom + 10 + (kFieldTo - kFieldFrom - 20) * static_cast<double>(m) / 11; }

/// An upright scale over all of these strips.
ChartAxis axis_of(std::span<const Strip> strips)
{
    double least = 1e300, most = -1e300;
    for (const Strip& s : strips) {
        least = std::min({least, s.made, s.months[s.least()]});
        most = std::max({most, s.made, s.months[s.most()]});
    }
    // Zero is shown where it is not far off.
    if (least > 0 && least < 2 * (most - least)) least = 0;
    return axis_over(least, most, 2, 0, kStrip);
}

void put_strip(HtmlOut& out, const Strip& strip, const ChartAxis& axis, double top)
{
    const double bottom = top + kStrip;
    const auto up = [&](double v) { return bottom - axis.place(v); };
    for (const double tick : axis.ticks()) {
        put_line(out, {kFieldFrom, up(tick)}, {kFieldTo, up(tick)}, "tick");
        put_label(out, {kFieldFrom - 5, up(tick) + 4}, write_number(tick), Anchor::end);
    }
    put_line(out, {kFieldFrom, up(strip.made)}, {kFieldTo, up(strip.made)}, "made");
    put(out, "<path class=\"curve\" d=\"");
    for (std::size_t m = 0; m < 12; ++m) put(out, "{}{:.1f} {:.1f}", m == 0 ? 'M' : 'L', place_of_month(m), up(strip.months[m]));
    put(out, "\"/>\n");
    if (strip.range() <= 0) return;
    put_driest(out, {place_of_month(strip.least()), up(strip.months[strip.least()])});
    put_dampest(out, {place_of_month(strip.most()), up(strip.months[strip.most()])});
}

std::string described(const MonthChart& chart)
{
    std::string words;
    for (const Strip& s : chart.strips)
        words +=
            fmt::format("{}: least {} {} in {}, most {} {} in {}; made {} {}. ", clipped_words(s.name, 60),
                        write_number(s.months[s.least()]), chart.unit, kMonthNames[s.least()], write_number(s.months[s.most()]),
                        chart.unit, kMonthNames[s.most()], write_number(s.made), chart.unit);
    return words;
}

void put_month_chart(HtmlOut& out, MonthChart chart)
{
    if (chart.strips.empty()) return;
    std::stable_sort(chart.strips.begin(), chart.strips.end(),
                     [](const Strip& a, const Strip& b) { return a.range() > b.range(); });
    const std::size_t all = chart.strips.size();
    chart.strips.resize(std::min(all, kMostStrips));
    const ChartAxis shared = axis_of(chart.strips);
    const double foot = kFieldTop + (kStrip + kStripName) * static_cast<double>(chart.strips.size());
    put(out, "<figure class=\"chart\">\n");
    open_drawing(out, "months", kWideOfMonths, foot + 42, "img", chart.title, described(chart));
    put_driest(out, {kFieldFrom + 6, 14});
    put_label(out, {kFieldFrom + 16, 18.5}, "least", Anchor::start);
    put_dampest(out, {kFieldFrom + 76, 14});
    put_label(out, {kFieldFrom + 86, 18.5}, "most", Anchor::start);
    put_line(out, {kFieldFrom + 140, 14}, {kFieldFrom + 164, 14}, "made");
    put_label(out, {kFieldFrom + 170, 18.5}, "made", Anchor::start);
    double top = kFieldTop + kStripName;
    for (const Strip& strip : chart.strips) {
        put_strip(out, strip, chart.own_scales ? axis_of({&strip, 1}) : shared, top);
        put_label(out, {kFieldFrom, top - 9}, clipped_words(strip.name, kStripColumns), Anchor::start, "name");
        top += kStrip + kStripName;
    }
    for (std::size_t m = 0; m < 12; ++m) put_label(out, {place_of_month(m), foot + 16}, kMonthLetters[m]);
    put_label(out, {(kFieldFrom + kFieldTo) / 2, foot + 36}, chart.axis_title);
    close_drawing(out);
    put(out, "<figcaption>{}{}</figcaption>\n</figure>\n", html_text(chart.caption),
        all > kMostStrips ? fmt::format(" {} more change less.", all - kMostStrips) : "");
}

MonthChart chart_of_moisture(const ReportContent& content, const DrawnMonths& months)
{
    MonthChart chart{"Moisture of the wood, month by month", "moisture content [%], by month", "%", "", {}};
    chart.strips.push_back({"all wood, in balance with the air", months.moisture, content.moisture_at_glue_up_pct});
    chart.caption =
        fmt::format("The moisture content that the air of each month would give the wood in time. Thick wood and finished "
                    "wood lag behind and go less far. Source: {}.",
                    months.source);
    return chart;
}

MonthChart chart_of_widths(const ReportContent& content, const DrawnMonths& months)
{
    const std::string unit(short_name(content.units));
    MonthChart chart{"Width of each part, month by month",
                     fmt::format("narrower or wider than made [{}], by month", unit),
                     unit,
                     "Width of each part through the months, in balance with the air of each.",
                     {}};
    for (const PartLine& part : content.parts)
        for (const MonthRow& row : months.rows) {
            if (row.check != "seasonal-size" || row.subject != part.id) continue;
            Strip strip{fmt::format("{}, {} wide", row.subject, write_length(metres(part.width_m), content.units)), {}, 0};
            for (std::size_t m = 0; m < 12; ++m) strip.months[m] = number_in(metres(row.months[m] - row.made), content.units);
            chart.strips.push_back(std::move(strip));
        }
    return chart;
}

MonthChart chart_of_gaps(const ReportContent& content, const DrawnMonths& months)
{
    const std::string unit(short_name(content.units));
    MonthChart chart{
        "Gaps and room, month by month",
        fmt::format("gap or room [{}], by month", unit),
        unit,
        "Gaps and room through the months, in balance with the air of each, every strip to its own scale; under zero "
        "they press.",
        {},
        true};
    std::vector<Strip> still; // the seasons hardly change them
    for (const MonthRow& row : months.rows) {
        if (row.check == "seasonal-size") continue;
        const char* what = row.check == "slat-gap" ? "gaps of" : row.check == "groove-room" ? "groove of" : "room of";
        Strip strip{fmt::format("{} {}", what, row.subject), {}, number_in(metres(row.made), content.units)};
        for (std::size_t m = 0; m < 12; ++m) strip.months[m] = number_in(metres(row.months[m]), content.units);
        (strip.range() < kHardlyChanging * std::abs(strip.made) ? still : chart.strips).push_back(std::move(strip));
    }
    if (chart.strips.empty()) chart.strips = std::move(still);
    return chart;
}

} // namespace

bool has_months(const ReportContent& content)
{
    return content.drawn && content.drawn->months && !content.drawn->months->rows.empty();
}

void put_month_charts(HtmlOut& out, const ReportContent& content)
{
    if (!has_months(content)) return;
    const DrawnMonths& months = *content.drawn->months;
    put_month_chart(out, chart_of_moisture(content, months));
    MonthChart widths = chart_of_widths(content, months), gaps = chart_of_gaps(content, months);
    if (!months.combination.empty())
        for (MonthChart* chart : {&widths, &gaps}) chart->caption += fmt::format(" Shown for {}.", months.combination);
    put_month_chart(out, std::move(widths));
    put_month_chart(out, std::move(gaps));
}

} // namespace jointwright
