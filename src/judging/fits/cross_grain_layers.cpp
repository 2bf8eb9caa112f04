#include "judging/fits/cross_grain_layers.hpp"

#include "bond/glue/glue_line.hpp"
#include "judging/finding_tools.hpp"
#include "measure/write.hpp"
#include "wood/moisture_balance.hpp"

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

/// True when the air of a season lets a glue creep that creeps: damp or warm. A season told as a moisture content is read as air of 20 °C.
bool lets_creep(const Facts& facts, const Season& season)
{
    const double dampest = facts.number("creep_humidity").value * 100;
    if (const auto* air = std::get_if<AirState>(&season))
        return air->humidity.percent() > dampest || air->temperature.celsius() > facts.number("creep_temperature").value;
    return std::get<MoistureContent>(season) > equilibrium_moisture(RelativeHumidity::percent(dampest), Temperature::celsius(20));
}

/// Shares of the stress kept, and what a glue that creeps may keep; nothing where it does not, or the design says.
struct Keeping {
    SharesKept kept;
    std::optional<double> creeping;
    std::string source;
};

Keeping keeping_of(const Prepared& prepared, const GlueRecord* glue)
{
    if (const auto& stated = prepared.piece->limits.relaxation)
        return {{*stated, *stated}, std::nullopt, "the design's [limits] relaxation"};
    const Facts& facts = *prepared.facts;
    const Datum<double>& usual = facts.number("relaxation_default");
    Keeping keeping{{usual.value, usual.value}, std::nullopt, usual.cite.text()};
    if (!glue || !glue->relaxation || glue->relaxation->value >= usual.value) return keeping;
    keeping.creeping = glue->relaxation->value;
    const Room& room = prepared.piece->room;
    if (lets_creep(facts, room.driest)) keeping.kept.dry = *keeping.creeping;
    if (lets_creep(facts, room.dampest)) keeping.kept.damp = *keeping.creeping;
    if (keeping.kept.dry < usual.value || keeping.kept.damp < usual.value) keeping.source = glue->relaxation->cite.text();
    return keeping;
}

double lower(double mean, double variation) { return mean * (1 - 1.645 * variation); }

/// Tension across the grain of one layer, and its limits.
struct Pull {
    double driving = 0, kept = 0, tension = 0, pass = 0, warn = 0;
    double use() const { return pass > 0 ? tension / pass : 0; }
};

/// `side` may be a twin of the face's own; `other` is its partner. `stronger`: strength this way over that in the table.
Pull pull_of(const Prepared& prepared, const FaceSide& side, const FaceSide& other, const SharesKept& kept,
             double mean_per_strain, double depth, double stronger)
{
    // A layer is stretched in the season in which it would be the shorter of the two.
    const double dry = std::max(0.0, other.dry - side.dry), damp = std::max(0.0, other.damp - side.damp);
    const double full_dry = std::abs(other.dry - side.dry), full_damp = std::abs(other.damp - side.damp);
    Pull pull;
    pull.kept = kept.dry;
    if (dry > 0) pull.driving = relaxed_strain(kept.dry, dry, kept.damp, damp > 0 ? 0 : full_damp);
    const double when_damp = damp > 0 ? relaxed_strain(kept.damp, damp, kept.dry, dry > 0 ? 0 : full_dry) : 0;
    if (when_damp > pull.driving) {
        pull.driving = when_damp;
        pull.kept = kept.damp;
    }
    const double strength = prepared.state_of(side.copy).usual.tension_across->value.value() * stronger;
    const double thin = prepared.facts->number("energy_depth").value;
    const double rise = depth < thin ? std::min(2.0, std::sqrt(thin / depth)) : 1.0;
    const double season = prepared.facts->number("season_duration").value;
    const double variation = variation_of(*prepared.facts, StrengthKind::tension_across).value;
    pull.tension = mean_per_strain * pull.driving;
    pull.pass = lower(strength, variation) * season * rise;
    pull.warn = strength * season * rise;
    return pull;
}

/// A face with its layers' moduli, as drawn and with each crossed layer sawn so that it is pulled along its rings.
struct Layers {
    FaceDirection face;
    Restraint restraint;
    DirectionalModulus a, b;
    RestraintAnswer per_strain;
};

Layers layers_of(const Prepared& prepared, const FaceDirection& face, const Restraint& restraint)
{
    return {face, restraint, *modulus_in(prepared, face.a.copy, face.direction, face.patch->normal),
            *modulus_in(prepared, face.b.copy, face.direction, face.patch->normal), restraint_of(restraint)};
}

