#include "mechanics/prepared.hpp"

#include <utility>

namespace jointwright {

Prepared prepare(LaidOut laid, const Facts& facts, const Combination& combination, LengthUnit units)
{
    Prepared prepared{given(std::move(laid), facts, combination, units), {}};
    prepared.statics = statics_of(prepared);
    return prepared;
}

} // namespace jointwright
