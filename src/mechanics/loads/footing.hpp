#pragma once
// What a piece stands on: the line round its feet, its weight and where it acts. SI doubles: metres, newtons.

#include "mechanics/given/floor.hpp"
#include "mechanics/given/given.hpp"

#include <vector>

namespace jointwright {

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
Footing footing_of(const Given& given);
/// Weight of some copies together.
Weight weight_of(const Given& given, const std::vector<std::size_t>& copies, double floor);

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
