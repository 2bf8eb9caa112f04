// The bow of two bonded layers: Timoshenko's formula, its printed special cases, and the equilibrium that it stands for.

#include "catch.hpp"

#include "mechanics/seasons/bimetal.hpp"

#include <Eigen/Dense>

#include <cmath>

using namespace jointwright;

namespace {

BowLayer layer(double thickness_mm, double modulus_gpa, double strain)
{
    return {millimetres(thickness_mm), gigapascals(modulus_gpa), strain};
}

/// Curvature from force and moment balance over the depth: E (ε0 − κ y − ε_i) sums to nothing, nor does its moment. y out of the first
/// layer, so that a curvature which shortens the first layer's outside is positive.
double curvature_by_balance(double t1, double e1, double s1, double t2, double e2, double s2)
{
    Eigen::Matrix2d a = Eigen::Matrix2d::Zero();
    Eigen::Vector2d b = Eigen::Vector2d::Zero();
    const auto add = [&](double lo, double hi, double e, double s) {
        const double area = e * (hi - lo), first = e * (hi * hi - lo * lo) / 2, second = e * (hi * hi * hi - lo * lo * lo) / 3;
        a(0, 0) += area;
        a(0, 1) -= first;
        a(1, 0) += first;
        a(1, 1) -= second;
        b(0) += area * s;
        b(1) += first * s;
    };
    add(0, t1, e1, s1);
    add(-t2, 0, e2, s2);
    return a.colPivHouseholderQr().solve(b)(1);
}

} // namespace

TEST_CASE("Timoshenko's special cases: like thickness, and like stiffness besides", "[bimetal][published]")
{
    // S. Timoshenko, Analysis of bi-metal thermostats, 1925 (from memory, derived again): for t1 = t2 the curvature is
    // 24 Δε/(h (14 + n + 1/n)), and with n = 1 besides (3/2) Δε/h.
    const double h = 0.040, strain = 0.005;
    CHECK_THAT(bow_curvature(layer(20, 1, 0), layer(20, 1, strain)).value(), WithinRel(1.5 * strain / h, 1e-12));
    for (const double n : {0.2, 0.5, 1.0, 1.4, 3.0}) {
        CAPTURE(n);
        CHECK_THAT(bow_curvature(layer(20, n, 0), layer(20, 1, strain)).value(),
                   WithinRel(24 * strain / (h * (14 + n + 1 / n)), 1e-12));
    }
}

TEST_CASE("The bow balances forces and moments of the two layers", "[bimetal]")
{
    for (const double m : {0.05, 0.3, 1.0, 4.0})
        for (const double n : {0.06, 0.5, 1.0, 7.0}) {
            CAPTURE(m, n);
            const double found = bow_curvature(layer(20 * m, 2 * n, -0.004), layer(20, 2, 0.003)).value();
            CHECK_THAT(found, WithinRel(curvature_by_balance(0.020 * m, 2e9 * n, -0.004, 0.020, 2e9, 0.003), 1e-9));
        }
}

TEST_CASE("Laws of the bow", "[bimetal]")
{
    const BowLayer thin = layer(6, 11, -0.001), thick = layer(40, 9, 0.002);
    CHECK(bow_curvature(thin, thick).value() > 0); // hollow on the layer that shrank more
    CHECK_THAT(bow_curvature(thick, thin).value(), WithinRel(-bow_curvature(thin, thick).value(), 1e-12));
    CHECK(bow_curvature(layer(6, 11, 0.003), layer(40, 9, 0.003)).value() == 0);
    CHECK(bow_curvature(layer(0.001, 11, 0), layer(40, 9, 0.002)).value() <
          1e-3 * bow_curvature(layer(10, 11, 0), layer(40, 9, 0.002)).value());
    CHECK_THAT(in_metres(rise_over(per_metre(0.1), metres(2))), WithinRel(0.05, 1e-12));
    // A circle of 10 m radius: sagitta over 2 m.
    CHECK_THAT(in_metres(rise_over(per_metre(0.1), metres(2))), WithinRel(10 - std::sqrt(99.0), 0.01));
}

TEST_CASE("Flat on quarter-sawn oak, 20 + 20 mm, 100 mm wide, cups about 0.3 mm", "[bimetal]")
{
    // Red oak drying by 3.6 points: Δε = (0.00369 − 0.00158) × 3.6; E_T over E_R 0.082/0.154 (Wood Handbook table 5-1).
    const Curvature k = bow_curvature(layer(20, 0.082, -0.00369 * 3.6), layer(20, 0.154, -0.00158 * 3.6));
    CHECK_THAT(in_millimetres(rise_over(k, millimetres(100))), WithinAbs(0.3, 0.05));
}
