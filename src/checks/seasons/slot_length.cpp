// Screws, buttons and pegs across the grain: have they the travel that the wood needs, and do tight ones hold back too much?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/size_today.hpp"
#include "judging/fits/slot_travel.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

std::string_view name_of_fasteners(const Joint& joint, bool one)
{
    if (joint.kind == JointKind::screws) return one ? "screw" : "screws";
    if (joint.kind == JointKind::buttons) return one ? "button" : "buttons";
    return one ? "peg" : "pegs";
}

/// Words for one row: who is fastened to whom, and with what.
struct Names {
    std::string mover, other, fasteners, pair;
};

Names names_of(const Prepared& prepared, const SlotTravel& t)
{
    const Piece& piece = *prepared.piece;
    const Joint& joint = piece.joints[*prepared.layout->contacts[t.contact].joint];
    return {piece.part_of(t.mover).id, piece.part_of(t.other).id,
            std::string(name_of_fasteners(joint, t.row.fasteners.size() == 1)),
            pair_subject(prepared, prepared.layout->contacts[t.contact])};
}

std::string from_words(const Prepared& prepared, const SlotTravel& t)
{
    switch (t.from) {
    case SlotTravel::From::glue: return "the glued stretch";
    case SlotTravel::From::fastener: return "the tight fastener";
    case SlotTravel::From::middle: break;
    }
    return "the middle of " + prepared.piece->part_of(t.mover).id;
}

/// "slots 14 mm long for 5 mm screws, slot = 9 mm of free travel": rounded up to what can be milled.
std::string slot_words(const Prepared& prepared, const SlotTravel& t, const Names& names)
{
    const std::string travel = write_length_up(metres(t.travel()), prepared.units);
    if (t.row.button) return fmt::format("give each button {} of free travel: slot = {}", travel, travel);
    return fmt::format("mill slots {} long across the grain for the {} {}: slot = {} of free travel",
                       write_length_up(metres(t.slot()), prepared.units), size_words(prepared, t.row.diameter), names.fasteners,
                       travel);
}

void say_tight(const Prepared& prepared, const SlotTravel& t, const Names& names, Finding& f)
{
    const std::string held = small_words(prepared, t.held_back), span = size_words(prepared, t.span);
    const std::string with = t.far_partner == t.other
                                 ? ""
                                 : fmt::format(" together with what holds it on {}", prepared.piece->label(t.far_partner, true));
    const std::string several(
        name_of_fasteners(prepared.piece->joints[*prepared.layout->contacts[t.contact].joint], false)); // two places at least
    const std::string facts = fmt::format("the {}{} on {}{} hold back {} of movement of {} over {}", t.tight_row ? "tight " : "",
                                          several, names.other, with, held, names.mover, span);
    switch (t.verdict) {
    case Verdict::fail:
        f.headline = fmt::format("Too much: {}; the wood splits or the {} tear their holes.", facts, several);
        break;
    case Verdict::warn: f.headline = fmt::format("On the edge: {}.", facts); break;
    default:
        f.headline = t.held_back > 0 ? fmt::format("Near enough to each other: {}.", facts)
                                     : fmt::format("Nothing pulls at the tight {} of {}: nothing else holds {} across its grain.",
                                                   names.fasteners, names.pair, names.mover);
    }
    if (t.verdict == Verdict::pass) return;
    const std::string fixed =
        t.from == SlotTravel::From::glue ? "keep it fixed at the glue" : fmt::format("fix {} at its middle only", names.mover);
    f.remedy = fmt::format("{} and {}", fixed, slot_words(prepared, t, names));
}

