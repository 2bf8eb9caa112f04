#pragma once
// What holds a part where one of its joints counts as nothing. SI doubles: metres.

#include "mechanics/prepared.hpp"

#include <optional>

namespace jointwright {

/// How two parts of a contact are tied to each other by other joints.
struct HeldElsewhere {
    std::size_t by = 0; ///< a contact of the part that shows its end grain, first on the way to the other
    bool close = false; ///< at the same place: a block in the corner, a part lying along both
};

/// A way from one part of a contact to the other over joints that hold: tenons and other cores, parts let in, screws, dowels, and glue between
/// side grain. The nearest of them to the contact; nothing where there is none.
std::optional<HeldElsewhere> held_elsewhere(const Prepared& prepared, std::size_t contact);

} // namespace jointwright
