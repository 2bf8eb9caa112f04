#pragma once
// What the maker takes to the saw.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// The section "Cut today": the blanks as a table with a box to tick for each part, then the joints to cut and the fits to set, with what
/// the maker should mind at the machines. It stands even when there is nothing to cut.
void put_cut_today(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
