// Floating panels: room to swell at the dampest, still in the groove at the driest, and the groove and the panel to cut today.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/panel_fit.hpp"
#include "judging/fits/size_today.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

struct Advice {
    std::optional<GrooveAdvice> panel;  ///< for the groove as it is
    std::optional<GrooveAdvice> groove; ///< for the panel as it is
    GrooveAdvice least;                 ///< where neither can stay
};

Advice advice_for(const Prepared& prepared, const PanelFit& fit, const PanelYear& year)
{
    const double step = in_metres(round_up_to_milling_step(millimetres(0.1), prepared.units));
    EdgeDemand demand{fit.here.swell(), fit.here.shrink(), std::max(year.wanted, 0.0),
                      prepared.facts->number("groove_engaged_share").value, fit.held || !fit.opposite};
    const GrooveSide& side = fit.edge->side;
    return {panel_for_groove(side.depth, side.engaged, demand), groove_for_panel(side.engaged, demand, step),
            least_groove(demand, step)};
}

double width_for(const Ties& ties, const PanelFit& fit, const GrooveAdvice& advice)
{
    const double width = ties.body_of(fit.edge->panel).box.size(fit.edge->axis);
    return width + advice.engaged - fit.edge->side.engaged + (fit.opposite ? advice.engaged - fit.opposite->side.engaged : 0);
}

std::string panel_words(const Prepared& prepared, const Ties& ties, const PanelFit& fit, const GrooveAdvice& advice)
{
    return fmt::format("cut {} {} {} today (at {})", prepared.piece->part_of(fit.edge->panel).id,
                       size_words(prepared, width_for(ties, fit, advice)), fit.along_grain ? "long" : "wide",
                       moisture_words(prepared.state_of(fit.edge->panel).made));
}

std::string groove_words(const Prepared& prepared, const GrooveAdvice& advice)
{
    return fmt::format("cut the groove {} deep", size_words(prepared, advice.depth));
}

std::string pin_words(const PanelFit& fit, const GrooveAdvice& advice)
{
    return advice.pinned && !fit.held && fit.opposite ? ", and pin it at its middle" : "";
}

Remedy remedy_for(const Prepared& prepared, const Ties& ties, const PanelFit& fit, const PanelYear& year, const Advice& advice)
{
    if (!year.closes() && !year.is_close() && !year.leaves() && !year.reaches_little()) {
        std::string pin =
            fmt::format("pin {} at its middle, by a peg or a spot of glue in the middle of the grooves that it moves along",
                        prepared.piece->part_of(fit.edge->panel).id);
        if (advice.panel && !advice.panel->pinned) pin += ", or " + panel_words(prepared, ties, fit, *advice.panel);
        return pin;
    }
    Remedy remedy;
    const bool too_tight = year.closes() || year.is_close();
    if (advice.groove && too_tight) remedy.add(groove_words(prepared, *advice.groove) + pin_words(fit, *advice.groove));
    if (advice.panel)
        remedy.add((remedy ? "keep the groove and " : "") + panel_words(prepared, ties, fit, *advice.panel) +
                   pin_words(fit, *advice.panel));
    if (!remedy)
        remedy.add(fmt::format("{} and {}{}", groove_words(prepared, advice.least),
                               panel_words(prepared, ties, fit, advice.least), pin_words(fit, advice.least)));
    const double deepest = advice.groove && too_tight ? advice.groove->depth
                           : advice.panel             ? advice.panel->depth
                                                      : advice.least.depth;
    if (deepest > ties.box_of(fit.edge->frame).size(fit.edge->axis) / 2)
        remedy.besides("two narrower panels with a bar between them, or quarter-sawn stock, need less");
    return remedy;
}

