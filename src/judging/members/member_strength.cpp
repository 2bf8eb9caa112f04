#include "judging/members/member_strength.hpp"

#include "judging/finding_tools.hpp"
#include "measure/write.hpp"

#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

namespace jointwright {

const Property<Stress>* strength_of(const PartState& state, StrengthKind kind)
{
    const auto& held = kind == StrengthKind::bending          ? state.loaded.bending_strength
                       : kind == StrengthKind::shear          ? state.loaded.shear
                       : kind == StrengthKind::tension_across ? state.loaded.tension_across
                                                              : state.loaded.compression_along;
    return held ? &*held : nullptr;
}

bool has_beam(const Prepared& prepared, std::size_t part)
{
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i)
        if (prepared.piece->copies[i].part == part && prepared.statics.is_beam[i]) return true;
    return false;
}

namespace {

/// Resistances of one strength to every kind of load and duration, and the uses that still only warn.
struct Resistances {
    std::array<std::array<double, 3>, kDemandKinds> by_kind{};
    std::array<double, kDemandKinds> warns_to{};
    Resistances(const Facts& facts, StrengthKind kind, WoodKind wood, Stress mean)
    {
        for (std::size_t k = 0; k < kDemandKinds; ++k) {
            const auto demand = static_cast<DemandKind>(k);
            warns_to[k] = warn_limit(facts, demand, kind, wood);
            for (const LoadDuration d : {LoadDuration::lasting, LoadDuration::sitting, LoadDuration::short_term})
                by_kind[k][static_cast<std::size_t>(d)] = member_resistance(facts, demand, d, kind, wood, mean).value();
        }
    }
    double to(const LoadCase& c) const
    {
        return c.strength_share * by_kind[static_cast<std::size_t>(c.kind)][static_cast<std::size_t>(c.duration)];
    }
    double warn(const LoadCase& c) const { return warns_to[static_cast<std::size_t>(c.kind)]; }
};

// Where a wood's strength pressed along its grain is not known: of its bending strength. Table 5-3 has 0.41 and more (estimated).
constexpr double kPressedShare = 0.4;
constexpr double kNoTwist = 0.02; // of the stress: less is not worth a line
constexpr double kAcross = 0.5;   // a lasting load that uses more than this across the grain warns at least

/// How long the pieces of the parts are that joints hold sideways: what is pressed there may buckle over so much.
class FreeLengths {
public:
    explicit FreeLengths(const Prepared& prepared) : prepared_(prepared) {}

    /// About a place along a copy, from its lower end [m]: between the joints beside it, twice the overhang beyond the outer ones, the whole
    /// length where there is none.
    double about(std::size_t copy, double at)
    {
        const double length = prepared_.statics.frame->lines()[copy].length;
        auto known = held_.find(copy);
        if (known == held_.end()) known = held_.emplace(copy, places_of(copy)).first;
        const std::vector<double>& held = known->second;
        if (held.empty()) return length;
        // At a joint the longer side counts, so that rounding does not decide.
        double longest = 0;
        for (std::size_t i = 0; i <= held.size(); ++i) {
            const double from = i == 0 ? 0 : held[i - 1], to = i == held.size() ? length : held[i];
            if (at < from - kTouch || at > to + kTouch) continue;
            const bool overhang = i == 0 || i == held.size();
            longest = std::max(longest, overhang ? std::min(2 * (to - from), length) : to - from);
        }
        return longest;
    }

private:
    std::vector<double> places_of(std::size_t copy) const
    {
        const Structure& frame = *prepared_.statics.frame;
        const MemberLine& line = frame.lines()[copy];
        std::vector<double> held;
        for (std::size_t c = 0; c < frame.contacts().size(); ++c) {
            const Contact& contact = frame.contacts()[c];
            if (contact.joint && (contact.first == copy || contact.second == copy))
                held.push_back(std::clamp(line.along(frame.contact_middle(c)), 0.0, line.length));
        }
        std::sort(held.begin(), held.end());
        return held;
    }