void say_slotted(const Prepared& prepared, const SlotTravel& t, const Names& names, Finding& f)
{
    const std::string have = size_words(prepared, *t.row.slot), need = small_words(prepared, t.travel());
    const double least = least_travel(t.dry, t.damp);
    if (t.verdict == Verdict::pass) {
        f.headline = fmt::format("The {} of travel at the {} of {} are enough: {} are needed, {} from {}.", have, names.fasteners,
                                 names.pair, need, size_words(prepared, t.distance), from_words(prepared, t));
        return;
    }
    if (*t.row.slot >= t.travel()) {
        say_tight(prepared, t, names, f);
        return;
    }
    f.headline = fmt::format("{} of travel at the {} of {} are {}: {} are needed, {} from {}.", have, names.fasteners, names.pair,
                             t.verdict == Verdict::fail ? "far too little" : "too little", need, size_words(prepared, t.distance),
                             from_words(prepared, t));
    f.remedy = slot_words(prepared, t, names);
    if (*t.row.slot >= least)
        f.remedy.add(fmt::format("set each {} off the middle of its slot, so that the wood can shrink by {} and swell by {}",
                                 names.fasteners, small_words(prepared, std::max({0.0, -t.dry, -t.damp})),
                                 small_words(prepared, std::max({0.0, t.dry, t.damp}))));
}

void add_working(const Prepared& prepared, const SlotTravel& t, Finding& f)
{
    const PartState& state = prepared.state_of(t.mover);
    const auto& law = std::get<MovementLaw>(state.movement);
    const Angle rings = rings_along(prepared, t.mover, t.axis);
    const bool dry_rules = std::abs(t.dry) >= std::abs(t.damp);
    for (WorkingStep& step :
         movement_working(*prepared.facts, law, rings, metres(t.distance), state.made, dry_rules ? state.driest : state.dampest))
        f.working.push_back(std::move(step));
    f.working.push_back({fmt::format("Movement at the fastener, {} from {}, made to driest, less that of the other part",
                                     size_words(prepared, t.distance), from_words(prepared, t)),
                         "Δ = (ε_A − ε_B) s", "", t.dry, "m", "geometry"});
    f.working.push_back({"The same, made to dampest", "Δ = (ε_A − ε_B) s", "", t.damp, "m", "geometry"});
    const Datum<double>& ease = prepared.facts->number("slot_margin");
    f.working.push_back({"Ease in the slot", "1/32 in", "", ease.value, "m", ease.cite.text()});
    if (t.row.button)
        f.working.push_back(
            {"Travel of a button set in the middle", "2 max(|Δ_dry|, |Δ_damp|) + ease", "", t.travel(), "m", "geometry"});
    else
        f.working.push_back({"Length of the slot for a fastener set in its middle", "2 max(|Δ_dry|, |Δ_damp|) + diameter + ease",
                             fmt::format("diameter {}", size_words(prepared, t.row.diameter)), t.slot(), "m", "geometry"});
    if (t.held_back == 0 && !t.tight_row) return;
    const Datum<double>& pass = prepared.facts->number("core_movement_pass");
    f.working.push_back({"Movement held back between two places that do not give", "|ε_A − ε_B| L − free travel",
                         fmt::format("L = {}", size_words(prepared, t.span)), t.held_back, "m", "geometry"});
    f.working.push_back({"Movement held back that wood and fasteners bear", "Δ ≤ limit",
                         fmt::format("fails above {}", small_words(prepared, prepared.facts->number("core_movement_warn").value)),
                         pass.value, "m", pass.cite.text()});
}

