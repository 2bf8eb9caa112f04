// Legs, posts and case sides: pressed along the grain, bent by pushes, and slender ones as columns.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/footing.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

/// Length of a post from its lower end to the lowest part that holds it sideways; its whole length where none does.
double free_length(const Prepared& prepared, std::size_t copy)
{
    const MemberLine& line = prepared.statics.frame->lines()[copy];
    double lowest = line.length;
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        if (!contacts[c].joint || (contacts[c].first != copy && contacts[c].second != copy)) continue;
        const kernel::Vec3& at = prepared.statics.frame->contact_middle(c);
        const double s = line.grain.z() >= 0 ? line.along(at) : line.length - line.along(at);
        if (s > 0.02 * line.length) lowest = std::min(lowest, s);
    }
    return std::max(lowest, 0.01);
}

/// Resistances of one post in one load case.
struct PostResistance {
    double pressed = 0;       ///< as a column [Pa]
    double short_pressed = 0; ///< as a short block
    double critical = 0;      ///< Euler stress with the lower stiffness
    double bent = 0, sheared = 0;
    double warns_to = 1;
};

PostResistance post_resistance(const Prepared& prepared, const PostResult& post, const PartState& state, double free)
{
    const Facts& facts = *prepared.facts;
    const LoadCase& load_case = prepared.statics.cases.cases[post.load_case];
    const WoodState& wood = state.loaded;
    const auto resist = [&](StrengthKind kind, Stress mean) {
        return load_case.strength_share *
               member_resistance(facts, load_case.kind, load_case.duration, kind, wood.kind, mean).value();
    };
    PostResistance r;
    r.short_pressed = resist(StrengthKind::compression_along, wood.compression_along->value);
    r.bent = resist(StrengthKind::bending, wood.bending_strength->value);
    r.sheared = resist(StrengthKind::shear, wood.shear->value);
    // A frame that may sway: effective length twice the free leg. Stiffness one board in twenty is below.
    const double lower =
        wood.modulus_along->value.value() * (1 - facts.number("lower_tail").value * facts.number("variation_modulus").value);
    const double thin = std::min(post.depth_width, post.depth_face), radius = thin / std::sqrt(12.0), slender = 2 * free / radius;
    r.critical = std::numbers::pi * std::numbers::pi * lower / (slender * slender);
    r.pressed = 1 / (1 / r.short_pressed + 1 / r.critical);
    r.warns_to = warn_limit(facts, load_case.kind, StrengthKind::bending, wood.kind);
    return r;
}

void add_shear_working(const Prepared& prepared, const PostResult& post, const PostResistance& r, Working& working)
{
    const LoadCase& load_case = prepared.statics.cases.cases[post.load_case];
    working.push_back({"Shear force, where it and twist together are worst", "V",
                       fmt::format("{} from its lower end", size_words(prepared, post.shear_at)), post.shear, "N",
                       load_case.source});
    add_shear_steps(prepared,
                    {post.shear, post.shear_area, post.torsion, post.torsion_stress, post.shear_stress,
                     prepared.statics.frame->lines()[post.copy].plate},
                    working);
    working.push_back({"Resistance to shear along the grain", load_case.proof ? "f05/1.15" : "f05 k_dur/k", "", r.sheared, "Pa",
                       prepared.state_of(post.copy).loaded.shear->source});
}

Finding judge_post(const Prepared& prepared, std::size_t part, const PostResult& post, const PostResistance& r, double free,
                   double use)
{
    const LoadCase& load_case = prepared.statics.cases.cases[post.load_case];
    const PartState& state = prepared.parts[part];
    const Facts& facts = *prepared.facts;
    Finding f;
    f.check = "leg";
    f.subject = prepared.piece->parts[part].id;
    f.utilisation = use;
    f.fails_from = r.warns_to;
    f.verdict = use <= 1 ? Verdict::pass : use <= r.warns_to ? Verdict::warn : Verdict::fail;
    f.where = fmt::format("{}, {}, {}", prepared.piece->label(post.copy, true), load_case.name, state.species);
    f.about.copies = {post.copy};
    const char* words = f.verdict == Verdict::pass   ? "bears it"
                        : f.verdict == Verdict::warn ? "bears it without the customary margin"
                                                     : "can break";
    const bool shears = post.shear_stress / r.sheared >= use; // sheared and twisted, not bent
    f.headline = shears ? fmt::format("{} {}: sheared along its grain to {} of {} allowed with {}.", f.subject, words,
                                      write_stress(pascals(post.shear_stress)), write_stress(pascals(r.sheared)), load_case.name)
                        : fmt::format("{} {}: bent to {} and pressed to {} with {}.", f.subject, words,
                                      write_stress(pascals(post.bending_stress)), write_stress(pascals(post.thrust_stress)),
                                      load_case.name);
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("make {} stouter, taper it less, or add a stretcher low down", f.subject);
    const double bending = std::hypot(post.moment_width, post.moment_face);
    f.values = {{"stress", post.bending_stress + post.thrust_stress, "Pa"},
                {"bending_stress", post.bending_stress, "Pa"},
                {"thrust_stress", post.thrust_stress, "Pa"},
                {"thrust", post.thrust, "N"},
                {"moment", bending, "N m"},
                {"free_length", free, "m"},
                {"at", post.at, "m"},
                {"shear_stress", post.shear_stress, "Pa"}};
    if (shears) {
        add_shear_working(prepared, post, r, f.working);
        gather_sources(f);
        return f;
    }
    f.working.push_back({"Thrust along the grain, pressing positive", "N",
                         fmt::format("{} from its lower end", size_words(prepared, post.at)), post.thrust, "N",
                         load_case.source});
    f.working.push_back({"Bending there, both ways together", "M = √(M_w² + M_f²)",
                         fmt::format("{} and {} N m", write_number(post.moment_width, 3), write_number(post.moment_face, 3)),
                         bending, "N m", "mechanics of frames (Timoshenko beams and plates)"});
    f.working.push_back(
        {"Bending stress of the net section", "σ_b = M_w b/(2 I_w) + M_f t/(2 I_f)",
         fmt::format("{} × {} mm there", write_number(post.depth_width * 1e3, 4), write_number(post.depth_face * 1e3, 4)),
         post.bending_stress, "Pa", facts.cite("wood-handbook-2010", "ch. 9 (mechanics)")});
    f.working.push_back(
        {"Resistance to bending", member_formula(load_case.kind), "", r.bent, "Pa", state.loaded.bending_strength->source});
    f.working.push_back({fmt::format("Resistance to pressing along the grain, a short block{}",
                                     state.loaded.compression_along->estimated ? "; strength estimated" : ""),
                         member_formula(load_case.kind), state.loaded.compression_along->note, r.short_pressed, "Pa",
                         state.loaded.compression_along->source});
    f.working.push_back({"Stress at which it buckles, effective length twice the free leg, lower stiffness",
                         "σ_E = π² E05/(2 ℓ/i)²", fmt::format("ℓ = {}", size_words(prepared, free)), r.critical, "Pa",
                         facts.cite("mechanics", "Euler")});
    f.working.push_back({"As a column", "1/f_c = 1/f + 1/σ_E", "", r.pressed, "Pa",
                         facts.cite("mechanics", "Rankine's rule between crushing and buckling")});
    f.working.push_back({"Share used", "σ_b/f_b + σ_c/f_c", "", use, "1", facts.cite("mechanics", "straight interaction")});
    gather_sources(f);
    return f;
}

