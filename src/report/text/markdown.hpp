#pragma once
// The report as Markdown, for notes: the order and the words of the plain text.

#include "review/content/report_content.hpp"

#include <string>
#include <string_view>

namespace jointwright {

/// The report as CommonMark with a table of parts. Valid UTF-8; text of the design cannot act as markup, HTML or a link.
/// @param with_working  the sums of every finding, else of those alone that do not pass
std::string write_markdown(const ReportContent& content, bool with_working = false);

/// A text that reads as itself in Markdown: made safe as in safe_text.hpp, and every character that could be markup is escaped.
std::string markdown_text(std::string_view text);

} // namespace jointwright
