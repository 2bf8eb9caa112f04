#pragma once
// Where along a seat people side by side ask most of it: few places, and among them the worst for every part under them. SI doubles: metres.

#include <utility>
#include <vector>

namespace jointwright {

/// A seat seen along one of its axes.
struct SeatRow {
    double lo = 0, hi = 0;
    std::vector<std::pair<double, double>> parts; ///< stretch of every part that people bear on
    std::vector<double> supports;                 ///< what stands under it: middles of legs, sides, bearers; in any order
};

/// Middles of a block of that size on the row, in rising order; the middle of the row where the block has no room to move.
///
/// Of a load shared by area among what lies under it a part bears most where the block covers the least, and that is where an end of the block
/// meets the edge of some part: all such places are weighed, and of them so few taken that every part has its worst within a hundredth. So more
/// parts in a row never show a worse load only because a coarser search had missed it. With `supports` come the ends of the row, the middle of
/// every bay and every inner support; of few bays also their third points and the block up against either end of the bay. A mirrored row has
/// mirrored places.
/// @param each_part  search the worst place of every part; without it only ends, bays and supports
std::vector<double> row_places(const SeatRow& row, double size, bool each_part);

} // namespace jointwright
