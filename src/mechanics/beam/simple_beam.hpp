#pragma once
// One straight beam between two ends: the quick answer without a design file.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"

namespace jointwright {

/// A rectangular beam; `depth` is the vertical side.
struct SimpleBeam {
    Length span, width, depth;
    Stress modulus_along; ///< free of shear
    Stress shear_modulus;
    bool fixed_ends = false; ///< built in at both ends, else free to turn on its supports
};

/// Loads that act together; absent ones are zero. Own weight is left out.
struct BeamLoads {
    Force point{};         ///< at mid-span
    LineLoad uniform{};    ///< along the whole span
    Force patch{};         ///< in all, spread over patch_length, centred
    Length patch_length{}; ///< at most the span
};

struct BeamAnswer {
    Length deflection;     ///< at mid-span, positive down
    Stress bending_stress; ///< largest, mid-span or at built-in ends
    Stress shear_stress;   ///< largest, 3V/(2bd)
    Moment moment;         ///< that goes with bending_stress
    Force shear;           ///< at the supports
    double span_ratio;     ///< span over deflection; infinite without load is never returned: 0 then
};

/// Deflection and stresses of a beam.
///
///     δ = kb W L³/(E I) + ks W L/(G A'),  I = b d³/12,  A' = 5/6 b d
///
/// Uniform: kb 5/384 free, 1/384 fixed, ks 1/8. Point: 1/48, 1/192, ks 1/4. A patch of length c, ends free: P (8L³ − 4Lc² + c³)/(384 E I) and
/// shear M/(G A'); ends fixed: less M_f L²/(8 E I), M_f = P (3L² − c²)/(24 L).
/// Leaves out: own weight, creep, the give of the supports, taper and notches.
/// Source: Wood Handbook (GTR-190) eq. 9-2 and table 9-1; the patch by superposition. Checked in tests/published/beam_test.cpp.
BeamAnswer beam_answer(const SimpleBeam& beam, const BeamLoads& loads, const Facts& facts, Working* working = nullptr);

} // namespace jointwright
