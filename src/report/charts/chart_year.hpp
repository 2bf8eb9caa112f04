#pragma once
// Charts of what the seasons do: widths and gaps at the driest, as made and at the dampest.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// One row for each part whose width is known through the year: how much narrower or wider it is than made, in the maker's unit.
/// Nothing when no part has such figures.
void put_width_chart(HtmlOut& out, const ReportContent& content);

/// One row for each gap, housing and groove: the room at the driest, as made and at the dampest, with closed at zero.
/// Nothing when there is none.
void put_gap_chart(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
