#include "report/drawings/deflected.hpp"

#include "measure/write.hpp"
#include "report/drawings/piece.hpp"
#include "report/drawings/scale.hpp"
#include "report/drawings/svg.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kFrameRoom = 24, kArrowLong = 30; // units of the drawing

void put_centreline(HtmlOut& out, const MovedLine& line, double times, const View& view, const Sheet& sheet, std::string_view css)
{
    SvgPath path;
    for (std::size_t i = 0; i < std::min(line.at_rest.size(), line.moved_by.size()); ++i) {
        Vec p(line.at_rest[i][0], line.at_rest[i][1], line.at_rest[i][2]);
        p += times * Vec(line.moved_by[i][0], line.moved_by[i][1], line.moved_by[i][2]);
        const Vec q = view.place(p);
        const Dot at = sheet.place({q.x(), q.y()});
        i == 0 ? path.move_to(at) : path.line_to(at);
    }
    put_path(out, path, css);
}

double farthest_move(const std::vector<MovedLine>& lines)
{
    double most = 0;
    for (const MovedLine& line : lines)
        for (const Point& p : line.moved_by) most = std::max(most, std::hypot(p[0], p[1], p[2]));
    return most;
}

/// Arrows that end where the load acts.
void put_acting(HtmlOut& out, const MovedLine& load, const View& view, const Sheet& sheet)
{
    for (std::size_t i = 0; i < std::min(load.at_rest.size(), load.moved_by.size()); ++i) {
        const Vec p = view.place({load.at_rest[i][0], load.at_rest[i][1], load.at_rest[i][2]});
        const Vec d = view.direct({load.moved_by[i][0], load.moved_by[i][1], load.moved_by[i][2]});
        const Dot tip = sheet.place({p.x(), p.y()});
        put_arrow(out, {tip.x - kArrowLong * d.x(), tip.y + kArrowLong * d.y()}, tip, "along");
    }
}

} // namespace

void put_deflected_drawing(HtmlOut& out, const ReportContent& content, const DrawnLoad& load)
{
    if (!content.drawn || content.drawn->bodies.empty() || load.lines.empty()) return;
    const double farthest = farthest_move(load.lines);
    if (!std::isfinite(farthest)) return;
    const CornerPlan corner = corner_plan(content);
    const View& view = corner.view;
    // Smaller than there, with room for what moves out of the piece's own outline.
    constexpr double kSmaller = 0.84;
    const double wide = corner.wide, high = corner.high * kSmaller + 2 * kFrameRoom;
    Sheet sheet = corner.sheet;
    sheet.scale *= kSmaller;
    sheet.left = sheet.left * kSmaller + (wide - wide * kSmaller) / 2;
    sheet.top = sheet.top * kSmaller + kFrameRoom;
    const double times = farthest > 0 ? round_times(wide / 12 / (farthest * sheet.scale)) : 1;
    const std::string caption =
        fmt::format("Under load: {}. The lines of the parts at rest are dashed; the full ones show them under the load, moved {} "
                    "times as far as they move. The farthest point moves {}, at once, before any creep.",
                    load.words, write_number(times), write_small_length(metres(farthest), content.units));
    put(out, "<figure class=\"close under\">\n");
    open_drawing(out, "deflected", wide, high, "img", fmt::format("{} under load", content.piece_name), caption);
    put(out, "<use class=\"pale\" href=\"#{}\" transform=\"translate({:.1f} {:.0f})scale({})\"/>\n", kPieceId,
        (wide - wide * kSmaller) / 2, kFrameRoom, kSmaller);
    for (const MovedLine& line : load.lines) put_centreline(out, line, 0, view, sheet, "made");
    for (const MovedLine& line : load.lines) put_centreline(out, line, times, view, sheet, "move");
    for (const MovedLine& line : load.acts) put_acting(out, line, view, sheet);
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", html_text(caption));
}

} // namespace jointwright
