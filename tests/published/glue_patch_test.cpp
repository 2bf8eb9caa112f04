// A rectangular glue face under forces and moments: twisting against numerical integration, and what symmetry demands.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/glue/glue_line.hpp"
#include "bond/glue/glue_patch.hpp"

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <cmath>
#include <limits>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

using Integrator = boost::math::quadrature::gauss_kronrod<double, 31>;

/// ∫∫ √(x² + y²) dx dy over a rectangle about its middle, by adaptive Gauss-Kronrod rules in both directions.
double turning_by_quadrature(double a, double b)
{
    constexpr unsigned depth = 12;
    constexpr double tolerance = 1e-11;
    return 4 * Integrator::integrate(
                   [&](double x) {
                       return Integrator::integrate([x](double y) { return std::hypot(x, y); }, 0.0, b / 2, depth, tolerance);
                   },
                   0.0, a / 2, depth, tolerance);
}

const GluePatch kPatch{millimetres(32), millimetres(38), 2};
const Stress kShear = megapascals(4.1), kTension = megapascals(5.5);

PatchForces loaded() { return {newtons(300), newtons(200), newtons(100), newton_metres(20), newton_metres(3), newton_metres(2)}; }

} // namespace

TEST_CASE("Twisting of a rectangular face: the closed form is the integral", "[glue-patch][published]")
{
    for (const auto& [a, b] : {std::pair{1.0, 1.0}, {0.032, 0.038}, {0.01, 0.5}, {2.0, 0.001}, {0.0762, 0.0095}}) {
        CAPTURE(a, b);
        CHECK_THAT(twisting_capacity(metres(a), metres(b)).value(), WithinRel(turning_by_quadrature(a, b), 1e-8));
    }
}

TEST_CASE("Twisting of a square and of 32 × 38 mm as shares of area to the 1.5", "[glue-patch][published]")
{
    // 0.383 and 0.385, three digits printed.
    CHECK_THAT(twist_capacity({metres(1), metres(1), 1}, pascals(1)).value(), WithinAbs(0.383, 0.0005));
    CHECK_THAT(twist_capacity({millimetres(32), millimetres(38), 1}, pascals(1)).value() / std::pow(0.032 * 0.038, 1.5),
               WithinAbs(0.385, 0.0015));
}

TEST_CASE("Elastic corner stress of a tenon's two faces", "[glue-patch][published]")
{
    // 12.3 MPa in the corners of two faces 32 × 38 mm: 248 N m; 4.1 MPa: 83 N m; 353 N m give 17.5 MPa. Three digits printed.
    CHECK_THAT(elastic_corner_twist(kPatch, megapascals(12.3)).value(), WithinAbs(248, 0.5));
    CHECK_THAT(elastic_corner_twist(kPatch, kShear).value(), WithinAbs(83, 0.5));
    const PatchUse u = patch_use(kPatch, {{}, {}, {}, newton_metres(353), {}, {}}, kShear, kTension);
    CHECK_THAT(in_megapascals(u.corner), WithinAbs(17.5, 0.05));
}

TEST_CASE("What symmetry demands of a glue patch", "[glue-patch][identity]")
{
    const PatchForces f = loaded();
    const double use = patch_use(kPatch, f, kShear, kTension).use;
    PatchForces mirrored = f;
    mirrored.along_a = -f.along_a;
    mirrored.twist = -f.twist;
    mirrored.bend_a = -f.bend_a;
    CHECK_THAT(patch_use(kPatch, mirrored, kShear, kTension).use, WithinRel(use, 1e-12));
    // The patch laid the other way with what acts on it.
    const PatchForces turned{f.along_b, f.along_a, f.normal, f.twist, f.bend_b, f.bend_a};
    CHECK_THAT(patch_use({kPatch.b, kPatch.a, 2}, turned, kShear, kTension).use, WithinRel(use, 1e-12));
    // Twice the size: four times the forces and eight times the moments are borne alike.
    const PatchForces grown{f.along_a * 4.0, f.along_b * 4.0, f.normal * 4.0, f.twist * 8.0, f.bend_a * 8.0, f.bend_b * 8.0};
    CHECK_THAT(patch_use({kPatch.a * 2.0, kPatch.b * 2.0, 2}, grown, kShear, kTension).use, WithinRel(use, 1e-12));
    // In a square face a force turned by any angle is the same force.
    const GluePatch square{millimetres(40), millimetres(40), 1};
    const double straight = patch_use(square, {newtons(500), {}, {}, newton_metres(10), {}, {}}, kShear, kTension).use;
    for (const double turn : {0.3, 0.7853981633974483, 1.2}) {
        const PatchForces at{newtons(500 * std::cos(turn)), newtons(500 * std::sin(turn)), {}, newton_metres(10), {}, {}};
        CHECK_THAT(patch_use(square, at, kShear, kTension).use, WithinRel(straight, 1e-12));
    }
}

