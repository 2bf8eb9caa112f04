#include "report/drawings/piece.hpp"

#include "measure/write.hpp"
#include "report/drawings/bodies.hpp"
#include "report/drawings/svg.hpp"
#include "report/markup/html_parts.hpp"
#include "report/words/people.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kCornerWide = 440, kCornerHigh = 380; // units of the drawing from the corner
constexpr double kViewWide = 330, kViewHigh = 300;     // units of the largest of the three views
constexpr double kMargin = 16;
constexpr double kDimension = 36; // units beside a view that a dimension takes
constexpr double kMarkRadius = 10.5;
constexpr double kSquare = 1.5; // units: corners of a mark that fails, told from the round ones by shape

struct PlacedMark {
    Dot target, at;
    const DrawnMark* mark;
    std::string words;
};

std::string numbers_of(const DrawnMark& mark)
{
    std::string words;
    for (const std::size_t f : mark.findings) words += (words.empty() ? "" : ", ") + std::to_string(f + 1);
    return words;
}

double half_width(const PlacedMark& m) { return std::max(kMarkRadius, 4.2 * static_cast<double>(m.words.size()) + 4); }

/// Moves marks that lie on each other apart, a little at a time, and keeps them on the paper.
void spread(std::vector<PlacedMark>& marks, double wide, double high)
{
    for (int round = 0; round < 60; ++round) {
        for (std::size_t i = 0; i < marks.size(); ++i)
            for (std::size_t j = i + 1; j < marks.size(); ++j) {
                const double dx = marks[j].at.x - marks[i].at.x, dy = marks[j].at.y - marks[i].at.y;
                const double need = half_width(marks[i]) + half_width(marks[j]) + 2, near = std::hypot(dx, dy);
                if (near >= need) continue;
                const double push = (need - near) / 2;
                const double x = near > 0.1 ? dx / near : std::cos(2.4 * static_cast<double>(j)),
                             y = near > 0.1 ? dy / near : std::sin(2.4 * static_cast<double>(j));
                marks[i].at = {marks[i].at.x - x * push, marks[i].at.y - y * push};
                marks[j].at = {marks[j].at.x + x * push, marks[j].at.y + y * push};
            }
        for (PlacedMark& m : marks) {
            m.at.x = std::clamp(m.at.x, half_width(m) + 1, wide - half_width(m) - 1);
            m.at.y = std::clamp(m.at.y, kMarkRadius + 1, high - kMarkRadius - 1);
        }
    }
}

void put_mark(HtmlOut& out, const PlacedMark& placed, const ReportContent& content)
{
    const Finding& worst = content.findings[placed.mark->findings.front()];
    if (std::hypot(placed.at.x - placed.target.x, placed.at.y - placed.target.y) > kMarkRadius) {
        put_line(out, placed.at, placed.target, "leader");
        put(out, "<circle class=\"spot\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"2\"/>\n", placed.target.x, placed.target.y);
    }
    const double half = half_width(placed);
    put(out,
        "<a class=\"{}\" href=\"#{}\" aria-label=\"{}\"><rect class=\"mark\" x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" "
        "height=\"{}\" "
        "rx=\"{}\"/>",
        css_class(worst.verdict), finding_anchor(placed.mark->findings.front()),
        html_text(fmt::format("Finding {}: {}, {}", placed.words, worst.subject, verdict_title(worst.verdict))),
        placed.at.x - half, placed.at.y - kMarkRadius, 2 * half, 2 * kMarkRadius,
        worst.verdict == Verdict::fail ? kSquare : kMarkRadius);
    put_label(out, {placed.at.x, placed.at.y + 4.6}, placed.words, Anchor::middle, "number");
    put(out, "</a>\n");
}

void put_marks(HtmlOut& out, const ReportContent& content, const View& view, const Sheet& sheet, double wide, double high)
{
    std::vector<PlacedMark> marks;
    for (const DrawnMark& mark : content.drawn->marks) {
        if (mark.findings.empty()) continue;
        const Vec p = view.place({mark.at[0], mark.at[1], mark.at[2]});
        const Dot target = sheet.place({p.x(), p.y()});
        marks.push_back({target, target, &mark, numbers_of(mark)});
    }
    spread(marks, wide, high);
    for (const PlacedMark& mark : marks) put_mark(out, mark, content);
}

std::string size_of(const ReportContent& content, Axis axis)
{
    return write_length(metres(content.drawn->bounds.size(axis)), content.units);
}

/// One of the three views: its name, and what its width and height are.
struct NamedView {
    const char* name;
    View view;
    Axis across, up;
};

