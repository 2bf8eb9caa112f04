#pragma once
// Moisture, widths and gaps through the twelve months of a room that is known month by month.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// True when the content carries months with something to chart.
bool has_months(const ReportContent& content);

/// Three charts with the months across: what moisture the air gives the wood, how much wider or narrower than made each part would be, and how
/// wide the gaps. The least and the most of each are marked, those that change most come first. Nothing without months.
void put_month_charts(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
