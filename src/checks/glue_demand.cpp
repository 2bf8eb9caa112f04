#include "checks/glue_demand.hpp"

#include "checks/check_tools.hpp"
#include "measure/write.hpp"
#include "mechanics/load_cases.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Glued contacts of a copy with what bears it.
std::size_t glued_places(const Prepared& prepared, std::size_t copy)
{
    std::size_t n = 0;
    for (const Bearing& b : prepared.statics.path.bearings[copy])
        n += has_glue(prepared, prepared.layout->contacts[b.contact]) ? 1 : 0;
    return std::max<std::size_t>(n, 1);
}

const Bearing* bearing_at(const Prepared& prepared, std::size_t contact, std::size_t upper)
{
    for (const Bearing& b : prepared.statics.path.bearings[upper])
        if (b.contact == contact) return &b;
    return nullptr;
}

/// Section modulus of a face against tearing off along its longer side [m³], and its width.
std::pair<double, double> peel_modulus(const Patch& patch, Axis grain_of_upper)
{
    double along = 0, across = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        if (std::abs(patch.normal[i]) > 0.9) continue;
        const double side = patch.bounds.hi[i] - patch.bounds.lo[i];
        (i == index_of(grain_of_upper) ? along : across) = side;
    }
    return {along * across * across / 6, across};
}

constexpr double kNoPull = 1.0; // N: less is rounding, or a lever that the rest of the piece takes without noticing

/// True when a part hangs from the face above it: its load pulls on the glue.
bool hangs_from(const Contact& contact, const GluedArea& glue, std::size_t upper)
{
    const double up = glue.largest->normal[2] * (upper == contact.first ? 1 : -1); // out of the carried part
    return up > 0.9;
}

/// What the bearing hands down here, worst of each kind: shear on a side face or a tenon, pull where a part hangs from a level face or is levered up.
void add_handed_down(const Prepared& prepared, std::size_t c, const GluedArea& glue, std::size_t upper, bool level,
                     std::vector<GlueDemand>& demands)
{
    const Contact& contact = prepared.layout->contacts[c];
    const bool hangs = level && hangs_from(contact, glue, upper);
    const auto& cases = prepared.statics.cases.cases;
    for (const int kind : {0, 1, 2, 3}) { // lasting, sitting, short service, proof
        double worst = 0;
        std::size_t worst_case = 0;
        for (const BearingForce& force : prepared.statics.forces) {
            if (force.contact != c || force.upper != upper) continue;
            const LoadCase& load_case = cases[force.load_case];
            const int of = load_case.proof ? 3 : static_cast<int>(load_case.duration);
            const double pull = level ? (hangs ? force.force : -force.force) : std::abs(force.force);
            if (of != kind || pull <= worst) continue;
            worst = pull;
            worst_case = force.load_case;
        }
        if (worst <= kNoPull) continue;
        GlueDemand demand;
        demand.name = cases[worst_case].name;
        demand.proof = cases[worst_case].proof;
        demand.duration = cases[worst_case].duration;
        demand.source = cases[worst_case].source;
        demand.hangs = hangs;
        demand.sum = fmt::format("{} N {}", write_number(worst, 4), level ? "pull here" : "handed down here");
        (level ? demand.tension : demand.shear) = level ? worst / glue.area : worst;
        if (level) demand.pull = worst;
        demands.push_back(std::move(demand));
    }
}

/// True when some face of the contact, glued or not, lets the upper part stand on the lower.
bool rests_on_level_face(const Contact& contact, std::size_t upper)
{
    return std::any_of(contact.patches.begin(), contact.patches.end(), [&](const Patch& p) {
        const double down = -p.normal[2] * (upper == contact.first ? 1 : -1); // out of the upper part
        return down > 0.9 && p.role != Patch::Role::cheek && p.role != Patch::Role::edge;
    });
}

/// A slat that people sit on is pushed sideways, and the whole piece is lifted by its edge.
void add_seat_demands(const Prepared& prepared, const GluedArea& glue, std::size_t upper, std::vector<GlueDemand>& demands)
{
    const Facts& facts = *prepared.facts;
    const Piece& piece = *prepared.piece;
    const double places = static_cast<double>(glued_places(prepared, upper));
    const std::string level = std::string(name_of(piece.limits.level));
    const Datum<double>& push = facts.number("push_" + level);
    demands.push_back({fmt::format("{} pushed sideways", piece.label(upper, true)), true, LoadDuration::short_term,
                       push.value / places, 0, 0, 0, push.cite.text(),
                       fmt::format("{} N over {} glued places", write_number(push.value, 4), places)});
    const Datum<double>& jerk = facts.number("lift_factor");
    const double lift = jerk.value * prepared.whole_mass() * kStandardGravity / places;
    const auto [modulus, across] = peel_modulus(*glue.largest, piece.part_of(upper).grain);
    const double reach = piece.copies[upper].box.size(piece.part_of(upper).grain == Axis::x ? Axis::y : Axis::x) / 2;
    // The smaller the glued share, the smaller both the area and what resists tearing off.
    const double stress = (lift / glue.largest->area + (modulus > 0 ? lift * reach / modulus : 0)) / glue.glued_share;
    demands.push_back({fmt::format("the whole piece lifted by the edge of {}", piece.label(upper, true)), true,
                       LoadDuration::short_term, 0, stress, lift, reach, jerk.cite.text(),
                       fmt::format("{} × {} kg over {} places, held {} from the middle of the glue", write_number(jerk.value, 2),
                                   write_number(prepared.whole_mass(), 3), places, size_words(prepared, reach))});
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
    std::vector<GlueDemand> demands;
    for (const std::size_t upper : {contact.first, contact.second}) {
        const Bearing* bearing = bearing_at(prepared, c, upper);
        if (!bearing) continue;
        const bool lies_on = (glue.largest && std::abs(glue.largest->normal[2]) > 0.9) || rests_on_level_face(contact, upper);
        if (lies_on && std::abs(glue.largest->normal[2]) > 0.9 && prepared.carried[upper] && piece.use == Use::seat)
            add_seat_demands(prepared, glue, upper, demands);
        add_handed_down(prepared, c, glue, upper, lies_on, demands);
    }
    if (demands.empty()) {
        // Neither part bears the other: the lighter one hangs on the glue by its own weight.
        const std::size_t lighter =
            prepared.masses[contact.first] < prepared.masses[contact.second] ? contact.first : contact.second;
        const double weight = prepared.masses[lighter] * kStandardGravity;
        demands.push_back({fmt::format("the weight of {}", piece.label(lighter, true)), false, LoadDuration::lasting, weight, 0,
                           0, 0, "mass of the part", fmt::format("{} kg", write_number(prepared.masses[lighter], 3))});
    }
    return demands;
}

bool bears_by_shape(const Joint& joint, const GluedArea& glue)
{
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
