// Glued faces whose two parts want to move by unlike amounts: does the wood split, the glue shear, or do they bear with each other?

#include "bond/glue/glue_line.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/cross_grain_layers.hpp"
#include "judging/fits/glued_apart.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Quarter-sawn stock moves less, and is never taken as worse than flat-sawn of the same wood.
bool quarter_sawn_helps(const Prepared& prepared, const FaceDirection& face)
{
    const PartState& state = prepared.state_of(face.a.across() ? face.a.copy : face.b.copy);
    const auto* law = std::get_if<MovementLaw>(&state.movement);
    return law && in_degrees(state.rings) <= 60 && law->radial.per_point() < 0.9 * law->tangential.per_point();
}

/// What is said beside a verdict where another answer would not surprise: the rule of thumb, a glue that creeps, published strains.
std::string doubts_of(const Prepared& prepared, const FaceDirection& face, const LayerStresses& result)
{
    std::string words;
    const bool thumb_minds = face.crossed() && face.length > prepared.facts->number("thumb_crossed_side").value;
    if (thumb_minds && result.verdict == Verdict::pass)
        words += " The rule of thumb (no more than about 4 in or 100 mm) says otherwise.";
    if (thumb_minds && result.verdict == Verdict::warn)
        words += " The rule of thumb (no more than about 4 in or 100 mm) advises against it.";
    if (!thumb_minds && result.verdict == Verdict::fail && face.crossed())
        words += " The rule of thumb (up to about 4 in or 100 mm) would have let it pass.";
    for (const LayerStresses::OtherOutcome& other : result.others)
        if (other.verdict != result.verdict)
            words += fmt::format(" Did the glue keep {:.0f} % of the stress all year, it would {}.", other.share * 100,
                                 other.verdict == Verdict::pass   ? "hold"
                                 : other.verdict == Verdict::warn ? "be on the edge"
                                                                  : "fail");
    const Verdict by_strain = verdict_by_strain(*prepared.facts, result);
    if (face.crossed() && result.verdict != Verdict::pass && result.splits() && severity(by_strain) < severity(result.verdict))
        words += fmt::format(" Measured strains are kinder ({}): the sources disagree.",
                             by_strain == Verdict::pass ? "under first yield" : "between first yield and failure");
    return words;
}

Remedy remedy_for(const Prepared& prepared, const FaceDirection& face, double holding_width)
{
    const Contact& contact = prepared.layout->contacts[face.contact];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    // Rounded down to what a rule shows: 1/8 in or 5 mm.
    const double step = prepared.units == LengthUnit::inch ? 0.125 * kMetresPerInch : 0.005;
    const double width = std::floor(holding_width / step) * step;
    // Where no width passes, what is glued every day is at worst on the edge.
    const double small = std::floor((prepared.facts->number("small_crossed_side").value - 1e-6) / step) * step;
    const std::string middle =
        width > 0.015 ? fmt::format("glue only {} at the middle", size_words(prepared, width))
        : face.length > small && !face.core
            ? fmt::format("leave the face dry, or glue no more than {} at the middle (on the edge)", size_words(prepared, small))
            : "leave the face dry";
    switch (joint.kind) {
    case JointKind::tenon:
        return Remedy::either({middle + " and let the rest slide dry, held by pegs in slots", "make the tenon narrower"});
    case JointKind::dowel:
        return fmt::format("keep the glued dowels within {} of each other and leave any others dry in slots",
                           size_words(prepared, width));
    case JointKind::groove: return "leave it dry in its groove, free to move, with glue or a pin at its middle only";
    case JointKind::sliding_dovetail:
    case JointKind::dovetail: return fmt::format("{} (or at one end) and let the rest slide dry", middle);
    default: break;
    }
    std::string more = "use narrower stock";
    if (quarter_sawn_helps(prepared, face)) more = "use quarter-sawn or narrower stock";
    const PartState& state = prepared.state_of(face.a.copy);
    const double mean = (state.driest.percent() + state.dampest.percent()) / 2;
    if (std::abs(state.made.percent() - mean) > 0.5)
        more += fmt::format(", or glue up at the mean moisture of the room, {}", moisture_words(MoistureContent::percent(mean)));
    return Remedy::either({middle + " and hold the rest by screws in slots or by buttons", more});
}

