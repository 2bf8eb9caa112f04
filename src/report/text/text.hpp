#pragma once
// The report as plain text for a terminal or a file.

#include "review/content/report_content.hpp"

#include <string>

namespace jointwright {

struct TextOptions {
    bool colour = false;  ///< only on a terminal; every colour stands beside a word that says the same
    bool working = false; ///< show the sums of every finding with their sources
    int columns = 80;     ///< widest line; taken as 40 when less
};

/// The report as valid UTF-8, no line wider than `options.columns`: the verdict, the piece as read, the findings worst first, what to
/// cut today, assumptions and cautions. Control characters of names are made harmless; without `colour` there is no escape sequence.
std::string write_text(const ReportContent& content, const TextOptions& options);

} // namespace jointwright
