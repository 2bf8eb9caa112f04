#pragma once
// How flat a part must stay, and words for its seasons: what the checks of boards that change shape share.

#include "mechanics/prepared.hpp"

namespace jointwright {

/// Cup or bow across a part that stays unnoticed: tighter for what a table carries on and for lone panels.
const Datum<double>& flatness_limit(const Prepared& prepared, std::size_t part);

/// The season in which more happens, and how much.
struct WorseSeason {
    double amount = 0; ///< the larger of the two, as given
    bool dry = true;
    MoistureContent moisture;
    /// "at the driest (5.4 %)".
    std::string words() const;
};
/// Of two amounts, both counted positive, the larger.
WorseSeason worse_season(const PartState& state, double driest, double dampest);

} // namespace jointwright
