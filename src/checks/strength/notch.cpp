// A notch on the stretched side starts a crack along the grain long before the net section breaks.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Shear force at which a sharp notch cracks (Gustafsson 1988) [N].
///     V = b α d √(G_c/d) / [ √(0.6(α − α²)/G) + (M/(V d)) √(6(1/α − α²)/E) ]
double cracking_shear(double breadth, double depth, double alpha, double moment_over_shear, double fracture_energy,
                      double modulus, double shear_modulus)
{
    const double shear_term = std::sqrt(0.6 * (alpha - alpha * alpha) / shear_modulus);
    const double bending_term = moment_over_shear / depth * std::sqrt(6 * (1 / alpha - alpha * alpha) / modulus);
    return breadth * alpha * depth * std::sqrt(fracture_energy / depth) / (shear_term + bending_term);
}

double fracture_energy(const Facts& facts, const PartState& state)
{
    if (state.loaded.kind == WoodKind::hardwood) return facts.number("fracture_energy_hardwood").value;
    const double density = state.loaded.density ? state.loaded.density->value.value() : 400;
    return std::max(50.0, facts.number("fracture_energy_softwood_slope").value * density -
                              facts.number("fracture_energy_softwood_offset").value);
}

bool is_notched(const Prepared& prepared, std::size_t copy)
{
    const auto& stretches = prepared.statics.stretches[copy];
    return std::any_of(stretches.begin(), stretches.end(), [](const NetStretch& s) { return s.notched(); });
}

Finding on_the_pressed_side(const Prepared& prepared, std::size_t part, std::size_t copy)
{
    double loss = 0, depth = 0;
    for (const NetStretch& s : prepared.statics.stretches[copy])
        if (s.top_loss + s.bottom_loss > loss) {
            loss = s.top_loss + s.bottom_loss;
            depth = s.depth + loss;
        }
    Finding f;
    f.check = "notch";
    f.subject = prepared.piece->parts[part].id;
    f.where = prepared.piece->label(copy, true);
    f.about.copies = {copy};
    f.headline = fmt::format("{} is cut {} deep on its pressed side only: the net section carries it.", f.subject,
                             size_words(prepared, loss));
    f.values = {{"notch_depth", loss, "m"}, {"depth_left", depth - loss, "m"}};
    f.working.push_back({"Depth left under the notches or housings", "d_n = d − notch",
                         fmt::format("d = {}", size_words(prepared, depth)), depth - loss, "m",
                         "geometry; on the compression side the net section rules"});
    gather_sources(f);
    return f;
}

Finding on_the_stretched_side(const Prepared& prepared, std::size_t part, const MemberResult& m)
{
    const Facts& facts = *prepared.facts;
    const PartState& state = prepared.parts[part];
    const LoadCase& load_case = prepared.statics.cases.cases[m.load_case];
    const double alpha = m.notch_left / m.notch_whole, modulus = state.loaded.modulus_along->value.value();
    const double shear_modulus =
        state.loaded.shear_modulus_lr ? state.loaded.shear_modulus_lr->value.value() : modulus / facts.number("e_over_g").value;
    const double shear = std::max(m.notch_shear, 1e-6 * m.notch_moment / m.notch_whole);
    const double energy = fracture_energy(facts, state);
    const double cracks_at =
        cracking_shear(m.notch_breadth, m.notch_whole, alpha, m.notch_moment / shear, energy, modulus, shear_modulus);
    const double resistance =
        load_case.strength_share * member_resistance(facts, load_case.kind, load_case.duration, StrengthKind::tension_across,
                                                     state.loaded.kind, pascals(cracks_at))
                                       .value();
    const double warn = warn_limit(facts, load_case.kind, StrengthKind::tension_across, state.loaded.kind);
    const double use = shear / resistance, share = 1 - alpha;

    Finding f;
    f.check = "notch";
    f.subject = prepared.piece->parts[part].id;
    f.where = where_words(prepared, m);
    f.about.copies = {m.copy};
    f.about.load_case = m.load_case;
    f.utilisation = use;
    f.fails_from = warn;
    const double allowed = facts.number(m.notch_near_end ? "notch_end_share" : "notch_inner_share").value;
    // Practice speaks of the side that everyday loads stretch, not of a push or a lift that passes.
    // Where next to nothing is asked of it there is no stretched side to speak of.
    constexpr double hardly_stretched = 0.02;
    const bool everyday = !load_case.push && !load_case.lift && use > hardly_stretched;
    const bool against_practice = everyday && (m.notch_in_middle_third || share > allowed);
    f.verdict = use > warn ? Verdict::fail : use > 1 || against_practice ? Verdict::warn : Verdict::pass;
    f.headline = use > 1 ? fmt::format("The notch on the stretched side of {} can start a crack along the grain with {}.",
                                       f.subject, load_case.name)
                         : fmt::format("The notch on the stretched side of {} stays sound in the sums{}.", f.subject,
                                       against_practice ? ", but practice advises against it" : "");
    if (f.verdict != Verdict::pass)
        f.remedy = "cut the notch from the pressed side, make it shallower, or slope its corner 1 in 12";
    f.values = {{"moment", m.notch_moment, "N m"},
                {"resistance_moment", m.notch_moment / use, "N m"},
                {"shear_force", m.notch_shear, "N"},
                {"depth_left_share", alpha, "1"}};
    f.working.push_back({"Depth left at the notch", "α = d_n/d", fmt::format("d = {}", size_words(prepared, m.notch_whole)),
                         alpha, "1", "geometry"});
    f.working.push_back(
        {"Shear force at which the notch cracks", "V = b α d √(G_c/d)/[√(0.6(α − α²)/G) + (M/(V d)) √(6(1/α − α²)/E)]",
         fmt::format("G_c = {} J/m², M/V = {} mm", write_number(energy, 3), write_number(m.notch_moment / shear * 1e3, 4)),
         cracks_at, "N", facts.cite("gustafsson-1988", "from memory")});
    f.working.push_back({"Resistance", "of " + member_formula(load_case.kind), "V = 25 % as tension across", resistance, "N",
                         variation_of(facts, StrengthKind::tension_across).cite.text()});
    f.working.push_back({"Largest share of the depth that practice allows here", "notch/d",
                         m.notch_in_middle_third ? "none in the middle third of the stretched side" : "", allowed, "1",
                         facts.number("notch_end_share").cite.text()});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_notch(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (const MemberResult& m : prepared.statics.members) {
        const std::size_t part = prepared.piece->copies[m.copy].part;
        if (!asks_members(prepared.statics.cases.cases[m.load_case].kind)) continue;
        if (!is_notched(prepared, m.copy) || !prepared.parts[part].loaded.modulus_along) continue;
        if (m.notch_left > 0 && m.notch_moment > 1e-3) // a moment of a few newton millimetres is rounding
            keep_worst(findings, on_the_stretched_side(prepared, part, m));
        else if (m.load_case == 0)
            keep_worst(findings, on_the_pressed_side(prepared, part, m.copy));
    }
    return findings;
}

} // namespace jointwright
