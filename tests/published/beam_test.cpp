// Deflection of straight beams against the Wood Handbook's coefficients.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "mechanics/beam/beam_kernel.hpp"
#include "mechanics/beam/simple_beam.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

constexpr double kLoad = 294, kSpan = 0.9, kBreadth = 0.25, kDepth = 0.019; // N, m
constexpr double kModulus = 13.75e9, kShearModulus = 1.17e9;                // Pa
constexpr double kInertia = kBreadth * kDepth * kDepth * kDepth / 12, kShearArea = 5.0 / 6 * kBreadth * kDepth;

SimpleBeam shelf(bool fixed, double modulus = kModulus, double shear_modulus = kShearModulus)
{
    return {metres(kSpan), metres(kBreadth), metres(kDepth), pascals(modulus), pascals(shear_modulus), fixed};
}

BeamAnswer answer(const SimpleBeam& beam, const BeamLoads& loads) { return beam_answer(beam, loads, shared_facts()); }

BeamLoads uniform(double force = kLoad)
{
    BeamLoads loads;
    loads.uniform = newtons_per_metre(force / kSpan);
    return loads;
}
BeamLoads point(double force = kLoad)
{
    BeamLoads loads;
    loads.point = newtons(force);
    return loads;
}
BeamLoads patch(double length, double force = kLoad)
{
    BeamLoads loads;
    loads.patch = newtons(force);
    loads.patch_length = metres(length);
    return loads;
}

double handbook(double kb, double ks)
{
    return kb * kLoad * std::pow(kSpan, 3) / (kModulus * kInertia) + ks * kLoad * kSpan / (kShearModulus * kShearArea);
}

double at(const kernel::BeamResponse& response, double place)
{
    std::size_t nearest = 0;
    for (std::size_t i = 0; i < response.at.size(); ++i)
        if (std::abs(response.at[i] - place) < std::abs(response.at[nearest] - place)) nearest = i;
    REQUIRE_THAT(response.at[nearest], WithinAbs(place, 1e-9));
    return response.sag[nearest];
}

} // namespace

TEST_CASE("Quick beams have the coefficients of table 9-1", "[beam][published]")
{
    // Wood Handbook (GTR-190) eq. 9-2, table 9-1, mid-span, from memory and derived again: kb, ks.
    CHECK_THAT(answer(shelf(false), uniform()).deflection.value(), WithinRel(handbook(5.0 / 384, 1.0 / 8), 1e-12));
    CHECK_THAT(answer(shelf(true), uniform()).deflection.value(), WithinRel(handbook(1.0 / 384, 1.0 / 8), 1e-12));
    CHECK_THAT(answer(shelf(false), point()).deflection.value(), WithinRel(handbook(1.0 / 48, 1.0 / 4), 1e-12));
    CHECK_THAT(answer(shelf(true), point()).deflection.value(), WithinRel(handbook(1.0 / 192, 1.0 / 4), 1e-12));
}

TEST_CASE("Beams of elements have the pairs of table 9-1", "[beam][published]")
{
    const std::vector<kernel::BeamCell> cells{{0, kSpan, kModulus * kInertia, kShearModulus * kShearArea}};
    const kernel::Beam simple(cells, {0, kSpan});
    CHECK_THAT(at(simple.solve({{0, kSpan, kLoad}}), kSpan / 2), WithinRel(handbook(5.0 / 384, 1.0 / 8), 1e-9));
    CHECK_THAT(at(simple.solve({{kSpan / 2, kSpan / 2, kLoad}}), kSpan / 2), WithinRel(handbook(1.0 / 48, 1.0 / 4), 1e-9));
    const auto quarters = simple.solve({{kSpan / 4, kSpan / 4, kLoad / 2}, {3 * kSpan / 4, 3 * kSpan / 4, kLoad / 2}});
    CHECK_THAT(at(quarters, kSpan / 2), WithinRel(handbook(11.0 / 768, 1.0 / 8), 1e-9));
    CHECK_THAT(at(quarters, kSpan / 4), WithinRel(handbook(1.0 / 96, 1.0 / 8), 1e-9));
    const kernel::Beam cantilever(cells, {0});
    CHECK_THAT(at(cantilever.solve({{0, kSpan, kLoad}}), kSpan), WithinRel(handbook(1.0 / 8, 1.0 / 2), 1e-9));
    CHECK_THAT(at(cantilever.solve({{kSpan, kSpan, kLoad}}), kSpan), WithinRel(handbook(1.0 / 3, 1), 1e-9));
}

