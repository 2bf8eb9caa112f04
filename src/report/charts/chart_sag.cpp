#include "report/charts/chart_sag.hpp"

#include "measure/write.hpp"
#include "report/charts/chart_axis.hpp"
#include "report/drawings/svg.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kSagWide = 360, kSagHigh = 286;                                       // the drawing
constexpr double kFieldLeft = 52, kFieldRight = 346, kFieldTop = 58, kFieldFoot = 238; // the charted field
constexpr int kCaptionColumns = 60;

/// Maps thickness and sag, in the maker's unit, to the drawing.
struct SagField {
    ChartAxis across, up;
    LengthUnit units;
    Dot place(double thickness, double sag) const
    {
        return {across.place(number_in(metres(thickness), units)), up.place(number_in(metres(sag), units))};
    }
};

SagField field_of(const SagByThickness& by, LengthUnit units)
{
    double most = 0;
    for (const SagAtThickness& at : by.sizes) most = std::max({most, at.sag, at.limit});
    const auto shown = [&](double v) { return number_in(metres(v), units); };
    return {axis_over(shown(by.sizes.front().thickness), shown(by.sizes.back().thickness), 5, kFieldLeft + 8, kFieldRight - 8),
            axis_over(0, shown(most), 4, kFieldFoot, kFieldTop), units};
}

void put_axes(HtmlOut& out, const SagField& field)
{
    for (const double tick : field.up.ticks()) {
        const double y = field.up.place(tick);
        put_line(out, {kFieldLeft, y}, {kFieldRight, y}, "tick");
        put_label(out, {kFieldLeft - 6, y + 4.5}, write_number(tick), Anchor::end);
    }
    put_line(out, {kFieldLeft, kFieldFoot}, {kFieldRight, kFieldFoot}, "dim");
    for (const double tick : field.across.ticks()) {
        const double x = field.across.place(tick);
        put_line(out, {x, kFieldFoot}, {x, kFieldFoot + 4}, "dim");
        put_label(out, {x, kFieldFoot + 17}, write_number(tick));
    }
    put_label(out, {(kFieldLeft + kFieldRight) / 2, kFieldFoot + 37}, fmt::format("thickness [{}]", short_name(field.units)));
    put_label(out, {4, kFieldTop - 12}, fmt::format("sag [{}]", short_name(field.units)), Anchor::start);
}

void put_curve(HtmlOut& out, const SagByThickness& by, const SagField& field, double SagAtThickness::*what, std::string_view css)
{
    put(out, "<path class=\"{}\" d=\"", css);
    for (std::size_t i = 0; i < by.sizes.size(); ++i) {
        const Dot at = field.place(by.sizes[i].thickness, by.sizes[i].*what);
        put(out, "{}{:.1f} {:.1f}", i == 0 ? 'M' : 'L', at.x, at.y);
    }
    put(out, "\"/>\n");
}

void put_within(HtmlOut& out, const Dot& at)
{
    put(out, "<circle class=\"damp\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"5\"/>\n", at.x, at.y);
}
void put_beyond(HtmlOut& out, const Dot& at)
{
    put(out, "<path class=\"dry\" d=\"M{:.1f} {:.1f}l5.5 5.5l-5.5 5.5l-5.5 -5.5Z\"/>\n", at.x, at.y - 5.5);
}
void put_cross(HtmlOut& out, const Dot& at)
{
    put(out, "<path class=\"today\" fill=\"none\" d=\"M{0:.1f} {1:.1f}l8 8m0 -8l-8 8\"/>\n", at.x - 4, at.y - 4);
}

