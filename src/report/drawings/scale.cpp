#include "report/drawings/scale.hpp"

#include <cmath>
#include <initializer_list>

namespace jointwright::drawing {

double round_times(double times)
{
    if (!std::isfinite(times) || times < 1) return 1;
    const double decade = std::pow(10, std::floor(std::log10(times) + 1e-12));
    for (const double step : {5.0, 2.0})
        if (times >= step * decade * (1 - 1e-12)) return step * decade;
    return decade;
}

} // namespace jointwright::drawing
