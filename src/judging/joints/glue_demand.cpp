#include "judging/joints/glue_demand.hpp"

#include "judging/finding_tools.hpp"
#include "judging/joints/worst_forces.hpp"
#include "measure/write.hpp"
#include "mechanics/frame/elements.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kNoPull = 1.0;       // N: less is rounding, or a lever that the rest of the piece takes without noticing
constexpr double kNoTwist = 1e-6;     // N m: rounding
constexpr double kPressedEdge = 0.96; // of half a face's size: as far out as what presses on it can stand
constexpr double kDryFriction = 0.3;  // of what presses on a dry face of wood (estimated)

using kernel::Vec3;

Vec3 vec_of(const Point& p) { return {p[0], p[1], p[2]}; }

/// Kinds whose glued faces are the sides of a core: what turns them is judged with the joint as a whole.
bool is_core(JointKind kind)
{
    return kind == JointKind::tenon || kind == JointKind::bridle || kind == JointKind::dovetail ||
           kind == JointKind::sliding_dovetail || kind == JointKind::dowel;
}

/// The glued face in its own measures.
struct GlueFrame {
    Vec3 normal, u, v; ///< out of the first part into the second; along the grain of the carried part, across it
    double lu = 0, lv = 0;
};

/// The part that the other bears at a contact; the first where neither does.
std::size_t carried_at(const Prepared& prepared, std::size_t c)
{
    const Contact& contact = prepared.layout->contacts[c];
    for (const std::size_t upper : {contact.first, contact.second})
        for (const Bearing& b : prepared.layout->path.bearings[upper])
            if (b.contact == c) return upper;
    return contact.first;
}

GlueFrame frame_of(const Prepared& prepared, const GluedArea& glue, std::size_t carried)
{
    GlueFrame f;
    f.normal = vec_of(glue.largest->normal);
    const PartAxes axes = axes_of(prepared.piece->part_of(carried), prepared.piece->copies[carried]);
    const Vec3 grain = vec_of(axes.grain);
    Vec3 u = grain - grain.dot(f.normal) * f.normal;
    if (u.norm() < 0.3) u = f.normal.unitOrthogonal();
    f.u = u.normalized();
    f.v = f.normal.cross(f.u);
    double lo_u = 1e30, hi_u = -1e30, lo_v = 1e30, hi_v = -1e30;
    for (const Point& p : glue.largest->outline) {
        const Vec3 q = vec_of(p);
        lo_u = std::min(lo_u, q.dot(f.u));
        hi_u = std::max(hi_u, q.dot(f.u));
        lo_v = std::min(lo_v, q.dot(f.v));
        hi_v = std::max(hi_v, q.dot(f.v));
    }
    f.lu = std::max(hi_u - lo_u, 1e-4);
    f.lv = std::max(hi_v - lo_v, 1e-4);
    return f;
}

/// What a joint's forces ask of its glue.
struct AskedOfGlue {
    PatchForces forces;
    double shear = 0, pull = 0, opening = 0; ///< N, N, N m
    double tension = 0, peel = 0;            ///< Pa
};

/// The glue as one rectangle: the largest face, shortened to what is glued of it, and as many of it as the counted area makes.
GluePatch patch_of(const GlueFrame& face, const GluedArea& glue)
{
    const double share = std::max(glue.glued_share, 1e-3);
    GluePatch patch{metres(face.lu), metres(face.lv), 1};
    (face.lu >= face.lv ? patch.a : patch.b) *= share;
    patch.faces = glue.area / (in_metres(patch.a) * in_metres(patch.b));
    return patch;
}

/// True when pressing alone would carry what a face hands on, were its glue gone: what presses stands within the face, and friction, walls or
/// fasteners take what shears it.
bool pressing_carries(const GlueFrame& face, bool by_walls, double pressed, double about_u, double about_v, double shear)
{
    if (pressed <= 0) return false;
    const double eccentric = 2 * std::abs(about_u) / (pressed * face.lv) + 2 * std::abs(about_v) / (pressed * face.lu);
    return eccentric <= kPressedEdge && (by_walls || shear <= kDryFriction * pressed);
}

