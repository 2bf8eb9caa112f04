#pragma once
// How thin: the sag of the part that sags most against its thickness, with the limit.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// Points for each thickness that was worked out, joined by a line, the limit as a dashed line, the chosen thickness named. Nothing when no
/// thickness but the chosen one was worked out.
void put_sag_chart(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
