#pragma once
// SI doubles: metres. Parallel projection: from where a drawing looks at the piece.

#include "piece/solid/convex_kernel.hpp"

namespace jointwright::drawing {

using kernel::Vec;

/// A view along straight parallel rays. The three directions are unit vectors at right angles: right and up on the paper, and out of it
/// towards the eye.
struct View {
    Vec right{1, 0, 0}, up{0, 0, 1}, towards{0, -1, 0};
    /// A point of the piece on the paper: right, up, and how near the eye [m].
    Vec place(const Vec& p) const { return {right.dot(p), up.dot(p), towards.dot(p)}; }
    /// A direction of the piece, alike.
    Vec direct(const Vec& d) const { return place(d); }
};

/// From the front; from above with the front at the foot of the paper; from the left side with the front at the right.
View view_from_front();
View view_from_above();
View view_from_left();
/// From the front, turned to the left by `turn` and raised by `rise` [rad].
View view_from_corner(double turn, double rise);

} // namespace jointwright::drawing
