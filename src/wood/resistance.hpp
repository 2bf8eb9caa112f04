#pragma once
// From mean strengths to resistances, and from utilisation to a verdict: the two kinds of demand are never mixed.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "wood/state.hpp"

namespace jointwright {

/// What kind of strength is used; each has its own divisor and scatter.
enum class StrengthKind { bending, shear, compression_along, tension_across };

/// How long a service load acts, relative to ten years; proof loads are short tests with rules of their own.
enum class LoadDuration { lasting, sitting, short_term };

/// Coefficient of variation of the property, Wood Handbook table 5-6 (tension across: estimated).
Datum<double> variation_of(const Facts& facts, StrengthKind kind);
/// Lower strength f_05 = mean (1 − 1.645 V).
Stress lower_strength(const Facts& facts, StrengthKind kind, Stress mean);
/// ASTM D245 divisor k: ten years and safety inside.
Datum<double> duration_and_safety_divisor(const Facts& facts, StrengthKind kind, WoodKind wood);
Datum<double> duration_factor(const Facts& facts, LoadDuration duration);
/// Allowable stress under service loads: f_05 k_grain k_dur / k.
Stress service_resistance(const Facts& facts, StrengthKind kind, WoodKind wood, Stress mean, LoadDuration duration);
/// Resistance under proof loads: f_05 k_grain / 1.15.
Stress proof_resistance(const Facts& facts, StrengthKind kind, Stress mean);
/// Factor for bending deeper than 51 mm: (51 mm / d)^(1/9), at most 1.
double depth_factor(Length depth);
/// Highest utilisation that still only warns: service k/1.6, proof 1.15.
double service_warn_limit(const Facts& facts, StrengthKind kind, WoodKind wood);
double proof_warn_limit(const Facts& facts);

} // namespace jointwright
