// Is every glue line big enough, by the true relation of its grains, for what hand statics ask of it?

#include "bond/glue_line.hpp"

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "measure/write.hpp"
#include "mechanics/load_cases.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

/// What counts of the glue at a contact.
struct GluedArea {
    double area = 0;             ///< side grain to side grain [m²]
    double end_grain = 0;        ///< counted as nothing [m²]
    double glued_share = 1;      ///< of the face's longer side
    const Patch* largest = nullptr;
    std::optional<double> angle; ///< of the largest counted face
    GlueFace face = GlueFace::side_grain;
};

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

/// One demand on a glue line.
struct Demand {
    std::string name;
    bool proof = true;
    LoadDuration duration = LoadDuration::short_term;
    double shear = 0;   ///< N
    double tension = 0; ///< mean plus bending at the edge [Pa]
    std::string source;
    std::string sum;    ///< how it came about
    bool hangs = false; ///< a lasting pull on the glue, not a jerk
};

/// Glued contacts of a copy with what bears it.
std::size_t glued_places(const Prepared& prepared, std::size_t copy)
{
    std::size_t n = 0;
    for (const Bearing& b : prepared.statics.path.bearings[copy]) n += has_glue(prepared, prepared.layout->contacts[b.contact]) ? 1 : 0;
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
void add_handed_down(const Prepared& prepared, std::size_t c, const GluedArea& glue, std::size_t upper, bool level, std::vector<Demand>& demands)
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
        Demand demand;
        demand.name = cases[worst_case].name;
        demand.proof = cases[worst_case].proof;
        demand.duration = cases[worst_case].duration;
        demand.source = cases[worst_case].source;
        demand.hangs = hangs;
        demand.sum = fmt::format("{} N {}", write_number(worst, 4), level ? "pull here" : "handed down here");
        (level ? demand.tension : demand.shear) = level ? worst / glue.area : worst;
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

std::vector<Demand> demands_at(const Prepared& prepared, std::size_t c, const GluedArea& glue)
{
    const Facts& facts = *prepared.facts;
    const Contact& contact = prepared.layout->contacts[c];
    const Piece& piece = *prepared.piece;
    std::vector<Demand> demands;
    for (const std::size_t upper : {contact.first, contact.second}) {
        const Bearing* bearing = bearing_at(prepared, c, upper);
        if (!bearing) continue;
        const bool lies_on = (glue.largest && std::abs(glue.largest->normal[2]) > 0.9) || rests_on_level_face(contact, upper);
        if (lies_on && std::abs(glue.largest->normal[2]) > 0.9 && prepared.carried[upper] && piece.use == Use::seat) {
            const double places = static_cast<double>(glued_places(prepared, upper));
            const std::string level = std::string(name_of(piece.limits.level));
            const Datum<double>& push = facts.number("push_" + level);
            demands.push_back({fmt::format("{} pushed sideways", piece.label(upper, true)), true, LoadDuration::short_term, push.value / places, 0, push.cite.text(), fmt::format("{} N over {} glued places", write_number(push.value, 4), places)});
            const Datum<double>& jerk = facts.number("lift_factor");
            const double lift = jerk.value * prepared.whole_mass() * kStandardGravity / places;
            const auto [modulus, across] = peel_modulus(*glue.largest, piece.part_of(upper).grain);
            const double reach = piece.copies[upper].box.size(piece.part_of(upper).grain == Axis::x ? Axis::y : Axis::x) / 2;
            // The smaller the glued share, the smaller both the area and what resists tearing off.
            const double stress = (lift / glue.largest->area + (modulus > 0 ? lift * reach / modulus : 0)) / glue.glued_share;
            demands.push_back({fmt::format("the whole piece lifted by the edge of {}", piece.label(upper, true)), true, LoadDuration::short_term, 0, stress, jerk.cite.text(),
                               fmt::format("{} × {} kg over {} places, held {} from the middle of the glue", write_number(jerk.value, 2), write_number(prepared.whole_mass(), 3), places, size_words(prepared, reach))});
        }
        add_handed_down(prepared, c, glue, upper, lies_on, demands);
    }
    if (demands.empty()) {
        // Neither part bears the other: the lighter one hangs on the glue by its own weight.
        const std::size_t lighter = prepared.masses[contact.first] < prepared.masses[contact.second] ? contact.first : contact.second;
        const double weight = prepared.masses[lighter] * kStandardGravity;
        demands.push_back({fmt::format("the weight of {}", piece.label(lighter, true)), false, LoadDuration::lasting, weight, 0, "mass of the part", fmt::format("{} kg", write_number(prepared.masses[lighter], 3))});
    }
    return demands;
}

/// A joint that bears without its glue: a tenon in its mortise, a part in a housing or groove, a part lying on another.
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

Finding judge(const Prepared& prepared, std::size_t c, const GluedArea& glue, const Demand& demand)
{
    const Facts& facts = *prepared.facts;
    const Contact& contact = prepared.layout->contacts[c];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const PartState& a = prepared.state_of(contact.first);
    const PartState& b = prepared.state_of(contact.second);
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    const GlueRecord* record = facts.find_glue(*joint.glue);
    const double angle = glue.angle.value_or(0);

    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name, a.species == b.species ? a.species : a.species + " on " + b.species);
    Working working;
    const auto strength = glue_strength(facts, a.loaded, a.species, b.loaded, b.species, record, glue.face, angle, &working);
    const Stress mean = strength->mean;
    const WoodKind kind = strength->weaker_wood == a.species ? a.loaded.kind : b.loaded.kind;
    const double resistance = demand.proof ? glue_proof_resistance(facts, mean).value() : glue_service_resistance(facts, kind, mean, demand.duration).value();
    const double shear = demand.shear / glue.area;
    double use = shear / resistance, tension_resistance = 0;
    if (demand.tension > 0) {
        const Stress weaker = std::min(a.loaded.tension_across->value, b.loaded.tension_across->value);
        tension_resistance = demand.proof ? proof_resistance(facts, StrengthKind::tension_across, weaker).value() * facts.number("repeated_use_share").value
                                          : service_resistance(facts, StrengthKind::tension_across, kind, weaker, demand.duration).value();
        const double t = demand.tension / tension_resistance;
        use = std::sqrt(use * use + t * t);
    }
    f.utilisation = use;
    const double warn = demand.proof ? proof_warn_limit(facts) : service_warn_limit(facts, StrengthKind::shear, kind);
    const Datum<double>& granted = facts.number("lift_tension_granted");
    if (use > warn)
        f.verdict = Verdict::fail;
    else if (use > 1 || demand.tension > granted.value || demand.hangs)
        f.verdict = Verdict::warn;
    if (glue.face == GlueFace::mitre && f.verdict == Verdict::pass) f.verdict = Verdict::warn;
    if (use > warn && demand.tension == 0 && bears_by_shape(joint, glue)) f.verdict = Verdict::warn;

    const std::string grain = glue.face == GlueFace::mitre ? "a mitre, half way to end grain" : angle > 1.0 ? "long grain on both faces, but the grains cross: a third of the shear strength counts" : angle > 0.2 ? fmt::format("grains at {:.0f}° to each other", angle * 57.29578) : "grains parallel, long grain to long grain: the full shear strength counts";
    const std::string held = f.verdict == Verdict::fail ? "is too weak" : use > 1 ? "is loaded beyond the customary margin" : "holds";
    f.headline = fmt::format("The glue between {} and {} ({}) {}: {:.0f} % used with {}.", first, second, grain, held, use * 100, demand.name);
    if (f.verdict == Verdict::warn && use <= 1 && demand.tension > 0)
        f.headline = fmt::format("The glue between {} and {} holds with {} ({:.0f} % used), but across the grain it should not be asked to.", first, second, demand.name, use * 100);
    if (f.verdict != Verdict::pass) {
        if (demand.hangs)
            f.remedy = fmt::format("hold {} by screws, a housing or a ledge under it: glue should not carry by a pull across the grain", first);
        else if (demand.tension > 0)
            f.remedy = fmt::format("lift the piece by its frame, not by {}, or add a screw from below at each place, slotted where the grain crosses", first);
        else if (glue.face == GlueFace::mitre)
            f.remedy = "key, spline or dowel the mitre";
        else
            f.remedy = "make the glued face larger, or add screws or dowels";
    }
    f.values = {{"area", glue.area, "m2"}, {"end_grain_area", glue.end_grain, "m2"}, {"shear_stress", shear, "Pa"}, {"resistance", resistance, "Pa"}, {"mean_strength", mean.value(), "Pa"}, {"wood_shear", strength->wood.value(), "Pa"}, {"grain_angle", angle, "rad"}};
    if (strength->glue) f.values.push_back({"glue_shear", strength->glue->value(), "Pa"});
    if (demand.tension > 0) {
        f.values.push_back({"tension_stress", demand.tension, "Pa"});
        f.values.push_back({"tension_resistance", tension_resistance, "Pa"});
    }
    f.working.push_back({"Glued side grain that counts (end grain counts as nothing)", "A", fmt::format("end grain left out: {} mm²", write_number(glue.end_grain * 1e6, 4)), glue.area, "m2", "geometry"});
    f.working.push_back({fmt::format("Demand: {}", demand.name), "F", demand.sum, demand.shear, "N", demand.source});
    f.working.push_back({"Mean shear stress", "τ = F/A", "", shear, "Pa", "mechanics"});
    for (WorkingStep& step : working) f.working.push_back(std::move(step));
    f.working.push_back({demand.proof ? "Resistance under proof loads, repeated use" : "Allowable stress under service loads", demand.proof ? "f = f05 × (2/3)/1.15" : "f = f05 k_dur/k", "f05 = mean (1 − 1.645 V), V = 14 %", resistance, "Pa",
                         demand.proof ? facts.number("repeated_use_share").cite.text() : duration_and_safety_divisor(facts, StrengthKind::shear, kind).cite.text()});
    if (demand.tension > 0) {
        f.working.push_back({"Tension across the grain at the edge of the face", "σ = F/A + F e/W", demand.sum, demand.tension, "Pa", demand.source});
        f.working.push_back({"Resistance across the grain", demand.proof ? "f = f05 × (2/3)/1.15, V = 25 %" : "f = f05 k_dur/k, V = 25 %", "", tension_resistance, "Pa", variation_of(facts, StrengthKind::tension_across).cite.text()});
        f.working.push_back({"What codes grant across the grain", "more than this always warns", "", granted.value, "Pa", granted.cite.text()});
        f.working.push_back({"Together", "u = √((τ/f)² + (σ/f_t)²)", "", use, "1", "interaction of strengths (engineering estimate)"});
    }
    gather_sources(f);
    return f;
}

