// Does a rail, slat, shelf or apron break under people and goods?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joint_bounds.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kNoStress = 1e4; // Pa: less is not worth a line

void add_bending_steps(const Prepared& prepared, const Governing& g, Working& working)
{
    const MemberResult& m = *g.member;
    const std::string frames = "mechanics of frames (Timoshenko beams and plates)";
    working.push_back(
        {"Bending moment there, the piece solved as one frame", "M",
         fmt::format("span {}, {} from its lower end", size_words(prepared, m.span), size_words(prepared, m.stress_at)),
         std::abs(m.moment), "N m", frames});
    if (std::abs(m.side_moment) > 0.01 * std::abs(m.moment))
        working.push_back({"Bending sideways at the same place", "M_s", "", std::abs(m.side_moment), "N m", frames});
    working.push_back({"Bending stress of the net section, both ways together",
                       "σ = M d/(2 I) + M_s b/(2 I_s), I = b d³/12 less what is rounded off or mortised out",
                       fmt::format("b = {} mm, d = {} mm", write_number(m.breadth * 1e3, 4), write_number(m.depth * 1e3, 4)),
                       m.stress - std::abs(m.axial_stress), "Pa",
                       prepared.facts->cite("wood-handbook-2010", "ch. 9 (mechanics)")});
    if (std::abs(m.axial_stress) < kNoStress) return;
    const std::string force = fmt::format("N = {} N", write_number(std::abs(m.axial), 3));
    if (m.axial_stress > 0) {
        working.push_back(
            {"Pulled along its grain there, as the stretched side of bending", "σ_t = N/A", force, m.axial_stress, "Pa", frames});
        working.push_back(
            {"Both together", "σ + σ_t", "", g.stress, "Pa", prepared.facts->cite("mechanics", "straight interaction")});
        return;
    }
    working.push_back({"Pressed along its grain there", "σ_c = N/A", force, -m.axial_stress, "Pa", frames});
    working.push_back({"Resistance to that, as a column between the joints that hold it",
                       "1/f_c = 1/f + 1/σ_E, σ_E = π² E05/(ℓ/i)²", fmt::format("ℓ = {}", size_words(prepared, g.free_length)),
                       g.pressed_resistance, "Pa",
                       prepared.facts->cite("mechanics", "Rankine's rule between crushing and buckling")});
    working.push_back({"Both together, what presses at the rate at which it uses up the wood", "σ + σ_c f_d/f_c", "", g.stress,
                       "Pa", prepared.facts->cite("mechanics", "straight interaction")});
}

} // namespace

std::vector<Finding> check_bending(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const Part& part = prepared.piece->parts[p];
        const PartState& state = prepared.parts[p];
        const bool spans = has_beam(prepared, p);
        if (!strength_of(state, StrengthKind::bending) || !state.loaded.modulus_along) {
            if (part.grain != Axis::z && prepared.piece->use != Use::none)
                findings.push_back(
                    cannot_tell("bending", part.id,
                                fmt::format("Whether {} breaks cannot be told: no bending strength or modulus is known for {}.",
                                            part.id, state.species),
                                "give [[wood]] properties with modulus and bending_strength"));
            continue;
        }
        if (!spans) continue;
        const auto g = governing_case(prepared, p, StrengthKind::bending);
        if (!g) continue;
        const MemberResult& m = *g->member;
        Finding f;
        f.check = "bending";
        f.subject = part.id;
        f.verdict = g->verdict;
        f.utilisation = g->use;
        f.fails_from = g->warns_to;
        f.where = where_words(prepared, m);
        f.about.copies = {m.copy};
        f.about.load_case = m.load_case;
        const char* words = g->verdict == Verdict::pass ? "is strong enough"
                            : g->verdict == Verdict::warn && g->use <= 1
                                ? "holds, but leans for good on its strength across the grain, which any crack takes away"
                            : g->verdict == Verdict::warn ? "holds, but without the customary margin"
                                                          : "can break";
        f.headline =
            fmt::format("{} {}: {} of bending stress{} of {} allowed, with {}.", part.id, words, write_stress(pascals(g->stress)),
                        g->across ? " across its grain" : "", write_stress(pascals(g->resistance)), g->load_case->name);
        if (g->verdict != Verdict::pass && g->across)
            f.remedy = fmt::format("hold {} along its ends as well, or by battens across it, so that its grain carries", part.id);
        else if (g->verdict != Verdict::pass)
            f.remedy = fmt::format("make {} {}: about {} of net depth instead of {}, or shorten its span of {}", part.id,
                                   part.face == Axis::z ? "thicker" : "deeper", size_words(prepared, m.depth * std::sqrt(g->use)),
                                   size_words(prepared, m.depth), size_words(prepared, m.span));
        f.values = {{"stress", g->stress, "Pa"}, {"resistance", g->resistance, "Pa"}, {"moment", std::abs(m.moment), "N m"},
                    {"span", m.span, "m"},       {"net_depth", m.depth, "m"},         {"breadth", m.breadth, "m"},
                    {"load", m.load, "N"},       {"axial_force", m.axial, "N"}};
        f.working.push_back({fmt::format("Load on {}: {}", prepared.piece->label(m.copy, true), g->load_case->name),
                             "own weight and lasting loads with it", "", m.load, "N", g->load_case->source});
        if (g->across)
            f.working.push_back({"Bending stress across the grain of the plate that it is, the piece solved as one frame",
                                 "σ = 6 m/t²", fmt::format("t = {} mm", write_number(m.depth * 1e3, 4)), g->stress, "Pa",
                                 "mechanics of frames (Timoshenko beams and plates)"});
        else
            add_bending_steps(prepared, *g, f.working);
        if (m.bounds) {
            const auto stress_of = [&](const MemberResult::Bound& b) { return g->across ? b.across_stress : b.stress; };
            const double soft = stress_of(m.bounds->soft), stiff = stress_of(m.bounds->stiff), slick = stress_of(m.bounds->slick);
            add_joint_bounds(prepared, f, {"stress", soft, stiff, slick, "Pa", write_stress(pascals(stiff))});
            const double worst = std::max(soft, slick);
            warn_of_bounds(f, worst, g->warns_to * g->resistance,
                           fmt::format("with joints a third as stiff, or on a slick floor, the stress would be {}",
                                       write_stress(pascals(worst))));
        }
        for (WorkingStep& step :
             resistance_working(prepared, p, g->across ? StrengthKind::tension_across : StrengthKind::bending, *g))
            f.working.push_back(std::move(step));
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
