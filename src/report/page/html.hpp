#pragma once
// The report as one self-contained page.

#include "review/content/report_content.hpp"

#include <string>

namespace jointwright {

/// An HTML page that loads nothing and runs no script: the verdict and what to do first, the piece as read, the findings with numbers,
/// working and sources, what to cut today, assumptions and cautions. For narrow and wide screens, light and dark, and paper. All text
/// of the content is escaped and made safe as in safe_text.hpp. No time stamp unless the content has a date.
/// @param unfolded  the working of every finding is open from the start, and so is printed
std::string write_html(const ReportContent& content, bool unfolded = false);

} // namespace jointwright
