#include "checks/run.hpp"

#include "checks/cut_list.hpp"
#include "checks/drawn_piece.hpp"
#include "checks/gather.hpp"
#include "checks/left_out.hpp"
#include "checks/registry.hpp"
#include "checks/remedies.hpp"

#include <deque>

namespace jointwright {

namespace {

struct AllRuns {
    std::deque<Prepared> prepared; ///< runs point into it: must not move
    std::vector<CombinationFindings> runs;
};

AllRuns run_all(const Piece& piece, const Facts& facts, const Layout& layout, LengthUnit units)
{
    AllRuns all;
    for (const Combination& combination : combinations_of(piece)) {
        all.prepared.push_back(prepare(piece, facts, layout, combination, units));
        CombinationFindings run;
        run.prepared = &all.prepared.back();
        for (const CheckInfo& check : all_checks()) {
            if (!check.run) continue;
            for (Finding& f : check.run(*run.prepared)) run.findings.push_back(std::move(f));
        }
        all.runs.push_back(std::move(run));
    }
    return all;
}

} // namespace

std::vector<Finding> findings_of(const Piece& piece, const Facts& facts, const Layout& layout, LengthUnit units)
{
    return merge_combinations(piece, run_all(piece, facts, layout, units).runs);
}

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options)
{
    ReportContent content;
    content.program_version = JOINTWRIGHT_VERSION;
    content.data_version = facts.fingerprint();
    content.units = options.units.value_or(piece.units);

    const Layout layout = layout_of(piece);
    const AllRuns all = run_all(piece, facts, layout, content.units);
    describe_piece(content, piece, layout, all.runs);
    content.findings = merge_combinations(piece, all.runs);
    if (options.remedies_tried && !options.text.empty())
        try_remedies(options.text, piece, facts, layout, content.units, content.findings);
    content.do_first = first_steps(content.findings);
    content.verdict = overall_verdict(content.findings);
    content.assumed = assumptions_of(piece, all.runs);
    content.left_out = left_out_by(facts, content.findings);
    list_cuts(content, all.prepared.front());
    if (options.drawn) {
        DrawnPiece drawn = drawn_piece(all.prepared.front(), content.findings);
        for (std::size_t i = 0; i < all.prepared.size() && !drawn.load; ++i)
            drawn.load = drawn_load(all.prepared[i], content.findings);
        drawn.sag_by = sag_by_thickness(options.text, piece, facts, content.findings, content.units);
        drawn.months = drawn_months(all.prepared.front());
        content.drawn = std::make_shared<const DrawnPiece>(std::move(drawn));
    }
    return content;
}

} // namespace jointwright
