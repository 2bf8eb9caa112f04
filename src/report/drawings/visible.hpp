#pragma once
// SI doubles: metres. Which parts of the faces of solid bodies an eye sees: hidden surfaces removed exactly, not by order of painting.

#include "piece/solid/convex_kernel.hpp"
#include "report/drawings/view.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace jointwright::drawing {

/// A body to be looked at: convex cells. Cells of one body may touch; bodies may touch, and may even overlap.
struct SeenBody {
    std::span<const kernel::Cell> cells; ///< of the caller's
};

/// What is seen of the faces of one body that lie in one plane and look the same way.
struct SeenFace {
    std::size_t body = 0;
    Vec normal{0, 0, 1};                 ///< in space, out of the wood
    Vec facing{0, 0, 1};                 ///< the same in the view: right, up, towards the eye
    double offset = 0;                   ///< of the plane: normal · p
    std::vector<kernel::Polygon> pieces; ///< convex, in the view's coordinates; they do not overlap
};

/// The visible faces of the bodies, by body and plane.
///
/// A point of a face is hidden when the ray from it to the eye enters a cell. All such points of a convex cell fill a convex region: behind its
/// faces that look at the eye, within its outline on the paper. Each face that looks at the eye is cut by the regions of all cells before it;
/// what is left is seen. Faces seen at less than 0.006 degrees are left out. Of faces that lie in each other (overlapping bodies) the first counts.
/// Laws: no face that looks away is seen; pieces do not overlap on the paper; the order of the bodies changes nothing but such ties.
std::vector<SeenFace> seen_faces(const std::vector<SeenBody>& bodies, const View& view);

/// Corners of the smallest convex outline round points on the paper, anticlockwise; fewer than three where they lie on a line.
std::vector<Vec> outline_of(std::vector<Vec> points);

} // namespace jointwright::drawing