void add_movement_steps(const Prepared& prepared, const FaceDirection& face, Finding& f)
{
    const Piece& piece = *prepared.piece;
    const Part& a = piece.part_of(face.a.copy);
    const Part& b = piece.part_of(face.b.copy);
    const PartState& sa = prepared.state_of(face.a.copy);
    f.working.push_back({fmt::format("Strain difference made to driest, {} ({} at {}) against {} ({})", a.id,
                                     direction_words(a, main_axis_of(face.direction)), moisture_words(sa.made), b.id,
                                     direction_words(b, main_axis_of(face.direction))),
                         "Δε = ε_A − ε_B", fmt::format("ε_A = {:.5f}, ε_B = {:.5f}", face.a.dry, face.b.dry), face.dry, "1",
                         "plane strain transformation"});
    f.working.push_back({"Strain difference made to dampest", "Δε = ε_A − ε_B",
                         fmt::format("ε_A = {:.5f}, ε_B = {:.5f}", face.a.damp, face.b.damp), face.damp, "1",
                         "plane strain transformation"});
    f.working.push_back({"Differential movement over the glued length, in the direction that governs", "Δ = |Δε| ℓ",
                         fmt::format("ℓ = {}", size_words(prepared, face.length)), face.movement(), "m", "geometry"});
    const FaceSide& mover = face.a.across() ? face.a : face.b;
    const PartState& state = prepared.state_of(mover.copy);
    if (mover.across() && state.moves())
        for (WorkingStep& step :
             movement_working(*prepared.facts, std::get<MovementLaw>(state.movement), state.rings, metres(face.length),
                              state.made, std::abs(face.dry) >= std::abs(face.damp) ? state.driest : state.dampest))
            f.working.push_back(std::move(step));
}

Finding blank(const Prepared& prepared, const FaceDirection& face)
{
    const Contact& contact = prepared.layout->contacts[face.contact];
    Finding f;
    f.check = "cross-grain";
    f.subject = pair_subject(prepared, contact);
    const PartState& a = prepared.state_of(contact.first);
    const PartState& b = prepared.state_of(contact.second);
    f.where =
        fmt::format("{}, {}", pair_place(prepared, contact), a.species == b.species ? a.species : a.species + " on " + b.species);
    f.about.copies = {contact.first, contact.second};
    f.values = {{"governing_movement", face.movement(), "m"}, {"glued_length", face.length, "m"}};
    return f;
}

/// A core glued on both faces, or end grain: judged by the movement alone.
Finding judge_core(const Prepared& prepared, const FaceDirection& face)
{
    const Datum<double>& pass = prepared.facts->number("core_movement_pass");
    const Datum<double>& warn = prepared.facts->number("core_movement_warn");
    const Datum<double>& wide = prepared.facts->number("wide_crossed_side");
    const Contact& contact = prepared.layout->contacts[face.contact];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const std::string a = prepared.piece->part_of(contact.first).id, b = prepared.piece->part_of(contact.second).id;
    Finding f = blank(prepared, face);
    const double movement = face.movement();
    f.utilisation = movement / pass.value;
    f.fails_from = warn.value / pass.value;
    const bool too_wide = face.crossed() && face.length > wide.value;
    if (movement > warn.value)
        f.verdict = Verdict::fail;
    else if (movement > pass.value || too_wide)
        f.verdict = Verdict::warn;
    const bool dowels = joint.kind == JointKind::dowel;
    const std::string facts =
        fmt::format("the glued {} of {} in {} {} to move {} over {}", dowels ? "dowels" : name_of(joint.kind), a, b,
                    dowels ? "want" : "wants", small_words(prepared, movement), size_words(prepared, face.length));
    switch (f.verdict) {
    case Verdict::fail: f.headline = fmt::format("Too much: {}, more than glue and wood bear.", facts); break;
    case Verdict::warn: f.headline = fmt::format("On the edge: {}.", facts); break;
    default: f.headline = fmt::format("Holds: {}.", facts);
    }
    if (f.verdict != Verdict::pass) f.remedy = remedy_for(prepared, face, movement > 0 ? face.length * pass.value / movement : 0);
    f.values.push_back({"limit", pass.value, "m"});
    add_movement_steps(prepared, face, f);
    f.working.push_back({"Movement that a tenon, tail or tongue glued on both faces bears", "Δ ≤ limit",
                         fmt::format("warns to {}", small_words(prepared, warn.value)), pass.value, "m", pass.cite.text()});
    gather_sources(f);
    return f;
}

