#pragma once
// Do hinges hold? The pull that turns the leaf off its post, its weight, and the screws in both leaves of every hinge.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// One finding for each pair of parts with hinges, as check `fastener`: what each hinge has to bear held against its screws in either part, by the rules of
/// screws; cannot-tell, naming what each hinge has to bear, where no screws are stated; fail where a leaf hangs on two lines and cannot turn.
std::vector<Finding> hinge_findings(const Prepared& prepared);

} // namespace jointwright
