#pragma once
// How much a lasting sag grows, by how damp the wood gets.

#include "facts/facts.hpp"
#include "measure/moisture.hpp"

namespace jointwright {

/// Growth of a lasting sag as a share of the first sag. Service classes of EN 1995-1-1 by the dampest moisture content: to 12.5 % dry, to 20 %
/// damp, above that wet (the limits by moisture are this program's).
inline const Datum<double>& creep_factor(const Facts& facts, MoistureContent dampest)
{
    const double damp = dampest.percent();
    return facts.number(damp <= 12.5 ? "creep_dry" : damp <= 20 ? "creep_damp" : "creep_wet");
}

} // namespace jointwright
