#pragma once
// Strength of a glue line by the true relation of the two grains: two faces of long grain are not yet a long-grain joint.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "wood/resistance.hpp"
#include "wood/state.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// How a glued face meets the wood.
enum class GlueFace {
    side_grain, ///< long grain on both sides, at some angle to each other
    mitre,      ///< cut at about 45° on both sides
    end_grain,  ///< end grain on at least one side: counted as nothing
};

/// Mean shear strengths of a glue line.
struct GlueStrength {
    Stress wood{};              ///< the weaker wood at this grain angle
    std::optional<Stress> glue; ///< of the glue itself, where a figure is known
    Stress mean{};              ///< the lower of the two; 0 at end grain
    std::string weaker_wood;    ///< whose figure rules
    bool estimated = false;
    std::string source;
};

/// Mean shear strength of a glue line [Pa].
///
/// Grains parallel: the weaker wood's shear strength f0 along the grain; crossed at 90°: f0/3 (FPL Report 1522); between them Hankinson,
/// f0 f90/(f0 sin²θ + f90 cos²θ). Mitre: the same, θ the angle between the grain and the cut, 45° where both members are equally wide (half
/// of f0 then). End grain: nothing. Never above the glue's own figure.
/// Returns nothing when neither wood has a shear strength.
std::optional<GlueStrength> glue_strength(const Facts& facts, const WoodState& first, std::string_view first_name,
                                          const WoodState& second, std::string_view second_name, const GlueRecord* glue,
                                          GlueFace face, double grain_angle, Working* working = nullptr);

/// Mean strengths of the wood on either side of a mitre [Pa], the weaker of the two.
struct MitreStrength {
    Stress tension{};                             ///< square to the cut
    Stress shear{};                               ///< along the cut, in the plane of the frame
    bool first_tears = true, first_shears = true; ///< whose figure rules
};
/// Hankinson between along and across the grain, exponent 2, each wood at its own angle.
///
/// `first_tilt`, `second_tilt`: angles between the grains and the normal of the cut [rad], both 45° at a square corner of members of one width; of
/// unlike widths one is the rest of a right angle of the other. Tension along the grain is taken as the bending strength, its cautious stand-in
/// (Wood Handbook, from memory; exponents of 1.5 to 2 are given there: measured mitres bore more than 2 gives). Nothing where a strength is not known.
std::optional<MitreStrength> mitre_strength(const Facts& facts, const WoodState& first, const WoodState& second,
                                            double first_tilt, double second_tilt);

/// Mean shear strength of one wood pushed at an angle to its grain [Pa]: f0 along it, f0/3 across it, where its fibres roll, and between them by
/// Hankinson. Source of the third: FPL Report 1522; solid wood rolls at 18 to 28 % in softwoods (Wood Handbook), 40 % measured in beech.
Stress shear_at_load_angle(const Facts& facts, Stress along, double load_angle);

/// ∫ρ dA over a rectangle about its middle: the twisting moment of a uniform stress of 1 at failure [m³].
/// Closed form; 0.383 a³ for a square of side a. Source: mechanics, integrated in tests/bond/glue/glue_line_test.cpp.
Volume twisting_capacity(Length a, Length b);

/// Scatter of glue-line shear.
Datum<double> glue_variation(const Facts& facts);
/// Allowable mean stress under service loads; resistance under a proof load, ten times; and what lasts the repeats of a durability load.
/// @param level  "home", "contract", "severe"
Stress glue_service_resistance(const Facts& facts, WoodKind kind, Stress mean, LoadDuration duration);
Stress glue_proof_resistance(const Facts& facts, Stress mean);
Stress glue_durability_resistance(const Facts& facts, Stress mean, std::string_view level);
/// The one of the three that a kind of load asks for, in shear; and across the grain, where the face is pulled open. Hard sitting is not asked of
/// glue: as a proof load.
Stress glue_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, WoodKind kind, Stress mean,
                       std::string_view level);
Stress glue_tension_resistance(const Facts& facts, DemandKind demand, LoadDuration duration, WoodKind kind, Stress mean,
                               std::string_view level);

} // namespace jointwright
