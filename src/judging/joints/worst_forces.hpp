#pragma once
// The worst that the solved frame asks of one joint: of every kind of load case those in which its force or its moment is largest in some way.

#include "mechanics/prepared.hpp"

#include <functional>
#include <vector>

namespace jointwright {

/// How hard a joint is used in some way: larger is worse.
using JointMeasure = std::function<double(const JointForce&)>;

/// Forces of a joint in the cases that may govern: for lasting, sitting, passing, proof and durability loads each, the largest by every measure; each case once,
/// in the order of the cases. Cases in which something comes away are left out. Empty for a contact without a joint.
std::vector<const JointForce*> worst_joint_forces(const Prepared& prepared, std::size_t contact,
                                                  const std::vector<JointMeasure>& measures);

} // namespace jointwright
