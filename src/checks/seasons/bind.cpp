// A part that sits between two walls of another: does it still have room when it swells?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/closed_tenon.hpp"
#include "judging/fits/size_today.hpp"
#include "judging/fits/stopped_assembly.hpp"
#include "judging/fits/stopped_part.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Axes along which the second part has a wall on either side of the first. A groove runs on past the panel: it has walls at the panel's
/// faces alone; what is stopped is a housing.
std::vector<Axis> captured_axes(const Part& inner, const Contact& contact, JointKind kind)
{
    std::vector<Axis> axes;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        if (kind == JointKind::groove && axis != inner.face) continue;
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

/// Glued on both its large faces, a loose tenon or key is held across its width by that glue.
bool is_held_by_cheeks(const Contact& contact, const Joint& joint, Axis axis)
{
    if (!joint.glue || joint.glued) return false;
    return std::any_of(contact.patches.begin(), contact.patches.end(),
                       [&](const Patch& p) { return std::abs(p.normal[index_of(axis)]) < 0.01 && is_cheek_of_core(contact, p); });
}

bool sits_in(JointKind kind)
{
    return kind == JointKind::housing || kind == JointKind::groove || kind == JointKind::sliding_dovetail;
}

/// A part in its recess along one axis through the year; room counts both sides together.
struct RecessFit {
    const Contact& contact;
    const Joint& joint;
    Axis axis;
    double size = 0;            ///< of the part
    double made = 0;            ///< room
    double dry = 0, damp = 0;   ///< growth of the part beyond that of its opening
    double clearance_today = 0; ///< on either side
    bool by_hand = false;       ///< no clearance stated: fitted by hand
    bool held = false;          ///< by the glue on its large faces

    double driest() const { return made - dry; }
    double dampest() const { return made - damp; }
    double least() const { return std::min({made, driest(), dampest()}); }
    double squeeze() const { return held ? 0 : std::max(0.0, -least()) / size; }
    const char* season() const
    {
        return dampest() <= std::min(made, driest()) ? "the dampest" : driest() <= made ? "the driest" : "glue-up";
    }
};

RecessFit fit_of(const Prepared& prepared, const Contact& contact, const Joint& joint, Axis axis)
{
    const Part& inner = prepared.piece->part_of(contact.first);
    const Part& outer = prepared.piece->part_of(contact.second);
    const PartState& in = prepared.state_of(contact.first);
    const PartState& out = prepared.state_of(contact.second);
    RecessFit fit{contact, joint, axis};
    fit.size = prepared.piece->copies[contact.first].box.size(axis);
    fit.made = 2 * in_metres(joint.clearance);
    fit.dry = fit.size * (strain_along(inner, in.dry, axis) - strain_along(outer, out.dry, axis));
    fit.damp = fit.size * (strain_along(inner, in.damp, axis) - strain_along(outer, out.damp, axis));
    fit.by_hand = joint.clearance == Length{};
    fit.held = is_held_by_cheeks(contact, joint, axis);
    // What a maker can cut, so that the remedy works when it is applied: 1/64 in on either side, or half a millimetre in all.
    const double wanted = std::max(0.0, fit.made - fit.least());
    fit.clearance_today =
        prepared.units == LengthUnit::inch ? shop_size_above(prepared, wanted / 2) : shop_size_above(prepared, wanted) / 2;
    if (fit.held) fit.made = 2 * fit.clearance_today; // cut as the finding says
    return fit;
}

/// Verdict, headline and utilisation.
void judge(const Prepared& prepared, const RecessFit& fit, Finding& f)
{
    const std::string& inner = prepared.piece->part_of(fit.contact.first).id;
    const std::string& outer = prepared.piece->part_of(fit.contact.second).id;
    const double set = prepared.facts->number("squeeze_pass").value, crush = prepared.facts->number("squeeze_fail").value;
    const double least = fit.least(), squeeze = fit.squeeze();
    const std::string_view recess = name_of(fit.joint.kind);
    const std::string left = small_words(prepared, least), over = small_words(prepared, -least);
    const char* season = fit.season();
    if (fit.held) {
        f.headline =
            fmt::format("{} is held {} by the glue on its faces; so that its edges do not press on {}, leave {} of room at "
                        "either edge.",
                        inner, direction_words(prepared.piece->part_of(fit.contact.first), fit.axis), outer,
                        small_words(prepared, fit.clearance_today));
    } else if (squeeze > crush) {
        f.verdict = Verdict::fail;
        f.headline = fmt::format("{} swells {} more than its {} in {} leaves: it is crushed or drives the walls apart.", inner,
                                 over, recess, outer);
    } else if (squeeze > set) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} swells tight in its {} in {} and keeps a set: it will sit loose in the dry season.", inner,
                                 recess, outer);
    } else if (squeeze > 0 || (fit.by_hand && least <= 0)) {
        // Recesses are cut snug; one that springs back is as it should be, whether its room was told or left to the hand.
        f.headline = fmt::format("{} is {} and {}. Fit it by hand to slide, not to be driven.", inner,
                                 fit.by_hand ? fmt::format("fitted to its {} in {} without room", recess, outer)
                                             : fmt::format("snug in its {} in {}", recess, outer),
                                 squeeze > 0 ? fmt::format("gets tight by {} at {}: little enough to spring back", over, season)
                                             : "does not swell beyond it");
    } else {
        f.headline = fmt::format("{} keeps {} of room in its {} in {} at its tightest.", inner, left, recess, outer);
    }
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("cut the {} {} wider on each side: clearance = \"{}\"", recess,
                               small_words(prepared, fit.clearance_today - fit.made / 2),
                               prepared.units == LengthUnit::inch ? size_words(prepared, fit.clearance_today)
                                                                  : small_words(prepared, fit.clearance_today));
    f.utilisation = squeeze > 0    ? (f.verdict == Verdict::pass ? squeeze / set : 1 + squeeze / crush)
                    : fit.made > 0 ? std::clamp((fit.made - least) / fit.made, 0.0, 1.0)
                                   : 0.0;
}

