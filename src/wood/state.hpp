#pragma once
// Strength and stiffness of one wood at one moisture content: means, as the resistance rules and the mechanics need them.

#include "facts/facts.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// A property at the moisture content asked for.
template <class Q>
struct Property {
    Q value{};
    bool estimated = false; ///< from specific gravity or a relative, not from this wood's own row
    std::string source;     ///< readable, with table and provenance
    std::string note;       ///< how it was adjusted, or empty
};

/// Own test values of a design; used as given at any moisture.
struct OwnStrength {
    std::optional<Stress> modulus;       ///< free of shear
    std::optional<Stress> shear_modulus; ///< along the grain, both planes
    std::optional<Density> density;
    std::optional<Stress> bending_strength, shear_strength, tension_across;
    bool any() const { return modulus || shear_modulus || density || bending_strength || shear_strength || tension_across; }
};

/// One wood at one moisture content. Empty: neither tabled nor to be estimated.
struct WoodState {
    MoistureContent moisture;
    WoodKind kind = WoodKind::hardwood;
    std::optional<Property<Stress>> modulus_tabled; ///< with shear deflection in it: for bending without a shear term
    std::optional<Property<Stress>> modulus_along;  ///< E_L = 1.10 × tabled: where shear is added apart
    std::optional<Property<Stress>> modulus_tangential, modulus_radial;
    std::optional<Property<Stress>> shear_modulus_lr, shear_modulus_lt;
    std::optional<Property<Stress>> shear_modulus_rt; ///< rolling
    std::optional<Property<Stress>> bending_strength, shear, tension_across, compression_along, compression_across;
    std::optional<Property<double>> specific_gravity; ///< at this moisture
    std::optional<Property<Density>> density;         ///< with its water
};

/// Properties at a moisture content.
///
/// P_M = P_12 (P_12/P_g)^((12 − M)/(M_p − 12)) for bending strength, modulus and compression along, M capped at M_p; shear never above its 12 %
/// value; tension across: the 12 % value to 12 %, above it the lower of green and 12 %. Compression across as shear.
/// Missing values are estimated from specific gravity (Wood Handbook table 5-11) and marked; elastic ratios: own, else of the named
/// relative, else the median of the kind, marked. G_RT missing: 0.35 E_T hardwood, 0.17 E_T softwood.
/// `wood` may be nullptr when own values alone describe the wood; its compression along the grain is then estimated by the same relations from
/// the bending strength, or from a density that says less.
/// Sources: Wood Handbook eq. 5-3, tables 5-1, 5-3, 5-5, 5-11, 5-13.
WoodState wood_state(const Facts& facts, const WoodRecord* wood, const OwnStrength& own, MoistureContent moisture);

} // namespace jointwright
