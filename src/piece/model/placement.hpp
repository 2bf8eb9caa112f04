#pragma once
// Where the copies of a part stand: one placed, a row of it, further single ones, and all of them mirrored. SI doubles: metres.

#include "piece/model/piece.hpp"

#include <optional>
#include <vector>

namespace jointwright {

/// A part as its `at`, `repeat`, `copies` and `mirror` place it.
struct Placement {
    struct Single {
        Point corner{}; ///< nearest left, front, bottom
        std::array<bool, 3> mirrored{};
    };
    struct Row {
        int count = 1; ///< with the placed one
        Point step{};
    };
    Single placed;
    std::optional<Row> row;
    std::vector<Single> singles;
    std::vector<Axis> mirror; ///< in the order written
    /// Number of copies that this makes; as a double, because a hostile count must not wrap round.
    double count() const;
};

/// Sizes of a part's box along x, y, z [m].
Point box_sizes(const Part& part);

/// All copies of one part, numbered from 1: the row, the single ones, then everything so far again for each mirror.
/// @param size  of the piece; needed by `mirror`
std::vector<Copy> build_copies(const Placement& placement, const Part& part, std::size_t part_index,
                               const std::optional<Point>& size);

} // namespace jointwright