TEST_CASE("A red-oak shelf with 30 kg on it sags 1.42 + 0.007 mm", "[beam][published]")
{
    // 900 × 250 × 19 mm, simply supported, 294 N spread evenly: E free of shear 13.75 GPa, G 1.17 GPa. Computed by hand from eq. 9-2.
    const double bending = answer(shelf(false, kModulus, 1e18), uniform()).deflection.value();
    const double both = answer(shelf(false), uniform()).deflection.value();
    CHECK_THAT(bending * 1e3, WithinAbs(1.42, 0.005));
    CHECK_THAT((both - bending) * 1e3, WithinAbs(0.007, 0.0005));
    CHECK_THAT(both * 1e3, WithinAbs(1.43, 0.005));
    // With the table's modulus, 12.5 GPa, which has shear deflection of its own test in it.
    CHECK_THAT(answer(shelf(false, 12.5e9, 1e18), uniform()).deflection.value() * 1e3, WithinAbs(1.56, 0.005));
}

TEST_CASE("Stresses of a simple beam", "[beam][published]")
{
    // σ = 6M/(b d²), τ = 3V/(2 b d); built-in ends: W L/12 there, W L/24 in the middle; a point W L/8 in both.
    const double w = kBreadth * kDepth * kDepth / 6;
    CHECK_THAT(answer(shelf(false), uniform()).bending_stress.value(), WithinRel(kLoad * kSpan / 8 / w, 1e-12));
    CHECK_THAT(answer(shelf(true), uniform()).bending_stress.value(), WithinRel(kLoad * kSpan / 12 / w, 1e-12));
    CHECK_THAT(answer(shelf(false), point()).bending_stress.value(), WithinRel(kLoad * kSpan / 4 / w, 1e-12));
    CHECK_THAT(answer(shelf(true), point()).bending_stress.value(), WithinRel(kLoad * kSpan / 8 / w, 1e-12));
    for (const bool fixed : {false, true})
        CHECK_THAT(answer(shelf(fixed), point()).shear_stress.value(), WithinRel(1.5 * kLoad / 2 / (kBreadth * kDepth), 1e-12));
    const BeamAnswer loaded = answer(shelf(false), point());
    CHECK_THAT(loaded.span_ratio, WithinRel(kSpan / loaded.deflection.value(), 1e-12));
    CHECK(answer(shelf(false), {}).span_ratio == 0);
}

TEST_CASE("A patch lies between a point and an even load", "[beam][identity]")
{
    for (const bool fixed : {false, true}) {
        CAPTURE(fixed);
        CHECK_THAT(answer(shelf(fixed), patch(0)).deflection.value(),
                   WithinRel(answer(shelf(fixed), point()).deflection.value(), 1e-12));
        CHECK_THAT(answer(shelf(fixed), patch(kSpan)).deflection.value(),
                   WithinRel(answer(shelf(fixed), uniform()).deflection.value(), 1e-12));
        double last = answer(shelf(fixed), patch(0)).deflection.value();
        for (int i = 1; i <= 10; ++i) {
            const double now = answer(shelf(fixed), patch(kSpan * i / 10)).deflection.value();
            CHECK(now < last);
            last = now;
        }
    }
    const kernel::Beam beam({{0, kSpan, kModulus * kInertia, kShearModulus * kShearArea}}, {0, kSpan});
    // Elements lay a load within them on their ends by shapes that leave shear out: a hundred-thousandth here.
    for (const double length : {0.1, 0.3, 0.6}) {
        const auto response = beam.solve({{kSpan / 2 - length / 2, kSpan / 2 + length / 2, kLoad}});
        CHECK_THAT(answer(shelf(false), patch(length)).deflection.value(), WithinRel(at(response, kSpan / 2), 2e-5));
    }
}

TEST_CASE("Loads add up", "[beam][identity]")
{
    for (const bool fixed : {false, true}) {
        BeamLoads all = patch(0.2, 100);
        all.point = newtons(50);
        all.uniform = newtons_per_metre(200 / kSpan);
        const auto one = answer(shelf(fixed), all);
        const auto a = answer(shelf(fixed), patch(0.2, 100)), b = answer(shelf(fixed), point(50)),
                   c = answer(shelf(fixed), uniform(200));
        CHECK_THAT(one.deflection.value(), WithinRel((a.deflection + b.deflection + c.deflection).value(), 1e-12));
        CHECK_THAT(one.shear_stress.value(), WithinRel((a.shear_stress + b.shear_stress + c.shear_stress).value(), 1e-12));
        CHECK_THAT(answer(shelf(fixed), point(100)).deflection.value(), WithinRel(2 * b.deflection.value(), 1e-12));
    }
}
