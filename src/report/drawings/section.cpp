#include "report/drawings/section.hpp"

#include "measure/write.hpp"
#include "report/drawings/scale.hpp"
#include "report/drawings/svg.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kSectionWide = 440;

/// A rectangle's edge in short steps, corner by corner, moved to where `place` says.
Ring outline_points(double half_width, double half_thickness, const std::function<Dot(const Dot&)>& place)
{
    constexpr int kSteps = 14;
    const Dot corners[] = {{-half_width, -half_thickness},
                           {half_width, -half_thickness},
                           {half_width, half_thickness},
                           {-half_width, half_thickness}};
    Ring ring;
    for (int side = 0; side < 4; ++side)
        for (int i = 0; i < kSteps; ++i) {
            const Dot& a = corners[side];
            const Dot& b = corners[(side + 1) % 4];
            const double t = static_cast<double>(i) / kSteps;
            ring.push_back(place({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}));
        }
    return ring;
}

void put_polyline(HtmlOut& out, const std::vector<Dot>& points, const Sheet& sheet, std::string_view css, bool closed)
{
    constexpr double kUnseen = 0.06; // units
    SvgPath path;
    bool first = true;
    for (const Dot& point : thinned(points, kUnseen / sheet.scale)) {
        first ? path.move_to(sheet.place(point)) : path.line_to(sheet.place(point));
        first = false;
    }
    if (closed) path.close();
    put_path(out, path, css);
}

/// A board's end with its pith, in its own coordinates: width to the right, thickness up, (0, 0) in its middle.
struct EndGrainPlan {
    double half_width, half_thickness, radius;
    Dot pith;
    double upright; ///< direction from the pith to the middle of the board [rad]
};

EndGrainPlan plan_of(const DrawnEnd& end)
{
    // The pith lies below, square to the rings at the middle: straight below for flat-sawn stock, to the side for quarter-sawn.
    const Dot pith{-end.ring_radius * std::sin(end.rings), -end.ring_radius * std::cos(end.rings)};
    return {end.width / 2, end.thickness / 2, end.ring_radius, pith, std::atan2(-pith.y, -pith.x)};
}

/// The growth rings within the board, each a run of points.
std::vector<Ring> rings_in(const EndGrainPlan& plan, double step, const std::function<Dot(const Dot&)>& place)
{
    constexpr int kSteps = 160;
    std::vector<Ring> rings;
    const double reach = std::hypot(plan.half_width, plan.half_thickness);
    for (double r = std::max(step, std::ceil((plan.radius - reach) / step) * step); r < plan.radius + reach; r += step) {
        Ring run;
        for (int i = 0; i <= kSteps; ++i) {
            const double turn = plan.upright + (static_cast<double>(i) / kSteps - 0.5) * 2 * 3.14159265358979323846;
            const Dot p{plan.pith.x + r * std::cos(turn), plan.pith.y + r * std::sin(turn)};
            const bool inside = std::abs(p.x) <= plan.half_width && std::abs(p.y) <= plan.half_thickness;
            if (inside) run.push_back(place(p));
            if ((!inside || i == kSteps) && !run.empty()) {
                if (run.size() > 1) rings.push_back(run);
                run.clear();
            }
        }
    }
    return rings;
}

const Finding* finding_on(const ReportContent& content, std::string_view check, std::string_view subject)
{
    for (const Finding& f : content.findings)
        if (f.check == check && f.subject == subject) return &f;
    return nullptr;
}

std::optional<double> value_of_name(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name && std::isfinite(v.value)) return v.value;
    return std::nullopt;
}

/// Farthest that a point of the edge moves against the middle, once over [m].
double departure_of(const EndGrainPlan& plan, const DrawnEnd& end)
{
    const auto moved = [&](const Dot& p) {
        const Dot q = moved_round_pith({p.x - plan.pith.x, p.y - plan.pith.y}, plan.upright, end.tangential, end.radial);
        return Dot{q.x + plan.pith.x, q.y + plan.pith.y};
    };
    const Dot middle = moved({0, 0});
    double most = 0;
    for (const Dot& p : outline_points(plan.half_width, plan.half_thickness, [](const Dot& d) { return d; })) {
        const Dot q = moved(p);
        most = std::max(most, std::hypot(q.x - middle.x - p.x, q.y - middle.y - p.y));
    }
    return most;
}

struct RowSeason {
    const char* name;
    double gap;
};

} // namespace

namespace drawing {

Dot moved_round_pith(const Dot& p, double upright, double tangential, double radial)
{
    const double r = std::hypot(p.x, p.y) * (1 + radial);
    const double turn = std::remainder(std::atan2(p.y, p.x) - upright, 2 * 3.14159265358979323846);
    const double moved = upright + turn * (1 + tangential) / (1 + radial);
    return {r * std::cos(moved), r * std::sin(moved)};
}

} // namespace drawing

