#pragma once
// Which way parts come apart, and so in which order they can be put together: found from geometry alone.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"

#include <cstddef>
#include <vector>

namespace jointwright {

/// True when the first part of a contact can leave the second along a direction (unit vector), if only a little.
///
/// Loose and touching: any way that does not press. A glued face: only off the face, as sliding wipes the glue away. Tenon, dowel: out
/// of the hole. Housing, groove: out of its bottom, dry also along it. Sliding dovetail: along it. Bridle: out of the fork. Dovetail:
/// through the thickness of the board with the tails. Lap, mitre: off the cut.
bool can_leave(const Piece& piece, const Contact& contact, const Point& direction);

/// A step of putting together: a group of parts, whole in itself, closes onto what stands already.
struct ClosingStep {
    std::size_t group = 0;             ///< index into PutTogether::groups
    std::vector<std::size_t> contacts; ///< glued ones that close with it; empty: laid in dry
    double cost = 0;                   ///< of these contacts together
};

/// A group of parts and how it is put together: from `base` on, step by step. A group of one part has no steps.
struct AssemblyGroup {
    std::vector<std::size_t> copies;
    std::vector<ClosingStep> steps; ///< in the order of work
    std::size_t base = 0;           ///< index of the group that the first step closes onto
    bool locked = false;            ///< no way to part it was found: all its joints close at once, in one step without a group
    double cost = 0;                ///< of all contacts within
};

/// The way to put a piece together in which no step closes more than it must.
struct PutTogether {
    std::vector<AssemblyGroup> groups; ///< the whole piece last
};

/// Takes the piece apart by its blocking graphs: for each direction, who must move when one part moves; what has to move together and can
/// leave is taken off where that opens the least cost of glue, and so on with both halves.
///
/// The dearest step is the smallest possible one among such sets: what can be taken off first can be taken off later too, when less is
/// in its way. Of steps no dearer than `easy`, the one that lifts off goes first, so that tops and slats come last; then the one in the
/// direction in which the group is longest, so that end frames stay whole until the long rails go in.
///
/// @param costs  of closing each contact, by contact; 0 for dry ones
/// @param easy   a cost that needs no saving
/// Leaves out: moves that are longer than a first little way, turning, and bending parts in.
/// Source: Wilson and Latombe 1994 (from memory).
PutTogether put_together(const Piece& piece, const std::vector<Contact>& contacts, const std::vector<double>& costs, double easy);

} // namespace jointwright