void put_key(HtmlOut& out, bool beyond, bool others)
{
    double x = 12;
    put_within(out, {x, 12});
    put_label(out, {x + 9, 16.5}, "within", Anchor::start);
    x += 68;
    if (beyond) {
        put_beyond(out, {x, 12});
        put_label(out, {x + 10, 16.5}, "beyond", Anchor::start);
        x += 76;
    }
    put_line(out, {x - 6, 12}, {x + 16, 12}, "failing");
    put_label(out, {x + 20, 16.5}, "limit", Anchor::start);
    x += 66;
    if (!others) return;
    put_cross(out, {x, 12});
    put_label(out, {x + 10, 16.5}, "another check fails", Anchor::start);
}

void put_points(HtmlOut& out, const SagByThickness& by, const SagField& field)
{
    for (const SagAtThickness& at : by.sizes) {
        const Dot p = field.place(at.thickness, at.sag);
        if (at.chosen) {
            put_line(out, {p.x, kFieldTop - 2}, {p.x, kFieldFoot}, "passing");
            const bool right = p.x > kFieldRight - 40;
            put_label(out, {p.x + (right ? 4 : 0), kFieldTop - 10}, "as drawn", right ? Anchor::end : Anchor::middle);
        }
    }
    for (const SagAtThickness& at : by.sizes) {
        const Dot p = field.place(at.thickness, at.sag);
        if (at.sag <= at.limit)
            put_within(out, p);
        else
            put_beyond(out, p);
        if (at.others_fail) put_cross(out, {p.x, kFieldFoot - 9});
    }
}

/// "long rail reaches the limit at about 0.46 in."
std::string limit_words(const SagByThickness& by, const std::string& part, LengthUnit units)
{
    if (by.meets_limit_at)
        return fmt::format("{} sags to its limit at a thickness of about {}.", part,
                           write_length(metres(*by.meets_limit_at), units));
    const bool all_within =
        std::all_of(by.sizes.begin(), by.sizes.end(), [](const SagAtThickness& a) { return a.sag <= a.limit; });
    if (all_within)
        return fmt::format("{} stays within its limit of sag down to {}, the thinnest that was worked out.", part,
                           write_length(metres(by.sizes.front().thickness), units));
    return fmt::format("{} is beyond its limit of sag up to {}, the thickest that was worked out.", part,
                       write_length(metres(by.sizes.back().thickness), units));
}

std::string sizes_words(const SagByThickness& by, LengthUnit units)
{
    std::string words;
    for (const SagAtThickness& at : by.sizes)
        words += fmt::format("{} thick{}: sags {}, limit {}{}. ", write_length(metres(at.thickness), units),
                             at.chosen ? ", as drawn" : "", write_small_length(metres(at.sag), units),
                             write_small_length(metres(at.limit), units), at.others_fail ? "; another check fails" : "");
    return words;
}

} // namespace

void put_sag_chart(HtmlOut& out, const ReportContent& content)
{
    if (!content.drawn || !content.drawn->sag_by) return;
    const SagByThickness& by = *content.drawn->sag_by;
    const SagField field = field_of(by, content.units);
    const std::string part = clipped_words(by.part, kCaptionColumns);
    const bool others = std::any_of(by.sizes.begin(), by.sizes.end(), [](const SagAtThickness&a) { return a.others_fail; }),
               beyond = std::any_of(by.sizes.begin(), by.sizes.end(), [](const SagAtThickness&a) { return a.sag > a.limit; });
    put(out, "<figure class=\"chart\">\n");
    open_drawing(out, "sag", kSagWide, kSagHigh, "img", fmt::format("How thin may {} be", part), sizes_words(by, content.units));
    put_key(out, beyond, others);
    put_axes(out, field);
    put_curve(out, by, field, &SagAtThickness::limit, "failing line");
    put_curve(out, by, field, &SagAtThickness::sag, "curve");
    put_points(out, by, field);
    close_drawing(out);
    put(out,
        "<figcaption>How thin may {} be: its sag, with creep, at other thicknesses, all else as drawn. "
        "{}{}</figcaption>\n</figure>\n",
        html_name(part), html_text(limit_words(by, part, content.units)), others ? " At a cross some other check fails." : "");
}

} // namespace jointwright
