#pragma once
// How a free board changes shape as its moisture changes: cup, and the diamond that a rift square turns into.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "wood/movement.hpp"

#include <boost/units/systems/si/wavenumber.hpp>

namespace jointwright {

using Curvature = Quantity<si::wavenumber>; ///< 1/m, one over the radius of a bend
inline Curvature per_metre(double v) { return Curvature::from_value(v); }

/// The end grain of a board: how far from the pith it was cut and how its rings stand.
struct EndGrain {
    Length width;       ///< of the wide face
    Length ring_radius; ///< of the growth rings at the middle of the width
    Angle rings;        ///< between the rings and the wide face at the middle of the width, 0 flat-sawn to 90°
};

/// Free strains around and across the growth rings, positive when the wood swells [1].
struct RingStrain {
    double tangential = 0, radial = 0;
};

/// Shape of a board's wide face after a change of moisture.
struct Cup {
    Length depth;            ///< from the straight line over both edges to the face, positive hollow on the bark side
    double width_strain = 0; ///< change of the straight distance from edge to edge over the width [1]
};

/// Cup of a free board with round rings [m, positive hollow on the bark side].
///
///     (ρ, θ) → (ρ (1 + ε_R), θ (1 + ε_T)/(1 + ε_R)),  ρ and θ counted from the pith
///
/// Exact for uniform strains in polar directions, which fit together without stress; any width, any ring angle.
/// @param grain  width and radius above 0; a board with upright rings should not reach over the pith (radius under half its width)
/// Laws: 0 when both strains agree and for upright rings; the sign turns with that of ε_T − ε_R.
/// Leaves out: stiffness of a part that is held, unlike moisture of the two faces, rings that are not round, wood from
/// round the pith. Derived from mechanics; checked in tests/published/distortion_test.cpp against rings followed step by step.
Cup cup_of(const EndGrain& grain, const RingStrain& strain);

/// Cup by the curvature at mid-width alone: (ε_R − ε_T) w² cos³φ/(4 r) [m, positive hollow on the bark side].
/// Small strains; within 4 % of cup_of for flat-sawn boards up to w = 0.7 r, too much beyond.
Length cup_by_curvature(const EndGrain& grain, const RingStrain& strain);

/// Free strains around and across the rings for a change of moisture.
RingStrain ring_strain(const MovementLaw& law, MoistureContent from, MoistureContent to);
/// The steps behind ring_strain: both coefficients and both strains, with their sources.
Working ring_strain_working(const Facts& facts, const MovementLaw& law, MoistureContent from, MoistureContent to);

/// Angle by which the corners of a square section leave 90° [rad]: 2 (ε_T − ε_R) sinφ cosφ. Negative when it dries.
/// Small angles. Largest at 45° (rift), 0 for flat and quarter-sawn. Plane strain transformation.
Angle shear_of_section(Angle rings, const RingStrain& strain);

} // namespace jointwright
