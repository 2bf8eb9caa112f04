#pragma once
// What the drawing says of a joint's sizes, as the strength of joints asks for them.

#include "bond/joints/joint_capacity.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// A joint of the piece as one of the forms whose strength is known.
struct DrawnJoint {
    JointForm form = JointForm::tenon;
    JointSizes sizes;
    Point into{};           ///< unit vector along which the first part enters the second
    bool directed = false;  ///< out of the first into the second: pressing and pulling can be told apart
    Point main{};           ///< axis of the moment that bends the rail over its depth
    Point flat{};           ///< axis of the moment across that
    std::string missing;    ///< the line to add where a size is not stated; empty else
    bool turns_flat = true; ///< false: nothing in it is reckoned against the moment across the main one (parts let in)
};

/// The joint at a contact; nothing for kinds whose strength lies in their glue line or their fasteners alone.
std::optional<DrawnJoint> drawn_joint(const Prepared& prepared, const Contact& contact);

} // namespace jointwright
