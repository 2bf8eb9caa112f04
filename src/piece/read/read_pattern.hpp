#pragma once
// [pattern]: a few leading measures, replaced in the parsed design by the parts and joints that they make.

#include "piece/text/reading.hpp"

#include <string_view>

namespace jointwright {

/// What became of the [pattern] of a design.
struct PatternRead {
    bool stated = false;
    bool sound = true;       ///< no fault was found in it
    bool written_out = true; ///< its parts are in the tree (with a measure of its own in place of one that could not be read)
};

/// Replaces [pattern] in the parsed design by its [[part]] and [[joint]] tables, ahead of the maker's own, and gives [piece] the
/// size, carries and wall that it does not state. Every value made so stands at the spot of [pattern].
/// Leaves a design without [pattern] as it is. Faults go to `reading`: "unknown-name", "missing-key", "out-of-range" and others.
/// @param root  the design; @param text  the text that it was parsed from
PatternRead write_out_pattern(Reading& reading, DesignValue& root, std::string_view text);

} // namespace jointwright
