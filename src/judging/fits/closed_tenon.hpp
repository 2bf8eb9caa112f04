#pragma once
// Tenons in their mortises across their own width: loose tenons, and the long tongue of a top in its breadboard end. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <optional>

namespace jointwright {

/// bind of one tenon, across its width; nothing where its mortise is open at both ends, where nothing can press, or for turned parts.
///
/// The tenon moves from where glue or tight pegs hold it, else about its middle; a free one shifts, so that both ends of the mortise share
/// their room. Where a clearance is stated it is the room at either end and is judged. Where none is stated the drawing leaves the length of
/// the mortise to the maker: the finding passes, says how much longer than the tenon to cut it today, and tells the room of a mortise cut so. A tenon glued over its whole width is
/// held by its glue, which `cross-grain` judges; the room is told all the same. Pegs that reach the ends of their slots warn.
/// Where the mortised part is as long as the other is wide (a breadboard end), it says how far the two stand past each other.
std::optional<Finding> judge_tenon_fit(const Prepared& prepared, const Ties& ties, std::size_t contact);

} // namespace jointwright
