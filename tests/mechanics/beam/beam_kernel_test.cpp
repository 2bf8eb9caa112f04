#include "catch.hpp"

#include "mechanics/beam/beam_kernel.hpp"

#include <algorithm>
#include <cmath>

using jointwright::kernel::Beam;
using jointwright::kernel::BeamCell;
using jointwright::kernel::BeamLoad;
using jointwright::kernel::BeamResponse;

namespace {

constexpr double kStiff = 1000; // E I [N m²]
constexpr double kSpan = 2;     // m

double largest(const std::vector<double>& values)
{
    double most = 0;
    for (const double v : values) most = std::max(most, std::abs(v));
    return most;
}

Beam simple(double shear = 0) { return Beam({{0, kSpan, kStiff, shear}}, {0, kSpan}); }

} // namespace

TEST_CASE("A uniform load sags 5/384 W L³/(E I) and bends W L/8", "[beam]")
{
    const double w = 600;
    const BeamResponse r = simple().solve({{0, kSpan, w}});
    CHECK_THAT(largest(r.sag), WithinRel(5.0 / 384 * w * 8 / kStiff, 1e-9));
    CHECK_THAT(largest(r.moment), WithinRel(w * kSpan / 8, 1e-9));
    CHECK_THAT(r.reactions[0], WithinRel(w / 2, 1e-9));
    CHECK_THAT(largest(r.shear), WithinRel(w / 2, 1e-9));
}

TEST_CASE("A point load at mid-span sags W L³/48 E I, and shear adds W L/(4 G A')", "[beam]")
{
    const double shear = 4e4;
    const BeamResponse r = simple(shear).solve({{1, 1, 500}});
    CHECK_THAT(largest(r.sag), WithinRel(500 * 8 / (48 * kStiff) + 500 * kSpan / (4 * shear), 1e-9));
    CHECK_THAT(largest(r.moment), WithinRel(500 * kSpan / 4, 1e-9));
}

TEST_CASE("A patch load bends P (2L − c)/8", "[beam]")
{
    const BeamResponse r = simple().solve({{0.7, 1.3, 900}});
    CHECK_THAT(largest(r.moment), WithinRel(900 * (2 * kSpan - 0.6) / 8, 1e-6));
    CHECK_THAT(largest(r.sag), WithinRel(900 * (8 * 8 - 4 * kSpan * 0.36 + 0.216) / (384 * kStiff), 1e-6));
}

TEST_CASE("An overhanging end lifts nothing and carries its moment", "[beam]")
{
    const Beam beam({{0, 3, kStiff, 0}}, {0, 2});
    const BeamResponse r = beam.solve({{3, 3, 100}});
    CHECK_THAT(r.reactions[0], WithinRel(-50.0, 1e-9));
    CHECK_THAT(r.reactions[1], WithinRel(150.0, 1e-9));
    CHECK_THAT(*std::min_element(r.moment.begin(), r.moment.end()), WithinRel(-100.0, 1e-9));
    // Tip: P a² (L + a)/(3 E I).
    CHECK_THAT(r.sag.back(), WithinRel(100.0 * 1 * 3 / (3 * kStiff), 1e-9));
}

TEST_CASE("Two equal spans carry 5/8 of their load at the middle support", "[beam]")
{
    const Beam beam({{0, 4, kStiff, 0}}, {0, 2, 4});
    const BeamResponse r = beam.solve({{0, 4, 800}});
    CHECK_THAT(r.reactions[1], WithinRel(800 * 5.0 / 8, 1e-9));
    CHECK_THAT(*std::min_element(r.moment.begin(), r.moment.end()), WithinRel(-400 * 2.0 / 8, 1e-9));
}

TEST_CASE("A single support holds a cantilever", "[beam]")
{
    const Beam beam({{0, 1, kStiff, 0}}, {0});
    const BeamResponse r = beam.solve({{1, 1, 60}});
    CHECK_THAT(r.sag.back(), WithinRel(60.0 / (3 * kStiff), 1e-9));
    CHECK_THAT(r.reactions[0], WithinRel(60.0, 1e-9));
}

TEST_CASE("Two half loads make one, and reactions sum to the load", "[beam][identity]")
{
    const Beam beam({{0, 0.8, kStiff, 3e4}, {0.8, 2.5, kStiff / 3, 1e4}}, {0.1, 1.9});
    const BeamLoad a{0.2, 1.1, 300}, b{1.5, 2.4, 200};
    const BeamResponse both = beam.solve({a, b}), first = beam.solve({a}), second = beam.solve({b});
    for (std::size_t i = 0; i < both.at.size(); ++i) {
        CHECK_THAT(both.sag[i], WithinAbs(first.sag[i] + second.sag[i], 1e-12));
        CHECK_THAT(both.moment[i], WithinAbs(first.moment[i] + second.moment[i], 1e-9));
    }
    CHECK_THAT(both.reactions[0] + both.reactions[1], WithinRel(500.0, 1e-9));
}