Finding only_end_grain(const Prepared& prepared, const Contact& contact, const Joint& joint, const GluedArea& glue)
{
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.values = {{"area", 0.0, "m2"}, {"end_grain_area", glue.end_grain, "m2"}, {"shear_stress", 0.0, "Pa"}, {"resistance", 0.0, "Pa"}};
    const bool borne = bears_by_shape(joint, glue) || std::any_of(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return std::abs(p.normal[2]) > 0.9; });
    if (borne && joint.kind == JointKind::butt) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} meets {} with end grain only: the glue counts as nothing; it rests there, but nothing holds it sideways or up.", first, second);
        f.remedy = "use a tenon, dowels or screws, or tie the parts by aprons";
    } else if (borne) {
        f.headline = fmt::format("{} meets {} with end grain only: the glue counts as nothing, the {} must carry it.", first, second, name_of(joint.kind));
    } else {
        f.verdict = Verdict::fail;
        f.headline = fmt::format("{} is glued to {} by end grain alone: such glue counts as nothing, and nothing else holds it.", first, second);
        f.remedy = "use a tenon, dowels, a housing or screws";
    }
    f.working.push_back({"Glued end grain", "A", "", glue.end_grain, "m2", "geometry"});
    f.working.push_back({"End grain to anything counts as nothing", "f = 0", "at best 25 % of the tension along the grain, unreliable in practice", 0, "Pa", prepared.facts->cite("wood-handbook-2010", "ch. 10, p. 10-18 (retrieved)")});
    gather_sources(f);
    return f;
}

