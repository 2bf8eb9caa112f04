// The dust of the design's woods: advice for every wood, no verdict against the piece.

#include "judging/dust_words.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace jointwright {

namespace {

bool is_of_genus(const WoodRecord& wood, std::string_view genus)
{
    return wood.botanical.rfind(std::string(genus) + " ", 0) == 0;
}

} // namespace

std::string dust_of_all_woods(const Facts& facts)
{
    const Datum<double>& group = facts.number("dust_carcinogenic");
    return fmt::format("Wood dust is carcinogenic to humans (group {:.0f}; {})", group.value, group.cite.text());
}

std::string dust_of(const WoodRecord& wood)
{
    if (wood.dust.empty())
        return fmt::format(
            "Dust of {}: nothing is listed for this wood by itself, which is no clean bill; what holds for all wood dust "
            "holds for it.",
            wood.name);
    std::string effects;
    for (const DustHazard& d : wood.dust) {
        if (!effects.empty()) effects += "; ";
        effects += d.effect + (d.site.empty() ? "" : " (" + d.site + ")");
    }
    return fmt::format("Dust of {}: {}.", wood.name, effects);
}

bool is_oak_or_beech(const WoodRecord& wood) { return is_of_genus(wood, "Quercus") || is_of_genus(wood, "Fagus"); }

std::vector<Finding> check_dust(const Prepared& prepared)
{
    std::vector<Finding> findings;
    std::set<std::string> seen;
    for (std::size_t p = 0; p < prepared.piece->parts.size(); ++p) {
        const PartState& state = prepared.parts[p];
        const std::string& wood = prepared.piece->woods[prepared.piece->parts[p].wood].id;
        if (!state.record || !seen.insert(wood).second) continue;
        Finding f;
        f.check = "dust";
        f.subject = wood;
        f.where = state.species;
        f.weight = static_cast<double>(state.record->dust.size());
        f.headline = fmt::format("{}. {}", dust_of_all_woods(*prepared.facts), dust_of(*state.record));
        f.remedy = "extract at the tool and wear a fitted dust mask; stop and see a doctor if skin or breath reacts";
        f.sources.push_back(prepared.facts->number("dust_carcinogenic").cite.text());
        for (const DustHazard& d : state.record->dust) f.sources.push_back(d.cite.text());
        std::sort(f.sources.begin(), f.sources.end());
        f.sources.erase(std::unique(f.sources.begin(), f.sources.end()), f.sources.end());
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
