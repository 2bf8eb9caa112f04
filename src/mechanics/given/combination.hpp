#pragma once
// A wood or ring cut that the design leaves open makes several pieces of one.

#include "piece/model/piece.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace jointwright {

/// Which of the listed species and ring cuts are taken.
struct Combination {
    std::vector<std::size_t> species;    ///< by wood; 0 where there is one or none
    std::vector<std::size_t> wood_rings; ///< by wood
    std::vector<std::size_t> part_rings; ///< by part with rings of its own
    std::string words;                   ///< "red maple, rift", only what the design leaves open; else empty
};
std::vector<Combination> combinations_of(const Piece& piece);

} // namespace jointwright
