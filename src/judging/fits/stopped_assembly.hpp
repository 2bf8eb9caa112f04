#pragma once
// Doors, drawers and other assemblies of several parts between the stops of an opening. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <vector>

namespace jointwright {

/// bind of every assembly that stands between two stops of another: by what all its members move across, and by what the opening does, both found
/// from the whole chain of their joints, left to right, front to back and up and down.
///
/// An assembly is what joints tie together; the stops belong to another, whose joints tie them to each other. Its outermost members and their
/// stops lie opposite each other and not more than 15 mm apart. A single part that stands between the stops by itself is `judge_stopped`.
std::vector<Finding> judge_stopped_assemblies(const Prepared& prepared, const Ties& ties);

} // namespace jointwright
