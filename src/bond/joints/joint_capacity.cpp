#include "bond/joints/joint_capacity.hpp"

#include "bond/joints/joint_forms.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

bool is_let_in(JointForm form)
{
    switch (form) {
    case JointForm::lap:
    case JointForm::finger:
    case JointForm::mitre:
    case JointForm::splined_mitre:
    case JointForm::keyed_mitre: return false;
    default: return true;
    }
}

/// A tenon breaks in bending, a mitre and a lap are torn open: strengths without which nothing can be told.
bool lacks_strength(JointForm form, const JointWoods& woods)
{
    const WoodState &rail = *woods.rail, &post = *woods.post;
    if (!rail.shear || !post.shear) return true;
    switch (form) {
    case JointForm::tenon:
    case JointForm::loose_tenon:
    case JointForm::bridle:
    case JointForm::finger: return !rail.bending_strength;
    case JointForm::lap: return !rail.tension_across || !post.tension_across;
    case JointForm::mitre:
    case JointForm::splined_mitre:
    case JointForm::keyed_mitre:
        return !rail.tension_across || !post.tension_across || !rail.bending_strength || !post.bending_strength;
    default: return false;
    }
}

/// Everything of a joint but its pegs, by a share that tests told.
void lessen(const JointGround& g, const Datum<double>& share, const char* says, JointCapacity& c)
{
    for (Moment* m : {&c.glue_line, &c.tongue, &c.flat, &c.twist, &c.torsion}) *m *= share.value;
    if (c.published) *c.published *= share.value;
    c.withdrawal *= share.value;
    g.say({says, "× share", "", share.value, "1", share.cite.text()});
}

/// A hole through a glued tenon weakens it; the peg in it is not added to the glue.
void lessen_by_holes(const JointGround& g, JointCapacity& c)
{
    if (g.sizes.pegs.count < 1 || !g.woods.glue) return;
    lessen(g, g.facts.number("pegged_glued_share"),
           "A glued tenon with a peg through it, over one without: everything of it but the pegs themselves", c);
}

/// The lowest of what draws the joint apart and of its own section. Pegs and shape are there when the glue has gone.
void settle(const JointGround& g, JointCapacity& c, std::string_view expression)
{
    const bool published_lower = c.published && *c.published < c.glue_line;
    c.mean = published_lower ? *c.published : c.glue_line;
    if (published_lower || c.governs.empty()) c.governs = published_lower ? std::string(expression) : "the glue line";
    if (c.pegged > c.mean) {
        c.mean = c.pegged;
        c.governs = "the pegs";
    }
    if (c.shape > c.mean) {
        c.mean = c.shape;
        c.governs = "its shape";
    }
    const bool glue = c.mean == c.glue_line || published_lower;
    if (c.tongue.value() > 0 && c.tongue < c.mean) {
        c.mean = c.tongue;
        c.governs = "its own section, which breaks";
    }
    c.withdrawal = std::max({c.withdrawal, c.pegs, c.wedge});
    c.lower = c.mean * c.lower_share;
    g.say({fmt::format("Mean moment: {} governs", c.governs),
           c.published || c.tongue.value() > 0 ? "the lowest of them"
           : glue                              ? ""
                                               : "more than glue gives, and not added to it",
           "", c.mean.value(), "N m", "engineering estimate: the cautious of all opinions"});
    g.say(
        {"Lower moment: one joint in twenty is weaker", "M05 = share × M",
         fmt::format("share {}", write_number(c.lower_share, 3)), c.lower.value(), "N m",
         g.facts
             .number(c.lower_share == g.facts.number("joint_lower_share").value ? "joint_lower_share" : "joint_lower_share_other")
             .cite.text()});
    g.say(
        {"Mean withdrawal, pulled straight out", "the most of glue, pegs and wedge", "", c.withdrawal.value(), "N", "mechanics"});
}

} // namespace

std::string_view name_of(JointForm form)
{
    switch (form) {
    case JointForm::tenon: return "tenon";
    case JointForm::loose_tenon: return "loose tenon";
    case JointForm::bridle: return "bridle";
    case JointForm::lap: return "lap";
    case JointForm::dowels: return "dowels";
    case JointForm::housing: return "housing";
    case JointForm::groove: return "groove";
    case JointForm::dovetail: return "dovetail";
    case JointForm::sliding_dovetail: return "sliding dovetail";
    case JointForm::finger: return "finger joint";
    case JointForm::mitre: return "mitre";
    case JointForm::splined_mitre: return "splined mitre";
    case JointForm::keyed_mitre: return "keyed mitre";
    }
    return "tenon";
}

Moment tenon_expression(const Facts& facts, Length rail_depth, Length tenon_width, Length tenon_length, Stress shear)
{
    const double pounds_inches = facts.number("tenon_expression_glue_and_fit").value *
                                 (facts.number("tenon_expression_rail").value * in_inches(rail_depth) +
                                  facts.number("tenon_expression_width").value * in_inches(tenon_width)) *
                                 std::pow(in_inches(tenon_length), facts.number("tenon_expression_exponent").value) *
                                 shear.value() / kPascalsPerPsi;
    return newton_metres(pounds_inches * kNewtonsPerPoundForce * kMetresPerInch);
}