    const Prepared& prepared_;
    std::map<std::size_t, std::vector<double>> held_;
};

/// Stress up to which a lying part may be pressed along its grain, as a column.
double column_resistance(const Prepared& prepared, const MemberResult& member, double free, double short_block)
{
    const Facts& facts = *prepared.facts;
    const MemberLine& line = prepared.statics.frame->lines()[member.copy];
    const double stiff = prepared.state_of(member.copy).loaded.modulus_along->value.value() *
                         (1 - facts.number("lower_tail").value * facts.number("variation_modulus").value);
    // It buckles as a whole: a notch hardly softens it.
    const double thin = std::min(line.thick, line.wide), slender = free / (thin / std::sqrt(12.0));
    return 1 / (1 / short_block + slender * slender / (std::numbers::pi * std::numbers::pi * stiff));
}

void judge_use(Governing& g, double warn, bool lasting = false)
{
    g.use = g.stress / g.resistance;
    g.verdict = g.use <= 1 ? Verdict::pass : g.use <= warn ? Verdict::warn : Verdict::fail;
    if (g.across && lasting && g.use > kAcross && g.verdict == Verdict::pass) g.verdict = Verdict::warn;
}

} // namespace

std::optional<Governing> governing_case(const Prepared& prepared, std::size_t part, StrengthKind kind)
{
    const Facts& facts = *prepared.facts;
    const PartState& state = prepared.parts[part];
    const Property<Stress>& strength = *strength_of(state, kind);
    const Property<Stress>* across = kind == StrengthKind::bending ? strength_of(state, StrengthKind::tension_across) : nullptr;
    const WoodKind wood = state.loaded.kind;
    const Resistances along_grain(facts, kind, wood, strength.value);
    const Property<Stress>* pressed = strength_of(state, StrengthKind::compression_along);
    const Resistances pressed_along(facts, StrengthKind::compression_along, wood,
                                    pressed ? pressed->value : kPressedShare * strength.value);
    const Resistances across_grain(facts, StrengthKind::tension_across, wood, across ? across->value : strength.value);

    FreeLengths free_lengths(prepared);
    std::optional<Governing> worst;
    const auto keep = [&](Governing g, const Property<Stress>& by) {
        if (worst &&
            (severity(g.verdict) < severity(worst->verdict) || (g.verdict == worst->verdict && g.use <= worst->use * (1 + 1e-9))))
            return;
        g.mean = by.value.value();
        g.estimated = by.estimated;
        g.source = by.source;
        g.note = by.note;
        worst = std::move(g);
    };
    for (const MemberResult& member : prepared.statics.members) {
        if (prepared.piece->copies[member.copy].part != part) continue;
        if (!prepared.statics.settled[member.load_case]) continue; // what comes away is told by `stands`
        const LoadCase& load_case = prepared.statics.cases.cases[member.load_case];
        if (!asks_members(load_case.kind)) continue;
        Governing g;
        g.member = &member;
        g.load_case = &load_case;
        g.stress = kind == StrengthKind::bending ? member.stress : member.shear_stress;
        g.depth_factor = kind == StrengthKind::bending && member.depth > 0 ? depth_factor(metres(member.depth)) : 1.0;
        g.resistance = along_grain.to(load_case) * g.depth_factor;
        if (kind == StrengthKind::bending && member.axial_stress < 0) {
            // What presses it counts at the rate at which it uses up the wood: σ_b/f_b + σ_c/f_c.
            g.free_length = free_lengths.about(member.copy, member.stress_at);
            g.pressed_resistance = column_resistance(prepared, member, g.free_length, pressed_along.to(load_case));
            g.stress += member.axial_stress * (1 - g.resistance / g.pressed_resistance);
        }
        judge_use(g, along_grain.warn(load_case));
        keep(g, strength);
        if (!across || member.across_stress <= 0) continue;
        g.across = true;
        g.pressed_resistance = 0;
        g.stress = member.across_stress;
        g.depth_factor = 1;
        g.resistance = across_grain.to(load_case);
        judge_use(g, across_grain.warn(load_case),
                  load_case.kind == DemandKind::service && load_case.duration == LoadDuration::lasting);
        keep(g, *across);
    }
    return worst;
}

