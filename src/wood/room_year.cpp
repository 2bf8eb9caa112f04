#include "wood/room_year.hpp"

#include "measure/write.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kVapourGas = 461.5; // J/(kg K), gas constant of water vapour
constexpr double kZeroCelsius = 273.15;

/// Full up to one temperature, none from another, falling evenly between.
double gain_at(Temperature outside, const MoistureGain& gain)
{
    const double span = gain.none_above.celsius() - gain.full_below.celsius();
    const double share = (gain.none_above.celsius() - outside.celsius()) / span;
    return gain.full_kg_m3 * std::clamp(share, 0.0, 1.0);
}

bool drier(const RoomMonth& a, const RoomMonth& b) { return a.moisture < b.moisture; }

std::string heated_words(const Facts& facts, const MoistureGain& gain)
{
    const Datum<double>& full = facts.number("indoor_moisture_gain");
    return fmt::format(
        "indoors worked out: heated to {} °C, {} g/m3 of moisture gained while it is below {} °C outside, none from {} °C ({})",
        write_number(gain.heated_to.celsius(), 3), write_number(gain.full_kg_m3 * 1e3, 3),
        write_number(gain.full_below.celsius(), 3), write_number(gain.none_above.celsius(), 3), full.cite.text());
}

void settle(RoomYear& year, std::size_t m, const AirState& air)
{
    const AirState reckoned = ice_free(air);
    if (reckoned.temperature > air.temperature) year.in_frost = true;
    year.months[m] = {air, equilibrium_moisture(reckoned.humidity, reckoned.temperature)};
}

} // namespace

bool ever_heated(const MonthlyAir& outside, const MoistureGain& gain)
{
    return std::any_of(outside.begin(), outside.end(), [&](const AirState& air) { return air.temperature < gain.heated_to; });
}

std::string_view word_of(Shelter shelter)
{
    switch (shelter) {
    case Shelter::heated: return "heated";
    case Shelter::not_heated: return "not heated";
    case Shelter::outdoors: return "outdoors";
    }
    return "heated";
}

MoistureGain usual_gain(const Facts& facts)
{
    const auto celsius = [&](std::string_view key) { return Temperature::celsius(facts.number(key).value); };
    return {facts.number("indoor_moisture_gain").value, celsius("indoor_gain_full_below"), celsius("indoor_gain_none_above"),
            celsius("heated_room_temperature")};
}

const RoomMonth& RoomYear::driest() const { return *std::min_element(months.begin(), months.end(), drier); }
const RoomMonth& RoomYear::dampest() const { return *std::max_element(months.begin(), months.end(), drier); }

double saturated_vapour(Temperature temperature)
{
    const double t = temperature.celsius();
    const double pressure = 610.78 * std::exp(17.27 * t / (t + 237.3)); // Pa
    return pressure / (kVapourGas * (t + kZeroCelsius));
}

AirState heated_air(const AirState& outside, const MoistureGain& gain)
{
    const Temperature inside = std::max(gain.heated_to, outside.temperature);
    const double vapour =
        outside.humidity.fraction() * saturated_vapour(outside.temperature) + gain_at(outside.temperature, gain);
    return {RelativeHumidity::percent(std::min(100.0, 100 * vapour / saturated_vapour(inside))), inside};
}

RoomYear year_of(const Facts& facts, const MonthlyAir& outside, Shelter shelter, const std::string& named)
{
    RoomYear year;
    const MoistureGain gain = usual_gain(facts);
    for (std::size_t m = 0; m < outside.size(); ++m)
        settle(year, m, shelter == Shelter::heated ? heated_air(outside[m], gain) : outside[m]);
    year.source = named;
    if (shelter == Shelter::heated)
        year.source +=
            "; " + (ever_heated(outside, gain) ? heated_words(facts, gain)
                                               : "never cold enough to be heated: the air indoors is taken as that outside");
    year.source += "; moisture of the wood: " + facts.cite("wood-handbook-2010", "eq. 4-5");
    return year;
}

RoomYear year_at(const Facts& facts, const PlaceRecord& place, Shelter shelter)
{
    RoomYear year = year_of(facts, place.air, shelter, fmt::format("air outside: {}", place.air_cite.text()));
    if (shelter == Shelter::heated) return year;
    for (std::size_t m = 0; m < year.months.size(); ++m) year.months[m].moisture = MoistureContent::percent(place.moisture[m]);
    year.source = fmt::format("air outside: {}; moisture of the wood: {}", place.air_cite.text(), place.moisture_cite.text());
    return year;
}

} // namespace jointwright
