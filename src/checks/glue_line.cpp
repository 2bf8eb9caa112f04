// Is every glue line big enough, by the true relation of its grains, for what the whole frame asks of it?

#include "bond/glue_line.hpp"

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "checks/glue_demand.hpp"
#include "checks/screw_fallback.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

/// A demand held against what the glue line resists.
struct GlueUse {
    GlueStrength strength;
    WoodKind kind = WoodKind::hardwood; ///< of the weaker wood
    double angle = 0;                   ///< between the grains [rad]
    double shear = 0, resistance = 0;   ///< [Pa]
    double tension_resistance = 0;      ///< where the demand pulls [Pa]
    double use = 0, warns_to = 1;
};

GlueUse use_of(const Prepared& prepared, const Contact& contact, const GluedArea& glue, const GlueDemand& demand,
               Working& working)
{
    const Facts& facts = *prepared.facts;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const PartState& a = prepared.state_of(contact.first);
    const PartState& b = prepared.state_of(contact.second);
    GlueUse u;
    u.angle = glue.angle.value_or(0);
    u.strength = *glue_strength(facts, a.loaded, a.species, b.loaded, b.species, facts.find_glue(*joint.glue), glue.face, u.angle,
                                &working);
    u.kind = u.strength.weaker_wood == a.species ? a.loaded.kind : b.loaded.kind;
    u.resistance = demand.proof ? glue_proof_resistance(facts, u.strength.mean).value()
                                : glue_service_resistance(facts, u.kind, u.strength.mean, demand.duration).value();
    u.shear = demand.shear / glue.area;
    u.use = u.shear / u.resistance;
    u.warns_to = demand.proof ? proof_warn_limit(facts) : service_warn_limit(facts, StrengthKind::shear, u.kind);
    if (demand.tension <= 0) return u;
    const Stress weaker = std::min(a.loaded.tension_across->value, b.loaded.tension_across->value);
    u.tension_resistance =
        demand.proof
            ? proof_resistance(facts, StrengthKind::tension_across, weaker).value() * facts.number("repeated_use_share").value
            : service_resistance(facts, StrengthKind::tension_across, u.kind, weaker, demand.duration).value();
    const double t = demand.tension / u.tension_resistance;
    u.use = std::sqrt(u.use * u.use + t * t);
    return u;
}

Verdict verdict_of(const Facts& facts, const Joint& joint, const GluedArea& glue, const GlueDemand& demand, const GlueUse& u)
{
    if (u.use > u.warns_to) return demand.tension == 0 && bears_by_shape(joint, glue) ? Verdict::warn : Verdict::fail;
    const bool relied_on = !demand.lift && demand.tension > facts.number("lift_tension_granted").value;
    if (u.use > 1 || relied_on || demand.hangs) return Verdict::warn;
    return glue.face == GlueFace::mitre ? Verdict::warn : Verdict::pass;
}

std::string grain_words(const GluedArea& glue, double angle)
{
    if (glue.face == GlueFace::mitre) return "a mitre, half way to end grain";
    if (angle > 1.0) return "long grain on both faces, but the grains cross: a third of the shear strength counts";
    if (angle > 0.2) return fmt::format("grains at {:.0f}° to each other", angle * 57.29578);
    return "grains parallel, long grain to long grain: the full shear strength counts";
}

std::string headline_for(const std::string& first, const std::string& second, const GluedArea& glue, const GlueDemand& demand,
                         const GlueUse& u, Verdict verdict)
{
    if (verdict == Verdict::warn && u.use <= 1 && demand.tension > 0)
        return fmt::format(
            "The glue between {} and {} holds with {} ({:.0f} % used), but across the grain it should not be asked to.", first,
            second, demand.name, u.use * 100);
    const char* held = verdict == Verdict::fail ? "is too weak" : u.use > 1 ? "is loaded beyond the customary margin" : "holds";
    return fmt::format("The glue between {} and {} ({}) {}: {:.0f} % used with {}.", first, second, grain_words(glue, u.angle),
                       held, u.use * 100, demand.name);
}

std::string remedy_for(const std::string& first, const GluedArea& glue, const GlueDemand& demand)
{
    if (demand.hangs)
        return fmt::format("hold {} by screws, a housing or a ledge under it: glue should not carry by a pull across the grain",
                           first);
    if (demand.tension > 0)
        return fmt::format("keep pulls off this glue: lift the piece by its frame, not by {}, or add a screw from below at each "
                           "place, slotted where the grain crosses",
                           first);
    if (glue.face == GlueFace::mitre) return "key, spline or dowel the mitre";
    return "make the glued face larger, or add screws or dowels";
}

