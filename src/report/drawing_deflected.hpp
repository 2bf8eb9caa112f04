#pragma once
// The piece out of shape under a load: centrelines of its parts moved, so many times as far as they move.

#include "checks/report_content.hpp"
#include "piece/space.hpp"
#include "report/html_parts.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

/// The centreline of a part, from end to end: where its points lie at rest and by how much each moves [m].
struct MovedLine {
    std::vector<Point> at_rest;
    std::vector<Point> moved_by; ///< as many as `at_rest`; points beyond the shorter list are left out
};

/// The piece pale, its centrelines dashed at rest and drawn full where the load takes them, seen from its front left corner.
/// @param load  what pushes, in words for the caption: "one person standing on slat #7"
/// The caption says how many times too far the lines are moved; the farthest goes about a twelfth of the drawing's width.
/// Nothing for content without bodies or without lines.
void put_deflected_drawing(HtmlOut& out, const ReportContent& content, const std::vector<MovedLine>& lines,
                           std::string_view load);

} // namespace jointwright
