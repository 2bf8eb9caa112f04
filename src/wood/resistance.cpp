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

std::string_view name_of(DemandKind kind)
{
    switch (kind) {
    case DemandKind::service: return "service load";
    case DemandKind::hard_sitting: return "sitting down hard";
    case DemandKind::proof: return "proof load";
    case DemandKind::durability: return "durability load";
    }
    return "service load";
}

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

Stress impact_resistance(const Facts& facts, StrengthKind kind, Stress mean)
{
    return lower_strength(facts, kind, mean) * facts.number("impact_factor").value;
}

Stress member_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, StrengthKind kind, WoodKind wood,
                         Stress mean)
{
    switch (demand) {
    case DemandKind::service: return service_resistance(facts, kind, wood, mean, duration);
    case DemandKind::hard_sitting: return impact_resistance(facts, kind, mean);
    case DemandKind::proof:
    case DemandKind::durability: return proof_resistance(facts, kind, mean);
    }
    return service_resistance(facts, kind, wood, mean, duration);
}

std::string member_formula(DemandKind demand)
{
    switch (demand) {
    case DemandKind::service: return "f05 k_dur/k";
    case DemandKind::hard_sitting: return "f05 × 1.25";
    case DemandKind::proof:
    case DemandKind::durability: return "f05/1.15";
    }
    return "f05 k_dur/k";
}

Datum<double> lasting_share(const Facts& facts, bool rectangular_tenon, std::string_view level)
{
    return facts.number((rectangular_tenon ? "lasting_share_tenon_" : "lasting_share_") + std::string(level));
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

double impact_warn_limit(const Facts& facts, StrengthKind kind)
{
    const Stress unit = pascals(1);
    return std::max(1.0, unit.value() / impact_resistance(facts, kind, unit).value());
}

double warn_limit(const Facts& facts, DemandKind demand, StrengthKind kind, WoodKind wood)
{
    switch (demand) {
    case DemandKind::service: return service_warn_limit(facts, kind, wood);
    case DemandKind::hard_sitting: return impact_warn_limit(facts, kind);
    case DemandKind::proof:
    case DemandKind::durability: return proof_warn_limit(facts);
    }
    return service_warn_limit(facts, kind, wood);
}

} // namespace jointwright
