#pragma once
// How a result stands between joints that turn freely and joints that do not turn at all.

#include "checks/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string>

namespace jointwright {

/// One result with both bounds. SI doubles.
struct JointBounds {
    std::string name; ///< of the result among the finding's values: "deflection"
    double free = 0, stiff = 0;
    bool folds = false; ///< with free joints it would fold up, and `free` means nothing
    std::string unit;
    std::string stiff_words; ///< in the maker's units
};

/// Adds NAME_joints_free (left out where it would fold up) and NAME_joints_stiff to the values, and a step of working that says both.
void add_joint_bounds(const Prepared& prepared, Finding& finding, const JointBounds& bounds);

} // namespace jointwright