Layers sawn_flat(const Prepared& prepared, const Layers& layers, bool a, bool b)
{
    Layers twin = layers;
    if (a) {
        twin.face.a = tangential_twin(prepared, layers.face, layers.face.a);
        twin.restraint.a.modulus = layers.a.if_tangential;
    }
    if (b) {
        twin.face.b = tangential_twin(prepared, layers.face, layers.face.b);
        twin.restraint.b.modulus = layers.b.if_tangential;
    }
    twin.face.dry = twin.face.a.dry - twin.face.b.dry;
    twin.face.damp = twin.face.a.damp - twin.face.b.damp;
    twin.per_strain = restraint_of(twin.restraint);
    return twin;
}

/// Strength along the rays over that across them: the table prints one figure for both. A design's own figure stands as it is.
double stronger_by_rays(const Prepared& prepared, const FaceSide& side, const DirectionalModulus& modulus)
{
    const WoodChoice& wood = prepared.piece->woods[prepared.piece->part_of(side.copy).wood];
    if (wood.own_strength.tension_across) return 1;
    return std::clamp(modulus.over_tangential, 1.0, prepared.facts->number("radial_strength_most").value);
}

/// Judges the tension of one layer; keeps the worse of the two.
void judge_tension(const Prepared& prepared, const Layers& layers, bool first, LayerStresses& s)
{
    const FaceSide &side = first ? layers.face.a : layers.face.b, &other = first ? layers.face.b : layers.face.a;
    if (!side.across()) return;
    const DirectionalModulus& modulus = first ? layers.a : layers.b;
    const RestraintAnswer& answer = layers.per_strain;
    const double depth = in_metres(first ? answer.depth_a : answer.depth_b);
    Pull pull = pull_of(prepared, side, other, s.kept, (first ? answer.mean_a : answer.mean_b).value(), depth,
                        stronger_by_rays(prepared, side, modulus));
    const Layers flat = sawn_flat(prepared, layers, first, !first);
    const Pull twin = pull_of(prepared, first ? flat.face.a : flat.face.b, other, s.kept,
                              (first ? flat.per_strain.mean_a : flat.per_strain.mean_b).value(), depth, 1);
    const bool as_flat_sawn = layers.face.crossed() && twin.use() > 0 && twin.use() < pull.use() * (1 - 1e-9);
    if (as_flat_sawn) {
        const double raised = pull.use() / twin.use();
        pull.pass *= raised;
        pull.warn *= raised;
    }
    if (s.tension_pass > 0 && pull.use() <= s.tension_use()) return;
    const Property<Stress>& strength = *prepared.state_of(side.copy).usual.tension_across;
    s.tension = pull.tension;
    s.tension_pass = pull.pass;
    s.tension_warn = pull.warn;
    s.own_bending = (first ? answer.own_bending_a : answer.own_bending_b).value() * pull.driving;
    s.kept_now = pull.kept;
    s.strain = modulus.modulus.value() > 0 && pull.kept > 0 ? pull.tension / (pull.kept * modulus.modulus.value()) : 0;
    s.over_tangential = modulus.over_tangential;
    s.as_flat_sawn = as_flat_sawn;
    s.depth = depth;
    s.driving = pull.driving;
    s.layer = prepared.piece->part_of(side.copy).id;
    s.tension_source = strength.source;
    s.estimated = strength.estimated;
}

/// Strain that shears the glue line: the larger of the two seasons, each with what relaxed in the other where the two move opposite ways.
double shear_driving(const FaceDirection& face, const SharesKept& kept)
{
    const bool opposite = face.dry * face.damp < 0;
    return std::max(relaxed_strain(kept.dry, face.dry, kept.damp, opposite ? face.damp : 0),
                    relaxed_strain(kept.damp, face.damp, kept.dry, opposite ? face.dry : 0));
}

Verdict verdict_at(double value, double pass, double warn)
{
    if (value <= pass) return Verdict::pass;
    return value <= warn ? Verdict::warn : Verdict::fail;
}

