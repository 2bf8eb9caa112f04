#pragma once
// A piece made ready for its checks: one for each combination of woods and ring cuts that the design leaves open.

#include "mechanics/given/given.hpp"
#include "mechanics/structure/statics.hpp"

namespace jointwright {

struct Prepared : Given {
    Statics statics;
};

Prepared prepare(LaidOut laid, const Facts& facts, const Combination& combination, LengthUnit units);

} // namespace jointwright
