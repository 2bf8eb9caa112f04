#pragma once
// The scale of a chart along one axis: round steps, and where a number lies.

#include <vector>

namespace jointwright::drawing {

struct ChartAxis {
    double lo = 0, hi = 1;     ///< numbers at both ends
    double from = 0, to = 100; ///< units of the drawing at both ends
    double step = 0.5;         ///< between ticks
    double place(double number) const { return from + (number - lo) / (hi - lo) * (to - from); }
    /// Numbers of the ticks from low to high, each a whole number of steps.
    std::vector<double> ticks() const;
};

/// An axis over a range of numbers with about so many steps of 1, 2 or 5 times a power of ten; its ends are widened to whole steps.
/// A range of one number or of none that is finite is widened to a range about it.
ChartAxis axis_over(double least, double most, int steps, double from, double to);

} // namespace jointwright::drawing
