#pragma once
// Twist of a solid rectangle, by St Venant. SI doubles.

namespace jointwright {

/// What a rectangle a × b makes of a torque about its own middle.
struct RectangleTorsion {
    double constant = 0;  ///< J of T = G J dθ/dx [m⁴]
    double modulus_a = 0; ///< torque over shear stress at the middle of the sides of length a [m³]
    double modulus_b = 0; ///< the same of the sides of length b; the largest stress is that at the longer sides
};

/// Exact series (Timoshenko and Goodier, Theory of Elasticity, §109), summed until the rest is below 1e-6 of it. The wood is taken as alike in
/// both directions across its grain. @param a, b  sides of the section, positive [m]
RectangleTorsion torsion_of(double a, double b);

} // namespace jointwright
