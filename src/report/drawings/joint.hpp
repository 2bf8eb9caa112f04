#pragma once
// Joints taken apart: both grains, and how far each part wants to go.

#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

#include <cstddef>

namespace jointwright {

/// The joint that a finding speaks of, its first part drawn off the second, with a double arrow along each grain and arrows for the free
/// movement of each part, so many times as long as it is; the caption says how many times. Only under the first finding of each joint;
/// nothing for all others and for content without bodies.
void put_joint_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding);

} // namespace jointwright
