#pragma once
// Turned parts: splayed legs, cross braces. A part is drawn along the axes and then turned, right-handed, about one of them. SI doubles.

#include "piece/model/piece.hpp"
#include "piece/model/space.hpp"

#include <array>
#include <optional>

namespace jointwright {

/// The turn of one copy in space.
struct CopyTurn {
    Axis about = Axis::x;
    double angle = 0; ///< rad, right-handed
    Point at{};       ///< a point of the axis
    /// Where a point of the drawn part comes to lie.
    Point place(const Point& p) const;
    /// What a direction of the drawn part becomes.
    Point direct(const Point& d) const;
};

/// The turn of a copy: the part's own, moved with the copy and mirrored with it. Nothing for parts along the axes.
std::optional<CopyTurn> turn_of(const Part& part, const Copy& copy);

/// The part's own directions in space: along the grain, across the width, through the thickness; unit vectors.
struct PartAxes {
    Point grain{}, width{}, face{};
};
PartAxes axes_of(const Part& part, const Copy& copy);

/// The box round a copy as it stands, turned; its drawn box where it is not.
Box bounds_of(const Part& part, const Copy& copy);

} // namespace jointwright
