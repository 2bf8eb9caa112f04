#pragma once
// How a loaded piece stands, for loads that must not tip it. SI doubles: metres, newtons.

#include "mechanics/given/load_path.hpp"
#include "mechanics/loads/footing.hpp"
#include "piece/model/piece.hpp"

#include <array>
#include <vector>

namespace jointwright {

constexpr double kShortOfTipping = 0.9; // a push that would tip the piece is lessened to this share, as testers do

/// What weighs on the floor, where, and between which lines.
struct Stance {
    double weight = 0, floor = 1e30;
    std::array<double, 2> centre{};
    std::vector<PlanPoint> line; ///< round the places on which its feet stand in the sums
    /// Way from the centre of the weight to the line round the feet on one side, as far as a push that way is concerned: over a slanting
    /// edge of that line, as between three feet, it tips sooner than straight ahead.
    double base(std::size_t axis, bool far) const;
};

/// Of all loads that weigh, upright ones.
Stance stance_of(const Piece& piece, const std::vector<CopyLoad>& loads);

} // namespace jointwright
