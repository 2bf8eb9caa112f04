#pragma once
// What a finding tells of a judged joint beside its sentence. SI doubles.

#include "judging/finding.hpp"
#include "judging/joints/joint_use.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

/// Demands, resistances and means, by the names that reports keep.
std::vector<NamedValue> values_of_joint(const JointCapacity& capacity, const JointUse& use);

/// The steps of the strength, then of the demand and of what they are together.
Working working_of_joint(const Facts& facts, JointForm form, std::string_view level, const JointCapacity& capacity,
                         const JointDemand& demand, const JointUse& use, Working strength);

} // namespace jointwright
