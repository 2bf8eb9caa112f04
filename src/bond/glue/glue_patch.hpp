#pragma once
// A rectangular glue face under three forces and three moments, and what weakens it: clearance, peeling, the ends of long laps.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"

namespace jointwright {

/// A rectangle of glued side grain with sides a and b, or several alike that share everything asked of them.
struct GluePatch {
    Length a{}, b{};
    double faces = 1; ///< by area, so that a face that is no full rectangle, or several unlike ones, count as what they are
    Area area() const { return a * b * faces; }
};

/// What acts on a patch, at its middle.
struct PatchForces {
    Force along_a{}, along_b{}; ///< in the plane of the face
    Force normal{};             ///< positive pulls the parts apart
    Moment twist{};             ///< about the normal of the face
    Moment bend_a{}, bend_b{};  ///< about the a and the b axis; either sign opens one edge
};

/// How a patch bears what acts on it.
struct PatchUse {
    Stress direct{};   ///< F/A
    Stress twisting{}; ///< T/∫ρ dA: the uniform stress that would balance the twist
    Stress shear{};    ///< √(direct² + twisting²), the reported shear stress
    Stress tension{};  ///< largest, from the pull and both bendings; 0 where all is pressed
    Stress
        corner{}; ///< elastic stress T ρ/J_p in the corners, larger than `twisting`: shown, never judged against a mean strength
    double use = 0; ///< (F/(f_v A))² + (T/T_u)² + (σ_t/f_t)² = use²; above 1 it gives way
};

/// Utilisation of a glue patch [1, 0 or more].
///
///     use² = (F/(f_v A))² + (T/T_u)² + (σ_t/f_t)²,  T_u = f_v ∫ρ dA,  σ_t = N/A + 6 M_a/(a b²) + 6 M_b/(b a²)
///
/// The order of the axes, the signs of forces in the plane, of the twist and of the bendings change nothing; twice the size at equal stress
/// bears four times the force and eight times the twist. A strength of 0 (end grain) that is asked for anything is used without end (infinite).
/// Leaves out: peaks at the ends of long laps (lap_end_peak), peeling off from one edge as a flap (peel_stress), pressing.
/// Derived from mechanics; ∫ρ dA integrated in tests/published/glue_patch_test.cpp. The interaction is an engineering estimate.
PatchUse patch_use(const GluePatch& patch, const PatchForces& forces, Stress shear_strength, Stress tension_strength,
                   Working* working = nullptr);

/// Twist at which a patch gives way with the same stress all over: T_u = f ∫ρ dA, all faces [N m].
Moment twist_capacity(const GluePatch& patch, Stress shear_strength);
/// Twist at which the elastic stress in a corner reaches the strength: f J_p/ρ = f n a b √(a² + b²)/6 [N m]. For comparison only.
Moment elastic_corner_twist(const GluePatch& patch, Stress shear_strength);

/// Largest tension where a part is lifted by its edge [Pa, positive]: F/A + 6 F e/(b a²), `arm` e from the middle along a.
/// Checked apart from the rest because it fails first: a slat pulled off by its edge tears at 1/4 of the pull that its middle would bear.
Stress peel_stress(const GluePatch& patch, Force lift, Length arm);

/// One of the two layers of a lap.
struct LapLayer {
    Stress modulus{}, shear_modulus{}; ///< in the direction of the load
    Length thickness{};
};
/// Shear stress at the ends of a lap over its mean [1, at least 1]: (βℓ/2) coth(βℓ/2), β² = k (1/(E₁t₁) + 1/(E₂t₂)),
/// 1/k = t₁/(3G₁) + t₂/(3G₂) + t_g/G_g: the layers' own shear counts, glue alone would give peaks that no lap shows.
/// Both layers alike in stiffness; of unlike ones the softer side's peak is higher. Source: Volkersen 1938. Shown, not multiplied onto the strength.
double lap_end_peak(const Facts& facts, Length length, const LapLayer& first, const LapLayer& second);
/// u coth u, 1 at 0.
double coth_peak(double u);

/// Share of a glue line's strength that is left with a clearance on each side [1, from 1 down to 0, never growing].
/// Full to what the glue bridges, then straight down to nothing. No published curve was found: an engineering estimate.
double fit_share(const Facts& facts, Length clearance, bool gap_filling);

} // namespace jointwright
