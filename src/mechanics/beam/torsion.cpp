#include "mechanics/beam/torsion.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

// Sums over the odd numbers of 1/n⁵ and of ±1/n² (Catalan's constant): what the series come to for a long thin strip. What a real section has
// less falls off like e^(−nπr), so that four terms of it are enough from the square on.
constexpr double kFifths = 1.0045237627951;
constexpr double kCatalan = 0.9159655941772;

} // namespace

RectangleTorsion torsion_of(double a, double b)
{
    constexpr double pi = std::numbers::pi;
    const double longer = std::max(a, b), shorter = std::min(a, b), r = longer / shorter;
    double fifths = kFifths, signed_squares = kCatalan, hyperbolic = 0, sign = 1;
    for (const double n : {1.0, 3.0, 5.0, 7.0}) {
        const double x = n * pi * r / 2, short_of_one = 2 / (std::exp(2 * x) + 1); // 1 − tanh x
        fifths -= short_of_one / (n * n * n * n * n);
        signed_squares -= sign * short_of_one / (n * n);
        hyperbolic += 1 / (n * n * std::cosh(x));
        sign = -sign;
    }
    const double eighths = 8 / (pi * pi);
    RectangleTorsion t;
    t.constant = longer * shorter * shorter * shorter / 3 * (1 - 192 / (pi * pi * pi * pi * pi) / r * fifths);
    // Shear stress over G dθ/dx: shorter × these.
    const double at_longer = t.constant / (shorter * (1 - eighths * hyperbolic)),
                 at_shorter = t.constant / (shorter * eighths * signed_squares);
    t.modulus_a = a >= b ? at_longer : at_shorter;
    t.modulus_b = a >= b ? at_shorter : at_longer;
    return t;
}

} // namespace jointwright
