#pragma once
// Dowels, screws, bolts or pegs of one joint that stand too near each other; for `let-ins`.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// One finding for each pair of parts whose row is crowded, in the order of the contacts.
///
/// Fails where two bores run into one another: there is no wood between them to hold either. Dowels, bolts and pegs warn where less wood
/// is left than beside a mortise (the larger of `wall_least` and half their diameter); for screws `fastener` has distances of its own.
std::vector<Finding> crowded_rows(const Prepared& prepared);

} // namespace jointwright
