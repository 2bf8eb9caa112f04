// Mitres: members change in width but hardly in length, so the angle of each cut turns and the joint opens at one end.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/flatness.hpp"
#include "judging/joints/glue_demand.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/mitre.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

/// The plane of a corner: the axis each member runs away from it.
struct Corner {
    Axis first, second;
};

/// How far a copy runs on beyond the space that both members share.
double beyond(const Copy& copy, const Box& shared, Axis axis)
{
    const std::size_t i = index_of(axis);
    return std::max(shared.lo[i] - copy.box.lo[i], copy.box.hi[i] - shared.hi[i]);
}

/// Nothing when the drawing does not show a corner: no shared space, a turned member, or both members running the same way.
std::optional<Corner> corner_of(const Piece& piece, const Contact& contact)
{
    if (!contact.shared || piece.part_of(contact.first).turn || piece.part_of(contact.second).turn) return std::nullopt;
    std::vector<Axis> plane;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (std::abs(contact.patches.front().normal[index_of(axis)]) > 1e-6) plane.push_back(axis);
    if (plane.size() != 2) return std::nullopt;
    const auto runs_along = [&](std::size_t copy) {
        const Copy& c = piece.copies[copy];
        return beyond(c, *contact.shared, plane[0]) >= beyond(c, *contact.shared, plane[1]) ? plane[0] : plane[1];
    };
    const Corner corner{runs_along(contact.first), runs_along(contact.second)};
    if (corner.first == corner.second) return std::nullopt;
    return corner;
}

MitreMember member_at(const Part& part, const BoardStrain& strain, const Box& shared, Axis along, Axis across)
{
    return {metres(shared.size(along)), metres(shared.size(across)), strain_along(part, strain, along),
            strain_along(part, strain, across)};
}

void add_member_steps(const Prepared& prepared, std::size_t copy, const MitreMember& member, Axis along, Axis across,
                      const WorseSeason& worse, Finding& f)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartState& state = prepared.state_of(copy);
    f.working.push_back({fmt::format("Strain of {} across the corner ({}) less that along it ({}), {}", part.id,
                                     direction_words(part, across), direction_words(part, along), worse.words()),
                         "e_w − e_l", fmt::format("e_w = {:.5f}, e_l = {:.5f}", member.strain_across, member.strain_along),
                         member.strain_across - member.strain_along, "1", "plane strain transformation"});
    if (across != part.grain)
        for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement),
                                                  across == part.face ? degrees(90) - state.rings : state.rings, member.across,
                                                  state.made, worse.dry ? state.driest : state.dampest))
            f.working.push_back(std::move(step));
}

