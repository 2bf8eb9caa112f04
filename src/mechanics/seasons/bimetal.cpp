#include "mechanics/seasons/bimetal.hpp"

namespace jointwright {

Curvature bow_curvature(const BowLayer& first, const BowLayer& second)
{
    const double m = first.thickness.value() / second.thickness.value();
    const double n = first.modulus.value() / second.modulus.value();
    const double h = in_metres(first.thickness + second.thickness);
    const double both = (1 + m) * (1 + m), difference = second.strain - first.strain;
    return per_metre(6 * difference * both / (h * (3 * both + (1 + m * n) * (m * m + 1 / (m * n)))));
}

Length rise_over(Curvature curvature, Length length)
{
    const double l = in_metres(length);
    return metres(curvature.value() * l * l / 8);
}

} // namespace jointwright
