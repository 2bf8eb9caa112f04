#pragma once
// The piece drawn: a view from its corner with the findings marked, and three views at right angles with the overall sizes.

#include "checks/report_content.hpp"
#include "report/html_parts.hpp"

namespace jointwright {

/// The piece from its front left corner, with a numbered mark at each place that a finding which does not pass speaks of; the number leads
/// to the finding. Nothing when the content carries no bodies.
void put_piece_drawing(HtmlOut& out, const ReportContent& content);

/// The piece from the front, from above and from the left, to one scale, with overall width, depth and height in the maker's units.
void put_three_views(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
