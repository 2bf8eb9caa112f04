#include "bond/glue/glue_line.hpp"

#include "measure/write.hpp"
#include "wood/resistance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

double hankinson(double along, double across, double angle)
{
    const double s = std::sin(angle), c = std::cos(angle);
    return along * across / (along * s * s + across * c * c);
}

} // namespace

std::optional<GlueStrength> glue_strength(const Facts& facts, const WoodState& first, std::string_view first_name,
                                          const WoodState& second, std::string_view second_name, const GlueRecord* glue,
                                          GlueFace face, double grain_angle, Working* working)
{
    if (!first.shear || !second.shear) return std::nullopt;
    const bool first_weaker = first.shear->value <= second.shear->value;
    const Property<Stress>& weaker = first_weaker ? *first.shear : *second.shear;
    GlueStrength strength;
    strength.weaker_wood = std::string(first_weaker ? first_name : second_name);
    strength.estimated = weaker.estimated;
    strength.source = weaker.source;
    if (glue && glue->shear) strength.glue = glue->shear->value;
    if (face == GlueFace::end_grain) {
        strength.wood = strength.mean = pascals(0);
        return strength;
    }
    const Datum<double>& crossed = facts.number("crossed_grain_share");
    const double along = weaker.value.value();
    const double wood = hankinson(along, along * crossed.value, grain_angle);
    strength.wood = pascals(wood);
    strength.mean = strength.glue && *strength.glue < strength.wood ? *strength.glue : strength.wood;
    if (!working) return strength;

    working->push_back({fmt::format("Shear strength along the grain of the weaker wood, {} (mean)", strength.weaker_wood), "f0",
                        weaker.note, along, "Pa", weaker.source});
    working->push_back(
        {face == GlueFace::mitre ? "Shear strength of the wood at the angle between its grain and the cut of the mitre"
                                 : "Shear strength of the wood at the angle between the two grains",
         "f = f0 f90/(f0 sin²θ + f90 cos²θ), f90 = f0/3",
         fmt::format("θ = {}°", write_number(grain_angle * 180 / std::numbers::pi, 3)), wood, "Pa", crossed.cite.text()});
    if (strength.glue)
        working->push_back({fmt::format("Shear strength of the glue itself, {} (mean)", glue->name), "f_glue", "",
                            strength.glue->value(), "Pa", glue->shear->cite.text()});
    return strength;
}

std::optional<MitreStrength> mitre_strength(const Facts& facts, const WoodState& first, const WoodState& second,
                                            double first_tilt, double second_tilt)
{
    for (const WoodState* wood : {&first, &second})
        if (!wood->shear || !wood->tension_across || !wood->bending_strength) return std::nullopt;
    const auto torn = [](const WoodState& wood, double angle) {
        return hankinson(wood.bending_strength->value.value(), wood.tension_across->value.value(), angle);
    };
    // The cut lies at the rest of a right angle to the grain.
    const auto slid = [&](const WoodState& wood, double angle) {
        return shear_at_load_angle(facts, wood.shear->value, std::numbers::pi / 2 - angle).value();
    };
    const double torn_first = torn(first, first_tilt), torn_second = torn(second, second_tilt),
                 cut_first = slid(first, first_tilt), cut_second = slid(second, second_tilt);
    return MitreStrength{pascals(std::min(torn_first, torn_second)), pascals(std::min(cut_first, cut_second)),
                         torn_first <= torn_second, cut_first <= cut_second};
}

Stress shear_at_load_angle(const Facts& facts, Stress along, double load_angle)
{
    return pascals(hankinson(along.value(), along.value() * facts.number("crossed_grain_share").value, load_angle));
}

Volume twisting_capacity(Length a, Length b)
{
    const double x = in_metres(a) / 2, y = in_metres(b) / 2;
    if (x <= 0 || y <= 0) return cubic_metres(0);
    // Eight right triangles round the middle; for one with its foot at distance x and height y along it:
    // ∫ρ dA = x/6 [ y √(x² + y²) + x² asinh(y/x) ].
    const double r = std::hypot(x, y);
    const double one = x / 6 * (y * r + x * x * std::asinh(y / x));
    const double other = y / 6 * (x * r + y * y * std::asinh(x / y));
    return cubic_metres(4 * (one + other));
}

Datum<double> glue_variation(const Facts& facts) { return variation_of(facts, StrengthKind::shear); }

namespace {

/// f_05 by the kind of stress, and what a kind of load leaves of it.
Stress resistance_of(const Facts& facts, StrengthKind stress, DemandKind demand, LoadDuration duration, WoodKind kind,
                     Stress mean, std::string_view level)
{
    switch (demand) {
    case DemandKind::service: return service_resistance(facts, stress, kind, mean, duration);
    case DemandKind::durability: return lower_strength(facts, stress, mean) * lasting_share(facts, false, level).value;
    case DemandKind::hard_sitting:
    case DemandKind::proof: return proof_resistance(facts, stress, mean);
    }
    return service_resistance(facts, stress, kind, mean, duration);
}

} // namespace

Stress glue_service_resistance(const Facts& facts, WoodKind kind, Stress mean, LoadDuration duration)
{
    return service_resistance(facts, StrengthKind::shear, kind, mean, duration);
}

Stress glue_proof_resistance(const Facts& facts, Stress mean) { return proof_resistance(facts, StrengthKind::shear, mean); }

Stress glue_durability_resistance(const Facts& facts, Stress mean, std::string_view level)
{
    return lower_strength(facts, StrengthKind::shear, mean) * lasting_share(facts, false, level).value;
}

Stress glue_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, WoodKind kind, Stress mean,
                       std::string_view level)
{
    return resistance_of(facts, StrengthKind::shear, demand, duration, kind, mean, level);
}

Stress glue_tension_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, WoodKind kind, Stress mean,
                               std::string_view level)
{
    return resistance_of(facts, StrengthKind::tension_across, demand, duration, kind, mean, level);
}

} // namespace jointwright
