#pragma once
// Which groups of joined parts stand, hang on hinges, lie loose in the piece, or hang on nothing: a carcass, its doors and its drawers told apart.

#include "mechanics/given/given.hpp"

#include <vector>

namespace jointwright {

/// Parts that hold together by stated joints, hinges left out.
struct HeldGroup {
    /// stands: on the floor or the wall. hinged: a door, lid or flap. lies: borne by what it only touches, as a drawer on its runners. nothing: no way
    /// leads from it to the floor.
    enum class How { stands, hinged, lies, nothing } how = How::stands;
    std::vector<std::size_t> copies; ///< in their order
    Box bounds;
    bool contains(std::size_t copy) const;
    bool on_edge = false; ///< stands, but only as a door leaned there would: on an edge far too thin for its height
    /// Joined of several parts, as a door or a drawer is.
    bool made_up() const { return copies.size() > 1; }
};

/// All groups, in the order of their first copies.
std::vector<HeldGroup> held_groups(const Given& given);
/// By copy: part of a door or the like that is drawn standing on its edge beside what stands by itself. Its edge is no foot.
std::vector<bool> stood_on_edge(const Given& given);

} // namespace jointwright
