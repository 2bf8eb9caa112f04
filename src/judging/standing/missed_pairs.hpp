#pragma once
// Copies that a stated joint names and does not reach: a rail that ends short of its leg.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// Adds one finding for each pair of parts whose stated joint reaches only some of the copies that it could: fails, and comes before all
/// else. Told are copies up to a tenon's length apart (dowels: half of one; other kinds: 13 mm) along one axis with nothing between them,
/// where one of the two has fewer places of that joint than its like, or has one at its other end. Copies of one and the same part warn up
/// to 3 mm, since rows of boards may mean their gaps. Nothing is said of a joint whose like copies all have the same places.
void add_missed_pairs(const Prepared& prepared, std::vector<Finding>& findings);

} // namespace jointwright
