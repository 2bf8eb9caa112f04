#pragma once
// What a piece stands on: the line round its feet, its weight and where it acts. SI doubles: metres, newtons.

#include "mechanics/prepared.hpp"

#include <array>
#include <optional>
#include <vector>

namespace jointwright {

using PlanPoint = std::array<double, 2>;

/// A weight and where it acts.
struct Weight {
    double down = 0;   ///< N
    PlanPoint at{};    ///< m
    double height = 0; ///< above the floor [m]
};

struct Footing {
    std::vector<PlanPoint>
        line;           ///< corners of the convex line round the feet, anticlockwise; fewer than three: a point or a line
    PlanPoint centre{}; ///< of the weight
    double weight = 0;  ///< N, of what stands or is borne by what stands
    double height = 0;  ///< of the centre of the weight above the floor [m]
    double floor = 0;   ///< height of the floor [m]
    Weight unborne{};   ///< what hangs on nothing: it may pull the piece over, and is not relied on to hold it down
};

/// The footing of a piece that stands on the floor, drawn weight alone. The centre of the weight is that of the volumes of its copies, let-ins taken off.
Footing footing_of(const Prepared& prepared);
/// Weight of some copies together.
Weight weight_of(const Prepared& prepared, const std::vector<std::size_t>& copies, double floor);

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

/// How a load at a place stands to one edge of the foot line.
struct Leverage {
    double outside = 0; ///< of the load; negative: it helps [m]
    double inside = 0;  ///< of the weight [m]
    PlanPoint out{};    ///< the level direction outwards, unit
    PlanPoint from{};   ///< a place on the edge
    /// How far outside the edge a place lies; negative: within [m].
    double beyond(const PlanPoint& at) const { return (at[0] - from[0]) * out[0] + (at[1] - from[1]) * out[1]; }
};
/// Leverages of all edges about which the piece could tip; for feet on one line both its sides.
std::vector<Leverage> leverages(const Footing& footing, const PlanPoint& load);

} // namespace jointwright