/// @param by_walls  walls or fasteners hold it sideways without its glue
AskedOfGlue asked_of(const GlueFrame& face, const GluePatch& patch, bool core, bool by_walls, bool lifted, const JointForce& f)
{
    AskedOfGlue asked;
    const Vec3 force = vec_of(f.force), moment = vec_of(f.moment);
    const double along_normal = force.dot(face.normal);
    asked.forces.along_a = newtons(force.dot(face.u));
    asked.forces.along_b = newtons(force.dot(face.v));
    if (!core) {
        asked.pull = -along_normal; // the first drags the second towards itself: the face opens
        const double about_u = moment.dot(face.u), about_v = moment.dot(face.v), twist = moment.dot(face.normal);
        const double shear = std::hypot(asked.forces.along_a.value(), asked.forces.along_b.value());
        const bool held_by_pressing = pressing_carries(face, by_walls, along_normal, about_u, about_v, shear);
        const double about_grain = held_by_pressing ? 0 : std::abs(about_u),
                     about_other = held_by_pressing ? 0 : std::abs(about_v);
        asked.opening = std::hypot(about_grain, about_other);
        // Of several faces one is pulled on.
        const double only_one = std::max(1.0, patch.faces);
        const bool peeled = lifted && asked.pull > kNoPull;
        asked.forces.normal = newtons(asked.pull * only_one);
        asked.forces.bend_a = newton_metres(peeled ? 0 : about_grain * only_one);
        asked.forces.bend_b = newton_metres(about_other * only_one);
        if (!by_walls) asked.forces.twist = newton_metres(std::abs(twist) > kNoTwist ? twist : 0);
        if (peeled)
            asked.peel =
                peel_stress({patch.b, patch.a, patch.faces / only_one}, newtons(asked.pull), metres(about_grain / asked.pull))
                    .value();
    }
    const PatchUse u = patch_use(patch, asked.forces, pascals(1), pascals(1));
    asked.shear = u.shear.value() * patch.area().value();
    asked.tension = std::max(u.tension.value(), asked.peel);
    return asked;
}

/// Walls of a recess, or fasteners, keep the parts from sliding on each other without glue.
bool held_sideways(const Joint& joint)
{
    using enum JointKind;
    switch (joint.kind) {
    case housing:
    case groove:
    case screws: return true;
    default: return is_reinforced(joint) || joint.screws.has_value();
    }
}

/// True when a part hangs from the face above it: its load pulls on the glue.
bool hangs_from(const Contact& contact, const GluedArea& glue, std::size_t upper)
{
    const double up = glue.largest->normal[2] * (upper == contact.first ? 1 : -1); // out of the carried part
    return up > 0.9;
}

/// True of a part that lies on this face and on another: glue that a bent neighbour pulls open is asked for, and yet nothing would fall without it.
bool contact_lies(const Prepared& prepared, const Contact& contact, const GluedArea& glue, std::size_t upper)
{
    const double down = -glue.largest->normal[2] * (upper == contact.first ? 1 : -1);
    return down > 0.9 && prepared.layout->path.bearings[upper].size() > 1;
}

} // namespace

GluedArea glued_area(const Contact& contact, const Joint& joint)
{
    GluedArea glue;
    glue.face = joint.kind == JointKind::mitre ? GlueFace::mitre : GlueFace::side_grain;
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::edge) continue; // narrow edges of a tenon: seldom well glued, not counted
        if (p.end_grain_first || p.end_grain_second) {
            glue.end_grain += p.area;
            continue;
        }
        glue.area += p.area;
        if (!glue.largest || p.area > glue.largest->area) {
            glue.largest = &p;
            glue.angle = p.grain_angle;
        }
    }
    if (joint.glued && glue.largest) {
        double longest = 0;
        for (std::size_t i = 0; i < 3; ++i) longest = std::max(longest, glue.largest->bounds.hi[i] - glue.largest->bounds.lo[i]);
        if (longest > 0) glue.glued_share = std::min(1.0, in_metres(joint.glued->length) / longest);
        glue.area *= glue.glued_share;
    }
    return glue;
}