void put_view(HtmlOut& out, const ReportContent& content, const std::vector<WoodBody>& bodies, const NamedView& named,
              double scale)
{
    const GrainSteps steps{9 / scale, 0, 6 / scale};
    const Scene scene = look_at(bodies, named.view, steps);
    const double across = (scene.hi.x - scene.lo.x) * scale, up = (scene.hi.y - scene.lo.y) * scale;
    const std::string width = size_of(content, named.across), height = size_of(content, named.up);
    // Narrow views keep room for the words of their dimensions.
    const double room = std::max(across, 9.0 * static_cast<double>(width.size()));
    const double tall = std::max(up, 8.5 * static_cast<double>(height.size()));
    const double wide = room + kDimension + 2 * kMargin, high = tall + kDimension + kMargin;
    const Sheet sheet{scale, kMargin + (room - across) / 2, high - kDimension - (tall - up) / 2, scene.lo};
    put(out, "<figure style=\"--wide:{:.0f}px\">\n", wide * 1.12);
    open_drawing(out, "view", wide, high, "img", fmt::format("{} {}", content.piece_name, named.name),
                 fmt::format("{} {}: {} by {} over all; hidden lines left out, light strokes along the grain.",
                             content.piece_name, named.name, width, height));
    put_scene(out, scene, bodies, sheet);
    const Dot lo = sheet.place(scene.lo), hi = sheet.place(scene.hi);
    put_level_dimension(out, lo.x, hi.x, lo.y + 14, width);
    put_upright_dimension(out, lo.y, hi.y, std::max(hi.x, kMargin + room / 2 + across / 2) + 14, height);
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", named.name);
}

} // namespace

CornerPlan corner_plan(const ReportContent& content)
{
    constexpr double kTurn = 0.62, kRise = 0.47; // radians: 35 and 27 degrees, so that three sides show
    CornerPlan plan;
    plan.view = view_from_corner(kTurn, kRise);
    Dot lo, hi;
    paper_extent(*content.drawn, plan.view, lo, hi);
    const double scale = fitting_scale(lo, hi, kCornerWide - 2 * kMargin, kCornerHigh - 2 * kMargin);
    plan.wide = kCornerWide;
    plan.high = (hi.y - lo.y) * scale + 2 * kMargin;
    plan.sheet = {scale, (kCornerWide - (hi.x - lo.x) * scale) / 2, plan.high - kMargin, lo};
    return plan;
}

void put_piece_drawing(HtmlOut& out, const ReportContent& content)
{
    if (!content.drawn || content.drawn->bodies.empty()) return;
    const CornerPlan plan = corner_plan(content);
    const std::vector<WoodBody> bodies = wood_bodies(*content.drawn);
    const double scale = plan.sheet.scale;
    const Scene scene = look_at(bodies, plan.view, {7 / scale, 3.2 / scale, 7 / scale});
    put(out, "<figure class=\"piece\">\n");
    open_drawing(
        out, "corner", plan.wide, plan.high, "group", fmt::format("{} from its front left corner", content.piece_name),
        fmt::format("{} wide, {} deep, {} high; hidden lines left out, light strokes along the grain, rings on end grain. "
                    "Numbers lead to the findings.",
                    size_of(content, Axis::x), size_of(content, Axis::y), size_of(content, Axis::z)));
    put(out, "<g id=\"{}\">\n", kPieceId);
    put_scene(out, scene, bodies, plan.sheet);
    put(out, "</g>\n");
    put_marks(out, content, plan.view, plan.sheet, plan.wide, plan.high);
    close_drawing(out);
    const std::size_t unmarked = content.drawn->unmarked;
    put(out, "<figcaption>{} wide, {} deep, {} high.{}{}</figcaption>\n</figure>\n", size_of(content, Axis::x),
        size_of(content, Axis::y), size_of(content, Axis::z),
        content.drawn->marks.empty() ? "" : " The numbers are those of the findings; square ones fail.",
        unmarked > 0 ? fmt::format(" {} further places are not marked.", unmarked) : "");
}

void put_three_views(HtmlOut& out, const ReportContent& content)
{
    if (!content.drawn || content.drawn->bodies.empty()) return;
    const std::vector<WoodBody> bodies = wood_bodies(*content.drawn);
    const NamedView views[] = {{"from the front", view_from_front(), Axis::x, Axis::z},
                               {"from the left", view_from_left(), Axis::y, Axis::z},
                               {"from above", view_from_above(), Axis::x, Axis::y}};
    double scale = 1e300;
    for (const NamedView& named : views) {
        Dot lo, hi;
        paper_extent(*content.drawn, named.view, lo, hi);
        scale = std::min(scale, fitting_scale(lo, hi, kViewWide, kViewHigh));
    }
    put(out, "<div class=\"views\">\n");
    for (const NamedView& named : views) put_view(out, content, bodies, named, scale);
    put(out, "</div>\n");
}

} // namespace jointwright