Force dowel_expression(const Facts& facts, Length diameter, Length depth, Stress member_shear, Stress dowel_shear)
{
    const double shears =
        (facts.number("dowel_expression_member").value * member_shear.value() + dowel_shear.value()) / kPascalsPerPsi;
    const double pounds = facts.number("dowel_expression").value * in_inches(diameter) *
                          std::pow(in_inches(depth), facts.number("dowel_expression_exponent").value) * shears;
    return newtons(pounds * kNewtonsPerPoundForce);
}

double joint_service_factor(const Facts& facts, WoodKind kind, LoadDuration duration)
{
    return facts.number("joint_lower_share").value * duration_factor(facts, duration).value /
           duration_and_safety_divisor(facts, StrengthKind::shear, kind).value;
}

double joint_proof_factor(const Facts& facts)
{
    return facts.number("joint_lower_share").value / facts.number("proof_divisor").value;
}

namespace {

/// Loose tenons are taken as the rectangular ones that were tested, which keep the least.
Datum<double> share_that_lasts(const Facts& facts, JointForm form, std::string_view level)
{
    return lasting_share(facts, form == JointForm::tenon || form == JointForm::loose_tenon, level);
}

} // namespace

double joint_durability_factor(const Facts& facts, JointForm form, std::string_view level)
{
    return facts.number("joint_lower_share").value * share_that_lasts(facts, form, level).value;
}

double joint_factor(const Facts& facts, JointForm form, DemandKind demand, LoadDuration duration, WoodKind kind,
                    std::string_view level)
{
    switch (demand) {
    case DemandKind::service: return joint_service_factor(facts, kind, duration);
    case DemandKind::durability: return joint_durability_factor(facts, form, level);
    case DemandKind::hard_sitting:
    case DemandKind::proof: return joint_proof_factor(facts);
    }
    return joint_service_factor(facts, kind, duration);
}

std::string joint_factor_formula(const Facts& facts, JointForm form, DemandKind demand, std::string_view level,
                                 double lower_share)
{
    const std::string lower = write_number(lower_share, 3);
    switch (demand) {
    case DemandKind::service: return lower + " k_dur/k";
    case DemandKind::durability: return lower + " × " + write_number(share_that_lasts(facts, form, level).value, 3);
    case DemandKind::hard_sitting:
    case DemandKind::proof: return lower + "/" + write_number(facts.number("proof_divisor").value, 3);
    }
    return lower;
}

std::string joint_factor_source(const Facts& facts, JointForm form, DemandKind demand, std::string_view level)
{
    if (demand == DemandKind::durability) return share_that_lasts(facts, form, level).cite.text();
    return facts.number(demand == DemandKind::service ? "joint_lower_share" : "proof_divisor").cite.text();
}

std::optional<JointCapacity> joint_capacity(const Facts& facts, JointForm form, const JointSizes& sizes, const JointWoods& woods,
                                            Working* working)
{
    if (lacks_strength(form, woods)) return std::nullopt;
    const JointGround ground{facts, sizes, woods, working};
    JointCapacity c;
    std::string_view expression = "the published expression";
    switch (form) {
    case JointForm::tenon: expression = tenon_strength(ground, false, c); break;
    case JointForm::loose_tenon: expression = tenon_strength(ground, true, c); break;
    case JointForm::bridle:
    case JointForm::lap: twisted_faces_strength(ground, form, c); break;
    case JointForm::dowels: expression = dowels_strength(ground, c); break;
    case JointForm::housing:
    case JointForm::groove: housing_strength(ground, form, c); break;
    case JointForm::dovetail: dovetail_strength(ground, c); break;
    case JointForm::sliding_dovetail: sliding_dovetail_strength(ground, c); break;
    case JointForm::finger: expression = finger_strength(ground, c); break;
    case JointForm::mitre: mitre_face_strength(ground, c); break;
    case JointForm::splined_mitre: splined_mitre_strength(ground, c); break;
    case JointForm::keyed_mitre: keyed_mitre_strength(ground, c); break;
    }
    if (form == JointForm::loose_tenon)
        lessen(ground, facts.number("loose_tenon_share"), "A loose tenon over one cut on the rail", c);
    if (form == JointForm::tenon || form == JointForm::bridle) {
        pegs_strength(ground, c);
        lessen_by_holes(ground, c);
    }
    const bool tenon = form == JointForm::tenon || form == JointForm::loose_tenon;
    c.lower_share = facts.number(tenon ? "joint_lower_share" : "joint_lower_share_other").value;
    c.by_shape = is_let_in(form);
    c.advice = proportion_advice(form, sizes);
    settle(ground, c, expression);
    return c;
}

} // namespace jointwright
