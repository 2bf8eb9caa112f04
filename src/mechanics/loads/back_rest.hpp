#pragma once
// What people lean back on: the parts that stand up behind a seat. SI doubles: metres, newtons.

#include "facts/facts.hpp"
#include "mechanics/given/load_path.hpp"
#include "piece/model/piece.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace jointwright {

/// A back on one side of a seat.
struct BackRest {
    std::size_t axis = 1;            ///< a person leans along this axis: 0 x, 1 y
    bool far = true;                 ///< towards its far end: to the back, to the right
    double lo = 0, hi = 0;           ///< the back's reach along the other level axis
    double seat = 0, top = 0;        ///< heights of the seat and of the back's upper edge
    double height = 0;               ///< where a back presses on it
    double front = 0;                ///< where the seat meets it, on `axis`
    std::vector<std::size_t> copies; ///< that stand up on that side
    std::size_t along() const { return 1 - axis; }
};

/// The back of a seat: on the side where parts rise at least `back_least` above what people sit on and reach over more than half of that side.
/// Arms are lower than that. The taller one, where there are two; none for a seat without.
std::optional<BackRest> back_rest_of(const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);

/// A level force of one leaning back, shared by the area that lies behind the pad. Empty where nothing does.
/// @param at  middle of the pad along the back
std::vector<CopyLoad> lean_back(const Piece& piece, const Facts& facts, const BackRest& back, double at, double force);

} // namespace jointwright
