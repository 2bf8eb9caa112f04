#include "checks/cross_grain_layers.hpp"

#include "bond/glue_line.hpp"
#include "checks/check_tools.hpp"
#include "measure/write.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

const GlueRecord* glue_of(const Prepared& prepared, const FaceDirection& face)
{
    const Contact& contact = prepared.layout->contacts[face.contact];
    const auto& name = prepared.piece->joints[*contact.joint].glue;
    return name ? prepared.facts->find_glue(*name) : nullptr;
}

/// Share of stress kept under slow movement: the design's, the glue's or the default.
std::pair<double, std::string> share_kept(const Prepared& prepared, const GlueRecord* glue)
{
    if (prepared.piece->limits.relaxation) return {*prepared.piece->limits.relaxation, "the design's [limits] relaxation"};
    if (glue && glue->relaxation) return {glue->relaxation->value, glue->relaxation->cite.text()};
    const Datum<double>& usual = prepared.facts->number("relaxation_default");
    return {usual.value, usual.cite.text()};
}

double lower(double mean, double variation) { return mean * (1 - 1.645 * variation); }

/// Tension across the grain of one layer against its limits; keeps the worse layer.
void judge_tension(const Prepared& prepared, const FaceDirection& face, const FaceSide& side, Stress modulus,
                   double mean_per_strain, double bending_per_strain, double depth, LayerStresses& s)
{
    if (!side.across()) return;
    const FaceSide& other = &side == &face.a ? face.b : face.a;
    // A layer is stretched in the season in which it would be the shorter of the two.
    const double dry = std::max(0.0, other.dry - side.dry), damp = std::max(0.0, other.damp - side.damp);
    const double full_dry = std::abs(face.dry), full_damp = std::abs(face.damp);
    double driving = 0;
    if (dry > 0) driving = std::max(driving, relaxed_strain(s.share_kept, dry, damp > 0 ? 0 : full_damp));
    if (damp > 0) driving = std::max(driving, relaxed_strain(s.share_kept, damp, dry > 0 ? 0 : full_dry));
    const PartState& state = prepared.state_of(side.copy);
    const Property<Stress>& strength = *state.usual.tension_across;
    const double thin = prepared.facts->number("energy_depth").value;
    const double rise = depth < thin ? std::min(2.0, std::sqrt(thin / depth)) : 1.0;
    const double season = prepared.facts->number("season_duration").value;
    const double variation = variation_of(*prepared.facts, StrengthKind::tension_across).value;
    const double tension = mean_per_strain * driving, pass = lower(strength.value.value(), variation) * season * rise;
    if (s.tension_pass > 0 && tension / pass <= s.tension_use()) return;
    s.tension = tension;
    s.tension_pass = pass;
    s.tension_warn = strength.value.value() * season * rise;
    s.own_bending = bending_per_strain * driving;
    s.strain = modulus.value() > 0 ? tension / (s.share_kept * modulus.value()) : 0;
    s.depth = depth;
    s.driving = driving;
    s.layer = prepared.piece->part_of(side.copy).id;
    s.tension_source = strength.source;
    s.estimated = strength.estimated;
}

Verdict verdict_at(double value, double pass, double warn)
{
    if (value <= pass) return Verdict::pass;
    return value <= warn ? Verdict::warn : Verdict::fail;
}

} // namespace

std::optional<LayerStresses> judge_layer_stresses(const Prepared& prepared, const FaceDirection& face, std::string* missing)
{
    const Facts& facts = *prepared.facts;
    const auto restraint = restraint_at(prepared, face, missing);
    if (!restraint) return std::nullopt;
    const PartState& a = prepared.state_of(face.a.copy);
    const PartState& b = prepared.state_of(face.b.copy);
    for (const PartState* state : {&a, &b})
        if (!state->usual.tension_across || !state->usual.shear) {
            if (missing)
                *missing = (state->usual.shear ? "the strength across the grain of " : "the shear strength of ") + state->species;
            return std::nullopt;
        }
    const GlueRecord* glue = glue_of(prepared, face);
    const auto strength = glue_strength(facts, a.usual, a.species, b.usual, b.species, glue, GlueFace::side_grain,
                                        face.patch->grain_angle.value_or(0));
    LayerStresses s;
    std::tie(s.share_kept, s.relaxation_source) = share_kept(prepared, glue);
    s.restraint = *restraint;
    s.per_strain = restraint_of(*restraint);
    judge_tension(prepared, face, face.a, restraint->a.modulus, s.per_strain.mean_a.value(), s.per_strain.own_bending_a.value(),
                  in_metres(s.per_strain.depth_a), s);
    judge_tension(prepared, face, face.b, restraint->b.modulus, s.per_strain.mean_b.value(), s.per_strain.own_bending_b.value(),
                  in_metres(s.per_strain.depth_b), s);
    // What relaxes in one season comes back in the other only where the two seasons move opposite ways.
    const bool opposite = face.dry * face.damp < 0;
    s.shear_driving = std::max(relaxed_strain(s.share_kept, face.dry, opposite ? face.damp : 0),
                               relaxed_strain(s.share_kept, face.damp, opposite ? face.dry : 0));
    const double season = facts.number("season_duration").value;
    s.shear = s.per_strain.glue_shear.value() * s.shear_driving;
    s.shear_pass = lower(strength->mean.value(), glue_variation(facts).value) * season;
    s.shear_warn = strength->mean.value() * season;
    s.glue_source = strength->source;
    s.edge_peak = s.per_strain.edge_peak.value() * s.shear_driving;

    const Verdict tension = s.tension_pass > 0 ? verdict_at(s.tension, s.tension_pass, s.tension_warn) : Verdict::pass;
    const Verdict shear = verdict_at(s.shear, s.shear_pass, s.shear_warn);
    s.verdict = severity(tension) > severity(shear) ? tension : shear;
    if (face.length < facts.number("small_crossed_side").value && s.verdict == Verdict::fail) s.verdict = Verdict::warn;
    if (face.crossed() && face.length > facts.number("wide_crossed_side").value && s.verdict == Verdict::pass)
        s.verdict = Verdict::warn;
    return s;
}