void put_end_grain_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding)
{
    if (!content.drawn) return;
    const auto& ends = content.drawn->ends;
    const auto found = std::find_if(ends.begin(), ends.end(), [&](const DrawnEnd& e) { return e.finding == finding; });
    if (found == ends.end() || !(found->width > 0) || !(found->ring_radius > 0)) return;
    const DrawnEnd& end = *found;
    const EndGrainPlan plan = plan_of(end);
    constexpr double kRoom = 26, kTallest = 130;
    const double scale = std::min((kSectionWide - 5 * kRoom) / end.width, kTallest / end.thickness);
    // So that the edge moves by an eighth of the width at most.
    const double departure = departure_of(plan, end);
    const double times = departure > 0 ? round_times(0.1 * end.width / departure) : 1;
    const auto moved = [&](const Dot& p) {
        const Dot q =
            moved_round_pith({p.x - plan.pith.x, p.y - plan.pith.y}, plan.upright, end.tangential * times, end.radial * times);
        return Dot{q.x + plan.pith.x, q.y + plan.pith.y};
    };
    const Dot middle = moved({0, 0});
    const auto centred = [&](const Dot& p) {
        const Dot q = moved(p);
        return Dot{q.x - middle.x, q.y - middle.y};
    };
    const double high = end.thickness * scale + 0.24 * end.width * scale + 2 * kRoom;
    const Sheet sheet{scale, kSectionWide / 2, high / 2, {0, 0}};
    const std::string caption =
        fmt::format("End grain of {}: as made (dashed) and at the {}, its movement drawn {} times as large as it is, with rings "
                    "of {} radius at {} to the "
                    "wide face.",
                    content.findings[finding].subject, end.driest ? "driest" : "dampest", write_number(times),
                    write_length(metres(end.ring_radius), content.units), write_angle(radians(end.rings)));
    put(out, "<figure class=\"close\">\n");
    open_drawing(out, "section", kSectionWide, high, "img", fmt::format("End grain of {}", content.findings[finding].subject),
                 caption);
    put_polyline(out, outline_points(plan.half_width, plan.half_thickness, centred), sheet, "w0 l3 e rim2", true);
    for (const Ring& ring : rings_in(plan, 5 / scale, centred)) put_polyline(out, ring, sheet, "grain", false);
    const double x = plan.half_width, y = plan.half_thickness;
    put_polyline(out, {{-x, -y}, {x, -y}, {x, y}, {-x, y}}, sheet, "made", true);
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", html_text(caption));
}

void put_row_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding)
{
    const Finding& gaps = content.findings[finding];
    if (gaps.check != "slat-gap") return;
    const auto made = value_of_name(gaps, "gap_made"), dry = value_of_name(gaps, "gap_driest"),
               damp = value_of_name(gaps, "gap_dampest");
    const Finding* size = finding_on(content, "seasonal-size", gaps.subject);
    const double width = size ? value_of_name(*size, "size_made").value_or(0) : 0;
    if (!made || !dry || !damp || !(width > 0)) return;
    constexpr int kShown = 4;
    constexpr double kLeft = 76, kRight = 10, kRow = 54, kSlat = 24, kTop = 22;
    // Changes are drawn larger, but never so large that a gap which stays open would look closed.
    const double change = std::max(std::abs(*dry - *made), std::abs(*damp - *made));
    const double least = std::min(*dry, *damp);
    double times = change > 0 ? round_times(0.3 * width / change) : 1;
    if (least > 0 && least < *made) times = std::min(times, round_times(0.9 * *made / (*made - least)));
    if (least <= 0) times = 1;
    const double pitch = width + *made, most = kShown * pitch;
    const double scale = (kSectionWide - kLeft - kRight) / most;
    const double high = kTop + 3 * kRow;
    const std::string caption =
        fmt::format("The row of {} from its end, each fixed at its middle; changes of the gap drawn {}.", gaps.subject,
                    times > 1 ? fmt::format("{} times as large as they are", write_number(times)) : "to scale");
    put(out, "<figure class=\"close\">\n");
    open_drawing(out, "section", kSectionWide, high, "img", fmt::format("Gaps of {} through the year", gaps.subject), caption);
    const RowSeason seasons[] = {{"driest", *dry}, {"today", *made}, {"dampest", *damp}};
    for (int row = 0; row < 3; ++row) {
        const double top = kTop + row * kRow, drawn_gap = *made + times * (seasons[row].gap - *made),
                     drawn_width = pitch - drawn_gap;
        put_label(out, {kLeft - 8, top + 17}, seasons[row].name, Anchor::end);
        for (int i = 0; i < kShown; ++i) {
            const double middle = kLeft + (i + 0.5) * pitch * scale;
            put(out, "<rect class=\"w0 l3 rim2\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{}\"/>\n",
                middle - drawn_width * scale / 2, top, drawn_width * scale, kSlat);
        }
        const double gap_at = kLeft + pitch * scale;
        put_line(out, {gap_at, top + kSlat + 2}, {gap_at, top + kSlat + 8}, "dim");
        put_label(out, {gap_at, top + kSlat + 20},
                  seasons[row].gap > 0
                      ? fmt::format("gap {}", write_small_length(metres(seasons[row].gap), content.units))
                      : fmt::format("closed, pressed {}", write_small_length(metres(-seasons[row].gap), content.units)));
    }
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", html_text(caption));
}

} // namespace jointwright
