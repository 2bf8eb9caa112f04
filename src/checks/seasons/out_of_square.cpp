// Legs and posts whose rings run from corner to corner: the square turns into a diamond.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/flatness.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "wood/distortion.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMostUnlikeSides = 2; // sides of a section that is still nearly square; flatter ones are boards and cup
constexpr double kLeastSkew = 1e-3;    // sin 2φ: rings within 0.03° of a face

bool is_nearly_square(const Part& part)
{
    const double w = in_metres(part.width), t = in_metres(part.thickness);
    return std::max(w, t) < kMostUnlikeSides * std::min(w, t) && !part.glued_up;
}

Finding judge(const Prepared& prepared, std::size_t index, Angle dry, Angle damp)
{
    const Part& part = prepared.piece->parts[index];
    const PartState& state = prepared.parts[index];
    const MovementLaw& law = std::get<MovementLaw>(state.movement);
    const double side = std::max(in_metres(part.width), in_metres(part.thickness));
    const double dry_off = std::abs(dry.value()) * side, damp_off = std::abs(damp.value()) * side;
    const WorseSeason worse = worse_season(state, dry_off, damp_off);
    const Angle angle = worse.dry ? dry : damp;
    const Datum<double>& limit = prepared.facts->number("out_of_square_most");

    Finding f;
    f.check = "out-of-square";
    f.subject = part.id;
    f.verdict = worse.amount > limit.value ? Verdict::warn : Verdict::pass;
    f.utilisation = worse.amount / limit.value;
    f.weight = worse.amount;
    f.where = fmt::format("every {}, {}, rings at {} to its face", part.id, state.species, write_angle(state.rings));
    f.headline = fmt::format(
        "{} leaves square by {} over its side of {} (its corners by {:.2f}°) {}: it {} more along its rings than across them.",
        part.id, small_words(prepared, worse.amount), size_words(prepared, side), std::abs(in_degrees(angle)), worse.words(),
        worse.moisture < state.made ? "shrinks" : "swells");
    if (f.verdict == Verdict::warn)
        f.remedy = fmt::format(
            "cut {} with its rings parallel to a face (flat or quarter), or let it settle at about {} and plane it square then",
            part.id, moisture_words(MoistureContent::percent((state.driest.percent() + state.dampest.percent()) / 2)));
    f.values = {{"shear_driest", dry.value(), "rad"},
                {"shear_dampest", damp.value(), "rad"},
                {"offset_driest", dry_off, "m"},
                {"offset_dampest", damp_off, "m"},
                {"limit", limit.value, "m"}};
    f.working = ring_strain_working(*prepared.facts, law, state.made, worse.moisture);
    f.working.push_back({"Angle by which the corners leave 90°", "γ = 2 (ε_T − ε_R) sin φ cos φ",
                         fmt::format("φ = {}", write_angle(state.rings)), angle.value(), "rad", "plane strain transformation"});
    f.working.push_back({"Departure from square over the longer side", "Δ = |γ| a",
                         fmt::format("a = {}", size_words(prepared, side)), worse.amount, "m", "geometry"});
    f.working.push_back({"Departure that stays unnoticed", "Δ ≤ limit", "", limit.value, "m", limit.cite.text()});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_out_of_square(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const Part& part = prepared.piece->parts[p];
        const PartState& state = prepared.parts[p];
        // Rings along a face keep the section square whatever the wood does: nothing to say.
        if (!is_nearly_square(part) || std::abs(std::sin(2 * state.rings.value())) < kLeastSkew) continue;
        const auto* law = std::get_if<MovementLaw>(&state.movement);
        if (!law) {
            findings.push_back(
                cannot_tell("out-of-square", part.id,
                            fmt::format("Whether {} stays square cannot be told: {}.", part.id, state.missing_movement()),
                            "give [[wood]] properties = { tangential = ..., radial = ... } from a test of your own"));
            continue;
        }
        findings.push_back(judge(prepared, p, shear_of_section(state.rings, ring_strain(*law, state.made, state.driest)),
                                 shear_of_section(state.rings, ring_strain(*law, state.made, state.dampest))));
    }
    return findings;
}

} // namespace jointwright
