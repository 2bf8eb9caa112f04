#pragma once
// How much of each limit is used, largest first.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// Bars of the utilisation of the findings, sorted from the largest, with the limit drawn across and, where a finding tells it, the use from
/// which it would fail. The verdict stands beside each bar in words and as a sign. The first sixteen; nothing when no finding has a share.
void put_use_chart(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
