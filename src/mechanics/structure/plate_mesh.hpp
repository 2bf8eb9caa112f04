#pragma once
// The grid of a plate: its edges, where it is held, and cells fine enough for what lies on it. SI doubles: metres.

#include "mechanics/loads/load_cases.hpp"
#include "mechanics/structure/member_line.hpp"

#include <vector>

namespace jointwright {

/// Where a load lies on a plate: along its grain from its lower end, across from the middle of its width.
struct PlatePatch {
    double s0, s1, t0, t1;
};

/// The patch under a load. A point is as large as the plate is thick: to its middle plane it has spread so far. On an upright plate, whose width
/// is not seen in plan, it takes the whole width.
PlatePatch plate_patch(const Piece& piece, const MemberLine& line, const CopyLoad& load);

/// Grid lines of a plate, both ways.
struct PlateGrid {
    std::vector<double> along, across;
};

/// @param held_along, held_across  where springs take hold of it
/// @param patches                  of the loads that bend it; their peaks come out within 3 % (shown by refining)
PlateGrid plate_grid(const MemberLine& line, std::vector<double> held_along, std::vector<double> held_across,
                     const std::vector<PlatePatch>& patches);

/// By copy: the patches of all loads of all cases that press square to a plate. Empty for lines.
std::vector<std::vector<PlatePatch>> bending_patches(const Piece& piece, const std::vector<MemberLine>& lines,
                                                     const LoadCases& cases);

} // namespace jointwright
