#pragma once
// [room] by its place: the air outside month by month, listed or the maker's own, and how the room is sheltered from it.

#include "piece/model/piece.hpp"
#include "piece/read/read_values.hpp"

namespace jointwright {

/// The keys that describe a room by its place.
struct PlaceKeys {
    const DesignValue* place = nullptr;   ///< "Harbin"
    const DesignValue* months = nullptr;  ///< twelve { temperature, humidity } of the air outside, January first
    const DesignValue* shelter = nullptr; ///< heated, not heated, outdoors
    bool any() const { return place || months || shelter; }
};

/// Fills name, year, seasons and `outdoors` of a room. Reports what does not fit.
void read_place(Reading& reading, const PlaceKeys& keys, Room& room);

/// Twelve months of a room of data/rooms.toml, where it has them.
std::optional<RoomYear> year_of_listed(const Facts& facts, const RoomRecord& record);

/// Told once for a room in which frost was taken as ice-free air.
constexpr std::string_view kFrostWords =
    "Air colder than −1 °C is taken as ice-free air at −1 °C for the moisture that wood settles at.";

} // namespace jointwright