void add_working(const Prepared& prepared, const RecessFit& fit, Finding& f)
{
    const Part& inner = prepared.piece->part_of(fit.contact.first);
    const PartState& in = prepared.state_of(fit.contact.first);
    const auto with = [&](double growth) {
        return fmt::format("c0 = {}, Δ = {}", small_words(prepared, fit.made), small_words(prepared, growth));
    };
    f.working.push_back({"Room at the dampest, both sides together", "c = c0 − (Δ of the part − Δ of its opening)",
                         with(fit.damp), fit.dampest(), "m", "geometry"});
    f.working.push_back(
        {"Room at the driest", "c = c0 − (Δ of the part − Δ of its opening)", with(fit.dry), fit.driest(), "m", "geometry"});
    if (fit.squeeze() > 0) {
        const Datum<double>& set = prepared.facts->number("squeeze_pass");
        const Datum<double>& crush = prepared.facts->number("squeeze_fail");
        f.working.push_back({"Strain of the pressed part", "e = −c/w", fmt::format("w = {}", size_words(prepared, fit.size)),
                             fit.squeeze(), "1", "geometry"});
        f.working.push_back({"Strain from which a pressed part keeps a set", "e_set", "", set.value, "1", set.cite.text()});
        f.working.push_back({"Strain beyond which it is crushed", "e_crush", "", crush.value, "1", crush.cite.text()});
    }
    if (fit.axis != inner.grain)
        for (WorkingStep& step :
             movement_working(*prepared.facts, std::get<MovementLaw>(in.movement),
                              rings_along(prepared, fit.contact.first, fit.axis), metres(fit.size), in.made, in.dampest))
            f.working.push_back(std::move(step));
}

Finding finding_of(const Prepared& prepared, const RecessFit& fit)
{
    const Part& inner = prepared.piece->part_of(fit.contact.first);
    const PartState& in = prepared.state_of(fit.contact.first);
    Finding f;
    f.check = "bind";
    f.subject = pair_subject(prepared, fit.contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, fit.contact), direction_words(inner, fit.axis), in.species);
    f.about.copies = {fit.contact.first, fit.contact.second};
    f.weight = fit.clearance_today;
    judge(prepared, fit, f);
    f.values = {{"gap_made", fit.made, "m"},
                {"gap_driest", fit.driest(), "m"},
                {"gap_dampest", fit.dampest(), "m"},
                {"squeeze", fit.squeeze(), "1"}};
    add_moistures(f, in);
    add_working(prepared, fit, f);
    const std::string_view recess = name_of(fit.joint.kind);
    add_size_today(f, in,
                   {"clearance_today", fmt::format("clearance on either side of {} in its {}", inner.id, recess),
                    "(c0 − c at its least)/2, rounded up to what can be cut",
                    fmt::format("{} {} wide for {}", recess, size_words(prepared, fit.size + 2 * fit.clearance_today),
                                size_words(prepared, fit.size)),
                    fit.clearance_today});
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
        for (const Axis axis : captured_axes(prepared.piece->part_of(contact.first), contact, joint.kind)) {
            if (in.moves() && out.moves())
                keep_worst(findings, finding_of(prepared, fit_of(prepared, contact, joint, axis)));
            else
                keep_worst(findings, cannot_tell("bind", pair_subject(prepared, contact),
                                                 fmt::format("Whether {} binds cannot be told: {}.",
                                                             prepared.piece->part_of(contact.first).id,
                                                             in.moves() ? out.missing_movement() : in.missing_movement()),
                                                 ""));
        }
    }
    for (const StoppedPart& part : stopped_parts(prepared, ties)) keep_worst(findings, judge_stopped(prepared, ties, part));
    for (Finding& f : judge_stopped_assemblies(prepared, ties)) keep_worst(findings, std::move(f));
    return findings;
}

} // namespace jointwright
