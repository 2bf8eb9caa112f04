#include "review/content/run_checks.hpp"

#include "checks/registry.hpp"
#include "mechanics/prepared.hpp"
#include "review/content/merge.hpp"

#include <memory>
#include <utility>

namespace jointwright {

std::vector<CombinationFindings> run_checks(const LaidOut& laid, const Facts& facts, LengthUnit units)
{
    std::vector<CombinationFindings> runs;
    for (const Combination& combination : combinations_of(*laid.piece)) {
        CombinationFindings run;
        run.prepared = std::make_shared<const Prepared>(prepare(laid, facts, combination, units));
        for (const CheckInfo& check : all_checks()) {
            if (!check.run) continue;
            for (Finding& f : check.run(*run.prepared)) run.findings.push_back(std::move(f));
        }
        runs.push_back(std::move(run));
    }
    return runs;
}

std::vector<Finding> findings_of(const LaidOut& laid, const Facts& facts, LengthUnit units)
{
    return merge_combinations(*laid.piece, run_checks(laid, facts, units));
}

} // namespace jointwright
