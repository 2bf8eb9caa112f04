#include "bond/joint_capacity.hpp"

#include "bond/joint_forms.hpp"
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

bool is_mitred(JointForm form) { return form == JointForm::mitre || form == JointForm::splined_mitre; }

/// Lower of both; where there is no published expression the glue line rules. Pegs and shape are there when the glue has gone.
void settle(const Facts& facts, JointCapacity& c, std::string_view expression, Working* working)
{
    const Datum<double>& share = facts.number("joint_lower_share");
    const bool published_lower = c.published && *c.published < c.glue_line;
    c.mean = published_lower ? *c.published : c.glue_line;
    c.governs = published_lower ? std::string(expression) : "the glue line";
    if (c.pegged > c.mean) {
        c.mean = c.pegged;
        c.governs = "the pegs";
    }
    if (c.shape > c.mean) {
        c.mean = c.shape;
        c.governs = "its shape";
    }
    c.withdrawal = std::max({c.withdrawal, c.pegs, c.wedge});
    c.lower = c.mean * share.value;
    if (!working) return;
    const bool glue = c.mean == c.glue_line || published_lower;
    working->push_back({fmt::format("Mean moment: {} governs", c.governs),
                        c.published ? "the lower of the two"
                        : glue      ? ""
                                    : "more than glue gives, and not added to it",
                        "", c.mean.value(), "N m", "engineering estimate: the cautious of two opinions"});
    working->push_back({"Lower moment: one joint in twenty is weaker", "M05 = 0.75 M",
                        fmt::format("share {}", write_number(share.value, 3)), c.lower.value(), "N m", share.cite.text()});
    working->push_back(
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

std::string joint_factor_formula(const Facts& facts, JointForm form, DemandKind demand, std::string_view level)
{
    const std::string lower = write_number(facts.number("joint_lower_share").value, 3);
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
    if (!woods.rail->shear || !woods.post->shear) return std::nullopt;
    if (form == JointForm::finger && !woods.rail->bending_strength) return std::nullopt;
    if (is_mitred(form) && (!woods.rail->tension_across || !woods.post->tension_across)) return std::nullopt;
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
    case JointForm::mitre: mitre_strength(ground, c); break;
    case JointForm::splined_mitre: splined_mitre_strength(ground, c); break;
    case JointForm::keyed_mitre: keyed_mitre_strength(ground, c); break;
    }
    if (form == JointForm::tenon || form == JointForm::bridle) pegs_strength(ground, c);
    c.by_shape = is_let_in(form);
    c.advice = proportion_advice(form, sizes);
    settle(facts, c, expression, working);
    return c;
}

} // namespace jointwright