Working resistance_working(const Prepared& prepared, std::size_t part, StrengthKind kind, const Governing& g)
{
    const Facts& facts = *prepared.facts;
    const PartState& state = prepared.parts[part];
    Working w;
    w.push_back({fmt::format("Mean strength of {} at {}{}", state.species, moisture_words(state.loaded.moisture),
                             g.estimated ? ", estimated" : ""),
                 "f", g.note, g.mean, "Pa", g.source});
    const Datum<double> v = variation_of(facts, kind);
    w.push_back({"Lower strength: one board in twenty is weaker", "f05 = f (1 − 1.645 V)",
                 fmt::format("V = {} %", write_number(v.value * 100, 3)), lower_strength(facts, kind, pascals(g.mean)).value(),
                 "Pa", v.cite.text()});
    const std::string size = kind == StrengthKind::bending && g.depth_factor < 1
                                 ? fmt::format(", depth factor (51 mm/d)^(1/9) = {}", write_number(g.depth_factor, 3))
                                 : "";
    if (g.load_case->kind == DemandKind::hard_sitting) {
        const Datum<double>& impact = facts.number("impact_factor");
        w.push_back({"Resistance to someone sitting down hard, straight and clear grain; above it warns, above the mean strength "
                     "breaks",
                     "f_d = f05 × 1.25", fmt::format("1.25, impact over ten minutes{}", size), g.resistance, "Pa",
                     impact.cite.text()});
    } else if (g.load_case->kind != DemandKind::service) {
        const Datum<double>& divisor = facts.number("proof_divisor");
        const bool stays = g.load_case->strength_share < 1;
        w.push_back({"Resistance under a proof load, straight and clear grain",
                     stays ? "f_d = s f05/1.15, s what time leaves of the strength" : "f_d = f05/1.15",
                     (stays ? fmt::format("1.15, s = {}", write_number(g.load_case->strength_share, 3)) : "1.15") + size,
                     g.resistance, "Pa", divisor.cite.text()});
    } else {
        const Datum<double> k = duration_and_safety_divisor(facts, kind, state.loaded.kind),
                            duration = duration_factor(facts, g.load_case->duration);
        w.push_back({"Allowable stress under a service load, straight and clear grain", "f_d = f05 k_dur/k",
                     fmt::format("k = {}, k_dur = {}{}", write_number(k.value, 3), write_number(duration.value, 3), size),
                     g.resistance, "Pa", k.cite.text()});
    }
    return w;
}

void add_shear_steps(const Prepared& prepared, const ShearThere& shear, Working& working)
{
    const Facts& facts = *prepared.facts;
    const bool twisted = shear.twist_stress > kNoTwist * shear.stress;
    if (!twisted || shear.force > 0)
        working.push_back({"Shear stress of the net section",
                           shear.plate ? "τ = √[(3 q/(2 t))² + (n/t)²], or n/t at its faces" : "τ = 3 V/(2 A)",
                           fmt::format("A = {} mm²", write_number(shear.area * 1e6, 4)), shear.stress - shear.twist_stress, "Pa",
                           facts.cite("wood-handbook-2010", "ch. 9 (mechanics)")});
    if (!twisted) return;
    working.push_back(
        shear.plate
            ? WorkingStep{"Shear stress from twist at the faces of the plate that it is", "τ_T = 6 m/t²",
                          fmt::format("m = {} N m on a metre of its width", write_number(std::abs(shear.torsion), 3)),
                          shear.twist_stress, "Pa", facts.cite("mechanics", "plates")}
            : WorkingStep{"Shear stress from twist, at the middle of its sides", "τ_T = T/(α b c²), at the shorter sides γ of it",
                          fmt::format("T = {} N m", write_number(std::abs(shear.torsion), 3)), shear.twist_stress, "Pa",
                          facts.cite("timoshenko-goodier-1951", "§109, from memory; summed as a series")});
    working.push_back(
        {"Both together at that point", "τ + τ_T", "", shear.stress, "Pa", facts.cite("mechanics", "shear adds up")});
}

std::string where_words(const Prepared& prepared, const MemberResult& member)
{
    const LoadCase& load_case = prepared.statics.cases.cases[member.load_case];
    return fmt::format("{}, {}, {}", prepared.piece->label(member.copy, true), load_case.name,
                       prepared.state_of(member.copy).species);
}

} // namespace jointwright
