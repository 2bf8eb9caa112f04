#pragma once
// Where a piece meets the floor or the wall. SI doubles: metres.

#include "piece/model/piece.hpp"

#include <array>
#include <optional>
#include <vector>

namespace jointwright {

using PlanPoint = std::array<double, 2>;

/// Height of the floor: the lowest of the parts along the axes, or of a turned part that reaches farther below them than its foot is cut level.
double floor_level(const Piece& piece);
/// True when a copy reaches down to the floor; what hangs on hinges never stands on it.
bool meets_floor(const Piece& piece, std::size_t copy, double floor);
/// Corners of the body of a copy that touch the floor. Small feet too: all of their corners.
std::vector<PlanPoint> sole_of(const Part& part, const Copy& copy, double floor);
/// Where a copy on the floor stands in the sums: at the middle of its sole where that is small, near the ends of it where it is wide; a wide board
/// (`edge`) in the middle of its edge as well.
std::vector<PlanPoint> foot_places(const Part& part, const Copy& copy, double floor, bool edge);

/// The side of the piece that its wall parts all reach: where the wall stands, the back before the sides. Nothing where they share none.
std::optional<Side> wall_side(const Piece& piece);

/// The convex line round places, anticlockwise, each corner once.
std::vector<PlanPoint> line_round(const std::vector<PlanPoint>& places);

/// True when the middles of all feet lie in one line, or there is one only: the breadth of the soles is all that keeps the piece upright. Not of
/// pieces on a wall.
bool feet_in_line(const Piece& piece);

} // namespace jointwright
