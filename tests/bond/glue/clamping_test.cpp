// Pressure, force and number of clamps, and the glue to have ready.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/glue/clamping.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

Stress pressure_at(double density, const char* glue = "PVA")
{
    return clamping_pressure(shared_facts(), kilograms_per_cubic_metre(density), shared_facts().find_glue(glue));
}

ClampFace edge(double length, double thickness, double board)
{
    return {square_metres(length * thickness), metres(length), metres(thickness), metres(board), megapascals(6)};
}

} // namespace

TEST_CASE("Clamping pressure runs from that of light woods to that of dense ones", "[clamping][published]")
{
    // Wood Handbook p. 10-17: 700, 1,400 and 1,700 kPa for woods of low, medium and high density.
    CHECK_THAT(pressure_at(300).value(), WithinRel(0.7e6, 1e-12));
    CHECK_THAT(pressure_at(600).value(), WithinRel(1.4e6, 1e-12));
    CHECK_THAT(pressure_at(900).value(), WithinRel(1.7e6, 1e-12));
    double last = 0;
    for (int density = 100; density <= 1300; density += 10) {
        CAPTURE(density);
        const double p = pressure_at(density).value();
        CHECK(p >= last);
        CHECK(p >= 0.7e6);
        CHECK(p <= 1.7e6);
        last = p;
    }
}

TEST_CASE("A glue that wants little pressure gets little, whatever the wood", "[clamping]")
{
    CHECK_THAT(pressure_at(900, "epoxy").value(), WithinRel(0.17e6, 1e-12));
    CHECK(pressure_at(300, "epoxy") == pressure_at(900, "epoxy"));
}

TEST_CASE("Clamps for the edge of a table top, by hand", "[clamping]")
{
    // 1,100 × 22 mm, boards of 120 mm, 600 kg/m³: 1.4 MPa × 242 cm² = 33.88 kN, 9 clamps of 4 kN; spacing 2 (120 + 25) = 290 mm, 4 clamps.
    Working working;
    const ClampPlan plan = clamp_plan(shared_facts(), edge(1.1, 0.022, 0.12), kilograms_per_cubic_metre(600),
                                      shared_facts().find_glue("PVA"), &working);
    CHECK_THAT(plan.force.value(), WithinRel(33880, 1e-9));
    CHECK(plan.clamps == 9);
    CHECK(plan.rows == 1);
    CHECK_THAT(plan.per_clamp.value(), WithinRel(33880.0 / 9, 1e-9));
    CHECK_THAT(in_metres(plan.spacing), WithinRel(1.1 / 9, 1e-9));
    REQUIRE(plan.caul);
    // side² × half of 6 MPa = force of one clamp
    CHECK_THAT(in_metres(*plan.caul) * in_metres(*plan.caul) * 3e6, WithinRel(plan.per_clamp.value(), 1e-9));
    CHECK(plan.enough);
    CHECK_THAT(plan.reached.value(), WithinRel(plan.pressure.value(), 1e-9));
    CHECK_FALSE(plan.board); // boards of 120 mm and the usual caul spread it over 61 mm to either side
    CHECK(working.size() >= 4);
    for (const WorkingStep& step : working) CHECK_FALSE(step.source.empty());
}

TEST_CASE("Thin stock is pressed over a board that spreads the pressure, not by clamps side by side", "[clamping]")
{
    // 800 × 20 mm at 1.4 MPa: 22.4 kN, 6 clamps of 4 kN. Through 8 mm of lipping and 25 mm of caul they would stand 66 mm apart, 13 of them; no nearer
    // than 100 mm there are 8, and a board of 100/2 − 8 = 42 mm under them.
    const Density wood = kilograms_per_cubic_metre(600);
    const GlueRecord* glue = shared_facts().find_glue("PVA");
    const ClampPlan lipping = clamp_plan(shared_facts(), edge(0.8, 0.02, 0.008), wood, glue);
    CHECK(lipping.clamps == 8);
    CHECK_THAT(in_metres(lipping.spacing), WithinRel(0.1, 1e-9));
    REQUIRE(lipping.board);
    CHECK_THAT(in_metres(*lipping.board), WithinRel(0.042, 1e-9));
    CHECK_THAT(lipping.per_clamp.value(), WithinRel(2800, 1e-9));
    CHECK(lipping.enough);
    CHECK(lipping.clamps > clamp_plan(shared_facts(), edge(0.8, 0.02, 0.2), wood, glue).clamps);
}

TEST_CASE("A wide sheet is pressed by boards across it, as far as clamps of sense go", "[clamping]")
{
    // 600 × 400 mm, 20 mm thick: 1.4 MPa is 336 kN, 84 clamps. At most one for each 100 mm at either end of the boards: 12 of 4 kN, 0.2 MPa, a seventh.
    const ClampFace sheet{square_metres(0.6 * 0.4), metres(0.6), metres(0.4), metres(0.02), std::nullopt};
    const Density wood = kilograms_per_cubic_metre(600);
    const ClampPlan veneered = clamp_plan(shared_facts(), sheet, wood, shared_facts().find_glue("PVA"));
    CHECK(veneered.rows == 2);
    CHECK(veneered.clamps == 12);
    CHECK_THAT(veneered.per_clamp.value(), WithinRel(4000, 1e-9));
    CHECK_THAT(veneered.reached.value(), WithinRel(0.2e6, 1e-9));
    CHECK_FALSE(veneered.enough);
    CHECK_FALSE(veneered.caul);
    // Epoxy asks for 0.17 MPa, and gets it.
    const ClampPlan filled = clamp_plan(shared_facts(), sheet, wood, shared_facts().find_glue("epoxy"));
    CHECK(filled.enough);
    CHECK_THAT(filled.reached.value(), WithinRel(0.17e6, 1e-9));
}

TEST_CASE("No face is ever clamped closer than every 100 mm", "[clamping]")
{
    for (const double thick : {0.018, 0.045, 0.09})
        for (const double length : {0.05, 0.35, 1.27, 2.4}) {
            CAPTURE(thick, length);
            const ClampPlan plan = clamp_plan(shared_facts(), edge(length, thick, 0.04), kilograms_per_cubic_metre(800),
                                              shared_facts().find_glue("PVA"));
            CHECK(plan.clamps <= plan.rows * static_cast<int>(std::ceil(length / 0.1 - 1e-9)));
            CHECK(plan.clamps >= 1);
        }
}

TEST_CASE("More face never asks for fewer clamps, and no clamp for more than it gives", "[clamping]")
{
    int last = 0;
    double last_force = 0;
    for (int i = 1; i <= 60; ++i) {
        const ClampPlan plan = clamp_plan(shared_facts(), edge(0.05 * i, 0.025, 0.1), kilograms_per_cubic_metre(700),
                                          shared_facts().find_glue("PVA"));
        CAPTURE(i);
        CHECK(plan.clamps >= last);
        CHECK(plan.force.value() > last_force);
        CHECK(plan.per_clamp.value() <= 4000 * (1 + 1e-9));
        last = plan.clamps;
        last_force = plan.force.value();
    }
}

TEST_CASE("Glue to have ready follows the spread rate with a fifth on top", "[clamping]")
{
    const GlueRecord* glue = shared_facts().find_glue("PVA");
    const auto mass = glue_quantity(shared_facts(), *glue, square_metres(0.02));
    REQUIRE(mass);
    CHECK_THAT(mass->value(), WithinRel(0.150 * 0.02 * 1.2, 1e-12));
    GlueRecord bare;
    CHECK_FALSE(glue_quantity(shared_facts(), bare, square_metres(1)));
}
