// Woods of the design whose dust is known to irritate or sensitise.

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace jointwright {

namespace {

/// Dust worth a warning of its own: three crosses of four, or linked with cancer. What holds for spalted wood only is said, not warned of.
bool is_strong(const WoodRecord& record)
{
    return std::any_of(record.dust.begin(), record.dust.end(), [](const DustHazard& d) {
        if (d.effect.find("spalted") != std::string::npos) return false;
        return std::count(d.potency.begin(), d.potency.end(), '+') >= 3 || d.effect.find("cancer") != std::string::npos;
    });
}

} // namespace

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
        if (state.record->dust.empty()) {
            f.headline = fmt::format("No special hazard is listed for {}; all wood dust harms the lungs.", state.species);
        } else {
            std::string effects;
            for (const DustHazard& d : state.record->dust) {
                if (!effects.empty()) effects += "; ";
                effects += d.effect + (d.site.empty() ? "" : " (" + d.site + ")");
                f.sources.push_back(d.cite.text());
            }
            if (is_strong(*state.record)) f.verdict = Verdict::warn;
            f.headline = fmt::format("Dust of {}: {}.", state.species, effects);
            f.remedy = "extract at the tool and wear a fitted dust mask; stop and see a doctor if skin or breath reacts";
        }
        std::sort(f.sources.begin(), f.sources.end());
        f.sources.erase(std::unique(f.sources.begin(), f.sources.end()), f.sources.end());
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
