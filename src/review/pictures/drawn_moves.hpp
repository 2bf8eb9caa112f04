#pragma once
// How the parts of a joint that is drawn taken apart move against each other.

#include "mechanics/prepared.hpp"
#include "review/pictures/drawn_piece.hpp"

namespace jointwright {

/// Fills `moves`, or for a mitre `across`, of a joint that has its contact already; a long groove is shortened to a stretch of it.
/// Leaves them empty where the movement of a wood is not known, and says so in `alike` where both move alike.
void add_moves(const Prepared& prepared, const Contact& contact, ExplodedJoint& joint);

} // namespace jointwright
