#pragma once
// Boards that two glued places apart from each other hold across their grain, by way of a frame. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <vector>

namespace jointwright {

/// cross-grain of boards glued in two places to parts that a frame ties to each other: a top glued to the front and to the back apron, along
/// its grain in either place, and yet held across it from one to the other.
///
/// Looked at: glued places more than 80 mm apart (middle to middle), in joints that capture the board or on side-grain faces that lie that way,
/// with parts that joints tie to each other without the board, where some part of that frame runs along the way between them, with its grain,
/// over 0.7 of it. A frame whose parts all move that way with the board, such as the side of a case, holds nothing back; nor is a turned part looked at along a way that slants to its grain. Judged by the movement held back, with the
/// limits of a glued tenon; over 150 mm apart at best warns.
std::vector<Finding> judge_glued_apart(const Prepared& prepared, const Ties& ties);

} // namespace jointwright
