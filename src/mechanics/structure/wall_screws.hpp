#pragma once
// What the screws get that hold a piece on the wall: nothing here can judge them, the maker has to know. SI doubles: newtons.

#include "mechanics/structure/statics.hpp"
#include "mechanics/structure/structure.hpp"

namespace jointwright {

constexpr double kWallStep = 0.4; // m: screws to a wall stand no farther apart

/// Keeps for every copy on the wall its screw with the most to bear, over all cases. A moment that rolls the part off the wall draws a screw about
/// the pressed edge of the part: its lever is nine tenths of half the part's height.
/// @param worst  by copy on the wall, in the order of the feet
void note_wall_screws(std::vector<WallScrew>& worst, const Piece& piece, const Structure& structure, std::size_t load_case,
                      const kernel::FrameSolution& solution);

} // namespace jointwright