std::string headline_for(const Prepared& prepared, const PanelFit& fit, const PanelYear& year)
{
    const std::string& panel = prepared.piece->part_of(fit.edge->panel).id;
    const std::string& frame = prepared.piece->part_of(fit.edge->frame).id;
    const GrooveSide& side = fit.edge->side;
    if (side.room() < -kTouch)
        return fmt::format("{} is drawn {} into a groove in {} that is only {} deep.", panel, size_words(prepared, side.engaged),
                           frame, size_words(prepared, side.depth));
    if (year.closes())
        return fmt::format(
            "{} swells {} more at each side than its groove in {} leaves: it bottoms out and pushes the frame apart.", panel,
            small_words(prepared, -year.left), frame);
    if (year.leaves())
        return fmt::format("{} shrinks out of its groove in {} at the driest: {} deep in it as made, it loses {}.", panel, frame,
                           size_words(prepared, side.engaged), small_words(prepared, fit.here.shrink()));
    if (year.is_close())
        return fmt::format("{} keeps only {} of room in its groove in {} at the dampest.", panel,
                           small_words(prepared, year.left), frame);
    if (year.reaches_little())
        return fmt::format("{} reaches only {} into its groove in {} at the driest; a third of its depth, {}, is wanted.", panel,
                           small_words(prepared, year.engaged), frame, small_words(prepared, year.engaged_wanted));
    if (year.shows_a_gap())
        return fmt::format("{} is free to slide in its grooves: pushed wholly to one side it comes {} out of its groove in {} at "
                           "the driest, and a gap shows.",
                           panel, small_words(prepared, std::max(0.0, -*year.engaged_free)), frame);
    return fmt::format("{} keeps {} of room in its groove in {} at the dampest and reaches {} into it at the driest{}.", panel,
                       small_words(prepared, year.left), frame, small_words(prepared, year.engaged),
                       fit.along_grain ? ", along its grain" : "");
}

void add_working(const Prepared& prepared, const PanelFit& fit, const PanelYear& year, Finding& f)
{
    const PanelEdge& edge = *fit.edge;
    const PartState& state = prepared.state_of(edge.panel);
    const double arm = std::abs(edge.at - fit.from);
    if (!fit.along_grain) {
        const Angle rings = rings_along(prepared, edge.panel, edge.axis);
        for (const MoistureContent season : {state.driest, state.dampest})
            for (WorkingStep& step :
                 movement_working(*prepared.facts, std::get<MovementLaw>(state.movement), rings, metres(arm), state.made, season))
                if (std::none_of(f.working.begin(), f.working.end(),
                                 [&](const WorkingStep& known) { return known.says == step.says; }))
                    f.working.push_back(std::move(step));
    }
    const std::string frame =
        fit.frame_by ? fmt::format("less that of {}, which sets the opening", prepared.piece->part_of(*fit.frame_by).id)
                     : "the frame is taken to keep its size";
    f.working.push_back({fmt::format("Movement of this edge from {}, made to driest; {}", fit.held_at, frame),
                         "Δ = (ε − ε_frame) s", fmt::format("s = {}", size_words(prepared, arm)), fit.here.dry, "m", "geometry"});
    f.working.push_back({"The same, made to dampest", "Δ = (ε − ε_frame) s", "", fit.here.damp, "m", "geometry"});
    const std::string sizes =
        fmt::format("d = {}, e = {}", size_words(prepared, edge.side.depth), size_words(prepared, edge.side.engaged));
    f.working.push_back({"Room at this side at the dampest", "c = d − e − Δ", sizes, year.dampest, "m", "geometry"});
    f.working.push_back({"Depth still in the groove at the driest", "e − |Δ|", sizes, year.engaged, "m", "geometry"});
    if (year.engaged_free)
        f.working.push_back({"The same when it is pushed wholly to the other side", "e1 + e2 − d − |Δw|",
                             fmt::format("|Δw| = {}", small_words(prepared, fit.whole.shrink())), *year.engaged_free, "m",
                             "geometry"});
    const Datum<double>& share = prepared.facts->number("groove_engaged_share");
    const Datum<double>& wanted = prepared.facts->number("wanted_clearance");
    f.working.push_back({"Depth that should stay in the groove", "d/3", "", year.engaged_wanted, "m", share.cite.text()});
    if (!fit.along_grain)
        f.working.push_back(
            {"Room that should be left, both sides together", "c_wanted", "", wanted.value, "m", wanted.cite.text()});
}

/// The groove and the panel to cut today, and the shallowest groove that would do with a panel cut for it and pinned.
void add_advice(const Prepared& prepared, const Ties& ties, const PanelFit& fit, const GrooveAdvice& best,
                const GrooveAdvice& least, Finding& f)
{
    const PartState& state = prepared.state_of(fit.edge->panel);
    const std::string& panel = prepared.piece->part_of(fit.edge->panel).id;
    add_size_today(f, state,
                   {"groove_depth_today", "depth of the groove", "",
                    fmt::format("{} {} into it", panel, size_words(prepared, best.engaged)), best.depth});
    add_size_today(f, state,
                   {"panel_size_today",
                    fmt::format("{} over all, {}", panel, fit.along_grain ? "along its grain" : "across its grain"), "", "",
                    width_for(ties, fit, best)});
    add_size_today(f, state,
                   {"groove_depth_least",
                    fmt::format("the shallowest groove that works, with {} cut {} for it and pinned", panel,
                                size_words(prepared, width_for(ties, fit, least))),
                    "(swelling + shrinkage + c_wanted)/(1 − 1/3)", "", least.depth});
}

