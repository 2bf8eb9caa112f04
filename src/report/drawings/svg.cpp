#include "report/drawings/svg.hpp"

#include "measure/text.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright::drawing {

namespace {

constexpr std::size_t kWoodTones = 4;

void put_strokes(HtmlOut& out, const std::vector<Stroke>& strokes, const Sheet& sheet, std::string_view css)
{
    SvgPath path;
    Dot last{1e300, 1e300};
    for (const Stroke& s : strokes) {
        const Dot a = sheet.place(s.from), b = sheet.place(s.to);
        if (std::hypot(b.x - a.x, b.y - a.y) < 0.15) continue;
        if (std::hypot(a.x - last.x, a.y - last.y) > 0.05) path.move_to(a);
        path.line_to(b);
        last = b;
    }
    put_path(out, path, css);
}

/// Light from the upper left, before the paper: 0 dark to 4 bright.
int light_on(const Vec& facing)
{
    static const Vec kLight = Vec(-0.45, 0.78, 0.44).normalized();
    const double bright = facing.dot(kLight);
    return std::clamp(static_cast<int>(std::floor(bright * 3.2 + 1.2)), 0, 4);
}

} // namespace

void put_path(HtmlOut& out, const SvgPath& path, std::string_view css)
{
    if (!path.empty()) put(out, "<path class=\"{}\" d=\"{}\"/>\n", css, path.text());
}

void put_ring(SvgPath& path, const Ring& ring, const Sheet& sheet)
{
    for (std::size_t i = 0; i < ring.size(); ++i)
        i == 0 ? path.move_to(sheet.place(ring[i])) : path.line_to(sheet.place(ring[i]));
    path.close();
}

double fitting_scale(const Dot& lo, const Dot& hi, double wide, double high)
{
    const double across = std::max(hi.x - lo.x, 1e-6), up = std::max(hi.y - lo.y, 1e-6);
    return std::min(wide / across, high / up);
}

void put_scene(HtmlOut& out, const Scene& scene, const std::vector<WoodBody>& bodies, const Sheet& sheet)
{
    for (std::size_t i = 0; i < scene.faces.size(); ++i) {
        const SeenFace& face = scene.faces[i];
        SvgPath path;
        for (const Ring& ring : scene.rings[i]) put_ring(path, ring, sheet);
        put_path(
            out, path,
            fmt::format("w{} l{}{}", bodies[face.body].wood % kWoodTones, light_on(face.facing), scene.end_grain[i] ? " e" : ""));
    }
    put_strokes(out, scene.grain, sheet, "grain");
    put_strokes(out, scene.edges, sheet, "edge");
    put_strokes(out, scene.outlines, sheet, "rim");
}

void open_drawing(HtmlOut& out, std::string_view css, double wide, double high, std::string_view role, std::string_view title,
                  std::string_view description)
{
    put(out, "<svg class=\"drawing {}\" viewBox=\"0 0 {:.0f} {:.0f}\" role=\"{}\"><title>{}</title><desc>{}</desc>\n", css, wide,
        high, role, html_text(title), html_text(description));
}

void close_drawing(HtmlOut& out) { put(out, "</svg>\n"); }

void put_label(HtmlOut& out, const Dot& at, std::string_view words, Anchor anchor, std::string_view css)
{
    constexpr std::string_view kAnchors[] = {"start", "middle", "end"};
    put(out, "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\"", at.x, at.y, kAnchors[static_cast<std::size_t>(anchor)]);
    if (!css.empty()) put(out, " class=\"{}\"", css);
    put(out, ">{}</text>\n", html_text(words));
}

std::string clipped_words(std::string_view text, int columns)
{
    const std::u32string characters = safe_characters(text);
    if (columns_of(characters) <= columns) return std::string(text);
    ColumnCounter counter;
    int used = 0;
    std::size_t kept = 0;
    while (kept < characters.size()) {
        used += counter.add(characters[kept]);
        if (used > columns - 1) break;
        ++kept;
    }
    return to_utf8(std::u32string_view(characters).substr(0, kept)) + "…";
}

void put_line(HtmlOut& out, const Dot& from, const Dot& to, std::string_view css)
{
    put(out, "<line class=\"{}\" x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\"/>\n", css, from.x, from.y, to.x, to.y);
}

void put_arrow(HtmlOut& out, const Dot& from, const Dot& to, std::string_view css, bool both)
{
    constexpr double kHead = 6;
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (!(length > 1e-6)) return;
    const double x = (to.x - from.x) / length, y = (to.y - from.y) / length;
    SvgPath path;
    path.move_to(from);
    path.line_to(to);
    const auto head = [&](const Dot& tip, double sense) {
        const double h = std::min(kHead, length * 0.6) * sense;
        path.move_to({tip.x - h * (x - 0.5 * y), tip.y - h * (y + 0.5 * x)});
        path.line_to(tip);
        path.line_to({tip.x - h * (x + 0.5 * y), tip.y - h * (y - 0.5 * x)});
    };
    head(to, 1);
    if (both) head(from, -1);
    put_path(out, path, css);
}

void put_driest(HtmlOut& out, const Dot& at)
{
    put(out, "<path class=\"dry\" d=\"M{:.1f} {:.1f}l5.5 5.5-5.5 5.5-5.5-5.5z\"/>\n", at.x, at.y - 5.5);
}

void put_dampest(HtmlOut& out, const Dot& at)
{
    put(out, "<circle class=\"damp\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"5\"/>\n", at.x, at.y);
}

void put_level_dimension(HtmlOut& out, double from, double to, double at, std::string_view words)
{
    put_line(out, {from, at}, {to, at}, "dim");
    for (const double x : {from, to}) {
        put_line(out, {x, at - 6}, {x, at + 5}, "dim");
        put_line(out, {x - 3, at + 3}, {x + 3, at - 3}, "dim");
    }
    put_label(out, {(from + to) / 2, at + 17}, words);
}

void put_upright_dimension(HtmlOut& out, double from, double to, double at, std::string_view words)
{
    put_line(out, {at, from}, {at, to}, "dim");
    for (const double y : {from, to}) {
        put_line(out, {at - 6, y}, {at + 5, y}, "dim");
        put_line(out, {at - 3, y + 3}, {at + 3, y - 3}, "dim");
    }
    put(out, "<text transform=\"translate({:.1f} {:.1f})rotate(-90)\" text-anchor=\"middle\">{}</text>\n", at + 17,
        (from + to) / 2, html_text(words));
}

} // namespace jointwright::drawing
