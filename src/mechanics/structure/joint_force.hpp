#pragma once
// Forces between the parts of a piece. SI doubles: newtons, newton metres.

#include "piece/model/space.hpp"

#include <cstddef>

namespace jointwright {

/// What the first part of a joint hands to the second in one load case, at the middle of their faces, in the axes of the piece.
struct JointForce {
    std::size_t contact = 0, load_case = 0;
    Point force{};  ///< N
    Point moment{}; ///< N m
    Point middle{}; ///< m
};

} // namespace jointwright
