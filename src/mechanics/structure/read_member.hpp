#pragma once
// Reads what one copy carries out of a solved frame. SI doubles.

#include "mechanics/structure/statics.hpp"
#include "mechanics/structure/structure.hpp"

#include <optional>

namespace jointwright {

/// Places along a lying copy where it is borne, from its lower end, rising. Bearings nearer than the part is deep would lever against each other
/// where wood only gives: they are one place; a long row of them is two, at its ends.
std::vector<double> support_places(const std::vector<Bearing>& bearings, double lower_end, double length, double depth);

/// Sag, moments and stresses of a lying copy in one case.
/// @param loads        what they do to its elements; empty for a plate
/// @param edges_count  whether the sag of a plate's free edges is one: not under a push on them that passes
MemberResult read_member(const Structure& structure, const Given& given, std::size_t copy, const std::vector<ElementLoad>& loads,
                         bool edges_count, const kernel::FrameSolution& solution);

/// Thrust and bending of an upright copy in one case.
PostResult read_post(const Structure& structure, std::size_t copy, const std::vector<ElementLoad>& loads,
                     const kernel::FrameSolution& solution);

} // namespace jointwright
