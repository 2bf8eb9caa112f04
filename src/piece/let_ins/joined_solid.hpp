#pragma once
// The bodies of all copies as their joints cut them: what is let in stays whole, what takes it is cut. SI doubles: metres.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"
#include "piece/solid/convex_kernel.hpp"

#include <vector>

namespace jointwright {

/// The wood of one copy after notches and joints: convex cells that do not overlap, not even with those of other copies.
struct JoinedSolid {
    std::vector<kernel::Cell> cells;
    kernel::Vec grain{1, 0, 0}; ///< unit vector
};

/// The bodies of all copies, by copy.
///
/// Housing, groove, sliding dovetail: the second is cut to the first. Tenon: the first keeps its tenon of the space shared, or gets it
/// on top of what is drawn where the two only touch; the second has the mortise. Bridle: the first keeps what lies between the cheeks.
/// Dovetail: the first keeps its tails. Lap, mitre: each keeps its side of the face. Butt, edge and face of turned parts: the first is
/// cut to the second. Leaves out: clearances, room at the bottom of a groove, rounded edges, fasteners.
/// @param contacts  of that piece, as find_contacts gives them
std::vector<JoinedSolid> joined_solids(const Piece& piece, const std::vector<Contact>& contacts);

/// The way along which the first part of a joint leaves the second, a unit vector: off the face or shoulder where they only touch and in a
/// mitre, else the shortest way out of the other's box along an axis; of ways alike, upwards.
Point way_apart(const Piece& piece, const Contact& contact);

} // namespace jointwright
