#pragma once
// Every check on every combination of the woods and ring cuts that a design leaves open.

#include "facts/facts.hpp"
#include "judging/combination_findings.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// A run for each combination, in their order; never empty. The first keeps its whole solution, the others what a report still asks for: woods,
/// masses, assumptions, screws on the wall.
std::vector<CombinationFindings> run_checks(const LaidOut& laid, const Facts& facts, LengthUnit units);

/// The findings alone, sorted, as a report of that piece has them: for sweeps.
std::vector<Finding> findings_of(const LaidOut& laid, const Facts& facts, LengthUnit units);

} // namespace jointwright
