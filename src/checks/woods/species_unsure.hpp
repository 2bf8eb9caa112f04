#pragma once
// The one check that looks at all combinations of woods together.

#include "judging/combination_findings.hpp"

#include <vector>

namespace jointwright {

/// What hangs on not knowing the wood: one finding for each [[wood]] with a list of species.
std::vector<Finding> check_species_unsure(const Piece& piece, const std::vector<CombinationFindings>& runs);

} // namespace jointwright