Finding judge(const Prepared& prepared, const Contact& contact, const Corner& corner)
{
    const Piece& piece = *prepared.piece;
    const Part& a = piece.part_of(contact.first);
    const Part& b = piece.part_of(contact.second);
    const PartState& sa = prepared.state_of(contact.first);
    const PartState& sb = prepared.state_of(contact.second);
    const auto members = [&](const BoardStrain& of_a, const BoardStrain& of_b) {
        return std::pair{member_at(a, of_a, *contact.shared, corner.first, corner.second),
                         member_at(b, of_b, *contact.shared, corner.second, corner.first)};
    };
    const auto dry_members = members(sa.dry, sb.dry), damp_members = members(sa.damp, sb.damp);
    const MitreOpening dry = mitre_opening(dry_members.first, dry_members.second),
                       damp = mitre_opening(damp_members.first, damp_members.second);
    const WorseSeason worse = worse_season(sa, in_metres(dry.gap), in_metres(damp.gap));
    const MitreOpening& opening = worse.dry ? dry : damp;
    const auto& worst_members = worse.dry ? dry_members : damp_members;
    const Datum<double>& pass = prepared.facts->number("mitre_gap_pass");
    const Datum<double>& warn = prepared.facts->number("mitre_gap_warn");

    Finding f;
    f.check = "mitre-gap";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}", pair_place(prepared, contact),
                          sa.species == sb.species ? sa.species : sa.species + " and " + sb.species);
    f.about.copies = {contact.first, contact.second};
    f.utilisation = worse.amount / pass.value;
    f.fails_from = warn.value / pass.value;
    f.weight = worse.amount;
    f.verdict = worse.amount <= pass.value ? Verdict::pass : worse.amount <= warn.value ? Verdict::warn : Verdict::fail;
    const bool glued = piece.joints[*contact.joint].glue.has_value();
    f.headline = fmt::format("The mitre of {} and {} {} {} ({:.2f}°) at its {} corner {}{}.", a.id, b.id,
                             glued ? "wants to open by" : "opens by", small_words(prepared, worse.amount),
                             std::abs(in_degrees(opening.angle)), opening.angle.value() >= 0 ? "inside" : "outside",
                             worse.words(), f.verdict == Verdict::fail ? ": more than eye or glue bears" : "");
    if (f.verdict != Verdict::pass) {
        const double narrower = pass.value / worse.amount;
        f.remedy = fmt::format(
            "make the members no wider than {}, or of quarter-sawn stock, glue up at about {}{}; wide frames keep closed with "
            "tenons",
            size_words(prepared, shop_size_below(prepared, narrower * std::max(contact.shared->size(corner.first),
                                                                               contact.shared->size(corner.second)))),
            moisture_words(MoistureContent::percent((sa.driest.percent() + sa.dampest.percent()) / 2)),
            is_reinforced(piece.joints[*contact.joint]) ? "" : ", and put a spline or key across the joint");
    }
    f.values = {{"opening_driest", dry.angle.value(), "rad"},
                {"opening_dampest", damp.angle.value(), "rad"},
                {"gap_driest", in_metres(dry.gap), "m"},
                {"gap_dampest", in_metres(damp.gap), "m"},
                {"limit", pass.value, "m"}};
    add_member_steps(prepared, contact.first, worst_members.first, corner.first, corner.second, worse, f);
    add_member_steps(prepared, contact.second, worst_members.second, corner.second, corner.first, worse, f);
    f.working.push_back(
        {"Opening of the joint, both cuts together; positive at the inside corner",
         "δ = Σ {atan[a (1 + e_l)/(b (1 + e_w))] − atan(a/b)}",
         fmt::format("a = {}, b = {} of the first member", size_words(prepared, contact.shared->size(corner.first)),
                     size_words(prepared, contact.shared->size(corner.second))),
         opening.angle.value(), "rad", "geometry"});
    f.working.push_back({"Gap at the open end of the cut", "g = 2 L sin(|δ|/2)",
                         fmt::format("L = {}", size_words(prepared, std::hypot(contact.shared->size(corner.first),
                                                                               contact.shared->size(corner.second)))),
                         worse.amount, "m", "geometry"});
    f.working.push_back({"Gap that stays unnoticed or that glue bridges", "g ≤ limit",
                         fmt::format("warns to {}", small_words(prepared, warn.value)), pass.value, "m", pass.cite.text()});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_mitre_gap(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<Finding> findings;
    for (const Contact& contact : prepared.layout->contacts) {
        if (!contact.joint || piece.joints[*contact.joint].kind != JointKind::mitre) continue;
        const std::string pair = fmt::format("{} and {}", piece.part_of(contact.first).id, piece.part_of(contact.second).id);
        const PartState& a = prepared.state_of(contact.first);
        const PartState& b = prepared.state_of(contact.second);
        const auto corner = corner_of(piece, contact);
        if (!corner)
            keep_worst(
                findings,
                cannot_tell(
                    "mitre-gap", pair_subject(prepared, contact),
                    fmt::format("How far the mitre of {} opens cannot be told: the drawing shows no square corner of the two.",
                                pair),
                    "draw both members to the outer corner, unturned, sharing the corner's space"));
        else if (!a.moves() || !b.moves())
            keep_worst(findings, cannot_tell("mitre-gap", pair_subject(prepared, contact),
                                             fmt::format("How far the mitre of {} opens cannot be told: {}.", pair,
                                                         a.moves() ? b.missing_movement() : a.missing_movement()),
                                             "name a wood of the table or give its movement under properties"));
        else
            keep_worst(findings, judge(prepared, contact, *corner));
    }
    return findings;
}

} // namespace jointwright
