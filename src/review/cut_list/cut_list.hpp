#pragma once
// What a maker takes to the saw and to the glue-up: blanks of the parts, joints as they are cut today, gaps and slots, the order of gluing.

#include "mechanics/prepared.hpp"
#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"
#include "review/content/report_content.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// The blank of every part, in the order of the design: tenons that come on top of the drawn length are in its length.
std::vector<CutPart> cut_parts_of(const Piece& piece, const std::vector<Contact>& contacts);

/// One line for each part to cut: "4 × leg: 17 5/8 in long, ...".
std::vector<std::string> cut_part_lines(const std::vector<CutPart>& parts, LengthUnit units);

/// One line for each joint that is cut: tenons and mortises, housings and grooves with depth and width, laps, bridles, tails, holes and
/// slots. Clearances are in the sizes: those of the design where they serve, else those that the findings ask for. Joints of turned parts that
/// are drawn into each other are marked on the bench.
std::vector<std::string> cut_joint_lines(const Piece& piece, const std::vector<Contact>& contacts,
                                         const std::vector<Finding>& findings, LengthUnit units);

/// Gaps to leave, room of panels, widths of what runs between stops, slots that are not drawn or not long enough. What becomes of them in the
/// seasons is told where it matters.
std::vector<std::string> cut_fit_lines(const std::vector<Finding>& findings, LengthUnit units);

/// The stages of the glue-up in their order, how each joint is clamped, how long it stays clamped, how much glue to have at hand.
std::vector<std::string> glue_up_lines(const Prepared& prepared, const std::vector<Finding>& findings, LengthUnit units);

/// Fills parts, lines and groups of "Cut today". @param prepared  the first combination; content has its findings and units
void list_cuts(ReportContent& content, const Prepared& prepared);

} // namespace jointwright