TEST_CASE("Each kind of demand alone is used up at its own capacity", "[glue-patch]")
{
    const double area = 2 * 0.032 * 0.038;
    CHECK_THAT(patch_use(kPatch, {newtons(4.1e6 * area), {}, {}, {}, {}, {}}, kShear, kTension).use, WithinRel(1.0, 1e-12));
    CHECK_THAT(patch_use(kPatch, {{}, {}, {}, twist_capacity(kPatch, kShear), {}, {}}, kShear, kTension).use,
               WithinRel(1.0, 1e-12));
    CHECK_THAT(patch_use(kPatch, {{}, {}, newtons(5.5e6 * area), {}, {}, {}}, kShear, kTension).use, WithinRel(1.0, 1e-12));
    // About the a axis the section modulus of both faces is 2 a b²/6.
    const double modulus = 2 * 0.032 * 0.038 * 0.038 / 6;
    CHECK_THAT(patch_use(kPatch, {{}, {}, {}, {}, newton_metres(5.5e6 * modulus), {}}, kShear, kTension).use,
               WithinRel(1.0, 1e-12));
    // Pressing takes from the tension, never below nothing.
    CHECK(patch_use(kPatch, {{}, {}, newtons(-1e5), {}, newton_metres(1), {}}, kShear, kTension).tension.value() == 0);
    CHECK(patch_use(kPatch, {}, pascals(0), pascals(0)).use == 0);
    CHECK(patch_use(kPatch, loaded(), pascals(0), kTension).use == std::numeric_limits<double>::infinity());
}

TEST_CASE("Lifting by the edge tears more than lifting in the middle", "[glue-patch]")
{
    const GluePatch face{millimetres(44), millimetres(22), 1};
    // 157 N on 22 × 44 mm, 22 mm from its middle: 0.16 + 0.49 = 0.65 MPa.
    CHECK_THAT(in_megapascals(peel_stress(face, newtons(157), millimetres(22))), WithinAbs(0.65, 0.005));
    CHECK_THAT(peel_stress(face, newtons(157), metres(0)).value(), WithinRel(157 / (0.044 * 0.022), 1e-12));
}

TEST_CASE("End peak of a balanced lap over its mean", "[glue-patch][published]")
{
    // Volkersen: u coth u at u = 0.5, 1, 2, 3, 5; three decimals printed.
    for (const auto& [u, peak] : {std::pair{0.5, 1.082}, {1.0, 1.313}, {2.0, 2.075}, {3.0, 3.015}, {5.0, 5.000}})
        CHECK_THAT(coth_peak(u), WithinAbs(peak, 0.0006));
    CHECK(coth_peak(0) == 1);
    // Two layers of 20 mm, E 12 GPa, 100 N/mm on 40 mm: glue alone (G 300 MPa, 0.1 mm) peaks at 7.934/2.5 of the mean; with the layers' own shear far less.
    const double glue_alone = coth_peak(std::sqrt(300e6 / 1e-4 * 2 / (12e9 * 0.020)) * 0.040 / 2);
    CHECK_THAT(glue_alone, WithinAbs(7.934 / 2.5, 0.0005));
    const LapLayer layer{gigapascals(12), gigapascals(0.75), millimetres(20)};
    const double with_wood = lap_end_peak(shared_facts(), millimetres(40), layer, layer);
    CHECK(with_wood > 1);
    CHECK(with_wood < glue_alone);
    double last = 1;
    for (const double l : {10.0, 40.0, 100.0, 400.0}) {
        const double peak = lap_end_peak(shared_facts(), millimetres(l), layer, layer);
        CHECK(peak > last);
        last = peak;
    }
}

TEST_CASE("A looser fit never holds more", "[glue-patch][identity]")
{
    for (const bool filling : {false, true}) {
        double last = 1;
        for (int i = 0; i <= 300; ++i) {
            const double share = fit_share(shared_facts(), millimetres(i * 0.01), filling);
            CHECK(share <= last);
            CHECK(share >= 0);
            last = share;
        }
        CHECK(last == 0);
    }
    CHECK(fit_share(shared_facts(), millimetres(0.1), false) == 1);
    CHECK(fit_share(shared_facts(), millimetres(0.3), true) == 1);
    CHECK(fit_share(shared_facts(), millimetres(0.3), false) < 1);
}
