#pragma once
// The faces between two bodies, by the kind of joint. SI doubles: metres.

#include "piece/contacts/contact.hpp"
#include "piece/solid/solid.hpp"

#include <optional>
#include <vector>

namespace jointwright {

/// What contact finding needs of one copy.
struct Body {
    const Part* part = nullptr;
    const Copy* copy = nullptr;
    Solid solid;
    kernel::Vec lo{0, 0, 0}, hi{0, 0, 0};
    kernel::Vec grain{1, 0, 0};
};
Body body_of(const Part& part, const Copy& copy);

/// The space that two bodies are both drawn in; nothing when they only touch or stand apart.
struct SharedSpace {
    Box bounds;
    double volume = 0;
};
std::optional<SharedSpace> shared_space(const Body& a, const Body& b);

/// Faces of the two bodies that lie on each other, or look at each other from nearer than `apart`; then as they lie on the first.
std::vector<Patch> touching_patches(const Body& first, const Body& second, double apart = kTouch);

/// All faces of a joint of that kind; `shared` where the parts are drawn in the same space. Largest first.
std::vector<Patch> joint_patches(const Body& first, const Body& second, const Joint& joint,
                                 const std::optional<SharedSpace>& shared);

/// True for kinds that may be drawn sharing space; `turned`: one of the two parts is turned.
bool may_share(JointKind kind, bool turned);

} // namespace jointwright