/// A part that stands on the floor with its grain across its height, as a leg cut from the wrong way of a board: no post to the sums, since
/// its grain lies level, and yet one that pushes bend.
void add_short_grained(const Prepared& prepared, std::vector<Finding>& findings)
{
    constexpr double tall = 3; // times its length along the grain
    const Piece& piece = *prepared.piece;
    if (!piece.wall.empty() || (piece.use != Use::seat && piece.use != Use::table)) return;
    const double floor = floor_level(piece);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Part& part = piece.part_of(i);
        const bool upright =
            part.width_axis() == Axis::z && !part.glued_up && in_metres(part.width) > tall * in_metres(part.length);
        if (!upright || !meets_floor(piece, i, floor)) continue;
        Finding f;
        f.check = "leg";
        f.subject = part.id;
        f.verdict = Verdict::fail;
        f.where = piece.label(i, true);
        f.about.copies = {i};
        f.headline =
            fmt::format("{} stands with its grain across its height: a push that bends it pulls the wood apart across the "
                        "grain, where it bears least, and it snaps.",
                        part.id);
        f.remedy = fmt::format("turn the grain of {} to run up and down", part.id);
        f.sources.push_back(prepared.facts->cite("common-practice", "short grain in a leg"));
        keep_worst(findings, std::move(f));
    }
}

} // namespace

std::vector<Finding> check_leg(const Prepared& prepared)
{
    std::vector<Finding> findings;
    add_short_grained(prepared, findings);
    for (const PostResult& post : prepared.statics.posts) {
        const std::size_t part = prepared.piece->copies[post.copy].part;
        const PartState& state = prepared.parts[part];
        if (!prepared.statics.settled[post.load_case]) continue;
        if (!asks_members(prepared.statics.cases.cases[post.load_case].kind)) continue;
        const WoodState& wood = state.loaded;
        if (!wood.modulus_along || !wood.bending_strength || !wood.compression_along || !wood.shear) {
            keep_worst(
                findings,
                cannot_tell(
                    "leg", prepared.piece->parts[part].id,
                    fmt::format(
                        "Whether {} bears what it must cannot be told: its stiffness or a strength along the grain is not known.",
                        prepared.piece->parts[part].id),
                    wood.modulus_along && wood.bending_strength
                        ? "name a species of the table beside the own test values: its strength along the grain is wanted too"
                        : name_another_wood(state) + "; own test values may replace its modulus and bending_strength"));
            continue;
        }
        const double free = free_length(prepared, post.copy);
        const PostResistance r = post_resistance(prepared, post, state, free);
        const double pressed =
            post.thrust > 0 ? post.thrust_stress / r.pressed : post.thrust_stress / r.bent; // pulled: as bending's stretched side
        const double use = std::max(post.bending_stress / r.bent + pressed, post.shear_stress / r.sheared);
        const Verdict verdict = use <= 1 ? Verdict::pass : use <= r.warns_to ? Verdict::warn : Verdict::fail;
        const auto kept = std::find_if(findings.begin(), findings.end(),
                                       [&](const Finding& f) { return f.subject == prepared.piece->parts[part].id; });
        if (kept != findings.end() && (severity(verdict) < severity(kept->verdict) ||
                                       (verdict == kept->verdict && kept->utilisation && use <= *kept->utilisation * (1 + 1e-9))))
            continue;
        keep_worst(findings, judge_post(prepared, part, post, r, free, use));
    }
    return findings;
}

} // namespace jointwright
