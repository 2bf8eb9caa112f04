#pragma once
// What a pattern builds on: units, room and woods of the design, read ahead of their turn.

#include "piece/patterns/pattern.hpp"
#include "piece/text/value.hpp"

#include <string_view>

namespace jointwright {

/// Their faults are not told here: they are when these tables are read in their turn.
struct PatternGround {
    Piece piece; ///< name, units, use and size, room, woods
    bool units_known = false;
    bool sound = true; ///< none of these tables has a fault
};

PatternGround pattern_ground(const DesignValue& root, std::string_view text, const Facts& facts);

/// A wood of the design with its worst movement from glue-up to the seasons, over the species and ring cuts that it may be.
/// Where the ground is not sound or the tables lack its movement, a lively wood is taken.
PatternWood pattern_wood(const WoodChoice& choice, const PatternGround& ground, const Facts& facts);

} // namespace jointwright
