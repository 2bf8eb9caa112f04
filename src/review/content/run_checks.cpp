#include "review/content/run_checks.hpp"

#include "checks/registry.hpp"
#include "mechanics/prepared.hpp"
#include "review/content/merge.hpp"

#include <memory>
#include <utility>

namespace jointwright {

namespace {

/// Leaves of a solution what a report still asks for: of a large piece with many woods all of them would fill the memory.
void forget_solution(Prepared& prepared)
{
    Statics kept;
    kept.on_wall = std::move(prepared.statics.on_wall);
    kept.cases.assumed = std::move(prepared.statics.cases.assumed);
    for (LoadCase& c : prepared.statics.cases.cases) {
        kept.cases.cases.emplace_back();
        kept.cases.cases.back().name = std::move(c.name);
    }
    prepared.statics = std::move(kept);
}

} // namespace

std::vector<CombinationFindings> run_checks(const LaidOut& laid, const Facts& facts, LengthUnit units)
{
    std::vector<CombinationFindings> runs;
    for (const Combination& combination : combinations_of(*laid.piece)) {
        CombinationFindings run;
        const auto prepared = std::make_shared<Prepared>(prepare(laid, facts, combination, units));
        run.prepared = prepared;
        for (const CheckInfo& check : all_checks()) {
            if (!check.run) continue;
            for (Finding& f : check.run(*run.prepared)) run.findings.push_back(std::move(f));
        }
        if (!runs.empty()) forget_solution(*prepared);
        runs.push_back(std::move(run));
    }
    return runs;
}

std::vector<Finding> findings_of(const LaidOut& laid, const Facts& facts, LengthUnit units)
{
    return merge_combinations(*laid.piece, run_checks(laid, facts, units));
}

} // namespace jointwright
