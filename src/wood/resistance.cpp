#include "wood/resistance.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace jointwright {

namespace {

std::string name_of(StrengthKind kind)
{
    switch (kind) {
    case StrengthKind::bending: return "bending";
    case StrengthKind::shear: return "shear";
    case StrengthKind::compression_along: return "compression_along";
    case StrengthKind::tension_across: return "tension_across";
    }
    return "bending";
}

} // namespace

Datum<double> variation_of(const Facts& facts, StrengthKind kind) { return facts.number("variation_" + name_of(kind)); }

Stress lower_strength(const Facts& facts, StrengthKind kind, Stress mean)
{
    return mean * (1 - facts.number("lower_tail").value * variation_of(facts, kind).value);
}

Datum<double> duration_and_safety_divisor(const Facts& facts, StrengthKind kind, WoodKind wood)
{
    return facts.number("divisor_" + name_of(kind) + (wood == WoodKind::hardwood ? "_hardwood" : "_softwood"));
}

Datum<double> duration_factor(const Facts& facts, LoadDuration duration)
{
    switch (duration) {
    case LoadDuration::lasting: return facts.number("duration_lasting");
    case LoadDuration::sitting: return facts.number("duration_sitting");
    case LoadDuration::short_term: return facts.number("duration_short");
    }
    return facts.number("duration_lasting");
}

Stress service_resistance(const Facts& facts, StrengthKind kind, WoodKind wood, Stress mean, LoadDuration duration)
{
    return lower_strength(facts, kind, mean) *
           (duration_factor(facts, duration).value / duration_and_safety_divisor(facts, kind, wood).value);
}

Stress proof_resistance(const Facts& facts, StrengthKind kind, Stress mean)
{
    return lower_strength(facts, kind, mean) / facts.number("proof_divisor").value;
}

double depth_factor(Length depth)
{
    constexpr double reference = 0.051; // m: ASTM D245, 2 in (from memory)
    if (in_metres(depth) <= reference) return 1;
    return std::pow(reference / in_metres(depth), 1.0 / 9);
}

double service_warn_limit(const Facts& facts, StrengthKind kind, WoodKind wood)
{
    return std::max(1.0, duration_and_safety_divisor(facts, kind, wood).value / facts.number("service_warn_divisor").value);
}

double proof_warn_limit(const Facts& facts) { return facts.number("proof_divisor").value; }

} // namespace jointwright
