// Is every glue line big enough, by the true relation of its grains, for what the whole frame asks of it?

#include "bond/glue/glue_line.hpp"

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/glue_demand.hpp"
#include "judging/joints/glue_use.hpp"
#include "judging/joints/held_elsewhere.hpp"
#include "judging/joints/screw_fallback.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

Verdict verdict_of(const Facts& facts, const Joint& joint, const GluedArea& glue, const GlueDemand& demand, const GlueUse& u)
{
    if (u.use > u.warns_to) return demand.tension == 0 && bears_by_shape(joint, glue) ? Verdict::warn : Verdict::fail;
    const bool relied_on = !demand.lift && !demand.lies && demand.tension > facts.number("lift_tension_granted").value;
    if (u.use > 1 || relied_on || demand.hangs) return Verdict::warn;
    return glue.face == GlueFace::mitre && !is_reinforced(joint) ? Verdict::warn : Verdict::pass;
}

/// What reinforces a mitre, in words.
std::string slip_words(const Joint& joint)
{
    return joint.keys ? "its keys hold" : joint.spline ? "its spline holds" : "its dowels hold";
}

std::string grain_words(const GluedArea& glue, double angle)
{
    if (glue.face == GlueFace::mitre) return "a mitre, half way to end grain";
    if (angle > 1.0) return "long grain on both faces, but the grains cross: a third of the shear strength counts";
    if (angle > 0.2) return fmt::format("grains at {:.0f}° to each other", angle * 57.29578);
    return "grains parallel, long grain to long grain: the full shear strength counts";
}

std::string headline_for(const std::string& first, const std::string& second, const Joint& joint, const GluedArea& glue,
                         const GlueDemand& demand, const GlueUse& u, Verdict verdict)
{
    if (glue.face == GlueFace::mitre && u.use <= 1 && verdict != Verdict::fail)
        return is_reinforced(joint)
                   ? fmt::format("The glue in the mitre of {} and {} bears {:.0f} % of what it may with {}; {} it besides.",
                                 first, second, u.use * 100, demand.name, slip_words(joint))
                   : fmt::format(
                         "The mitre of {} and {} is held by its glue alone, half way to end grain: {:.0f} % used with {}, but "
                         "such glue is not to be relied on.",
                         first, second, u.use * 100, demand.name);
    if (u.peeled && u.use > 1)
        return fmt::format("Lifted by its edge, {} peels off {}: {:.0f} % used with {}, long before the glue would shear.", first,
                           second, u.use * 100, demand.name);
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
    if (glue.face == GlueFace::mitre) return "key, spline or dowel the mitre";
    if (demand.hangs)
        return fmt::format("hold {} by screws, a housing or a ledge under it: glue should not carry by a pull across the grain",
                           first);
    if (demand.tension > 0)
        return fmt::format("keep pulls off this glue: lift the piece by its frame, not by {}, or add a screw from below at each "
                           "place, slotted where the grain crosses",
                           first);
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
    values.push_back({"twist_stress", u.patch.twisting.value(), "Pa"});
    if (demand.peel > 0) {
        values.push_back({"peel_stress", demand.peel, "Pa"});
        values.push_back({"use_without_peel", u.patch.use, "1"});
    }
    if (u.end_peak) values.push_back({"end_peak", *u.end_peak, "1"});
    if (u.rolling) values.push_back({"resistance_rolling", *u.rolling, "Pa"});
    return values;
}

/// How the resistance to a kind of load comes from the mean, and where the figure that makes it is from.
WorkingStep resistance_step(const Facts& facts, DemandKind demand, std::string_view level, const GlueUse& u)
{
    const char* scatter = "f05 = mean (1 − 1.645 V), V = 14 %";
    if (demand == DemandKind::service)
        return {"Allowable stress under service loads",
                "f = f05 k_dur/k",
                scatter,
                u.resistance,
                "Pa",
                duration_and_safety_divisor(facts, StrengthKind::shear, u.kind).cite.text()};
    if (demand != DemandKind::durability)
        return {"Resistance under a proof load",          "f = f05/1.15", scatter, u.resistance, "Pa",
                facts.number("proof_divisor").cite.text()};
    const Datum<double> share = lasting_share(facts, false, level);
    return {"Resistance that outlasts the repeats of a durability load",
            fmt::format("f = {} f05", write_number(share.value, 3)),
            scatter,
            u.resistance,
            "Pa",
            share.cite.text()};
}