Finding judge_layers(const Prepared& prepared, const FaceDirection& face)
{
    const Contact& contact = prepared.layout->contacts[face.contact];
    const Part& a = prepared.piece->part_of(contact.first);
    const Part& b = prepared.piece->part_of(contact.second);
    std::string missing;
    const auto result = judge_layer_stresses(prepared, face, &missing);
    if (!result) {
        Finding f =
            cannot_tell("cross-grain", pair_subject(prepared, contact),
                        fmt::format("Whether {} and {} bear with each other across the grain cannot be told: {} is missing.",
                                    a.id, b.id, missing),
                        "give [[wood]] properties from a test of your own, or a wood of the table");
        f.values = {{"governing_movement", face.movement(), "m"}};
        return f;
    }
    Finding f = blank(prepared, face);
    f.verdict = result->verdict;
    f.utilisation = result->utilisation();
    f.values.push_back({"restraint_stress", result->tension, "Pa"});
    f.values.push_back({"tension_limit", result->tension_pass, "Pa"});
    f.values.push_back({"glue_shear", result->shear, "Pa"});
    f.values.push_back({"glue_shear_limit", result->shear_pass, "Pa"});
    f.values.push_back({"edge_peak_shear", result->edge_peak, "Pa"});
    f.values.push_back({"own_bending", result->own_bending, "Pa"});
    f.values.push_back({"unrelaxed_strain", result->strain, "1"});
    const std::string facts =
        fmt::format("{} and {} want to move {} against each other over {} of {}glue", a.id, b.id,
                    small_words(prepared, face.movement()), size_words(prepared, face.length), face.crossed() ? "crossed " : "");
    switch (f.verdict) {
    case Verdict::fail:
        f.headline = fmt::format("{}: {}.",
                                 !result->splits() ? "The glue line shears"
                                 : face.held_flat  ? "The wood splits"
                                                   : "The wood splits or bows",
                                 facts);
        break;
    case Verdict::warn: f.headline = fmt::format("On the edge: {}.", facts); break;
    default: f.headline = fmt::format("Holds: {}.", facts);
    }
    f.headline += doubts_of(prepared, face, *result);
    if (f.verdict != Verdict::pass) f.remedy = remedy_for(prepared, face, widest_that_holds(prepared, face));
    add_movement_steps(prepared, face, f);
    for (WorkingStep& step : layer_working(prepared, face, *result)) f.working.push_back(std::move(step));
    gather_sources(f);
    return f;
}

bool is_thin(const Prepared& prepared, std::size_t copy, Axis normal)
{
    return prepared.piece->copies[copy].box.size(normal) <= prepared.facts->number("veneer_thickness").value + 1e-9;
}

/// The thin layer of a face, where there is one on a thicker core.
std::optional<std::size_t> veneer_of(const Prepared& prepared, const FaceDirection& face)
{
    const Axis normal = main_axis_of(face.patch->normal);
    if (is_thin(prepared, face.a.copy, normal)) return face.a.copy;
    if (is_thin(prepared, face.b.copy, normal)) return face.b.copy;
    return std::nullopt;
}

/// True when a layer like it, of the same grain and about as thick, is glued to the core's opposite face.
bool covered_on_both_faces(const Prepared& prepared, const FaceDirection& face, std::size_t veneer, std::size_t core)
{
    const Piece& piece = *prepared.piece;
    const Axis normal = main_axis_of(face.patch->normal);
    const auto outwards = [&](const Contact& contact, const Patch& patch) {
        return patch.normal[index_of(normal)] * (contact.first == core ? 1 : -1);
    };
    const auto alike = [&](std::size_t layer) {
        const double one = piece.copies[layer].box.size(normal), other = piece.copies[veneer].box.size(normal);
        return piece.part_of(layer).grain == piece.part_of(veneer).grain && std::abs(one - other) <= 0.25 * other;
    };
    const double here = outwards(prepared.layout->contacts[face.contact], *face.patch);
    for (const Contact& other : prepared.layout->contacts) {
        if (!has_glue(prepared, other) || (other.first != core && other.second != core)) continue;
        const std::size_t layer = other.first == core ? other.second : other.first;
        if (layer == veneer || !is_thin(prepared, layer, normal) || !alike(layer)) continue;
        if (std::abs(other.patches[0].normal[index_of(normal)]) > 0.9 && outwards(other, other.patches[0]) * here < 0)
            return true;
    }
    return false;
}

/// A thin layer glued over its whole face holds too little energy to split, but cups its core when the other face is bare.
Finding judge_veneer(const Prepared& prepared, const FaceDirection& face)
{
    Finding f = blank(prepared, face);
    const Datum<double>& thin = prepared.facts->number("veneer_thickness");
    const std::size_t veneer = *veneer_of(prepared, face), core = veneer == face.a.copy ? face.b.copy : face.a.copy;
    const std::string layer = prepared.piece->part_of(veneer).id;
    if (covered_on_both_faces(prepared, face, veneer, core)) {
        f.headline = fmt::format("{} is a thin layer and its core is covered on both faces: it holds.", layer);
    } else {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} is thin enough not to split on {}, but a layer on one face alone cups and checks.", layer,
                                 prepared.piece->part_of(core).id);
        f.remedy = "cover both faces of the core alike";
    }
    add_movement_steps(prepared, face, f);
    f.working.push_back(
        {"Layers up to this thickness hold too little energy to split", "t ≤ limit", "", thin.value, "m", thin.cite.text()});
    gather_sources(f);
    return f;
}

