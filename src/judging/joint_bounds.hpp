#pragma once
// How a result stands between softer and stiffer joints, and on a floor without friction.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// One result with its bounds. SI doubles, on the same basis as the result itself.
struct JointBounds {
    std::string name;            ///< of the result among the finding's values: "deflection"
    double soft = 0, stiff = 0;  ///< with joints a third and three times as stiff as estimated
    std::optional<double> slick; ///< on a floor without friction
    std::string unit;
    std::string stiff_words; ///< in the maker's units
};

/// Adds NAME_joints_soft, NAME_joints_stiff and NAME_no_friction to the values, and steps of working that say them.
void add_joint_bounds(const Prepared& prepared, Finding& finding, const JointBounds& bounds);

/// Turns a pass into a warning where joints a third as stiff, or a floor without friction, would make it fail.
/// @param worst  the larger of these two results
/// @param fails  from which a result fails
/// @param words  what would happen then, without a full stop: "with joints a third as stiff it would sag 12 mm"
void warn_of_bounds(Finding& finding, double worst, double fails, const std::string& words);

} // namespace jointwright
