#pragma once
// The piece drawn: a view from its corner with the findings marked, and three views at right angles with the overall sizes.

#include "report/drawings/svg.hpp"
#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

#include <string_view>

namespace jointwright {

/// The piece from its front left corner, with a numbered mark at each place that a finding which does not pass speaks of; the number leads
/// to the finding. Nothing when the content carries no bodies.
void put_piece_drawing(HtmlOut& out, const ReportContent& content);

/// How the drawing from the corner lies on its paper, so that another can show the same piece again by its id.
struct CornerPlan {
    drawing::View view;
    drawing::Sheet sheet;
    double wide = 0, high = 0; ///< of the drawing
};
CornerPlan corner_plan(const ReportContent& content);
/// Id of the group that holds the faces and lines of that drawing.
constexpr std::string_view kPieceId = "piece-drawn";

/// The piece from the front, from above and from the left, to one scale, with overall width, depth and height in the maker's units.
void put_three_views(HtmlOut& out, const ReportContent& content);

} // namespace jointwright
