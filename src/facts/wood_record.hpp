#pragma once
// One wood as the tables have it: data/woods/NAME.toml, read into quantities.

#include "facts/citation.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

enum class WoodKind { hardwood, softwood };

/// Strength and stiffness of small clear specimens at one moisture state. Means; what the table lacks is empty.
struct StrengthRow {
    std::optional<Datum<double>> specific_gravity;     ///< oven-dry mass over the volume at this state
    std::optional<Datum<Stress>> bending_strength;     ///< modulus of rupture
    std::optional<Datum<Stress>> modulus;              ///< of elasticity, from bending, with shear deflection in it
    std::optional<Datum<double>> work_to_maximum_load; ///< J/m³
    std::optional<Datum<Stress>> compression_along;
    std::optional<Datum<Stress>> compression_across; ///< stress at proportional limit
    std::optional<Datum<Stress>> shear;              ///< parallel to the grain
    std::optional<Datum<Stress>> tension_across;
    std::optional<Datum<Force>> hardness;
    std::optional<Datum<Length>> impact_bending; ///< drop height
};

/// Ratios to the modulus along the grain, and Poisson ratios.
struct ElasticRatios {
    std::optional<Datum<double>> tangential, radial;           ///< E_T/E_L, E_R/E_L
    std::optional<Datum<double>> shear_lr, shear_lt, shear_rt; ///< G/E_L
    std::optional<Datum<double>> poisson_lr, poisson_lt, poisson_rt, poisson_tr, poisson_rl, poisson_tl;
    std::string like;     ///< name of the relative whose ratios stand in for missing ones, or empty
    std::string like_why; ///< why that one
};

struct DustHazard {
    std::string effect, site, potency;
    Citation cite;
};

/// What a wood holds that glue or metal minds: where it is so, its source.
struct Extractives {
    std::optional<Citation> oily;   ///< oil, wax or resin that keeps glue off
    std::optional<Citation> tannin; ///< alkali and iron turn it dark
    std::optional<Citation> acid;   ///< eats plain steel in damp
};

/// Everything the tables know of one wood.
struct WoodRecord {
    std::string file; ///< "woods/cherry-black.toml"
    std::string name, botanical, note;
    std::string nearest, nearest_why; ///< the nearest listed relative of a wood that lacks figures, or empty
    WoodKind kind = WoodKind::hardwood;
    std::vector<std::string> aliases;

    /// Per point of moisture, 6 to 14 %: the handbook's own where it was read, else of several printed figures the largest; its note tells the range; a computed one only where none is
    /// printed.
    std::optional<Datum<MovementCoefficient>> tangential, radial;
    std::vector<Datum<MovementCoefficient>> listed_tangential, listed_radial; ///< all of them, in the order of the file
    std::optional<Datum<MoistureContent>> fibre_saturation;                   ///< only where it differs from 30 %
    std::optional<Datum<double>> shrinkage_tangential, shrinkage_radial, shrinkage_volumetric; ///< percent, green to oven-dry

    double dry_moisture_pct = 12; ///< moisture content of the dry row
    StrengthRow dry, green;
    std::optional<Datum<MoistureContent>> intersection_moisture; ///< M_p of the strength-moisture relation
    ElasticRatios elastic;
    std::vector<DustHazard> dust;
    std::optional<std::string> bonding; ///< "easily", "well", "satisfactorily", "with difficulty"
    std::optional<Citation> bonding_cite;
    Extractives extractives;

    /// Whether any figure of movement, shrinkage or strength is held.
    bool has_figures() const;
};

} // namespace jointwright
