#pragma once
// The shape that a piece takes under the load that governs, for its drawing. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/model/space.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// A line of a part: where its points lie at rest and by how much each moves [m].
struct MovedLine {
    std::vector<Point> at_rest;
    std::vector<Point> moved_by; ///< as many as `at_rest`; points beyond the shorter list are left out
};

/// The piece under one load.
struct DrawnLoad {
    std::size_t finding = 0;      ///< the one that chose the load
    std::string words;            ///< what acts: "2 people side by side"
    std::vector<MovedLine> lines; ///< centrelines along the grain; of a wide part its edges and middle lines
    std::vector<MovedLine> acts;  ///< where the load acts: points and the unit direction it pushes in
};

/// The finding whose load shows most: the sag that uses most of its limit, without any sag the bending that does. Nothing
/// where neither uses a fiftieth.
std::optional<std::size_t> governing_load_finding(const std::vector<Finding>& findings);

/// The movement under that load and what acts at all times, at once, without creep; the floor takes it as in the finding. Nothing for a piece
/// that is not solved as a frame, or when another combination of woods than that of `prepared` governs.
std::optional<DrawnLoad> drawn_load(const Prepared& prepared, std::size_t combination, const std::vector<Finding>& findings);

} // namespace jointwright