std::vector<GlueDemand> glue_demands(const Prepared& prepared, std::size_t c, const GluedArea& glue)
{
    const Contact& contact = prepared.layout->contacts[c];
    const Piece& piece = *prepared.piece;
    const Joint& joint = piece.joints[*contact.joint];
    const bool by_walls = held_sideways(joint);
    const std::size_t carried = carried_at(prepared, c);
    const GlueFrame face = frame_of(prepared, glue, carried);
    const GluePatch patch = patch_of(face, glue);
    const bool core = is_core(joint.kind) || is_reinforced(joint);
    const auto asked = [&](const JointForce& f) {
        return asked_of(face, patch, core, by_walls, prepared.statics.cases.cases[f.load_case].lift, f);
    };
    const std::vector<JointMeasure> measures = {[&](const JointForce& f) { return asked(f).shear - kNoPull; },
                                                [&](const JointForce& f) { return asked(f).tension; }};
    std::vector<GlueDemand> demands;
    for (const JointForce* f : worst_joint_forces(prepared, c, measures)) {
        const AskedOfGlue a = asked(*f);
        const LoadCase& load_case = prepared.statics.cases.cases[f->load_case];
        GlueDemand demand;
        demand.name = load_case.name;
        demand.proof = load_case.proof;
        demand.kind = load_case.kind;
        demand.duration = load_case.duration;
        demand.patch = patch;
        demand.along = {face.u.x(), face.u.y(), face.u.z()};
        demand.across = {face.v.x(), face.v.y(), face.v.z()};
        demand.forces = a.forces;
        demand.shear = a.shear;
        demand.tension = a.pull > kNoPull || a.opening > 0 ? a.tension : 0;
        demand.peel = a.peel;
        if (demand.tension == 0) demand.forces.normal = {}; // a pull too small to count, or pressing
        demand.pull = std::max(0.0, a.pull);
        demand.lever = a.pull > kNoPull ? a.opening / a.pull : 0;
        demand.source = load_case.source;
        demand.lies = contact_lies(prepared, contact, glue, carried);
        demand.lift = load_case.lift;
        demand.hangs = !load_case.proof && load_case.duration == LoadDuration::lasting && a.pull > kNoPull &&
                       hangs_from(contact, glue, carried);
        demand.sum =
            fmt::format("the piece solved as one frame: {} N in the face, {} N m twisting it, {} N {} it, {} N m opening it",
                        write_number(std::hypot(a.forces.along_a.value(), a.forces.along_b.value()), 3),
                        write_number(std::abs(a.forces.twist.value()), 2), write_number(std::abs(a.pull), 3),
                        a.pull > 0 ? "away from" : "onto", write_number(std::abs(a.opening) > 1e-6 ? a.opening : 0.0, 2));
        if (demand.shear > kNoPull || demand.tension > 0) demands.push_back(std::move(demand));
    }
    if (demands.empty()) {
        // Nothing is asked of the joint: the lighter part hangs on the glue by its own weight.
        const std::size_t lighter =
            prepared.masses[contact.first] < prepared.masses[contact.second] ? contact.first : contact.second;
        const double weight = prepared.masses[lighter] * kStandardGravity;
        GlueDemand own;
        own.name = fmt::format("the weight of {}", piece.label(lighter, true));
        own.proof = false;
        own.kind = DemandKind::service;
        own.duration = LoadDuration::lasting;
        own.patch = patch;
        own.along = {face.u.x(), face.u.y(), face.u.z()};
        own.directed = false;
        own.forces.along_a = newtons(weight);
        own.shear = weight;
        own.source = "mass of the part";
        own.sum = fmt::format("{} kg", write_number(prepared.masses[lighter], 3));
        demands.push_back(std::move(own));
    }
    return demands;
}

bool is_reinforced(const Joint& joint) { return joint.kind == JointKind::mitre && (joint.keys || joint.spline || joint.dowels); }

bool bears_by_shape(const Joint& joint, const GluedArea& glue)
{
    if (is_reinforced(joint)) return true;
    switch (joint.kind) {
    case JointKind::tenon:
    case JointKind::housing:
    case JointKind::groove:
    case JointKind::sliding_dovetail:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::lap:
    case JointKind::dowel:
    case JointKind::screws: return true;
    default: return glue.largest && std::abs(glue.largest->normal[2]) > 0.9;
    }
}

} // namespace jointwright
