#pragma once
// Hinges in the frame: each holds its leaf against shifting every way, and lets it turn. SI doubles.

#include "mechanics/structure/joint_links.hpp"

#include <vector>

namespace jointwright {

/// A spring at each hinge of a contact: stiff against shifting, without a moment. About upright pins something small keeps the leaf where it is drawn, as a
/// latch or a stop does, and no load that hangs on it is borne by that; about level pins nothing does, so that a flap without a rest is found loose.
std::vector<JointLink> hinge_links(const Given& given, std::size_t contact, const std::vector<MemberLine>& lines);

/// A dry face between a leaf on upright pins and what it does not hang on: the sill, the post on the latch side. It swings clear of them, and they bear
/// nothing.
bool swings_clear(const Given& given, const Contact& contact);

} // namespace jointwright
