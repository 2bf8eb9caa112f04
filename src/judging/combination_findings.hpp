#pragma once
// What the checks found for one combination of the woods and ring cuts that a design leaves open.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <memory>
#include <vector>

namespace jointwright {

struct CombinationFindings {
    std::shared_ptr<const Prepared> prepared;
    std::vector<Finding> findings;
};

} // namespace jointwright
