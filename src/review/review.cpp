#include "review/review.hpp"

#include "mechanics/prepared.hpp"
#include "review/content/left_out.hpp"
#include "review/content/merge.hpp"
#include "review/content/run_checks.hpp"
#include "review/cut_list/cut_list.hpp"
#include "review/pictures/drawn_piece.hpp"
#include "review/remedies/remedies.hpp"

namespace jointwright {

namespace {

/// The load that governs, drawn on the woods that it governs with: solved again where they are not the first.
std::optional<DrawnLoad> governing_load(const LaidOut& laid, const Facts& facts, const std::vector<CombinationFindings>& runs,
                                        const ReportContent& content)
{
    const auto governing = governing_load_finding(content.findings);
    if (!governing) return std::nullopt;
    const std::size_t i = content.findings[*governing].about.combination;
    if (i == 0) return drawn_load(*runs.front().prepared, i, content.findings);
    return drawn_load(prepare(laid, facts, runs[i].prepared->combination, content.units), i, content.findings);
}

} // namespace

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
        drawn.load = governing_load(laid, facts, runs, content);
        drawn.sag_by = sag_by_thickness(options.text, piece, facts, content.findings, content.units);
        drawn.months = drawn_months(first);
        content.drawn = std::make_shared<const DrawnPiece>(std::move(drawn));
    }
    return content;
}

} // namespace jointwright
