// The design names several woods for one: does the verdict hang on which of them it is?

#include "checks/woods/species_unsure.hpp"

#include "judging/finding_tools.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <map>

namespace jointwright {

namespace {

struct ForSpecies {
    int severity = -1;
    double use = -1;
    std::string check, subject;
};

std::string verdict_words(int severity)
{
    return severity >= 3 ? "fails" : severity == 2 ? "cannot be told" : severity == 1 ? "warns" : "passes";
}

} // namespace

std::vector<Finding> check_species_unsure(const Piece& piece, const std::vector<CombinationFindings>& runs)
{
    std::vector<Finding> findings;
    for (std::size_t w = 0; w < piece.woods.size(); ++w) {
        const WoodChoice& wood = piece.woods[w];
        if (wood.species.size() < 2) continue;
        std::vector<ForSpecies> by(wood.species.size());
        for (const CombinationFindings& run : runs) {
            ForSpecies& worst = by[run.prepared->combination.species[w]];
            for (const Finding& f : run.findings) {
                if (f.check == "dust") continue;
                const int s = severity(f.verdict);
                const double use = f.utilisation.value_or(-1);
                if (s < worst.severity || (s == worst.severity && use <= worst.use)) continue;
                worst = {s, use, f.check, f.subject};
            }
        }
        std::size_t hardest = 0;
        for (std::size_t k = 1; k < by.size(); ++k)
            if (by[k].severity > by[hardest].severity || (by[k].severity == by[hardest].severity && by[k].use > by[hardest].use))
                hardest = k;
        const bool agree =
            std::all_of(by.begin(), by.end(), [&](const ForSpecies& s) { return s.severity == by[hardest].severity; });
        Finding f;
        f.check = "species-unsure";
        f.subject = wood.id;
        f.where = wood.species[hardest];
        std::string list;
        for (std::size_t k = 0; k < by.size(); ++k)
            list += fmt::format("{}{} {}", k ? ", " : "", wood.species[k], verdict_words(by[k].severity));
        if (agree) {
            f.headline = fmt::format("Whichever wood it is, the piece {}: {} is the hardest of them ({}).",
                                     verdict_words(by[hardest].severity), wood.species[hardest], list);
        } else {
            f.verdict = Verdict::warn;
            f.headline = fmt::format("The verdict hangs on which wood it is: {}.", list);
            f.remedy = fmt::format("find out before you cut ({} by {} decides), or build for {}", by[hardest].check,
                                   by[hardest].subject, wood.species[hardest]);
        }
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