Finding judge(const Prepared& prepared, const FaceDirection& face)
{
    if (face.core) return judge_core(prepared, face);
    return veneer_of(prepared, face) ? judge_veneer(prepared, face) : judge_layers(prepared, face);
}

/// Puts the largest movement over all glued sides of the contact first, whichever of them governs, and says which way it goes.
void put_largest_first(const Prepared& prepared, const std::vector<FaceDirection>& faces, const FaceDirection& governing,
                       Finding& f)
{
    const FaceDirection* largest = &governing;
    for (const FaceDirection& face : faces)
        if (face.contact == governing.contact && face.movement() > largest->movement() + 1e-12) largest = &face;
    f.values.insert(f.values.begin(), {"differential_movement", largest->movement(), "m"});
    if (f.working.empty()) return;
    const bool driest = std::abs(largest->dry) >= std::abs(largest->damp);
    f.working.insert(f.working.begin(), {fmt::format("Largest differential movement of this contact: {}, made to {}",
                                                     way_words(largest->direction), driest ? "driest" : "dampest"),
                                         "Δ = |Δε| ℓ",
                                         fmt::format("Δε = {:.5f}, ℓ = {}; governing: {}, ℓ = {}",
                                                     driest ? largest->dry : largest->damp, size_words(prepared, largest->length),
                                                     way_words(governing.direction), size_words(prepared, governing.length)),
                                         largest->movement(), "m", "geometry"});
}

/// A quick measure of how bad a face direction may be, so that of many alike only the worst is worked out in words.
double weight_of(const FaceDirection& face) { return face.movement() + (face.core ? 0 : 1e-9); }

} // namespace

std::vector<Finding> check_cross_grain(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (const Contact& contact : prepared.layout->contacts)
        if (has_glue(prepared, contact) && prepared.piece->joints[*contact.joint].kind == JointKind::tenon &&
            !prepared.piece->joints[*contact.joint].tenon)
            keep_worst(
                findings,
                cannot_tell("cross-grain", pair_subject(prepared, contact),
                            fmt::format("How far the tenon of {} wants to move in {} cannot be told: its sizes are missing.",
                                        prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id),
                            "tenon = { length = ..., width = ..., thickness = ... }"));
    std::vector<FaceDirection> faces = glued_directions(prepared);
    // Copies of one part at one joint are alike or nearly so: faces of the same pair, kind and length are judged once.
    std::stable_sort(faces.begin(), faces.end(),
                     [](const FaceDirection& a, const FaceDirection& b) { return weight_of(a) > weight_of(b); });
    std::vector<const FaceDirection*> judged;
    for (const FaceDirection& face : faces) {
        const Contact& contact = prepared.layout->contacts[face.contact];
        const PartState& a = prepared.state_of(contact.first);
        const PartState& b = prepared.state_of(contact.second);
        if (!a.moves() || !b.moves()) {
            keep_worst(findings, cannot_tell("cross-grain", pair_subject(prepared, contact),
                                             fmt::format("Whether {} fights {} across the grain cannot be told: {}.",
                                                         prepared.piece->part_of(contact.first).id,
                                                         prepared.piece->part_of(contact.second).id,
                                                         a.moves() ? b.missing_movement() : a.missing_movement()),
                                             "name a wood of the table or give its movement under properties"));
            continue;
        }
        const bool seen = std::any_of(judged.begin(), judged.end(), [&](const FaceDirection* other) {
            const Contact& o = prepared.layout->contacts[other->contact];
            return prepared.piece->copies[o.first].part == prepared.piece->copies[contact.first].part &&
                   prepared.piece->copies[o.second].part == prepared.piece->copies[contact.second].part &&
                   o.joint == contact.joint && other->core == face.core && std::abs(other->length - face.length) < 1e-6 &&
                   std::abs(other->dry - face.dry) < 1e-9 && std::abs(other->damp - face.damp) < 1e-9;
        });
        if (seen) continue;
        judged.push_back(&face);
        Finding f = judge(prepared, face);
        put_largest_first(prepared, faces, face, f);
        keep_worst(findings, std::move(f));
    }
    const Ties ties(prepared);
    for (Finding& f : judge_glued_apart(prepared, ties)) keep_worst(findings, std::move(f));
    return findings;
}

} // namespace jointwright
