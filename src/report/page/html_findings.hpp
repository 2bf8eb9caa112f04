#pragma once
// The findings of the page.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

#include <string>
#include <string_view>

namespace jointwright {

/// The id of the place that tells what a check leaves out: "out-sag".
std::string left_out_anchor(std::string_view check);

/// The section with all findings: those to act on one by one, then the passes as a compact list. @param unfolded  the working of all of them is
/// open, and so comes on paper too
void put_findings(HtmlOut& out, const ReportContent& content, bool unfolded);

} // namespace jointwright
