#include "checks/run.hpp"

#include "checks/cut_list.hpp"
#include "checks/drawn_piece.hpp"
#include "checks/gather.hpp"
#include "checks/registry.hpp"

#include <deque>

namespace jointwright {

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options)
{
    ReportContent content;
    content.program_version = JOINTWRIGHT_VERSION;
    content.data_version = facts.fingerprint();
    content.units = options.units.value_or(piece.units);

    const Layout layout = layout_of(piece);
    std::deque<Prepared> prepared; // runs point into it: must not move
    std::vector<CombinationFindings> runs;
    for (const Combination& combination : combinations_of(piece)) {
        prepared.push_back(prepare(piece, facts, layout, combination, content.units));
        CombinationFindings run;
        run.prepared = &prepared.back();
        for (const CheckInfo& check : all_checks()) {
            if (!check.run) continue;
            for (Finding& f : check.run(*run.prepared)) run.findings.push_back(std::move(f));
        }
        runs.push_back(std::move(run));
    }
    describe_piece(content, piece, layout, runs);
    content.findings = merge_combinations(piece, runs);
    content.verdict = overall_verdict(content.findings);
    content.assumed = assumptions_of(piece, runs);
    content.cut_parts = cut_parts_of(piece, layout.contacts);
    content.cut_today = cut_list_of(piece, layout, content.findings, content.units);
    if (options.drawn)
        content.drawn = std::make_shared<const DrawnPiece>(drawn_piece(*runs.front().prepared, content.findings));
    return content;
}

} // namespace jointwright
