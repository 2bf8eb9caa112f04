#pragma once
// Loose parts and drawers between two stops of a frame: found from plain geometry alone. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <optional>
#include <vector>

namespace jointwright {

/// A loose part that stands between two others across its grain.
struct StoppedPart {
    std::size_t copy = 0, low = 0, high = 0; ///< the part; what stops it at its lower and at its upper side
    Axis axis = Axis::x;                     ///< across its width
    double gap = 0;                          ///< as drawn, both sides together
};

/// The nearest copy of another assembly on one side of a part, and how far it is.
struct Stop {
    std::size_t copy = 0;
    double room = 0;
};
/// Copies that can be stops: a stop belongs to something, two that are tied to each other.
std::vector<std::size_t> frames_of(const Prepared& prepared, const Ties& ties);
/// What stops a part on one side along an axis; nothing where it is farther than 15 mm or passes by. Hinges keep the room on their side as it is: there
/// it counts for nothing, and all that the leaf grows goes to its other side.
std::optional<Stop> stop_of(const Ties& ties, const std::vector<std::size_t>& frames, std::size_t part, Axis axis, bool high);

/// Every loose part between two stops.
///
/// Loose: no joints tie it, or the drawer that it belongs to, to its stops; the two stops are tied to each other. Looked at along the part's
/// width only, with the faces opposite each other and not more than 15 mm away. Turned parts are left out.
std::vector<StoppedPart> stopped_parts(const Prepared& prepared, const Ties& ties);

/// bind of one such part. Drawn touching at both sides it is judged by its squeeze, drawn with room it fails when the room closes.
Finding judge_stopped(const Prepared& prepared, const Ties& ties, const StoppedPart& part);

} // namespace jointwright
