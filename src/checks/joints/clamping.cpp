// How hard, with how many clamps and where every glue line is to be pressed.

#include "bond/glue/clamping.hpp"

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/pressed_face.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

std::string clamps_words(int clamps) { return clamps == 1 ? "one clamp" : fmt::format("{} clamps", clamps); }

std::string places_words(const Prepared& prepared, const PressedFace& pressed, const ClampPlan& plan)
{
    if (plan.clamps == 1) return fmt::format("over its middle, {}", pressed.across);
    if (plan.rows > 1 && plan.clamps == 2) return fmt::format("at the ends of a board across its middle, {}", pressed.across);
    const std::string rows = plan.rows > 1 ? ", at either end of boards across it" : "";
    return fmt::format("{} apart{} and the first {} from the end, {}", size_words(prepared, in_metres(plan.spacing)), rows,
                       size_words(prepared, in_metres(plan.spacing) / 2), pressed.across);
}

std::string caul_words(const Prepared& prepared, const ClampPlan& plan)
{
    std::string words;
    if (plan.caul) words = fmt::format(", over cauls or pads at least {} wide", write_length_up(*plan.caul, prepared.units));
    if (plan.board)
        words += fmt::format("{} board at least {} deep to spread it", plan.caul ? " and a" : ", over a",
                             write_length_up(*plan.board, prepared.units));
    return words;
}

/// Tells how one face is pressed: advice, without a share, and at most a warning. What is never asked for is to squeeze it all out: the force
/// is an aim, not a least.
Finding judge(const Prepared& prepared, const PressedFace& pressed, const GlueRecord& glue, double glued_area_m2,
              const std::string& subject, const std::string& place)
{
    const Facts& facts = *prepared.facts;
    Finding f;
    f.check = "clamping";
    f.subject = subject;
    f.where = place;
    const ClampPlan plan = clamp_plan(facts, pressed.face, pressed.density, &glue, &f.working);
    f.weight = plan.force.value();
    const std::string aim = pressed.pulls_shoulders
                                ? fmt::format(", until the shoulders are tight; {} by their fit alone", pressed.fitted)
                                : fmt::format(" ({} on {}), until a thin bead shows all along, no harder",
                                              write_stress(plan.reached), pressed.denser);
    f.headline = fmt::format("Press {} with {} {}{}: about {} each{}.", subject, clamps_words(plan.clamps),
                             places_words(prepared, pressed, plan), caul_words(prepared, plan),
                             write_force(plan.per_clamp, prepared.units), aim);
    if (!plan.enough && !pressed.pulls_shoulders) {
        f.verdict = Verdict::warn;
        f.headline.pop_back();
        f.headline +=
            fmt::format("; {} are wanted, so the faces have to be flat and the glue thin and even.", write_stress(plan.pressure));
        f.remedy = "glue it in narrower strips or fewer layers at a time, press it under stiff boards between screws or in a "
                   "veneer press, or use a glue that fills gaps and needs little pressure";
    }
    f.values = {{"pressure", plan.pressure.value(), "Pa"},         {"force", plan.force.value(), "N"},
                {"clamps", static_cast<double>(plan.clamps), "1"}, {"force_per_clamp", plan.per_clamp.value(), "N"},
                {"pressure_reached", plan.reached.value(), "Pa"},  {"spacing", in_metres(plan.spacing), "m"}};
    if (plan.board) f.values.push_back({"caul_depth", in_metres(*plan.board), "m"});
    if (plan.caul) f.values.push_back({"caul", in_metres(*plan.caul), "m"});
    if (const auto mass = glue_quantity(facts, glue, square_metres(glued_area_m2), &f.working))
        f.values.push_back({"glue_mass", mass->value(), "kg"});
    gather_sources(f);
    return f;
}

Finding wedged(const Prepared& prepared, const Contact& contact)
{
    Finding f;
    f.check = "clamping";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    const auto& tails = prepared.piece->joints[*contact.joint].dovetail;
    f.headline =
        tails && tails->slope == 0
            ? fmt::format("{} presses its fingers by their fit: clamp the corner both ways, over blocks beside the fingers, "
                          "until it is closed and square.",
                          f.subject)
            : fmt::format("{} wedges itself: drive it home and clamp only until it is closed and square.", f.subject);
    f.sources = {prepared.facts->cite("common-practice", "dovetails press their own cheeks")};
    return f;
}

/// No force without a density; a piece does not hang on it.
Finding without_density(const Prepared& prepared, const Contact& contact, const std::string& missing)
{
    Finding f;
    f.check = "clamping";
    f.subject = pair_subject(prepared, contact);
    f.verdict = Verdict::warn;
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.headline = fmt::format("Press {} until a thin bead shows all along; with how much force is not told: {} is missing.",
                             f.subject, missing);
    f.remedy = "give the density of the wood";
    f.sources = {prepared.facts->cite("common-practice", "a thin bead all along")};
    return f;
}

} // namespace

std::vector<Finding> check_clamping(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Piece& piece = *prepared.piece;
    for (const Contact& contact : prepared.layout->contacts) {
        if (!has_glue(prepared, contact)) continue;
        const Joint& joint = piece.joints[*contact.joint];
        const GlueRecord* glue = prepared.facts->find_glue(*joint.glue);
        if (!glue) continue;
        std::string missing;
        const auto pressed = pressed_face(prepared, contact, &missing);
        if (!pressed) {
            keep_worst(findings, without_density(prepared, contact, missing));
            continue;
        }
        Finding f = pressed->wedges_itself ? wedged(prepared, contact)
                                           : judge(prepared, *pressed, *glue, spread_area(contact, joint),
                                                   pair_subject(prepared, contact), pair_place(prepared, contact));
        f.about.copies = {contact.first, contact.second};
        keep_worst(findings, std::move(f));
    }
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        if (!part.glued_up || !part.glued_up->glue) continue;
        const GlueRecord* glue = prepared.facts->find_glue(*part.glued_up->glue);
        std::string missing;
        const auto pressed = pressed_edges(prepared, p, &missing);
        if (!glue || !pressed) continue;
        const double area = pressed->face.area.value() * (part.glued_up->boards - 1);
        keep_worst(findings, judge(prepared, *pressed, *glue, area, part.id,
                                   fmt::format("the edges of its {} boards", part.glued_up->boards)));
    }
    return findings;
}

} // namespace jointwright
