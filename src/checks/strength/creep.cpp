// What stays on a piece for years: how much its sag grows, and whether the stress is low enough for that sum to hold.

#include "judging/creep_factor.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kWorthSaying = 5e-5; // m: less than this would read as nothing at all

/// The largest lasting stress of a part, and the sag that goes with that load case.
const MemberResult* most_lasting(const Prepared& prepared, std::size_t part)
{
    const MemberResult* most = nullptr;
    for (const MemberResult& m : prepared.statics.members) {
        if (prepared.piece->copies[m.copy].part != part || !prepared.statics.settled[m.load_case]) continue;
        if (prepared.statics.cases.cases[m.load_case].duration != LoadDuration::lasting) continue;
        if (!most || m.stress > most->stress * (1 + 1e-9)) most = &m;
    }
    return most;
}

} // namespace

std::vector<Finding> check_creep(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Facts& facts = *prepared.facts;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const PartState& state = prepared.parts[p];
        const Property<Stress>* strength = strength_of(state, StrengthKind::bending);
        const MemberResult* m = has_beam(prepared, p) && strength ? most_lasting(prepared, p) : nullptr;
        if (!m) continue;
        const Datum<double>&creep = creep_factor(facts, state.dampest), &plain = facts.number("creep_plain_share");
        const double share = m->stress / strength->value.value(), later = m->most_sag * (1 + creep.value);
        const LoadCase& load_case = prepared.statics.cases.cases[m->load_case];
        Finding f;
        f.check = "creep";
        f.subject = prepared.piece->parts[p].id;
        f.utilisation = share / plain.value;
        f.verdict = share <= plain.value ? Verdict::pass : Verdict::warn;
        f.where = where_words(prepared, *m);
        f.about.copies = {m->copy};
        f.about.load_case = m->load_case;
        f.headline = f.verdict == Verdict::pass && later < kWorthSaying
                         ? fmt::format("{} hardly sags under {}, and will not in years: less than {}.", f.subject, load_case.name,
                                       small_words(prepared, kWorthSaying))
                     : f.verdict == Verdict::pass
                         ? fmt::format("{} sags {} under {} and settles to about {} over the years.", f.subject,
                                       small_words(prepared, m->most_sag), load_case.name, small_words(prepared, later))
                         : fmt::format("{} is loaded for good to {:.0f} % of its strength by {}: beyond {:.0f} % it may sag more "
                                       "than the {} that the sums give.",
                                       f.subject, share * 100, load_case.name, plain.value * 100, small_words(prepared, later));
        if (f.verdict != Verdict::pass)
            f.remedy = fmt::format("make {} thicker or shorter, or turn it over now and then", f.subject);
        f.values = {{"stress", m->stress, "Pa"},
                    {"share_of_strength", share, "1"},
                    {"sag_at_once", m->most_sag, "m"},
                    {"sag_final", later, "m"}};
        f.working.push_back({"Lasting bending stress", "σ", load_case.name, m->stress, "Pa", load_case.source});
        f.working.push_back({fmt::format("Mean bending strength of {}", state.species), "f", strength->note,
                             strength->value.value(), "Pa", strength->source});
        f.working.push_back({"Share of the strength", "σ/f", "", share, "1", plain.cite.text()});
        f.working.push_back({"Sag in the end", "δ (1 + k_def)",
                             fmt::format("δ = {}, k_def = {}", small_words(prepared, m->most_sag), write_number(creep.value, 2)),
                             later, "m", creep.cite.text()});
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
