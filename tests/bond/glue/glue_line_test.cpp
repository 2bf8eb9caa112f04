// Strength of a glue line by the relation of its grains.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/glue/glue_line.hpp"

#include <cmath>
#include <numbers>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

constexpr double kCrossed = std::numbers::pi / 2;

WoodState oak()
{
    return wood_state(shared_facts(), shared_facts().find_wood("northern red oak"), {}, MoistureContent::percent(12));
}
WoodState pine()
{
    return wood_state(shared_facts(), shared_facts().find_wood("eastern white pine"), {}, MoistureContent::percent(12));
}

GlueStrength oak_to_oak(GlueFace face, double angle, const char* glue = nullptr)
{
    const WoodState wood = oak();
    const auto strength = glue_strength(shared_facts(), wood, "red oak", wood, "red oak",
                                        glue ? shared_facts().find_glue(glue) : nullptr, face, angle);
    REQUIRE(strength);
    return *strength;
}

/// ∫ρ dA by the midpoint rule.
double turning_by_squares(double a, double b)
{
    constexpr int n = 800;
    double sum = 0;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j) sum += std::hypot((i + 0.5) / n * a - a / 2, (j + 0.5) / n * b - b / 2);
    return sum * a * b / n / n;
}

} // namespace

TEST_CASE("Grains that run the same way have the shear strength of the wood, crossed ones a third of it", "[glue-line]")
{
    // Northern red oak 12.3 MPa (Wood Handbook table 5-3a); a third where the grains cross (FPL Report 1522, 1945, 4,300 glued specimens).
    CHECK_THAT(oak_to_oak(GlueFace::side_grain, 0).mean.value(), WithinRel(12.3e6, 1e-12));
    CHECK_THAT(oak_to_oak(GlueFace::side_grain, kCrossed).mean.value(), WithinRel(4.1e6, 1e-4)); // the share is printed as 0.3333
}

TEST_CASE("Between them Hankinson holds", "[glue-line]")
{
    // At 45°: 2 f0 f90/(f0 + f90) = 2 × 12.3 × 4.1/16.4 = 6.15 MPa.
    CHECK_THAT(oak_to_oak(GlueFace::side_grain, kCrossed / 2).mean.value(), WithinRel(6.15e6, 1e-4));
    double last = 13e6;
    for (int degrees = 0; degrees <= 90; ++degrees) {
        const double mean = oak_to_oak(GlueFace::side_grain, degrees * kRadiansPerDegree).mean.value();
        CHECK(mean < last);
        last = mean;
    }
}

TEST_CASE("A mitre counts half, end grain nothing", "[glue-line]")
{
    CHECK_THAT(oak_to_oak(GlueFace::mitre, kCrossed / 2).mean.value(), WithinRel(6.15e6, 1e-4));
    // A wider member's grain lies farther from the cut: at 60° 12.3 × 4.1/(12.3 × 3/4 + 4.1/4) = 4.92 MPa.
    CHECK_THAT(oak_to_oak(GlueFace::mitre, kCrossed * 2 / 3).mean.value(), WithinRel(4.92e6, 1e-4));
    CHECK(oak_to_oak(GlueFace::end_grain, 0).mean.value() == 0);
    CHECK(oak_to_oak(GlueFace::end_grain, kCrossed, "PVA").mean.value() == 0);
}

TEST_CASE("The weaker of glue and wood rules", "[glue-line]")
{
    const GlueStrength parallel = oak_to_oak(GlueFace::side_grain, 0, "PVA"); // 10 MPa asked of it by EN 204
    REQUIRE(parallel.glue);
    CHECK(parallel.glue->value() == 10e6);
    CHECK(parallel.mean == *parallel.glue);
    CHECK_THAT(parallel.wood.value(), WithinRel(12.3e6, 1e-12));
    const GlueStrength crossed = oak_to_oak(GlueFace::side_grain, kCrossed, "PVA");
    CHECK(crossed.mean == crossed.wood);
}

TEST_CASE("The weaker wood rules, whichever stands first", "[glue-line]")
{
    const WoodState hard = oak(), soft = pine();
    for (const bool oak_first : {true, false}) {
        const auto strength = oak_first
                                  ? glue_strength(shared_facts(), hard, "oak", soft, "pine", nullptr, GlueFace::side_grain, 0)
                                  : glue_strength(shared_facts(), soft, "pine", hard, "oak", nullptr, GlueFace::side_grain, 0);
        REQUIRE(strength);
        CHECK(strength->weaker_wood == "pine");
        CHECK(strength->mean == soft.shear->value);
    }
}

TEST_CASE("Without a shear strength there is no answer", "[glue-line]")
{
    const WoodState unknown = wood_state(shared_facts(), nullptr, {}, MoistureContent::percent(12));
    CHECK_FALSE(glue_strength(shared_facts(), unknown, "a", oak(), "b", nullptr, GlueFace::side_grain, 0));
    CHECK_FALSE(glue_strength(shared_facts(), oak(), "a", unknown, "b", nullptr, GlueFace::side_grain, 0));
}

TEST_CASE("The working of a glue line names every step with its source", "[glue-line]")
{
    Working working;
    const WoodState wood = oak();
    glue_strength(shared_facts(), wood, "red oak", wood, "red oak", shared_facts().find_glue("PVA"), GlueFace::side_grain,
                  kCrossed, &working);
    REQUIRE(working.size() == 3);
    CHECK_THAT(working[0].value, WithinRel(12.3e6, 1e-12));
    CHECK_THAT(working[1].value, WithinRel(4.1e6, 1e-4));
    CHECK(working[2].value == 10e6);
    for (const WorkingStep& step : working) {
        CHECK(step.unit == "Pa");
        CHECK_FALSE(step.source.empty());
    }
}

