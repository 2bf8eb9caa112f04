#pragma once
// Sizes and weights that furniture seldom has: said first among what was assumed, with what may have been meant.

#include "mechanics/prepared.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// A question for each: a piece of over half a tonne, a seat a metre high, parts thinner than 1 mm or longer than trees give. @param units  of the piece
std::vector<std::string> doubts_about_sizes(const Prepared& prepared);

} // namespace jointwright
