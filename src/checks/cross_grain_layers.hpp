#pragma once
// The stress verdict of two layers glued face to face. SI doubles.

#include "checks/finding.hpp"
#include "mechanics/glued_face.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// Stresses of a held glue face after relaxation, with the limits that they are judged by.
struct LayerStresses {
    Verdict verdict = Verdict::pass;
    double tension = 0, tension_pass = 0, tension_warn = 0; ///< across the grain, mean over the depth [Pa]; the worse layer
    double shear = 0, shear_pass = 0, shear_warn = 0;       ///< glue line, end 25 mm [Pa]
    double edge_peak = 0, own_bending = 0;                  ///< shown, not judged [Pa]; bending of the layer judged for tension
    double strain = 0;                                      ///< unrelaxed: σ/(r E) [1]
    double share_kept = 0.5;
    double depth = 0;         ///< of the judged layer [m]
    double driving = 0;       ///< relaxed strain behind the tension [1]
    double shear_driving = 0; ///< relaxed strain behind the glue shear [1]
    bool estimated = false;
    std::string layer, relaxation_source, tension_source, glue_source;
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
std::optional<LayerStresses> judge_layer_stresses(const Prepared& prepared, const FaceDirection& face, std::string* missing);

/// The widest glued length in this direction that would pass [m]; 0 when none above 10 mm does.
double widest_that_holds(const Prepared& prepared, const FaceDirection& face);

Working layer_working(const Prepared& prepared, const FaceDirection& face, const LayerStresses& stresses);

} // namespace jointwright