/// Contacts that are alike in every number that counts share one set of words.
std::string likeness(const Prepared& prepared, const Contact& contact, const GluedArea& glue, const Demand& demand)
{
    return fmt::format("{}|{:.9f}|{:.4f}|{:.3f}|{:.1f}|{}", pair_subject(prepared, contact), glue.area, glue.angle.value_or(-1), demand.shear, demand.tension, demand.proof ? 9 : static_cast<int>(demand.duration));
}

} // namespace

std::vector<Finding> check_glue_line(const Prepared& prepared)
{
    std::vector<Finding> findings;
    std::map<std::string, bool> seen;
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!has_glue(prepared, contact)) continue;
        const Joint& joint = prepared.piece->joints[*contact.joint];
        const PartState& a = prepared.state_of(contact.first);
        const PartState& b = prepared.state_of(contact.second);
        if (!a.loaded.shear || !b.loaded.shear || !a.loaded.tension_across || !b.loaded.tension_across) {
            keep_worst(findings, cannot_tell("glue-line", pair_subject(prepared, contact), fmt::format("The glue line cannot be judged: no strength is known for {}.", a.loaded.shear && a.loaded.tension_across ? b.species : a.species),
                                             "give [[wood]] properties with shear_strength and tension_across"));
            continue;
        }
        if (joint.kind == JointKind::tenon && !joint.tenon) {
            keep_worst(findings, cannot_tell("glue-line", pair_subject(prepared, contact), fmt::format("The glue of the tenon of {} in {} cannot be judged: its sizes are missing.", prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id),
                                             "tenon = { length = ..., width = ..., thickness = ... }"));
            continue;
        }
        const GluedArea glue = glued_area(contact, joint);
        if (glue.area <= 0) {
            keep_worst(findings, only_end_grain(prepared, contact, joint, glue));
            continue;
        }
        for (const Demand& demand : demands_at(prepared, c, glue)) {
            if (!seen.emplace(likeness(prepared, contact, glue, demand), true).second) continue;
            keep_worst(findings, judge(prepared, c, glue, demand));
        }
    }
    return findings;
}

} // namespace jointwright
