#pragma once
// What a piece stands on: the line round its feet, its weight and where it acts. SI doubles: metres, newtons.

#include "mechanics/prepared.hpp"

#include <array>
#include <vector>

namespace jointwright {

using PlanPoint = std::array<double, 2>;

struct Footing {
    std::vector<PlanPoint>
        line;           ///< corners of the convex line round the feet, anticlockwise; fewer than three: a point or a line
    PlanPoint centre{}; ///< of the weight
    double weight = 0;  ///< N
    double floor = 0;   ///< height of the floor [m]
};

/// The footing of a piece that stands on the floor, drawn weight alone.
Footing footing_of(const Prepared& prepared);

/// The convex line round places, anticlockwise, each corner once.
std::vector<PlanPoint> line_round(const std::vector<PlanPoint>& places);

/// How a load at a place stands to one edge of the foot line.
struct Leverage {
    double outside = 0; ///< of the load; negative: it helps [m]
    double inside = 0;  ///< of the weight [m]
    PlanPoint out{};    ///< the level direction outwards, unit
};
/// Leverages of all edges about which the piece could tip; for feet on one line both its sides.
std::vector<Leverage> leverages(const Footing& footing, const PlanPoint& load);

} // namespace jointwright
