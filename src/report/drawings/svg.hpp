#pragma once
// Scenes as inline SVG. Coordinates are units of the drawing: about one CSS pixel on a telephone.

#include "report/drawings/scene.hpp"
#include "report/drawings/svg_path.hpp"
#include "report/markup/html_parts.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace jointwright::drawing {

/// From metres on the paper to units of the drawing; up becomes down.
struct Sheet {
    double scale = 1;         ///< units a metre
    double left = 0, top = 0; ///< units where `origin` comes to lie
    Dot origin;               ///< a point of the paper [m]
    Dot place(const Dot& p) const { return {left + (p.x - origin.x) * scale, top - (p.y - origin.y) * scale}; }
};

/// The largest scale at which an extent fits into so many units.
double fitting_scale(const Dot& lo, const Dot& hi, double wide, double high);

/// A path of a class; nothing when it has no lines.
void put_path(HtmlOut& out, const SvgPath& path, std::string_view css);
/// Adds a closed line through points of the paper.
void put_ring(SvgPath& path, const Ring& ring, const Sheet& sheet);

/// The faces, grain and lines of a scene. Faces carry the classes of their wood, "w0" to "w3", and of their light, "l0" (darkest) to "l4",
/// end grain "e"; lines the classes "grain", "edge" and "rim".
void put_scene(HtmlOut& out, const Scene& scene, const std::vector<WoodBody>& bodies, const Sheet& sheet);

/// Opens a drawing with title and description; both are escaped here. @param role "img", or "group" when links stand in it
void open_drawing(HtmlOut& out, std::string_view css, double wide, double high, std::string_view role, std::string_view title,
                  std::string_view description);
void close_drawing(HtmlOut& out);

/// A text cut down to so many columns, with an ellipsis where something was left out.
std::string clipped_words(std::string_view text, int columns);

enum class Anchor { start, middle, end };
/// A label; escaped here.
void put_label(HtmlOut& out, const Dot& at, std::string_view words, Anchor anchor = Anchor::middle, std::string_view css = "");
/// A straight line of a class.
void put_line(HtmlOut& out, const Dot& from, const Dot& to, std::string_view css);
/// A line with an arrow head at its end, or at both.
void put_arrow(HtmlOut& out, const Dot& from, const Dot& to, std::string_view css, bool both = false);
/// The signs of the driest state, a hollow diamond, and of the dampest, a full circle.
void put_driest(HtmlOut& out, const Dot& at);
void put_dampest(HtmlOut& out, const Dot& at);
/// A dimension between two places: a line with slanting ticks and the size beside it, level or upright.
void put_level_dimension(HtmlOut& out, double from, double to, double at, std::string_view words);
void put_upright_dimension(HtmlOut& out, double from, double to, double at, std::string_view words);

} // namespace jointwright::drawing
