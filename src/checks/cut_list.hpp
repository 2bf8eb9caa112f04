#pragma once
// What to cut: blanks of the parts, and the joints that are cut in them.

#include "checks/report_content.hpp"
#include "piece/contact.hpp"
#include "piece/piece.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// The blank of every part, in the order of the design: tenons that come on top of the drawn length are in its length.
std::vector<CutPart> cut_parts_of(const Piece& piece, const std::vector<Contact>& contacts);

/// One line for each part to cut: "4 × leg: 17 5/8 in long, ...".
std::vector<std::string> cut_part_lines(const std::vector<CutPart>& parts, LengthUnit units);

/// One line for each joint that is cut: tenons and mortises, housings and grooves with depth and width, laps, bridles, tails, holes and
/// slots. Clearances are in the sizes. Joints of turned parts that are drawn into each other are marked on the bench.
std::vector<std::string> cut_joint_lines(const Piece& piece, const std::vector<Contact>& contacts, LengthUnit units);

} // namespace jointwright
