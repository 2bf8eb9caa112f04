#pragma once
// Equilibrium moisture content of wood in air.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/moisture.hpp"

namespace jointwright {

/// Moisture content at which wood settles in steady air [percent of oven-dry mass].
/// Hailwood-Horrobin form with the Celsius coefficients of FPL-RN-0268; not species-specific, no hysteresis, about ±1 point for one board.
/// Humidity 0 to 100 %, temperature −1.1 to 100 °C is the table's range; callers refuse what lies outside.
/// Source: Wood Handbook (GTR-190) eq. 4-5, Simpson 1998 FPL-RN-0268.
MoistureContent equilibrium_moisture(RelativeHumidity humidity, Temperature temperature);
Working equilibrium_working(const Facts& facts, RelativeHumidity humidity, Temperature temperature);

/// Coldest air that the equilibrium is reckoned for; the equation starts at 30 °F.
inline constexpr Temperature kIceFree = Temperature::celsius(-1);

/// The same air, no colder than the equilibrium is known for: wood in frost is taken to settle as in ice-free air at −1 °C.
AirState ice_free(const AirState& air);

/// The moisture content that a season of a room brings: given, or the equilibrium with its air, which is taken no colder than −1 °C.
MoistureContent moisture_in(const Season& season);

} // namespace jointwright
