#pragma once
// The report as JSON, for other programs.

#include "review/content/report_content.hpp"

#include <string>

namespace jointwright {

/// The report in the format "jointwright-report/1" (data/schema/report-1.schema.json): SI numbers, keys in a fixed order, two spaces
/// of indentation, a line end behind. Always valid UTF-8; a number that is not finite is written as null. The same content gives the
/// same bytes.
std::string write_json(const ReportContent& content);

} // namespace jointwright
