#pragma once
// From findings to the content of a report: the piece as read, what was assumed, what to cut.

#include "checks/checks.hpp"
#include "checks/report_content.hpp"

#include <vector>

namespace jointwright {

/// The findings of all combinations as one list: of each check and subject the worst, its combination named in `where`; sorted.
std::vector<Finding> merge_combinations(const Piece& piece, const std::vector<CombinationFindings>& runs);

/// Parts, joints and contacts as read; masses of the heaviest combination.
void describe_piece(ReportContent& content, const Piece& piece, const Layout& layout,
                    const std::vector<CombinationFindings>& runs);

/// Defaults that touched a verdict, and what no check uses yet.
std::vector<std::string> assumptions_of(const Piece& piece, const std::vector<CombinationFindings>& runs);

/// Lines for the saw: sizes to cut at the moisture of glue-up, and the gaps, grooves and slots that the findings ask for today.
std::vector<std::string> cut_list_of(const Piece& piece, const Layout& layout, const std::vector<Finding>& findings,
                                     LengthUnit units);

} // namespace jointwright