double widest_that_holds(const Prepared& prepared, const FaceDirection& face)
{
    const auto excess = [&](double length) {
        FaceDirection shorter = face;
        shorter.length = length;
        const auto stresses = judge_layer_stresses(prepared, shorter, nullptr);
        return (stresses ? stresses->utilisation() : 2.0) - 1.0;
    };
    const double least = 0.010, most = std::min(face.length, prepared.facts->number("wide_crossed_side").value);
    if (most <= least || excess(least) > 0) return 0;
    if (excess(most) <= 0) return most;
    std::uintmax_t tries = 40;
    const auto bracket =
        boost::math::tools::toms748_solve(excess, least, most, boost::math::tools::eps_tolerance<double>(12), tries);
    return bracket.first;
}

Working layer_working(const Prepared& prepared, const FaceDirection& face, const LayerStresses& s)
{
    const Facts& facts = *prepared.facts;
    const auto gpa = [](Stress v) { return write_number(v.value() * 1e-9, 3); };
    const std::string method = "shear lag of two bonded layers with bending (after Timoshenko 1925 and Volkersen 1938; checked "
                               "against plane finite elements of our own)";
    const auto mpa = [](double v) { return write_number(v * 1e-6, 3); };
    Working w;
    w.push_back({"Share of stress kept under slow movement", "r", "", s.share_kept, "1", s.relaxation_source});
    if (s.tension_pass > 0)
        w.push_back({fmt::format("Strain that stretches {} in its dry season, with the set of the damp one", s.layer),
                     "Δε = r [Δε_dry + (1 − r) Δε_damp]",
                     fmt::format("Δε_dry = {:.5f}, Δε_damp = {:.5f}", std::abs(face.dry), std::abs(face.damp)), s.driving, "1",
                     "relaxation and compression set (engineering estimate)"});
    w.push_back(
        {"Force held at mid-length, for 1 m of width", "N = (Δε/c) [1 − 1/cosh(βℓ/2)]",
         fmt::format("E_A = {} GPa, E_B = {} GPa, G_A = {} GPa, G_B = {} GPa, t_A = {} mm, t_B = {} mm, ℓ = {} mm, pair {}",
                     gpa(s.restraint.a.modulus), gpa(s.restraint.b.modulus), gpa(s.restraint.a.shear_modulus),
                     gpa(s.restraint.b.shear_modulus), write_number(in_millimetres(s.restraint.a.thickness), 4),
                     write_number(in_millimetres(s.restraint.b.thickness), 4), write_number(face.length * 1e3, 4),
                     s.restraint.held_flat ? fmt::format("held flat by {}", face.held_by) : "free to bow"),
         s.per_strain.force.value() * (s.tension_pass > 0 ? s.driving : s.shear_driving), "N", method});
    if (s.tension_pass > 0) {
        w.push_back({fmt::format("Mean tension across the grain of {}", s.layer), "σ = N/d, d = min(t, max(0.4 ℓ, 20 mm))",
                     fmt::format("d = {} mm", write_number(s.depth * 1e3, 3)), s.tension, "Pa", method});
        w.push_back({"Limit to pass: lower 5 % of the strength across the grain, for a season",
                     "f05 × 0.70 × √(20 mm/d) where d is under 20 mm", fmt::format("warns to {} MPa", mpa(s.tension_warn)),
                     s.tension_pass, "Pa", s.tension_source});
        w.push_back({"Strength left after a season", "share of the short-term strength", "",
                     facts.number("season_duration").value, "1", facts.number("season_duration").cite.text()});
    }
    w.push_back({"Mean shear of the glue line over its end 25 mm", "τ = N(ℓ/2 − 25 mm)/25 mm",
                 fmt::format("with Δε = {:.5f}, wetting or drying, the larger", s.shear_driving), s.shear, "Pa", method});
    w.push_back({"Limit to pass: lower 5 % of the glue-line shear at this grain angle, for a season", "f05 × 0.70",
                 fmt::format("warns to {} MPa; a third of the shear along the grain where crossed", mpa(s.shear_warn)),
                 s.shear_pass, "Pa", facts.number("crossed_grain_share").cite.text()});
    w.push_back({"Second opinion, without moduli: strain of the held layer", "e = σ/(r E)",
                 "published: yields at 0.4 %, fails at 0.9 %", s.strain, "1", facts.number("yield_strain_across").cite.text()});
    const Datum<double>& thumb = facts.number("thumb_crossed_side");
    if (face.crossed())
        w.push_back({"Rule of thumb: widest glued cross-grain", "ℓ ≤ about 4 in (100 mm)",
                     fmt::format("ℓ = {}", size_words(prepared, face.length)), thumb.value, "m", thumb.cite.text()});
    return w;
}

} // namespace jointwright
