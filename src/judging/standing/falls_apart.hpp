#pragma once
// What would let a piece fall over or come apart though every part touches another; for `stands`.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <vector>

namespace jointwright {

/// A seat or table whose feet stand in one line and whose soles are too narrow for who sits or leans on its edge.
std::optional<Finding> falls_over(const Prepared& prepared);

/// Dry tenons and housings that nothing but friction keeps from being drawn out: a warning each; a failure where a part that people bear on hangs on
/// such joints alone.
std::vector<Finding> comes_apart(const Prepared& prepared);

} // namespace jointwright
