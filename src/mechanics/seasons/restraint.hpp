#pragma once
// Two layers glued face to face that want to move by unlike amounts: what the glue and the wood must take.

#include "measure/quantity.hpp"

namespace jointwright {

/// One layer, seen in one direction of the glue face.
struct Layer {
    Stress modulus;       ///< in the direction considered: E_L along the grain, E_T or E_R across it
    Stress shear_modulus; ///< that goes with it: rolling G_RT across the grain, G_LR or G_LT along it
    Length thickness;     ///< real depth normal to the glue face
};

/// A glue face between two layers in one direction.
struct Restraint {
    Layer a, b;
    Length length;          ///< of the contact's side in the direction considered
    bool held_flat = false; ///< a frame or a second rail keeps the pair from bowing
    Length glue_thickness = metres(1e-4);
    Stress glue_shear_modulus = megapascals(300);
};

/// What a strain difference of 1 brings, linear in it; multiply by the strain.
struct RestraintAnswer {
    LineLoad force;                      ///< N(0), per metre of width, at mid-length
    LineLoad force_limit;                ///< N∞, of a very long contact
    Stress mean_a, mean_b;               ///< N(0)/d of each layer, d = min(t, max(0.4 ℓ, 20 mm))
    Length depth_a, depth_b;             ///< the d used
    Stress glue_shear;                   ///< mean over the end 25 mm (or half the length)
    Stress edge_peak;                    ///< N∞ β tanh(βℓ/2): singular in truth, shown, not judged
    Stress own_bending_a, own_bending_b; ///< E κ t/2 where the pair may bow; 0 held flat
    double beta;                         ///< 1/m
};

/// Shear lag with bending: forces and stresses for a strain difference of 1.
///
///     c = 1/(E_A t'_A) + 1/(E_B t'_B) + (t'_A + t'_B)²/(4 (D_A + D_B)),  D = E t'³/12,  t' = min(t, 0.4 ℓ); no last term when held flat
///     1/k = t'_A/(3 G_A) + t'_B/(3 G_B) + t_g/G_g,  β² = k c,  N(x) = (1/c) [1 − cosh βx/cosh(βℓ/2)]
///
/// All moduli and lengths above 0. Laws: the force grows with ℓ and tends to 1/c of its depths; exchanging the layers exchanges the answers.
/// Leaves out: edge singularity, curved glue lines, unlike contact shapes. Checked against plane finite elements of our own in
/// tests/mechanics/seasons/restraint_test.cpp. Source: mechanics of two bonded layers (Timoshenko 1925, Volkersen 1938).
RestraintAnswer restraint_of(const Restraint& restraint);

} // namespace jointwright
