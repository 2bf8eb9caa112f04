#include "judging/joints/glue_use.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

double share_left_by_fit(const Facts& facts, const Joint& joint)
{
    switch (joint.kind) {
    case JointKind::tenon:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::sliding_dovetail:
    case JointKind::dowel: {
        const GlueRecord* glue = facts.find_glue(*joint.glue);
        return fit_share(facts, joint.clearance, glue && glue->gap_filling);
    }
    default: return 1;
    }
}

namespace {

double dot_with(const Point& a, const Point& b) { return std::abs(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]); }

/// A part as a layer of a lap, loaded along a direction in the face; nothing where its stiffness is not known.
std::optional<LapLayer> layer_of(const Prepared& prepared, std::size_t copy, const Point& way, const Point& normal)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartAxes axes = axes_of(part, prepared.piece->copies[copy]);
    const WoodState& wood = prepared.state_of(copy).loaded;
    const bool along = dot_with(axes.grain, way) > 0.7;
    const auto& modulus = along ? wood.modulus_along : wood.modulus_tangential;
    const auto& shear = along ? wood.shear_modulus_lt : wood.shear_modulus_rt;
    if (!modulus || !shear) return std::nullopt;
    const Length thick = dot_with(axes.grain, normal) > 0.7   ? part.length
                         : dot_with(axes.width, normal) > 0.7 ? part.width
                                                              : part.thickness;
    return LapLayer{modulus->value, shear->value, thick};
}

/// How far the stress at the ends of the face stands above its mean, in the direction that it is pushed most.
std::optional<double> end_peak_of(const Prepared& prepared, const Contact& contact, const GluedArea& glue,
                                  const GlueDemand& demand)
{
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const bool plain = joint.kind == JointKind::edge || joint.kind == JointKind::face || joint.kind == JointKind::butt ||
                       joint.kind == JointKind::lap;
    if (!plain || !glue.largest || !(demand.shear > 0)) return std::nullopt;
    const bool along_a = std::abs(demand.forces.along_a.value()) >= std::abs(demand.forces.along_b.value());
    const Point &n = glue.largest->normal, &u = demand.along;
    const Point way = along_a ? u : Point{n[1] * u[2] - n[2] * u[1], n[2] * u[0] - n[0] * u[2], n[0] * u[1] - n[1] * u[0]};
    const auto a = layer_of(prepared, contact.first, way, n), b = layer_of(prepared, contact.second, way, n);
    if (!a || !b) return std::nullopt;
    return lap_end_peak(*prepared.facts, along_a ? demand.patch.a : demand.patch.b, *a, *b);
}

/// Lowers the resistance where the push runs across a grain more than the crossing of the grains accounts for: a lipping pushed square to itself.
void look_at_rolling(const Prepared& prepared, const Contact& contact, const GlueDemand& demand, GlueUse& u)
{
    const double a = demand.forces.along_a.value(), b = demand.forces.along_b.value(), force = std::hypot(a, b);
    if (!(force > 0) || !demand.directed) return;
    Point way{};
    for (std::size_t i = 0; i < 3; ++i) way[i] = (a * demand.along[i] + b * demand.across[i]) / force;
    double least = u.strength.mean.value() / u.fit;
    for (const std::size_t copy : {contact.first, contact.second}) {
        const Point grain = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]).grain;
        const double angle = std::acos(std::min(1.0, dot_with(grain, way)));
        const double strength = shear_at_load_angle(*prepared.facts, prepared.state_of(copy).loaded.shear->value, angle).value();
        if (strength >= least * (1 - 1e-9)) continue;
        least = strength;
        u.rolls = prepared.piece->part_of(copy).id;
    }
    if (!u.rolls.empty()) u.rolling = u.resistance * least * u.fit / u.strength.mean.value();
}

/// Angle between a part's grain and the normal of a mitre's cut [rad]: 45° where both members are equally wide.
double tilt_of(const Prepared& prepared, std::size_t copy, const Point& normal)
{
    return std::acos(std::min(1.0, dot_with(axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]).grain, normal)));
}

} // namespace

GlueUse use_of_glue(const Prepared& prepared, const Contact& contact, const GluedArea& glue, const GlueDemand& demand,
                    Working& working)
{
    const Facts& facts = *prepared.facts;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const PartState& a = prepared.state_of(contact.first);
    const PartState& b = prepared.state_of(contact.second);
    GlueUse u;
    u.angle = glue.angle.value_or(0);
    const bool mitre = glue.face == GlueFace::mitre && glue.largest;
    const double tilt_a = mitre ? tilt_of(prepared, contact.first, glue.largest->normal) : 0,
                 tilt_b = mitre ? tilt_of(prepared, contact.second, glue.largest->normal) : 0;
    u.strength = *glue_strength(facts, a.loaded, a.species, b.loaded, b.species, facts.find_glue(*joint.glue), glue.face,
                                mitre ? std::numbers::pi / 2 - std::min(tilt_a, tilt_b) : u.angle, &working);
    u.kind = u.strength.weaker_wood == a.species ? a.loaded.kind : b.loaded.kind;
    u.fit = share_left_by_fit(facts, joint);
    u.strength.mean *= u.fit;
    const std::string_view level = name_of(prepared.piece->limits.level);
    u.resistance = glue_resistance(facts, demand.kind, demand.duration, u.kind, u.strength.mean, level).value();
    u.warns_to = warn_limit(facts, demand.kind, StrengthKind::shear, u.kind);
    const auto torn = mitre ? mitre_strength(facts, a.loaded, b.loaded, tilt_a, tilt_b) : std::nullopt;
    const Stress weaker =
        (torn ? torn->tension : std::min(a.loaded.tension_across->value, b.loaded.tension_across->value)) * u.fit;
    u.tension_resistance = glue_tension_resistance(facts, demand.kind, demand.duration, u.kind, weaker, level).value();
    if (glue.face == GlueFace::side_grain) look_at_rolling(prepared, contact, demand, u);
    u.patch = patch_use(demand.patch, demand.forces, pascals(u.rolling.value_or(u.resistance)), pascals(u.tension_resistance),
                        &u.working);
    u.shear = u.patch.shear.value();
    const double peel = demand.peel / u.tension_resistance;
    u.peeled = peel > u.patch.use;
    u.use = std::max(u.patch.use, peel);
    u.end_peak = end_peak_of(prepared, contact, glue, demand);
    return u;
}

} // namespace jointwright
