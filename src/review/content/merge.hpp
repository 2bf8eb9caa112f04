#pragma once
// From findings to the content of a report: the piece as read, what was assumed.

#include "judging/combination_findings.hpp"
#include "review/content/report_content.hpp"

#include <vector>

namespace jointwright {

/// The findings of all combinations as one list: of each check and subject the worst, its combination named in `where`; sorted.
std::vector<Finding> merge_combinations(const Piece& piece, const std::vector<CombinationFindings>& runs);

/// Parts, joints and contacts as read; masses of the heaviest combination.
void describe_piece(ReportContent& content, const Piece& piece, const Layout& layout,
                    const std::vector<CombinationFindings>& runs);

/// Defaults that touched a verdict, and what no check uses yet.
std::vector<std::string> assumptions_of(const Piece& piece, const std::vector<CombinationFindings>& runs);

} // namespace jointwright
