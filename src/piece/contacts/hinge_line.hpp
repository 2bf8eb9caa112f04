#pragma once
// Where the hinges of a joint sit: on one line, the pins, along the longer side of the faces that look at each other. SI doubles: metres.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"

#include <vector>

namespace jointwright {

struct HingeLine {
    Point along{};             ///< unit vector of the pins
    Point through{};           ///< unit vector out of the first part into the second
    std::vector<Point> places; ///< middle of each hinge
    /// Pins that stand upright: the leaf's weight does not turn it.
    bool upright() const;
};

/// The hinges stand at (i − ½)/count of the longer side, or the outer ones `inset` from its ends and the others evenly between.
/// @param contact  of a joint of kind hinge
HingeLine hinge_line(const Joint& joint, const Contact& contact);

} // namespace jointwright