TEST_CASE("What a uniform stress resists in twisting", "[glue-line]")
{
    // 0.383 a³ for a square, 0.385 A^1.5 for 32 x 38 mm; both to three digits.
    CHECK_THAT(twisting_capacity(metres(1), metres(1)).value(), WithinAbs(0.383, 0.0005));
    CHECK_THAT(twisting_capacity(metres(0.032), metres(0.038)).value() / std::pow(0.032 * 0.038, 1.5), WithinAbs(0.385, 0.002));
    for (const auto& [a, b] : {std::pair{0.05, 0.05}, std::pair{0.03, 0.3}, std::pair{0.2, 0.021}}) {
        CAPTURE(a, b);
        CHECK_THAT(twisting_capacity(metres(a), metres(b)).value(), WithinRel(turning_by_squares(a, b), 1e-5));
        CHECK_THAT(twisting_capacity(metres(a), metres(b)).value(),
                   WithinRel(twisting_capacity(metres(b), metres(a)).value(), 1e-12));
    }
    CHECK(twisting_capacity(metres(0), metres(1)).value() == 0);
}

TEST_CASE("Twisting a pair of tenon cheeks to failure", "[glue-line]")
{
    // Red oak tenon 32 x 38 mm, both cheeks, crossed shear 4.1 MPa: 134 N m, worked by hand to three digits.
    const double moment = 2 * 4.1e6 * twisting_capacity(millimetres(32), millimetres(38)).value();
    CHECK_THAT(moment, WithinAbs(134, 0.5));
}

TEST_CASE("Resistances of a glue line", "[glue-line]")
{
    // Scatter of shear 14 % (table 5-6): f05 = 0.7697 f. Hardwood, sitting: × 1.15/2.3; proof: / 1.15; durability at home × 0.62.
    const Facts& facts = shared_facts();
    CHECK_THAT(glue_variation(facts).value, WithinRel(0.14, 1e-12));
    const Stress mean = megapascals(4.1);
    CHECK_THAT(glue_service_resistance(facts, WoodKind::hardwood, mean, LoadDuration::sitting).value(),
               WithinRel(4.1e6 * 0.7697 * 1.15 / 2.3, 1e-9));
    CHECK_THAT(glue_service_resistance(facts, WoodKind::hardwood, mean, LoadDuration::lasting).value(),
               WithinRel(4.1e6 * 0.7697 * 0.9 / 2.3, 1e-9));
    CHECK_THAT(glue_service_resistance(facts, WoodKind::softwood, mean, LoadDuration::short_term).value(),
               WithinRel(4.1e6 * 0.7697 * 1.6 / 2.1, 1e-9));
    CHECK_THAT(glue_proof_resistance(facts, mean).value(), WithinRel(4.1e6 * 0.7697 / 1.15, 1e-9));
    for (const auto& [level, share] : {std::pair{"home", 0.62}, std::pair{"contract", 0.45}, std::pair{"severe", 0.32}}) {
        CHECK_THAT(glue_durability_resistance(facts, mean, level).value(), WithinRel(4.1e6 * 0.7697 * share, 1e-9));
        // Pulled open, V 25 %: f05 = 0.58875 f.
        CHECK_THAT(glue_tension_resistance(facts, DemandKind::durability, LoadDuration::short_term, WoodKind::softwood,
                                           megapascals(5), level)
                       .value(),
                   WithinRel(5e6 * 0.58875 * share, 1e-9));
    }
    // Each kind of load asks for its own, whatever the duration of a test says.
    const auto asked = [&](DemandKind kind, LoadDuration duration) {
        return glue_resistance(facts, kind, duration, WoodKind::hardwood, mean, "contract").value();
    };
    CHECK(asked(DemandKind::service, LoadDuration::lasting) ==
          glue_service_resistance(facts, WoodKind::hardwood, mean, LoadDuration::lasting).value());
    CHECK(asked(DemandKind::proof, LoadDuration::lasting) == glue_proof_resistance(facts, mean).value());
    CHECK(asked(DemandKind::durability, LoadDuration::lasting) == glue_durability_resistance(facts, mean, "contract").value());
}

TEST_CASE("A worse angle between the grains never bears more", "[glue-line][identity]")
{
    const WoodState oak = wood_state(shared_facts(), shared_facts().find_wood("red oak"), {}, MoistureContent::percent(12));
    for (const char* glue : {"PVA", "urea-formaldehyde"}) {
        double last = 1e30;
        for (int degrees = 0; degrees <= 90; ++degrees) {
            const auto at = glue_strength(shared_facts(), oak, "red oak", oak, "red oak", shared_facts().find_glue(glue),
                                          GlueFace::side_grain, degrees * std::numbers::pi / 180);
            REQUIRE(at);
            CHECK(at->mean.value() <= last);
            last = at->mean.value();
        }
        const auto mitre = glue_strength(shared_facts(), oak, "red oak", oak, "red oak", shared_facts().find_glue(glue),
                                         GlueFace::mitre, std::numbers::pi / 4),
                   end = glue_strength(shared_facts(), oak, "red oak", oak, "red oak", shared_facts().find_glue(glue),
                                       GlueFace::end_grain, 0);
        CHECK(mitre->mean.value() > end->mean.value());
        CHECK(end->mean.value() == 0);
    }
}
