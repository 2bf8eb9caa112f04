#pragma once
// The body of one copy: convex cells and the skin around them, with its taper, notches and round-over. SI doubles: metres.

#include "piece/model/piece.hpp"
#include "piece/solid/convex_kernel.hpp"

#include <vector>

namespace jointwright {

/// A copy as drawn, before any joint cuts it.
struct Solid {
    std::vector<kernel::Cell> cells;   ///< do not overlap; together the wood
    std::vector<kernel::Polygon> skin; ///< faces that can touch something; long faces lessened by the round-over
    double volume() const;             ///< m³, the round-over taken off
    Point first_moment() const;        ///< volume times the centre of it [m⁴]
    double round_over_loss = 0;        ///< m³
};

/// The body of a copy. A box minus notches, or with a taper two cells. Mirrored copies have their shape mirrored in themselves.
Solid solid_of(const Part& part, const Copy& copy);

/// The boxes cut out of a copy by its own notches, in space.
std::vector<Box> notch_boxes(const Part& part, const Copy& copy);

/// Width and thickness of a tapered part at a distance from its lower (left, front, bottom) end, as drawn.
struct Section {
    double width, thickness;
};
Section section_at(const Part& part, const Copy& copy, double along);

} // namespace jointwright
