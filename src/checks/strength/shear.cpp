// Does a lying part shear along its grain near its supports?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/members/member_strength.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

namespace jointwright {

std::vector<Finding> check_shear(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const Part& part = prepared.piece->parts[p];
        const PartState& state = prepared.parts[p];
        if (!has_beam(prepared, p)) continue;
        if (!strength_of(state, StrengthKind::shear)) {
            findings.push_back(cannot_tell(
                "shear", part.id,
                fmt::format("Whether {} shears cannot be told: no shear strength is known for {}.", part.id, state.species),
                "give [[wood]] properties with shear_strength"));
            continue;
        }
        const auto g = governing_case(prepared, p, StrengthKind::shear);
        if (!g) continue;
        const MemberResult& m = *g->member;
        Finding f;
        f.check = "shear";
        f.subject = part.id;
        f.verdict = g->verdict;
        f.utilisation = g->use;
        f.fails_from = g->warns_to;
        f.where = where_words(prepared, m);
        f.about.copies = {m.copy};
        f.about.load_case = m.load_case;
        f.headline = fmt::format("{} {} shear along its grain: {} of {} allowed, with {}.", part.id,
                                 g->verdict == Verdict::fail ? "does not stand the" : "stands the",
                                 write_stress(pascals(g->stress)), write_stress(pascals(g->resistance)), g->load_case->name);
        if (g->verdict != Verdict::pass) f.remedy = fmt::format("make {} deeper or thicker at its supports", part.id);
        f.values = {{"stress", g->stress, "Pa"},
                    {"resistance", g->resistance, "Pa"},
                    {"shear_force", m.shear, "N"},
                    {"torsion_stress", m.torsion_stress, "Pa"}};
        f.working.push_back({fmt::format("Shear force in {}, where it and twist together are worst: {}",
                                         prepared.piece->label(m.copy, true), g->load_case->name),
                             "V", "", m.shear, "N", g->load_case->source});
        add_shear_steps(
            prepared,
            {m.shear, m.shear_area, m.torsion, m.torsion_stress, m.shear_stress, prepared.statics.frame->lines()[m.copy].plate},
            f.working);
        for (WorkingStep& step : resistance_working(prepared, p, StrengthKind::shear, *g)) f.working.push_back(std::move(step));
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
