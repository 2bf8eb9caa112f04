#pragma once
// Doors, gates and drawers that hang on nothing, or are drawn standing on their edge: how are they held?

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// What is told of such groups of parts, as check `stands`: one question for each; cannot-tell, since what holds them is not known.
struct HungFindings {
    std::vector<Finding> findings;
    std::vector<bool> told; ///< by copy: told with its group
};
HungFindings hung_findings(const Prepared& prepared);

} // namespace jointwright