/// @param strength  steps of the mean strength, as glue_strength wrote them
Working working_of(const Facts& facts, std::string_view level, const GluedArea& glue, const GlueDemand& demand, const GlueUse& u,
                   Working strength)
{
    Working w;
    w.push_back({"Glued side grain that counts (end grain counts as nothing)", "A",
                 fmt::format("end grain left out: {} mm²", write_number(glue.end_grain * 1e6, 4)), glue.area, "m2", "geometry"});
    w.push_back({fmt::format("Demand: {}", demand.name), "F, T, N, M", demand.sum, demand.shear, "N", demand.source});
    for (WorkingStep& step : strength) w.push_back(std::move(step));
    if (u.fit < 1)
        w.push_back({"Share of it left by the clearance (a straight line, no published curve)", "f = share × f", "", u.fit, "1",
                     facts.number("lost_glue_line").cite.text()});
    w.push_back(resistance_step(facts, demand.kind, level, u));
    if (u.rolling)
        w.push_back({fmt::format("Resistance where the push runs across the grain of {}, whose fibres roll", u.rolls),
                     "f0 f90/(f0 sin²θ + f90 cos²θ) by the angle between push and grain, f90 = f0/3", "", *u.rolling, "Pa",
                     facts.number("crossed_grain_share").cite.text()});
    if (demand.tension > 0)
        w.push_back({"Resistance across the grain", resistance_step(facts, demand.kind, level, u).formula + ", V = 25 %", "",
                     u.tension_resistance, "Pa", variation_of(facts, StrengthKind::tension_across).cite.text()});
    for (const WorkingStep& step : u.working) w.push_back(step);
    if (u.end_peak)
        w.push_back({"Stress at the ends of the face over its mean (shown, not counted: strengths are means of whole faces)",
                     "(βl/2) coth(βl/2)", "", *u.end_peak, "1", facts.source("volkersen-1938")});
    if (demand.peel > 0) {
        w.push_back({"Peeling, checked apart: the edge that the lift opens", "σ = F/A + 6 F e/(b a²)",
                     fmt::format("F = {} N, e = {} mm", write_number(demand.pull, 3), write_number(demand.lever * 1e3, 3)),
                     demand.peel, "Pa", "mechanics"});
        w.push_back({"Share used by peeling", "σ/f_t", "", demand.peel / u.tension_resistance, "1", "mechanics"});
    }
    if (demand.tension <= 0) return w;
    const Datum<double>& granted = facts.number("lift_tension_granted");
    w.push_back({"What codes grant across the grain", "more than this always warns, but where the piece is only lifted by it", "",
                 granted.value, "Pa", granted.cite.text()});
    return w;
}

/// A gap that the glue cannot fill leaves nothing: no share of it can be told.
Finding fills_no_gap(const Prepared& prepared, const Contact& contact, const Joint& joint)
{
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.verdict = Verdict::fail;
    f.headline = fmt::format("The glue between {} and {} holds nothing: {} does not fill a gap of {}.", first, second,
                             joint.glue.value_or("it"), small_words(prepared, in_metres(joint.clearance)));
    f.remedy = "cut the joint closer, or take a glue that fills such a gap";
    f.values = {{"resistance", 0.0, "Pa"}};
    return f;
}

Finding judge(const Prepared& prepared, std::size_t c, const GluedArea& glue, const GlueDemand& demand)
{
    const Contact& contact = prepared.layout->contacts[c];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const std::string &species = prepared.state_of(contact.first).species, &other = prepared.state_of(contact.second).species;
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    if (share_left_by_fit(*prepared.facts, joint) <= 0) return fills_no_gap(prepared, contact, joint);
    Working strength;
    const GlueUse u = use_of_glue(prepared, contact, glue, demand, strength);
    Finding f;
    f.check = "glue-line";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name,
                          species == other ? species : species + " on " + other);
    f.about.copies = {contact.first, contact.second};
    f.utilisation = u.use;
    f.fails_from = u.warns_to;
    f.verdict = verdict_of(*prepared.facts, joint, glue, demand, u);
    f.headline = headline_for(first, second, joint, glue, demand, u, f.verdict);
    if (f.verdict != Verdict::pass) {
        f.remedy = remedy_for(first, glue, demand);
        const Point& through = (glue.largest ? *glue.largest : contact.patches.front()).normal;
        offer_screws(f.remedy, prepared, contact,
                     {demand.shear, demand.pull, demand.pull * demand.lever, demand.duration, through});
    }
    f.values = values_of(glue, demand, u);
    f.working = working_of(*prepared.facts, name_of(prepared.piece->limits.level), glue, demand, u, std::move(strength));
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
    f.about.copies = {contact.first, contact.second};
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
                                 second, joint.kind == JointKind::dowel ? "dowels" : std::string(name_of(joint.kind)));
    } else if (const auto held = held_elsewhere(prepared, c)) {
        const Contact& by = prepared.layout->contacts[held->by];
        f.verdict = held->close ? Verdict::pass : Verdict::warn;
        f.headline = fmt::format("{} meets {} with end grain, where glue counts as nothing; {} holds it{}.", first, second,
                                 pair_place(prepared, by), held->close ? " there" : ", but nothing beside this face does");
        if (!held->close) f.remedy = "use a tenon, dowels, a housing or screws here too, or glue a block into the corner";
    } else {
        f.verdict = Verdict::fail;
        f.headline = fmt::format("{} is glued to {} by end grain alone: such glue counts as nothing, and nothing else holds it.",
                                 first, second);
        f.remedy = "use a tenon, dowels, a housing or screws";
    }
    if (f.verdict != Verdict::pass) offer_screws(f.remedy, prepared, contact, hardest_need(prepared, c));
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
                       demand.shear, demand.tension, static_cast<int>(demand.kind) * 8 + static_cast<int>(demand.duration));
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

/// The strip of long grain at the stopped end of a housing or groove: the recess bears, not the strip. It looks along the run of the recess. Long grain
/// at the bottom does not, however much end grain stands beside it: a narrow bead let in across the grain is glued there.
bool is_stop_of_recess(const Joint& joint, const Contact& contact, const GluedArea& glue)
{
    constexpr double strip = 0.25; // of the end grain
    if ((joint.kind != JointKind::housing && joint.kind != JointKind::groove) || !contact.shared) return false;
    std::size_t run = 0;
    for (const Axis axis : {Axis::y, Axis::z})
        if (contact.shared->size(axis) > contact.shared->size(static_cast<Axis>(run))) run = index_of(axis);
    const bool only_stops = std::all_of(contact.patches.begin(), contact.patches.end(), [&](const Patch& p) {
        return p.end_grain_first || p.end_grain_second || std::abs(p.normal[run]) > 0.7;
    });
    return only_stops && glue.area < strip * glue.end_grain;
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
        if (glue.area <= 0 || is_stop_of_recess(joint, contact, glue)) {
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
