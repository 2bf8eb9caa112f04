// How far a rail, slat, shelf or apron bends under those who use it, against what looks and feels right.

#include "judging/creep_factor.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joint_bounds.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace jointwright {

namespace {

constexpr double kSpeakOf = 5e-5; // m: less than this would read as nothing at all

struct SagRule {
    double limit = 0; ///< m
    std::string words, source;
};

SagRule rule_for(const Prepared& prepared, std::size_t part, double span)
{
    const Facts& facts = *prepared.facts;
    if (const auto& stated = prepared.piece->limits.sag) {
        if (stated->length) return {in_metres(*stated->length), "the design's [limits] sag", "the design's [limits] sag"};
        return {span / *stated->span_over, fmt::format("span/{}", write_number(*stated->span_over, 4)),
                "the design's [limits] sag"};
    }
    const bool top = prepared.part_carries[part]; // parts that carry, and parts that bear them, have limits of their own
    const char* key = "sag_apron";
    switch (prepared.piece->use) {
    case Use::seat: key = top ? "sag_slat" : "sag_seat_rail"; break;
    case Use::shelf:
    case Use::cabinet: key = top ? "sag_shelf" : "sag_apron"; break;
    default: break;
    }
    const Datum<double>& share = facts.number(key);
    SagRule rule{span / share.value, fmt::format("span/{}", write_number(share.value, 4)), share.cite.text()};
    if (prepared.piece->use == Use::seat && !top) {
        const Datum<double>& most = facts.number("sag_seat_rail_most");
        if (most.value < rule.limit)
            rule = {most.value, fmt::format("at most {}", size_words(prepared, most.value)), most.cite.text()};
    }
    return rule;
}

} // namespace

std::vector<Finding> check_sag(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const Part& part = prepared.piece->parts[p];
        if (!has_beam(prepared, p)) continue;
        const PartState& state = prepared.parts[p];
        const Datum<double>& creep = creep_factor(*prepared.facts, state.dampest);
        const MemberResult* worst = nullptr;
        double use = 0, total = 0, at_once = 0, over = 0;
        bool beyond = false, by_most = false;
        SagRule rule;
        for (const MemberResult& m : prepared.statics.members) {
            const LoadCase& load_case = prepared.statics.cases.cases[m.load_case];
            if (prepared.piece->copies[m.copy].part != p || load_case.proof || !load_case.counts_for_sag ||
                !prepared.statics.settled[m.load_case])
                continue;
            for (const auto& [sag, span, overhangs] : {std::tuple{m.sag, m.sag_span, m.sag_overhangs},
                                                       std::tuple{m.most_sag, m.most_sag_span, m.most_sag_overhangs}}) {
                if (span <= 0) continue;
                const double lasting = load_case.duration == LoadDuration::lasting ? sag : std::min(sag, m.lasting_sag);
                const double with_creep = sag + creep.value * lasting;
                const SagRule here = rule_for(prepared, p, span);
                if (with_creep / here.limit <= use * (1 + 1e-9)) continue;
                use = with_creep / here.limit;
                worst = &m;
                by_most = sag != m.sag;
                at_once = sag;
                over = span;
                beyond = overhangs;
                total = with_creep;
                rule = here;
            }
        }
        if (!worst) continue;
        const LoadCase& load_case = prepared.statics.cases.cases[worst->load_case];
        const Datum<double>& warn = prepared.facts->number("sag_warn_factor");
        Finding f;
        f.check = "sag";
        f.subject = part.id;
        f.utilisation = use;
        f.fails_from = warn.value;
        f.verdict = use <= 1 ? Verdict::pass : use <= warn.value ? Verdict::warn : Verdict::fail;
        f.where = where_words(prepared, *worst);
        f.about.copies = {worst->copy};
        f.about.load_case = worst->load_case;
        const std::string sags = total < kSpeakOf ? fmt::format("hardly sags, less than {},", small_words(prepared, kSpeakOf))
                                                  : fmt::format("sags {}", small_words(prepared, total));
        const std::string length =
            beyond ? fmt::format("twice its overhang, {},", size_words(prepared, over)) : size_words(prepared, over);
        f.headline = fmt::format("{} {} over {} with {}; {} is {}.", part.id, sags, length, load_case.name,
                                 f.verdict == Verdict::pass ? "the limit" : "too much: the limit",
                                 fmt::format("{} ({})", small_words(prepared, rule.limit), rule.words));
        if (f.verdict != Verdict::pass) {
            const double deeper = std::cbrt(use);
            f.remedy = fmt::format("make {} {:.0f} % {} or somewhat more, since it gets heavier with it, or shorten its span",
                                   part.id, (deeper - 1) * 100 + 3, part.face == Axis::z ? "thicker" : "deeper");
        }
        f.values = {{"deflection", total, "m"},
                    {"limit", rule.limit, "m"},
                    {"span", over, "m"},
                    {"deflection_at_once", at_once, "m"},
                    {"load", worst->load, "N"}};
        const auto& e = *state.loaded.modulus_along;
        f.working.push_back({fmt::format("Modulus of elasticity of {} along the grain, free of shear", state.species),
                             "E_L = 1.10 × tabled", e.note, e.value.value(), "Pa", e.source});
        f.working.push_back({fmt::format("Load on {}: {}", prepared.piece->label(worst->copy, true), load_case.name),
                             "own weight and lasting loads with it", "", worst->load, "N", load_case.source});
        f.working.push_back({"Sag at once, bending and shear, net section, on the straight line between its supports",
                             "δ = kb W L³/(E I) + ks W L/(G A')",
                             fmt::format("L = {}, net depth {}; the piece solved as one frame", size_words(prepared, over),
                                         size_words(prepared, worst->depth)),
                             at_once, "m",
                             prepared.facts->cite("wood-handbook-2010", "eq. 9-2, solved with Timoshenko beams and plates")});
        if (worst->bounds && at_once > 0) {
            const double grown = total / at_once; // by creep, the same for all
            const auto sag_of = [&](const MemberResult::Bound& b) { return grown * (by_most ? b.most_sag : b.sag); };
            const double soft = sag_of(worst->bounds->soft), stiff = sag_of(worst->bounds->stiff),
                         slick = sag_of(worst->bounds->slick);
            add_joint_bounds(prepared, f, {"deflection", soft, stiff, slick, "m", small_words(prepared, stiff)});
            warn_of_bounds(f, std::max(soft, slick), warn.value * rule.limit,
                           fmt::format("with joints a third as stiff, or on a slick floor, it would sag {}",
                                       small_words(prepared, std::max(soft, slick))));
        }
        f.working.push_back({"Growth of the lasting part by creep", "δ + k_def δ_lasting",
                             fmt::format("k_def = {}", write_number(creep.value, 2)), total, "m", creep.cite.text()});
        f.working.push_back({"Limit", rule.words, "", rule.limit, "m", rule.source});
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