LayerStresses stresses_with(const Prepared& prepared, const Layers& layers, const GlueStrength& strength, const SharesKept& kept)
{
    const Facts& facts = *prepared.facts;
    const FaceDirection& face = layers.face;
    LayerStresses s;
    s.kept = kept;
    s.restraint = layers.restraint;
    s.per_strain = layers.per_strain;
    for (const bool first : {true, false}) judge_tension(prepared, layers, first, s);
    s.shear_driving = shear_driving(face, kept);
    s.shear = s.per_strain.glue_shear.value() * s.shear_driving;
    if (face.crossed()) {
        const Layers flat = sawn_flat(prepared, layers, face.a.across(), face.b.across());
        const double as_flat = flat.per_strain.glue_shear.value() * shear_driving(flat.face, kept);
        s.as_flat_sawn = s.as_flat_sawn || as_flat < s.shear * (1 - 1e-9);
        s.shear = std::min(s.shear, as_flat);
    }
    const double season = facts.number("season_duration").value;
    s.shear_pass = lower(strength.mean.value(), glue_variation(facts).value) * season;
    s.shear_warn = strength.mean.value() * season;
    s.glue_source = strength.source;
    s.edge_peak = s.per_strain.edge_peak.value() * s.shear_driving;

    const Verdict tension = s.tension_pass > 0 ? verdict_at(s.tension, s.tension_pass, s.tension_warn) : Verdict::pass;
    const Verdict shear = verdict_at(s.shear, s.shear_pass, s.shear_warn);
    s.verdict = severity(tension) > severity(shear) ? tension : shear;
    if (face.length < facts.number("small_crossed_side").value && s.verdict == Verdict::fail) s.verdict = Verdict::warn;
    if (face.crossed() && face.length > facts.number("wide_crossed_side").value && s.verdict == Verdict::pass)
        s.verdict = Verdict::warn;
    return s;
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
    const Keeping keeping = keeping_of(prepared, glue);
    const Layers layers = layers_of(prepared, face, *restraint);
    LayerStresses s = stresses_with(prepared, layers, *strength, keeping.kept);
    s.relaxation_source = keeping.source;
    if (!keeping.creeping) return s;
    for (const double share : {facts.number("relaxation_default").value, *keeping.creeping}) {
        if (keeping.kept.dry == share && keeping.kept.damp == share) continue;
        const LayerStresses other = stresses_with(prepared, layers, *strength, {share, share});
        s.others.push_back({share, other.tension, other.shear, other.verdict});
    }
    return s;
}

Verdict verdict_by_strain(const Facts& facts, const LayerStresses& stresses)
{
    return verdict_at(stresses.strain, facts.number("yield_strain_across").value, facts.number("failure_strain_across").value);
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
    w.push_back({"Share of stress kept under slow movement in the dry season (engineering estimate)", "r_dry", "", s.kept.dry,
                 "1", s.relaxation_source});
    if (s.kept.damp != s.kept.dry)
        w.push_back(
            {"The same in the damp season, in which the glue creeps", "r_damp", "", s.kept.damp, "1", s.relaxation_source});
    if (s.tension_pass > 0)
        w.push_back({fmt::format("Strain that stretches {} in one season, with the set of the other", s.layer),
                     "Δε = r_dry [Δε_dry + (1 − r_damp) Δε_damp], or with the seasons exchanged",
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
        if (s.over_tangential > 1 + 1e-6) {
            const Datum<double>& most = facts.number("radial_strength_most");
            w.push_back({"In it: strength along the rays over the table's, as the moduli, no more than told here",
                         "E_R/E_T ≤ 1.5",
                         fmt::format("moduli {}{}", write_number(s.over_tangential, 3),
                                     s.as_flat_sawn ? "; and no worse than sawn flat" : ""),
                         most.value, "1", most.cite.text()});
        }
        w.push_back({"Strength left after a season", "share of the short-term strength", "",
                     facts.number("season_duration").value, "1", facts.number("season_duration").cite.text()});
    }
    w.push_back({"Mean shear of the glue line over its end 25 mm", "τ = N(ℓ/2 − 25 mm)/25 mm",
                 fmt::format("with Δε = {:.5f}, wetting or drying, the larger", s.shear_driving), s.shear, "Pa", method});
    w.push_back({"Limit to pass: lower 5 % of the glue-line shear at this grain angle, for a season", "f05 × 0.70",
                 fmt::format("warns to {} MPa; a third of the shear along the grain where crossed", mpa(s.shear_warn)),
                 s.shear_pass, "Pa", facts.number("crossed_grain_share").cite.text()});
    const Datum<double>& yields = facts.number("yield_strain_across");
    const Verdict by_strain = verdict_by_strain(facts, s);
    w.push_back({"Second opinion, without moduli: strain of the held layer", "e = σ/(r E)",
                 fmt::format("published: yields at 0.4 %, fails at 0.9 %: {}", by_strain == Verdict::pass   ? "sound"
                                                                               : by_strain == Verdict::warn ? "doubtful"
                                                                                                            : "splits"),
                 s.strain, "1", yields.cite.text()});
    for (const LayerStresses::OtherOutcome& other : s.others) {
        w.push_back({fmt::format("Did it keep {} % of the stress in both seasons: tension; {}",
                                 write_number(other.share * 100, 2), word_of(other.verdict)),
                     "σ", "", other.tension, "Pa", "engineering estimate"});
        w.push_back({"The same: shear of the glue line", "τ", "", other.shear, "Pa", "engineering estimate"});
    }
    const Datum<double>& thumb = facts.number("thumb_crossed_side");
    if (face.crossed())
        w.push_back({"Rule of thumb: widest glued cross-grain", "ℓ ≤ about 4 in (100 mm)",
                     fmt::format("ℓ = {}", size_words(prepared, face.length)), thumb.value, "m", thumb.cite.text()});
    return w;
}

} // namespace jointwright