Finding finding_of(const Prepared& prepared, const Ties& ties, const PanelFit& fit)
{
    const Contact& contact = prepared.layout->contacts[fit.edge->contact];
    const PanelYear year = year_of(prepared, fit);
    Finding f;
    f.check = "groove-room";
    f.subject = pair_subject(prepared, contact);
    f.verdict = verdict_of(fit, year);
    f.utilisation = utilisation_of(fit, year);
    f.headline = headline_for(prepared, fit, year);
    f.where =
        fmt::format("{}, {}, {}, {}", pair_place(prepared, contact),
                    direction_words(prepared.piece->part_of(fit.edge->panel), fit.edge->axis),
                    fit.held ? "held by " + fit.held_at : "free about its middle", prepared.state_of(fit.edge->panel).species);
    f.about.copies = {contact.first, contact.second};
    f.weight = -year.dampest; // of two sides alike the one with less room
    f.values = {{"gap_made", year.made, "m"},
                {"gap_driest", year.driest, "m"},
                {"gap_dampest", year.dampest, "m"},
                {"engaged_driest", year.engaged, "m"},
                {"engaged_wanted", year.engaged_wanted, "m"}};
    if (year.engaged_free) f.values.push_back({"engaged_driest_free", *year.engaged_free, "m"});
    add_moistures(f, prepared.state_of(fit.edge->panel));
    add_working(prepared, fit, year, f);
    const Advice advice = advice_for(prepared, fit, year);
    GrooveAdvice best{fit.edge->side.depth, fit.edge->side.engaged, false};
    if (f.verdict != Verdict::pass) {
        f.remedy = remedy_for(prepared, ties, fit, year, advice);
        best = advice.groove && (year.closes() || year.is_close()) ? *advice.groove : advice.panel ? *advice.panel : advice.least;
    }
    add_advice(prepared, ties, fit, best, advice.least, f);
    gather_sources(f);
    return f;
}

bool is_floating(const Prepared& prepared, const Contact& contact)
{
    return contact.joint && prepared.piece->joints[*contact.joint].kind == JointKind::groove && !has_glue(prepared, contact);
}

/// Why nothing can be said of a dry groove, or nothing.
std::optional<Finding> refusal(const Prepared& prepared, const Contact& contact, bool has_edge)
{
    const std::string subject = pair_subject(prepared, contact);
    const std::string panel = prepared.piece->part_of(contact.first).id, frame = prepared.piece->part_of(contact.second).id;
    const auto refuse = [&](const std::string& why, const std::string& remedy) {
        return cannot_tell("groove-room", subject,
                           fmt::format("Whether {} has room in its groove in {} cannot be told: {}.", panel, frame, why), remedy);
    };
    if (!prepared.piece->joints[*contact.joint].groove_depth)
        return refuse("the depth of the groove is missing", "groove = { depth = ... }");
    if (!contact.shared)
        return refuse("it is drawn touching, not in the groove", fmt::format("draw {} as deep as it goes into {}", panel, frame));
    if (!has_edge)
        return refuse("no edge of it ends in the groove", fmt::format("draw {} so that it ends within {}", panel, frame));
    const PartState& state = prepared.state_of(contact.first);
    if (!state.moves()) return refuse(state.missing_movement(), "");
    return std::nullopt;
}

} // namespace

std::vector<Finding> check_groove_room(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const auto& contacts = prepared.layout->contacts;
    if (std::none_of(contacts.begin(), contacts.end(), [&](const Contact& c) { return is_floating(prepared, c); }))
        return findings;
    const Ties ties(prepared);
    std::map<std::size_t, std::vector<PanelEdge>> edges; // by the first copy of a panel
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        if (!is_floating(prepared, contacts[c])) continue;
        const auto edge = edge_of(prepared, ties, c);
        if (auto f = refusal(prepared, contacts[c], edge.has_value()))
            keep_worst(findings, std::move(*f));
        else
            edges[ties.body_of(edge->panel).copies.front()].push_back(*edge);
    }
    for (const auto& [panel, of_panel] : edges)
        for (const PanelEdge& edge : of_panel) {
            bool paired = false;
            for (const PanelEdge& other : of_panel) {
                if (other.axis != edge.axis || other.high == edge.high) continue;
                paired = true;
                keep_worst(findings, finding_of(prepared, ties, fit_of(prepared, ties, edge, &other)));
            }
            if (!paired) keep_worst(findings, finding_of(prepared, ties, fit_of(prepared, ties, edge, nullptr)));
        }
    return findings;
}

} // namespace jointwright
