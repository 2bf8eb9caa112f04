#pragma once
// Rooms whose air is known month by month.

#include "facts/facts.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace jointwright {

/// Moisture content in equilibrium with the air of each month, January first [percent of oven-dry mass].
using MonthlyMoisture = std::array<double, 12>;

/// The months of a room of data/rooms.toml; nothing when there is no such room or its entry has none. The source is the room's own.
/// @throws BrokenData  the entry has `months`, but not twelve numbers from 0 to 30
std::optional<MonthlyMoisture> months_of_room(const Facts& facts, std::string_view room);

} // namespace jointwright
