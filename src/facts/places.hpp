#pragma once
// Places whose outdoor air is known month by month: data/places.toml. Read when they are asked for.

#include "facts/facts.hpp"
#include "facts/room_months.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Mean outdoor air of the twelve months, January first.
using MonthlyAir = std::array<AirState, 12>;

struct PlaceRecord {
    std::string name;
    std::vector<std::string> aliases;
    MonthlyAir air;
    MonthlyMoisture moisture{}; ///< percent, mean of the daily equilibria
    Citation air_cite, moisture_cite;
};

/// All places, in the order of the file.
/// @throws BrokenData  the table is wrong
std::vector<PlaceRecord> all_places(const Facts& facts);

/// The place of that name or alias, forgiving as names of woods are; nothing when there is none.
std::optional<PlaceRecord> find_place(const Facts& facts, std::string_view name);

/// Up to `most` names of places nearest to one that was not found.
std::vector<std::string> suggest_places(const Facts& facts, std::string_view name, std::size_t most = 3);

} // namespace jointwright
