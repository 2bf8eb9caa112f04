#pragma once
// The air of a room through the year, worked out from the air outside.

#include "facts/places.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// Where the piece stands, with regard to the air outside.
enum class Shelter { heated, not_heated, outdoors };

/// "heated", "not heated", "outdoors".
std::string_view word_of(Shelter shelter);

/// What a heated room gains over the air outside, by the outdoor mean of the month.
struct MoistureGain {
    double full_kg_m3 = 0;                         ///< up to `full_below`
    Temperature full_below, none_above, heated_to; ///< falling evenly between the first two
};
MoistureGain usual_gain(const Facts& facts);

/// One month: the air where the piece stands, where it is known, and what wood settles at in it.
struct RoomMonth {
    std::optional<AirState> air;
    MoistureContent moisture;
};

struct RoomYear {
    std::array<RoomMonth, 12> months; ///< January first
    std::string source;               ///< readable: the place, how the room follows from it, the provenance
    bool in_frost = false;            ///< some month is colder than the equilibrium is known for

    /// The months with the least and the most moisture in equilibrium.
    const RoomMonth& driest() const;
    const RoomMonth& dampest() const;
};

/// Water vapour in air, saturated [kg/m³]. Magnus formula over water, −45 to 60 °C; ideal gas.
double saturated_vapour(Temperature temperature);

/// Some month outside is colder than `heated_to`.
bool ever_heated(const MonthlyAir& outside, const MoistureGain& gain);

/// The air outside brought to `heated_to`, or to its own mean if that is warmer, with the gain of the month; at most saturated.
AirState heated_air(const AirState& outside, const MoistureGain& gain);

/// The year in a shelter at a listed place. Outdoors and unheated the moisture is the mean of the daily equilibria.
RoomYear year_at(const Facts& facts, const PlaceRecord& place, Shelter shelter);

/// The same from twelve pairs of the maker's own, `named` in the source.
RoomYear year_of(const Facts& facts, const MonthlyAir& outside, Shelter shelter, const std::string& named);

} // namespace jointwright
