#pragma once
// Gaps of a row of like parts, found from the drawing: between neighbours, and between the last one and what stands beside it. SI doubles: metres.

#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// The clear space between two copies along an axis.
struct RowGap {
    std::size_t before = 0, after = 0; ///< the copy at the lower and at the upper side
    double made = 0;
};

/// Gaps between copies of one part that stand in line along an axis, under 100 mm, with nothing in them. Copies drawn touching side by side
/// and not joined are a gap of 0.
std::vector<RowGap> gaps_in_row(const Prepared& prepared, std::size_t part, Axis along);

/// Gaps of up to 25 mm between the copies of a row and the nearest copy of another part beside them along the same axis, such as a leg
/// that rises beside the last slat. The two overlap in both other directions; joined or touching ones are none, turned ones are left out.
std::vector<RowGap> gaps_beside_row(const Prepared& prepared, std::size_t part, Axis along);

} // namespace jointwright