Finding finding_of(const Prepared& prepared, const SlotTravel& t)
{
    const Names names = names_of(prepared, t);
    const Contact& contact = prepared.layout->contacts[t.contact];
    Finding f;
    f.check = "slot-length";
    f.subject = pair_subject(prepared, contact);
    f.verdict = t.verdict;
    f.utilisation = t.utilisation;
    f.weight = t.travel();
    f.where = fmt::format("{}, {} moving {}, {}", pair_place(prepared, contact), names.mover,
                          direction_words(prepared.piece->part_of(t.mover), t.axis), prepared.state_of(t.mover).species);
    f.about.copies = {contact.first, contact.second};
    if (t.tight_row)
        say_tight(prepared, t, names, f);
    else if (t.slotted)
        say_slotted(prepared, t, names, f);
    else
        f.headline = fmt::format("The buttons leave {} free on {}; each needs {} of travel, {} from {}.", names.mover,
                                 names.other, write_length_up(metres(t.travel()), prepared.units),
                                 size_words(prepared, t.distance), from_words(prepared, t));
    if (t.tight_row || t.row.slot) f.values.push_back({"travel", t.tight_row ? 0.0 : *t.row.slot, "m"});
    f.values.push_back({"needed", t.slot(), "m"});
    f.values.push_back({"travel_needed", t.travel(), "m"});
    f.values.push_back({"movement_driest", t.dry, "m"});
    f.values.push_back({"movement_dampest", t.damp, "m"});
    f.values.push_back({"held_back", t.held_back, "m"});
    add_moistures(f, prepared.state_of(t.mover));
    add_working(prepared, t, f);
    add_size_today(f, prepared.state_of(t.mover),
                   {"slot_to_mill",
                    t.row.button ? fmt::format("free travel of each button across the grain of {}", names.mover)
                                 : fmt::format("slot across the grain of {} for each of the {}", names.mover, names.fasteners),
                    "rounded up to 1/32 in or 0.5 mm", fmt::format("fixed: {}", from_words(prepared, t)),
                    in_metres(round_up_to_milling_step(metres(t.slot()), prepared.units))});
    gather_sources(f);
    return f;
}

/// What the design leaves out that this check needs, as the line to add; empty when nothing is missing or the joint has no fasteners to look at.
std::string missing_sizes(const Joint& joint)
{
    if (joint.kind == JointKind::screws && !joint.screws)
        return "screws = { diameter = ..., length = ..., count = ..., slot = ... }";
    if (joint.kind == JointKind::buttons && !joint.buttons) return "buttons = { count = ..., slot = ... }";
    if (joint.kind == JointKind::tenon && joint.pegs && !joint.tenon)
        return "tenon = { length = ..., width = ..., thickness = ... }";
    return "";
}

bool has_fasteners(const Joint& joint)
{
    return joint.kind == JointKind::screws || joint.kind == JointKind::buttons || joint.pegs;
}

/// Glued over its whole length the joint holds by its glue: cross-grain's matter.
bool glued_throughout(const Joint& joint) { return joint.glue && !joint.glued; }

} // namespace

std::vector<Finding> check_slot_length(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<Finding> findings;
    if (std::none_of(piece.joints.begin(), piece.joints.end(), has_fasteners)) return findings;
    const Ties ties(prepared);
    SlotReckoner reckoner(prepared, ties);
    std::map<std::string, SlotTravel> worst; // by subject: words are made for the worst place only
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        if (!contacts[c].joint) continue;
        const Joint& joint = piece.joints[*contacts[c].joint];
        if (!has_fasteners(joint) || glued_throughout(joint)) continue;
        const std::string subject = pair_subject(prepared, contacts[c]);
        const std::string missing = missing_sizes(joint);
        const PartState& a = prepared.state_of(contacts[c].first);
        const PartState& b = prepared.state_of(contacts[c].second);
        if (!missing.empty() || !a.moves() || !b.moves()) {
            const std::string why = !missing.empty()
                                        ? fmt::format("sizes of the {} are missing",
                                                      joint.kind == JointKind::tenon ? "tenon" : name_of_fasteners(joint, false))
                                    : a.moves() ? b.missing_movement()
                                                : a.missing_movement();
            keep_worst(findings,
                       cannot_tell("slot-length", subject,
                                   fmt::format("How far the fasteners of {} have to travel cannot be told: {}.", subject, why),
                                   missing));
            continue;
        }
        const auto row = fastener_row(prepared, c);
        if (!row) continue;
        const auto t = reckoner.travel_of(*row);
        if (!t) continue;
        const auto known = worst.find(subject);
        if (known == worst.end())
            worst.emplace(subject, *t);
        else if (is_worse(*t, known->second))
            known->second = *t;
    }
    for (const auto& [subject, t] : worst) keep_worst(findings, finding_of(prepared, t));
    return findings;
}

} // namespace jointwright
