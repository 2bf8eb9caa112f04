#pragma once
// How a copy lies, seen from above: where along its own length and across it a place in plan falls, turned or not. SI doubles.

#include "piece/model/turn.hpp"

#include <optional>

namespace jointwright {

/// A rectangle in plan, along the axes of the piece.
struct Plan {
    double x0, x1, y0, y1;
    double size(std::size_t axis) const { return axis == 0 ? x1 - x0 : y1 - y0; }
    double lo(std::size_t axis) const { return axis == 0 ? x0 : y0; }
    double hi(std::size_t axis) const { return axis == 0 ? x1 : y1; }
};
Plan plan_of(const Box& box);

/// What of a copy lies under a rectangle in plan: its area in plan, and a rectangle of the copy itself with the same middle and spread.
struct UnderPlan {
    double area = 0;                ///< m²
    double from = 0, to = 0;        ///< along the grain, coordinates as drawn
    double across = 0, breadth = 0; ///< middle and size across it, as drawn
};

/// A copy as seen from above. Its own two directions: the grain, and that one of its other axes which shows most breadth in plan.
class Lying {
public:
    Lying(const Part& part, const Copy& copy);
    Axis grain() const { return grain_; }
    Axis across() const { return across_; }
    double from() const { return box_.lo[index_of(grain_)]; }
    double to() const { return box_.hi[index_of(grain_)]; }
    double middle() const { return box_.middle(across_); }
    double breadth() const { return box_.size(across_); }
    /// Its grain stands nearer upright than level.
    bool upright() const { return upright_; }
    /// The upper end of its grain, as drawn.
    double top_end() const { return down_ ? from() : to(); }
    /// Where a place of the copy is in space; through its thickness in the middle.
    Point place(double along, double across) const;
    /// What a direction of the drawn copy is in space.
    Point direct(Axis axis) const;
    /// Coordinates as drawn of a point in space.
    Point drawn(const Point& p) const;
    bool holds(const Point& p) const; ///< within a hair
    /// The part of the copy under a rectangle; nothing where none is. Of an upright copy its upper end.
    std::optional<UnderPlan> under(const Plan& plan) const;
    /// In plan the low end of the grain lies to the right of or behind the high end.
    bool reversed() const;

private:
    std::optional<UnderPlan> under_turned(const Plan& plan) const;
    Box box_, bounds_;
    std::optional<CopyTurn> turn_;
    Axis grain_, across_;
    bool upright_ = false, down_ = false;
};

} // namespace jointwright
