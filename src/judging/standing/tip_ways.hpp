#pragma once
// The ways in which a piece of its use may be tipped: people at its edges, children on its shelves, drawers and doors, a pull at its top.

#include "mechanics/loads/tipping.hpp"
#include "mechanics/prepared.hpp"

#include <vector>

namespace jointwright {

/// People who sit, lean back or lean on the edge of a seat or table. Empty for other uses and where nothing is carried.
std::vector<Tipping> tipped_by_people(const Prepared& prepared, const Footing& footing);

/// What tips a shelf or cabinet.
struct CaseTipping {
    std::vector<Tipping> ways;
    bool opens = false; ///< it has, or is taken to have, drawers or doors
};
/// A child on its front, its drawers and doors open, empty and filled, and a pull at its top. Empty below the height from which the rule holds, and for
/// other uses.
CaseTipping tipped_as_case(const Prepared& prepared, const Footing& footing);

} // namespace jointwright
