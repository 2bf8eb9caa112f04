#pragma once
// How the floor takes one set of loads. SI doubles.

#include <vector>

namespace jointwright::kernel {

struct FloorState {
    bool slides = false;     ///< false: every grip holds, as if the feet stood against stops
    double share = 0;        ///< of the press that a grip takes at most, where it slides
    std::vector<int> free;   ///< grips that hold nothing; their presses hold both ways, at rest under balanced loads
    bool holds_down = false; ///< no foot lifts, as in a test that holds the piece down
};

} // namespace jointwright::kernel
