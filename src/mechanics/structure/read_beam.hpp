#pragma once
// Inner forces along the line of one copy in a solved frame. SI doubles.

#include "mechanics/structure/structure.hpp"

#include <vector>

namespace jointwright {

/// What a line carries at one place.
struct LineForces {
    double at = 0;      ///< along the copy, from its lower end [m]
    double inside = 0;  ///< just within the beam that was read: which section counts at a step
    double tension = 0; ///< N
    double moment_y =
        0; ///< bending in the plane of grain and width: positive stretches the side that the width looks away from [N m]
    double moment_z = 0;             ///< bending square to it: positive stretches the side that grain × width looks away from
    double shear_y = 0, shear_z = 0; ///< N
    double torsion = 0;              ///< about the grain [N m]
};

/// Forces at the ends of every beam of a line, at the edges of its loads and where a moment is largest; only within the part itself, not where
/// its line is drawn on into its neighbours.
std::vector<LineForces> line_forces(const Structure& structure, std::size_t copy, const std::vector<CopyLoad>& loads,
                                    const kernel::FrameSolution& solution);
/// The same for what acts on its elements already.
std::vector<LineForces> line_forces(const Structure& structure, std::size_t copy, const std::vector<ElementLoad>& acting,
                                    const kernel::FrameSolution& solution);

} // namespace jointwright
