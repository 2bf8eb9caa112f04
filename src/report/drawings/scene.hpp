#pragma once
// SI doubles: metres on the paper. A look at bodies of wood: what is seen of their faces, the lines round them, and their grain.

#include "report/drawings/lines.hpp"
#include "report/drawings/visible.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace jointwright::drawing {

/// A body of wood to draw.
struct WoodBody {
    std::span<const kernel::Cell> cells; ///< of the caller's
    Vec grain{1, 0, 0};
    Vec pith{0, 0, 0};    ///< a point of the axis of the growth rings
    std::size_t wood = 0; ///< which of the woods, for its tone
};

/// How close together the strokes of the grain lie.
struct GrainSteps {
    double side = 0.02;   ///< on side grain; 0: none [m]
    double rings = 0.006; ///< between growth rings on end grain; 0: none [m]
    double least = 0.01;  ///< faces smaller than this in either direction get none [m]
};

struct Scene {
    std::vector<SeenFace> faces;
    std::vector<bool> end_grain;          ///< by face
    std::vector<std::vector<Ring>> rings; ///< by face: its outlines, anticlockwise, and those of its holes, clockwise
    std::vector<Stroke> outlines;         ///< against the bare paper
    std::vector<Stroke> edges;            ///< against other faces
    std::vector<Stroke> grain;
    Dot lo, hi; ///< of everything seen; both 0 when nothing is
};

Scene look_at(const std::vector<WoodBody>& bodies, const View& view, const GrainSteps& steps);

/// The part of a straight line within a convex polygon; nothing when it runs past it.
std::vector<Stroke> line_within(const kernel::Polygon& polygon, const Dot& from, const Dot& to);

} // namespace jointwright::drawing
