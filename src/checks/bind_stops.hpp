#pragma once
// Loose parts and drawers between two stops of a frame: found from plain geometry alone. SI doubles: metres.

#include "checks/finding.hpp"
#include "mechanics/ties.hpp"

#include <vector>

namespace jointwright {

/// A loose part that stands between two others across its grain.
struct StoppedPart {
    std::size_t copy = 0, low = 0, high = 0; ///< the part; what stops it at its lower and at its upper side
    Axis axis = Axis::x;                     ///< across its width
    double gap = 0;                          ///< as drawn, both sides together
};

/// Every loose part between two stops.
///
/// Loose: no joints tie it, or the drawer that it belongs to, to its stops; the two stops are tied to each other. Looked at along the part's
/// width only, with the faces opposite each other and not more than 15 mm away. Turned parts are left out.
std::vector<StoppedPart> stopped_parts(const Prepared& prepared, const Ties& ties);

/// bind of one such part. Drawn touching at both sides it is judged by its squeeze, drawn with room it fails when the room closes.
Finding judge_stopped(const Prepared& prepared, const Ties& ties, const StoppedPart& part);

} // namespace jointwright
