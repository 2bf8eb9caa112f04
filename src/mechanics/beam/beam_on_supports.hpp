#pragma once
// A straight beam on any number of supports, with overhangs, taper and notches: what `beam` solves when the closed forms end.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "mechanics/beam/simple_beam.hpp"

#include <vector>

namespace jointwright {

/// How the beam is held where its span begins (left) and ends (right).
enum class BeamEnds {
    pinned,    ///< rests on both, free to turn
    fixed,     ///< built in at both
    propped,   ///< built in at the left, rests at the right
    cantilever ///< built in at the left, nothing at the right
};

/// A recess cut square across the beam.
struct BeamNotch {
    bool from_top = true;
    Length middle{}; ///< from the left support
    Length width{}, depth{};
};

/// A force at a place, or spread evenly from one place to another. Places from the left support; negative: left of it.
struct PlacedLoad {
    Force force{};
    Length from{}, to{};
};

/// All places are measured from the left support, where the span begins.
struct BeamOnSupports {
    Length span{};                            ///< between the outer supports; of a cantilever its free length
    Length overhang_left{}, overhang_right{}; ///< beyond the outer supports
    std::vector<Length> inner_supports;       ///< within the span, rising
    BeamEnds ends = BeamEnds::pinned;
    Length width{}, depth{};         ///< of the section; `depth` is upright. At the left end where the beam tapers
    Length far_width{}, far_depth{}; ///< at the right end; equal to the others without taper
    std::vector<BeamNotch> notches;
    Stress modulus_along{}; ///< free of shear
    Stress shear_modulus{};
};

/// Values along the beam, for a drawing. SI doubles; `at` from the left support, two entries wherever a value jumps.
struct BeamCurves {
    std::vector<double> at, sag, moment, shear; ///< sag positive down; moment positive where the beam sags (stretched below)
};

struct SupportedBeamAnswer {
    Length deflection{}, deflection_at{}; ///< the largest, positive down, and its place
    Length bay{};                         ///< the length between supports, or of the overhang, that sags so
    double span_ratio = 0;                ///< bay over deflection; 0 without deflection
    Stress bending_stress{}, shear_stress{};
    Length bending_at{}, shear_at{}; ///< where those stresses are largest
    Moment moment{};                 ///< the largest by size, with its sign
    Force shear{};                   ///< the largest by size, with its sign
    Length moment_at{}, shear_force_at{};
    std::vector<Length> supports;       ///< places, from the left
    std::vector<Force> reactions;       ///< upwards, in that order
    bool cut_on_stretched_side = false; ///< a notch lies where its side is stretched
    BeamCurves curves;
};

/// Deflection, forces and stresses of a beam on supports.
///
/// Timoshenko beam elements (exact between nodes for a straight section; a taper is a row of at least 240 of them, each with the
/// section of its middle: a relative error of about h²(d'/d)²/2, h their length). Notches: the net section, over the whole row where the teeth between notches of one side are shorter than
/// `tooth_over_depth` notch depths. σ = 6M/(b d²) and τ = 3V/(2 b d) of the net section at each place.
/// Leaves out: own weight, creep, the give of the supports, stress at a tapered edge across the grain, cracks that start from a notch.
/// A support that is pulled up is taken to hold the beam down: its reaction is negative.
/// Sources: Wood Handbook eq. 9-2 by elements; checked against closed forms and quadrature in tests/mechanics/beam/beam_on_supports_test.cpp.
SupportedBeamAnswer solve_on_supports(const BeamOnSupports& beam, const std::vector<PlacedLoad>& loads, const Facts& facts,
                                      Working* working = nullptr);

/// The loads of the closed forms as placed loads: the point at the middle of the span, the patch about it, the uniform load over the
/// whole beam, overhangs too.
std::vector<PlacedLoad> placed_loads(const BeamOnSupports& beam, const BeamLoads& loads);

} // namespace jointwright
