#pragma once
// How a piece hands its loads down to the floor, by hand statics: each lying part a beam on what bears it. SI doubles: metres, newtons.
// The whole frame, solved as one structure, is to take this place; checks read the results only.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"

#include <vector>

namespace jointwright {

/// A place where one copy rests on another or is held by its joint.
struct Bearing {
    std::size_t contact = 0;
    std::size_t below = 0;   ///< the copy that bears
    double from = 0, to = 0; ///< along the upper copy's grain
    double across = 0;       ///< its middle, across the grain in plan
};

/// Which copy bears which.
struct LoadPath {
    std::vector<std::vector<Bearing>> bearings; ///< by copy; empty on the floor
    std::vector<std::size_t> order;             ///< copies, every one before those that bear it
    std::vector<bool> on_floor;                 ///< or on the wall
    std::vector<bool> reached;                  ///< stands, however indirectly, on the floor
};

/// Floor parts bear what touches them, level by level; on one level what lies below bears what lies on it.
/// A dry side contact bears nothing.
LoadPath load_path_of(const Piece& piece, const std::vector<Contact>& contacts);

/// A force on one copy, spread along its grain.
struct CopyLoad {
    std::size_t copy = 0;
    double from = 0, to = 0;   ///< along the copy's grain, as drawn
    double force = 0;          ///< positive down, or along `direction`
    double across = 0;         ///< place across the grain in plan
    double breadth = 0;        ///< spread across the grain about that place
    Point direction{0, 0, -1}; ///< unit
    bool operator==(const CopyLoad&) const = default;
};

} // namespace jointwright
