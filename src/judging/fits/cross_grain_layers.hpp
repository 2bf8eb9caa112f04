#pragma once
// The stress verdict of two layers glued face to face. SI doubles.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Stresses of a held glue face after relaxation, with the limits that they are judged by.
struct LayerStresses {
    Verdict verdict = Verdict::pass;
    double tension = 0, tension_pass = 0, tension_warn = 0; ///< across the grain, mean over the depth [Pa]; the worse layer
    double shear = 0, shear_pass = 0, shear_warn = 0;       ///< glue line, end 25 mm [Pa]
    double edge_peak = 0, own_bending = 0;                  ///< shown, not judged [Pa]; bending of the layer judged for tension
    double strain = 0;                                      ///< unrelaxed: σ/(r E) [1]
    SharesKept kept;                                        ///< of the stress, by season
    double kept_now = 0.5;                                  ///< in the season that stretches the judged layer
    double over_tangential = 1; ///< of the judged layer: modulus square to its grain this way over that along its rings
    bool as_flat_sawn = false;  ///< taken as no worse than the same wood sawn flat
    double depth = 0;           ///< of the judged layer [m]
    double driving = 0;         ///< relaxed strain behind the tension [1]
    double shear_driving = 0;   ///< relaxed strain behind the glue shear [1]
    bool estimated = false;
    std::string layer, relaxation_source, tension_source, glue_source;
    /// What another share of the stress would bring, kept in both seasons: for glues that creep, whose share nobody has measured.
    struct OtherOutcome {
        double share = 0, tension = 0, shear = 0;
        Verdict verdict = Verdict::pass;
    };
    std::vector<OtherOutcome> others;
    Restraint restraint;
    RestraintAnswer per_strain{};
    double tension_use() const { return tension_pass > 0 ? tension / tension_pass : 0; }
    double shear_use() const { return shear_pass > 0 ? shear / shear_pass : 0; }
    double utilisation() const { return tension_use() > shear_use() ? tension_use() : shear_use(); }
    /// The wood gives way rather than the glue line.
    bool splits() const { return tension > tension_warn || (shear <= shear_warn && tension_use() >= shear_use()); }
};

/// Judges a face direction: tension across (mean, scatter 25 %) and crossed glue shear (14 %), both × 0.70 for a season. Sides under 50 mm at
/// worst warn, over 150 mm of crossed grain at best warn. Nothing when a property is missing (named).
///
/// Share of the stress kept: the design's; else 0.5, and for a glue that creeps its own in a season whose air is above 65 % or 30 °C. A layer pulled
/// along its rays is taken as stronger by the ratio of its moduli, at most 1.5 times, and never as worse than the same wood sawn flat (estimated).
std::optional<LayerStresses> judge_layer_stresses(const Prepared& prepared, const FaceDirection& face, std::string* missing);

/// What published strains say of the layer, whatever its modulus: sound up to first yield, doubtful up to failure, split beyond.
Verdict verdict_by_strain(const Facts& facts, const LayerStresses& stresses);

/// The widest glued length in this direction that would pass [m]; 0 when none above 10 mm does.
double widest_that_holds(const Prepared& prepared, const FaceDirection& face);

Working layer_working(const Prepared& prepared, const FaceDirection& face, const LayerStresses& stresses);

} // namespace jointwright
