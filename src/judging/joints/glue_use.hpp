#pragma once
// One demand on a glue line held against what it resists: shear by the relation of the grains and the way of the push, tension, peeling. SI doubles.

#include "bond/glue/glue_line.hpp"
#include "bond/glue/glue_patch.hpp"
#include "judging/joints/glue_demand.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// A demand held against what the glue line resists.
struct GlueUse {
    GlueStrength strength;
    WoodKind kind = WoodKind::hardwood; ///< of the weaker wood
    double angle = 0;                   ///< between the grains [rad]
    double shear = 0, resistance = 0;   ///< [Pa]
    double tension_resistance = 0;      ///< where the demand pulls [Pa]
    double fit = 1;                     ///< share left by the clearance
    double use = 0, warns_to = 1;
    std::optional<double>
        rolling;       ///< resistance where the push rolls the fibres of a wood more than the grains' crossing says [Pa]
    std::string rolls; ///< and whose
    PatchUse patch;
    std::optional<double> end_peak; ///< stress at the ends of the face over its mean, shown only
    bool peeled = false;            ///< peeling off by the edge uses more than the rest
    Working working;                ///< of the patch
};

/// Share of a glue's strength that the clearance of its joint leaves; 0 where it fills no such gap. Clamps close faces, housings and laps; tenons,
/// dovetails and dowels keep the room they were cut with.
double share_left_by_fit(const Facts& facts, const Joint& joint);

/// @param working  takes the steps of the mean strength, as glue_strength writes them
GlueUse use_of_glue(const Prepared& prepared, const Contact& contact, const GluedArea& glue, const GlueDemand& demand,
                    Working& working);

} // namespace jointwright
