#include "wood/moisture_balance.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

/// Coefficients of the sorption model at a temperature in °C, in the letters of the source.
struct Sorption {
    double w, k, k1, k2;
};

Sorption sorption_at(double t)
{
    return {349 + 1.29 * t + 0.0135 * t * t, 0.805 + 0.000736 * t - 0.00000273 * t * t, 6.27 - 0.00938 * t - 0.000303 * t * t,
            1.91 + 0.0407 * t - 0.000293 * t * t};
}

} // namespace

MoistureContent equilibrium_moisture(RelativeHumidity humidity, Temperature temperature)
{
    const Sorption s = sorption_at(temperature.celsius());
    const double kh = s.k * humidity.fraction();
    const double emc =
        1800 / s.w * (kh / (1 - kh) + (s.k1 * kh + 2 * s.k1 * s.k2 * kh * kh) / (1 + s.k1 * kh + s.k1 * s.k2 * kh * kh));
    return MoistureContent::percent(emc);
}

Working equilibrium_working(const Facts& facts, RelativeHumidity humidity, Temperature temperature)
{
    const Sorption s = sorption_at(temperature.celsius());
    Working w;
    w.push_back({"Moisture content at which wood settles in this air",
                 "EMC = 1800/W [K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)]",
                 fmt::format("h = {}, T = {} °C, W = {}, K = {}, K1 = {}, K2 = {}", write_number(humidity.fraction(), 4),
                             write_number(temperature.celsius(), 4), write_number(s.w, 4), write_number(s.k, 4),
                             write_number(s.k1, 4), write_number(s.k2, 4)),
                 equilibrium_moisture(humidity, temperature).percent(), "%",
                 facts.cite("wood-handbook-2010", "eq. 4-5") + "; " + facts.source("fpl-rn-0268")});
    return w;
}

AirState ice_free(const AirState& air) { return {air.humidity, std::max(air.temperature, kIceFree)}; }

MoistureContent moisture_in(const Season& season)
{
    if (const auto* moisture = std::get_if<MoistureContent>(&season)) return *moisture;
    const AirState air = ice_free(std::get<AirState>(season));
    return equilibrium_moisture(air.humidity, air.temperature);
}

} // namespace jointwright
