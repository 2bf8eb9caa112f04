#pragma once
// Loads of doors and gates: their own weight and a child on the latch side. SI doubles: metres, newtons.

#include "facts/facts.hpp"
#include "mechanics/loads/load_cases.hpp"
#include "piece/model/piece.hpp"

namespace jointwright {

/// Adds the child for uses door and gate, at the side farther from the hinges or from what is screwed to the wall. Nothing for a leaf that lies level, or where
/// neither tells by which side it hangs.
void add_hung_cases(LoadCases& cases, const Piece& piece, const Facts& facts);

} // namespace jointwright
