#include "mechanics/seasons/restraint.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWorkingDepthShare = 0.4;  // of the contact's length: deeper wood does not work with the glue face
constexpr double kLeastStressDepth = 0.020; // m: the depth whose stored energy drives a split
constexpr double kEndZone = 0.025;          // m: the end of the glue line over which its shear is averaged

/// 1 − cosh(βx)/cosh(βℓ/2) without overflow for long contacts.
double build_up(double beta, double x, double half)
{
    const double far = std::exp(beta * (x - half)) + std::exp(-beta * (x + half));
    return 1 - far / (1 + std::exp(-2 * beta * half));
}

} // namespace

RestraintAnswer restraint_of(const Restraint& restraint)
{
    const double l = in_metres(restraint.length);
    const double ta = in_metres(restraint.a.thickness), tb = in_metres(restraint.b.thickness);
    const double wa = std::min(ta, kWorkingDepthShare * l), wb = std::min(tb, kWorkingDepthShare * l);
    const double ea = restraint.a.modulus.value(), eb = restraint.b.modulus.value();
    const double da = ea * wa * wa * wa / 12, db = eb * wb * wb * wb / 12;
    double c = 1 / (ea * wa) + 1 / (eb * wb);
    if (!restraint.held_flat) c += (wa + wb) * (wa + wb) / (4 * (da + db));
    const double give = wa / (3 * restraint.a.shear_modulus.value()) + wb / (3 * restraint.b.shear_modulus.value()) +
                        in_metres(restraint.glue_thickness) / restraint.glue_shear_modulus.value();
    const double beta = std::sqrt(c / give);
    const double half = l / 2, limit = 1 / c;
    const double middle = limit * build_up(beta, 0, half);
    const double zone = std::min(kEndZone, half);

    RestraintAnswer answer{};
    answer.force = newtons_per_metre(middle);
    answer.force_limit = newtons_per_metre(limit);
    const double depth_a = std::min(ta, std::max(kWorkingDepthShare * l, kLeastStressDepth));
    const double depth_b = std::min(tb, std::max(kWorkingDepthShare * l, kLeastStressDepth));
    answer.depth_a = metres(depth_a);
    answer.depth_b = metres(depth_b);
    answer.mean_a = pascals(middle / depth_a);
    answer.mean_b = pascals(middle / depth_b);
    answer.glue_shear = pascals(limit * build_up(beta, half - zone, half) / zone);
    answer.edge_peak = pascals(limit * beta * std::tanh(beta * half));
    answer.beta = beta;
    if (!restraint.held_flat) {
        const double curvature = middle * (wa + wb) / (2 * (da + db));
        answer.own_bending_a = pascals(ea * curvature * wa / 2);
        answer.own_bending_b = pascals(eb * curvature * wb / 2);
    }
    return answer;
}

} // namespace jointwright
