#pragma once
// Two layers glued together with their grains parallel: how far the pair bows when they move by unlike amounts.

#include "measure/quantity.hpp"
#include "wood/distortion.hpp"

namespace jointwright {

/// One layer of a laminated pair, seen in one direction of the glue face.
struct BowLayer {
    Length thickness;  ///< normal to the glue face
    Stress modulus;    ///< in the direction considered: E_L along the grain, E_T or E_R across it
    double strain = 0; ///< free strain in that direction, positive when it swells [1]
};

/// Curvature of two bonded layers that are free to bow [1/m, positive hollow on the side of the first layer].
///
///     κ = 6 Δε (1 + m)² / (h [3 (1 + m)² + (1 + m n)(m² + 1/(m n))]),  m = t1/t2, n = E1/E2, h = t1 + t2, Δε = ε2 − ε1
///
/// Hollow on the layer that shrank more. Thicknesses and moduli above 0.
/// Laws: exchanging the layers turns the sign; m = 1, n = 1 gives 1.5 Δε/h; a layer much thinner or softer than the other bends nothing.
/// Leaves out: slip of the glue, relaxation, layers of unlike breadth, the cup of each layer by itself, ends and edges within
/// about one thickness. Source: Timoshenko 1925; checked in tests/published/bimetal_test.cpp against equilibrium of the two layers.
Curvature bow_curvature(const BowLayer& first, const BowLayer& second);

/// Rise of a bend in its middle over the straight line between its ends: κ ℓ²/8 [m, sign of the curvature].
/// Shallow bends: 1 % too little at a rise of ℓ/14.
Length rise_over(Curvature curvature, Length length);

} // namespace jointwright
