#pragma once
// From mean strengths to resistances, and from utilisation to a verdict: kinds of demand are never mixed.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "wood/state.hpp"

#include <string>
#include <string_view>

namespace jointwright {

/// What kind of strength is used; each has its own divisor and scatter.
enum class StrengthKind { bending, shear, compression_along, tension_across };

/// How long a service load acts, relative to ten years; proof loads are short tests with rules of their own.
enum class LoadDuration { lasting, sitting, short_term };

/// What a load stands for, and so what it is held against. Every part and joint is asked for service and proof loads; members for hard sitting
/// besides, joints and glue lines for durability.
enum class DemandKind {
    service,      ///< met every day: against what is allowed for years
    hard_sitting, ///< once in a while, as an impact: the lower strength as impacts raise it
    proof,        ///< a furniture test, ten times: the lower strength with a little off
    durability,   ///< a furniture test by the ten thousand: the share of the lower strength that lasts them
};
constexpr std::size_t kDemandKinds = 4;
std::string_view name_of(DemandKind kind); ///< "proof load"
/// True when parts are held against it; durability wears joints, not clear wood.
constexpr bool asks_members(DemandKind kind) { return kind != DemandKind::durability; }
/// True when joints and glue lines are held against it.
constexpr bool asks_joints(DemandKind kind) { return kind != DemandKind::hard_sitting; }

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
/// Resistance to someone sitting down hard: f_05 k_grain 1.25.
Stress impact_resistance(const Facts& facts, StrengthKind kind, Stress mean);
/// What of a kind of load wood may bear; `duration` counts for service loads only. Durability is not asked of wood: as a proof load.
Stress member_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, StrengthKind kind, WoodKind wood,
                         Stress mean);
/// How that comes from f_05, for the working: "f05 k_dur/k".
std::string member_formula(DemandKind demand);
/// Share of the lower strength that lasts the repeats of a durability test.
/// @param rectangular_tenon  else another joint, or a glue line
/// @param level              "home", "contract", "severe"
Datum<double> lasting_share(const Facts& facts, bool rectangular_tenon, std::string_view level);
/// Factor for bending deeper than 51 mm: (51 mm / d)^(1/9), at most 1.
double depth_factor(Length depth);
/// Highest utilisation that still only warns: service k/1.6, proof and durability 1.15, hard sitting up to the mean strength.
double service_warn_limit(const Facts& facts, StrengthKind kind, WoodKind wood);
double proof_warn_limit(const Facts& facts);
double impact_warn_limit(const Facts& facts, StrengthKind kind);
double warn_limit(const Facts& facts, DemandKind demand, StrengthKind kind, WoodKind wood);

} // namespace jointwright