std::vector<NamedValue> values_of(const GluedArea& glue, const GlueDemand& demand, const GlueUse& u)
{
    std::vector<NamedValue> values = {{"area", glue.area, "m2"},
                                      {"end_grain_area", glue.end_grain, "m2"},
                                      {"shear_stress", u.shear, "Pa"},
                                      {"resistance", u.resistance, "Pa"},
                                      {"mean_strength", u.strength.mean.value(), "Pa"},
                                      {"wood_shear", u.strength.wood.value(), "Pa"},
                                      {"grain_angle", u.angle, "rad"}};
    if (u.strength.glue) values.push_back({"glue_shear", u.strength.glue->value(), "Pa"});
    if (demand.tension > 0) {
        values.push_back({"tension_stress", demand.tension, "Pa"});
        values.push_back({"tension_resistance", u.tension_resistance, "Pa"});
    }
    return values;
}

/// @param strength  steps of the mean strength, as glue_strength wrote them
Working working_of(const Facts& facts, const GluedArea& glue, const GlueDemand& demand, const GlueUse& u, Working strength)
{
    Working w;
    w.push_back({"Glued side grain that counts (end grain counts as nothing)", "A",
                 fmt::format("end grain left out: {} mm²", write_number(glue.end_grain * 1e6, 4)), glue.area, "m2", "geometry"});
    // A lift or a pull shears nothing: its own steps come below.
    if (demand.shear > 0 || demand.tension == 0) {
        w.push_back({fmt::format("Demand: {}", demand.name), "F", demand.sum, demand.shear, "N", demand.source});
        w.push_back({"Mean shear stress", "τ = F/A", "", u.shear, "Pa", "mechanics"});
    }
    for (WorkingStep& step : strength) w.push_back(std::move(step));
    w.push_back({demand.proof ? "Resistance under proof loads, repeated use" : "Allowable stress under service loads",
                 demand.proof ? "f = f05 × (2/3)/1.15" : "f = f05 k_dur/k", "f05 = mean (1 − 1.645 V), V = 14 %", u.resistance,
                 "Pa",
                 demand.proof ? facts.number("repeated_use_share").cite.text()
                              : duration_and_safety_divisor(facts, StrengthKind::shear, u.kind).cite.text()});
    if (demand.tension <= 0) return w;
    const Datum<double>& granted = facts.number("lift_tension_granted");
    w.push_back({fmt::format("Tension across the grain at the edge of the face: {}", demand.name), "σ = F/A + F e/W", demand.sum,
                 demand.tension, "Pa", demand.source});
    w.push_back({"Resistance across the grain", demand.proof ? "f = f05 × (2/3)/1.15, V = 25 %" : "f = f05 k_dur/k, V = 25 %", "",
                 u.tension_resistance, "Pa", variation_of(facts, StrengthKind::tension_across).cite.text()});
    w.push_back({"What codes grant across the grain", "more than this always warns, but where the piece is only lifted by it", "",
                 granted.value, "Pa", granted.cite.text()});
    w.push_back({"Together", "u = √((τ/f)² + (σ/f_t)²)", "", u.use, "1", "interaction of strengths (engineering estimate)"});
    return w;
}

Finding judge(const Prepared& prepared, std::size_t c, const GluedArea& glue, const GlueDemand& demand)
{
    const Contact& contact = prepared.layout->contacts[c];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const std::string &species = prepared.state_of(contact.first).species, &other = prepared.state_of(contact.second).species;
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    Working strength;
    const GlueUse u = use_of(prepared, contact, glue, demand, strength);
    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name,
                          species == other ? species : species + " on " + other);
    f.utilisation = u.use;
    f.fails_from = u.warns_to;
    f.verdict = verdict_of(*prepared.facts, joint, glue, demand, u);
    f.headline = headline_for(first, second, glue, demand, u, f.verdict);
    if (f.verdict != Verdict::pass) {
        f.remedy = remedy_for(first, glue, demand);
        const Point& through = (glue.largest ? *glue.largest : contact.patches.front()).normal;
        const std::string screws =
            screwed_instead(prepared, contact, {demand.shear, demand.pull, demand.pull * demand.lever, demand.duration, through});
        if (!screws.empty()) *f.remedy += "; " + screws;
    }
    f.values = values_of(glue, demand, u);
    f.working = working_of(*prepared.facts, glue, demand, u, std::move(strength));
    gather_sources(f);
    return f;
}

