#include "review/review.hpp"

#include "mechanics/prepared.hpp"
#include "review/content/left_out.hpp"
#include "review/content/merge.hpp"
#include "review/content/run_checks.hpp"
#include "review/cut_list/cut_list.hpp"
#include "review/pictures/drawn_piece.hpp"
#include "review/remedies/remedies.hpp"

namespace jointwright {

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options)
{
    ReportContent content;
    content.program_version = JOINTWRIGHT_VERSION;
    content.data_version = facts.fingerprint();
    content.units = options.units.value_or(piece.units);

    const LaidOut laid = lay_out(piece);
    const Layout& layout = *laid.layout;
    const std::vector<CombinationFindings> runs = run_checks(laid, facts, content.units);
    const Prepared& first = *runs.front().prepared;
    describe_piece(content, piece, layout, runs);
    content.findings = merge_combinations(piece, runs);
    if (options.remedies_tried && !options.text.empty())
        try_remedies(options.text, piece, facts, layout, content.units, content.findings);
    content.do_first = first_steps(content.findings);
    content.verdict = overall_verdict(content.findings);
    content.assumed = assumptions_of(piece, runs);
    content.left_out = left_out_by(facts, content.findings);
    list_cuts(content, first);
    if (options.drawn) {
        DrawnPiece drawn = drawn_piece(first, content.findings);
        for (std::size_t i = 0; i < runs.size() && !drawn.load; ++i)
            drawn.load = drawn_load(*runs[i].prepared, i, content.findings);
        drawn.sag_by = sag_by_thickness(options.text, piece, facts, content.findings, content.units);
        drawn.months = drawn_months(first);
        content.drawn = std::make_shared<const DrawnPiece>(std::move(drawn));
    }
    return content;
}

} // namespace jointwright
