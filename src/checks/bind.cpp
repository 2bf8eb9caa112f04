// A part that sits between two walls of another: does it still have room when it swells?

#include "checks/bind_stops.hpp"
#include "checks/bind_tenon.hpp"
#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "checks/cut_today.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Axes along which the second part has a wall on either side of the first.
std::vector<Axis> captured_axes(const Contact& contact)
{
    std::vector<Axis> axes;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        bool low = false, high = false;
        for (const Patch& p : contact.patches) {
            if (p.role == Patch::Role::shoulder || p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
            low = low || p.normal[index_of(axis)] < -0.99;
            high = high || p.normal[index_of(axis)] > 0.99;
        }
        if (low && high) axes.push_back(axis);
    }
    return axes;
}

bool sits_in(JointKind kind)
{
    return kind == JointKind::housing || kind == JointKind::groove || kind == JointKind::sliding_dovetail;
}

Finding judge(const Prepared& prepared, const Contact& contact, const Joint& joint, Axis axis)
{
    const Piece& piece = *prepared.piece;
    const Part& inner = piece.part_of(contact.first);
    const PartState& in = prepared.state_of(contact.first);
    const PartState& out = prepared.state_of(contact.second);
    const Part& outer = piece.part_of(contact.second);
    const double size = piece.copies[contact.first].box.size(axis);
    const double made = 2 * in_metres(joint.clearance);
    const double dry = size * (strain_along(inner, in.dry, axis) - strain_along(outer, out.dry, axis));
    const double damp = size * (strain_along(inner, in.damp, axis) - strain_along(outer, out.damp, axis));
    const double driest = made - dry, dampest = made - damp, least = std::min({made, driest, dampest});
    const double squeeze = std::max(0.0, -least) / size;
    const Datum<double>& set = prepared.facts->number("squeeze_pass");
    const Datum<double>& crush = prepared.facts->number("squeeze_fail");
    const bool by_hand = joint.clearance == Length{}; // no clearance stated: the part is fitted to its recess by hand
    const double cut_for = joint.glue ? 0 : prepared.facts->number("wanted_clearance").value, wanted = by_hand ? 0 : cut_for;

    const char* season = dampest <= std::min(made, driest) ? "the dampest" : driest <= made ? "the driest" : "glue-up";
    Finding f;
    f.check = "bind";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), direction_words(inner, axis), in.species);
    // Rounded up to what can be cut and measured, so that the remedy works when it is applied.
    const double step = prepared.units == LengthUnit::inch ? 0.002 * kMetresPerInch : 0.00005;
    const double clearance = std::max(0.0, std::ceil((made + cut_for - least) / 2 / step - 1e-9)) * step;
    const std::string remedy = fmt::format("cut the {} {} wider on each side: clearance = \"{}\"", name_of(joint.kind),
                                           small_words(prepared, clearance - made / 2), small_words(prepared, clearance));
    if (squeeze > crush.value) {
        f.verdict = Verdict::fail;
        f.headline = fmt::format("{} swells {} more than its {} in {} leaves: it is crushed or drives the walls apart.", inner.id,
                                 small_words(prepared, -least), name_of(joint.kind), outer.id);
        f.remedy = remedy;
    } else if (squeeze > 0 && by_hand && squeeze <= set.value) {
        f.headline = fmt::format("{} is fitted to its {} in {} without room and gets tight by {} at {}: little enough to spring "
                                 "back. Fit it by hand to slide, not to be driven.",
                                 inner.id, name_of(joint.kind), outer.id, small_words(prepared, -least), season);
    } else if (squeeze > 0) {
        f.verdict = Verdict::warn;
        f.headline = squeeze > set.value
                         ? fmt::format("{} swells tight in its {} in {} and keeps a set: it will sit loose in the dry season.",
                                       inner.id, name_of(joint.kind), outer.id)
                         : fmt::format("{} sits tight in its {} in {} at {}.", inner.id, name_of(joint.kind), outer.id, season);
        f.remedy = remedy;
    } else if (by_hand && least <= 0) {
        f.headline = fmt::format(
            "{} is fitted to its {} in {} without room and does not swell beyond it. Fit it by hand to slide, not to be driven.",
            inner.id, name_of(joint.kind), outer.id);
    } else if (least < wanted - 1e-9) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} keeps only {} of room in its {} in {} at {}.", inner.id, small_words(prepared, least),
                                 name_of(joint.kind), outer.id, season);
        f.remedy = remedy;
    } else {
        f.headline = fmt::format("{} keeps {} of room in its {} in {} at its tightest.", inner.id, small_words(prepared, least),
                                 name_of(joint.kind), outer.id);
    }
    f.utilisation = squeeze > 0 ? (f.verdict == Verdict::pass ? squeeze / set.value : 1 + squeeze / crush.value)
                    : made > 0  ? std::clamp((made - least) / made, 0.0, 1.0)
                                : 0.0;
    f.values = {{"gap_made", made, "m"}, {"gap_driest", driest, "m"}, {"gap_dampest", dampest, "m"}, {"squeeze", squeeze, "1"}};
    add_moistures(f, in);
    f.working.push_back({"Room at the dampest, both sides together", "c = c0 − (Δ of the part − Δ of its opening)",
                         fmt::format("c0 = {}, Δ = {}", small_words(prepared, made), small_words(prepared, damp)), dampest, "m",
                         "geometry"});
    f.working.push_back({"Room at the driest", "c = c0 − (Δ of the part − Δ of its opening)",
                         fmt::format("c0 = {}, Δ = {}", small_words(prepared, made), small_words(prepared, dry)), driest, "m",
                         "geometry"});
    if (squeeze > 0) {
        f.working.push_back({"Strain of the pressed part", "e = −c/w", fmt::format("w = {}", size_words(prepared, size)), squeeze,
                             "1", "geometry"});
        f.working.push_back({"Strain from which a pressed part keeps a set", "e_set", "", set.value, "1", set.cite.text()});
        f.working.push_back({"Strain beyond which it is crushed", "e_crush", "", crush.value, "1", crush.cite.text()});
    }
    if (axis != inner.grain)
        for (WorkingStep& step :
             movement_working(*prepared.facts, std::get<MovementLaw>(in.movement), in.rings, metres(size), in.made, in.dampest))
            f.working.push_back(std::move(step));
    add_size_today(f, in,
                   {"clearance_today", fmt::format("clearance on either side of {} in its {}", inner.id, name_of(joint.kind)),
                    "(c_wanted + c0 − c at its least)/2, rounded up",
                    fmt::format("{} {} wide for {}", name_of(joint.kind), size_words(prepared, size + 2 * clearance),
                                size_words(prepared, size)),
                    clearance});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_bind(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Ties ties(prepared);
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!contact.joint) continue;
        const Joint& joint = prepared.piece->joints[*contact.joint];
        if (joint.kind == JointKind::tenon)
            if (auto fit = judge_tenon_fit(prepared, ties, c)) keep_worst(findings, std::move(*fit));
        if (!sits_in(joint.kind)) continue;
        const PartState& in = prepared.state_of(contact.first);
        const PartState& out = prepared.state_of(contact.second);
        for (const Axis axis : captured_axes(contact)) {
            if (in.moves() && out.moves())
                keep_worst(findings, judge(prepared, contact, joint, axis));
            else
                keep_worst(findings, cannot_tell("bind", pair_subject(prepared, contact),
                                                 fmt::format("Whether {} binds cannot be told: {}.",
                                                             prepared.piece->part_of(contact.first).id,
                                                             in.moves() ? out.missing_movement() : in.missing_movement()),
                                                 ""));
        }
    }
    for (const StoppedPart& part : stopped_parts(prepared, ties)) keep_worst(findings, judge_stopped(prepared, ties, part));
    return findings;
}

} // namespace jointwright
