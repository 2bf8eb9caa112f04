#pragma once
// The piece out of shape under a load: centrelines of its parts moved, so many times as far as they move.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"
#include "review/pictures/drawn_load.hpp"

namespace jointwright {

/// The piece pale, the lines of its parts dashed at rest and drawn full where the load takes them, seen from its front left corner; arrows where
/// the load acts. The caption says how many times too far the lines are moved; the farthest goes about a twelfth of the drawing's width.
/// Nothing for content without bodies or for a load without lines.
void put_deflected_drawing(HtmlOut& out, const ReportContent& content, const DrawnLoad& load);

} // namespace jointwright
