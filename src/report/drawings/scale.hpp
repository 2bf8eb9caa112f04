#pragma once
// How many times too large a drawing shows a movement.

namespace jointwright::drawing {

/// The largest of 1, 2, 5, 10, 20, 50 ... that does not exceed a number; 1 below 1, and for what is not finite.
double round_times(double times);

} // namespace jointwright::drawing