Finding only_end_grain(const Prepared& prepared, std::size_t c, const Joint& joint, const GluedArea& glue)
{
    const Contact& contact = prepared.layout->contacts[c];
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.values = {
        {"area", 0.0, "m2"}, {"end_grain_area", glue.end_grain, "m2"}, {"shear_stress", 0.0, "Pa"}, {"resistance", 0.0, "Pa"}};
    const bool borne = bears_by_shape(joint, glue) || std::any_of(contact.patches.begin(), contact.patches.end(),
                                                                  [](const Patch& p) { return std::abs(p.normal[2]) > 0.9; });
    if (borne && joint.kind == JointKind::butt) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format(
            "{} meets {} with end grain only: the glue counts as nothing; it rests there, but nothing holds it sideways or up.",
            first, second);
        f.remedy = "use a tenon, dowels or screws, or tie the parts by aprons";
    } else if (borne) {
        f.headline = fmt::format("{} meets {} with end grain only: the glue counts as nothing, the {} must carry it.", first,
                                 second, name_of(joint.kind));
    } else {
        f.verdict = Verdict::fail;
        f.headline = fmt::format("{} is glued to {} by end grain alone: such glue counts as nothing, and nothing else holds it.",
                                 first, second);
        f.remedy = "use a tenon, dowels, a housing or screws";
    }
    if (f.verdict != Verdict::pass) {
        const std::string screws = screwed_instead(prepared, contact, hardest_need(prepared, c));
        if (!screws.empty()) *f.remedy += "; " + screws;
    }
    f.working.push_back({"Glued end grain", "A", "", glue.end_grain, "m2", "geometry"});
    f.working.push_back({"End grain to anything counts as nothing", "f = 0",
                         "at best 25 % of the tension along the grain, unreliable in practice", 0, "Pa",
                         prepared.facts->cite("wood-handbook-2010", "ch. 10, p. 10-18 (retrieved)")});
    gather_sources(f);
    return f;
}

/// Contacts that are alike in every number that counts share one set of words.
std::string likeness(const Prepared& prepared, const Contact& contact, const GluedArea& glue, const GlueDemand& demand)
{
    return fmt::format("{}|{:.9f}|{:.4f}|{:.3f}|{:.1f}|{}", pair_subject(prepared, contact), glue.area, glue.angle.value_or(-1),
                       demand.shear, demand.tension, demand.proof ? 9 : static_cast<int>(demand.duration));
}

/// What keeps a glued contact from being judged, as a finding that cannot tell.
std::optional<Finding> what_is_missing(const Prepared& prepared, const Contact& contact, const Joint& joint)
{
    const PartState& a = prepared.state_of(contact.first);
    const PartState& b = prepared.state_of(contact.second);
    const bool first_known = a.loaded.shear && a.loaded.tension_across, second_known = b.loaded.shear && b.loaded.tension_across;
    if (!first_known || !second_known)
        return cannot_tell(
            "glue-line", pair_subject(prepared, contact),
            fmt::format("The glue line cannot be judged: no strength is known for {}.", first_known ? b.species : a.species),
            "give [[wood]] properties with shear_strength and tension_across");
    if (joint.kind == JointKind::tenon && !joint.tenon)
        return cannot_tell("glue-line", pair_subject(prepared, contact),
                           fmt::format("The glue of the tenon of {} in {} cannot be judged: its sizes are missing.",
                                       prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id),
                           "tenon = { length = ..., width = ..., thickness = ... }");
    return std::nullopt;
}

} // namespace

std::vector<Finding> check_glue_line(const Prepared& prepared)
{
    std::vector<Finding> findings;
    std::set<std::string> seen;
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!has_glue(prepared, contact)) continue;
        const Joint& joint = prepared.piece->joints[*contact.joint];
        if (auto missing = what_is_missing(prepared, contact, joint)) {
            keep_worst(findings, *std::move(missing));
            continue;
        }
        const GluedArea glue = glued_area(contact, joint);
        if (glue.area <= 0) {
            keep_worst(findings, only_end_grain(prepared, c, joint, glue));
            continue;
        }
        for (const GlueDemand& demand : glue_demands(prepared, c, glue))
            if (seen.insert(likeness(prepared, contact, glue, demand)).second)
                keep_worst(findings, judge(prepared, c, glue, demand));
    }
    return findings;
}

} // namespace jointwright
