// Screws, nails and dowels: the handbook's formulas by hand, and what every fastener obeys.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/fastener.hpp"
#include "bond/joints/joint_capacity.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

WoodState wood_of(double gravity, WoodKind kind = WoodKind::softwood)
{
    WoodState state = wood_state(shared_facts(), shared_facts().find_wood("red oak"), {}, MoistureContent::percent(12));
    state.kind = kind;
    state.specific_gravity = Property<double>{gravity, false, "a test", ""};
    return state;
}

FastenerCapacity hold_of(const WoodState& wood, FastenerKind kind, Length d, Length l, bool end = false)
{
    const auto c = fastener_capacity(shared_facts(), wood, "wood", {kind, d, l, end});
    REQUIRE(c);
    return *c;
}

double pounds(Force f) { return f.value() / kNewtonsPerPoundForce; }

constexpr FastenerKind kMetal[] = {FastenerKind::wood_screw, FastenerKind::pocket_screw, FastenerKind::lag_screw,
                                   FastenerKind::nail};

} // namespace

TEST_CASE("Wood screws: a number 10 in wood of 0.45", "[fastener][published]")
{
    // 604 lbf ultimate and 110 lbf allowable for an inch of thread: 15 700 G² D L and 2 850 G² D L.
    const FastenerCapacity c = hold_of(wood_of(0.45), FastenerKind::wood_screw, inches(0.190), inches(1));
    CHECK_THAT(pounds(c.withdrawal_ultimate), WithinAbs(604, 0.5));
    CHECK_THAT(pounds(c.withdrawal_allowable), WithinAbs(110, 0.5));
    CHECK_THAT(c.withdrawal_ultimate / c.withdrawal_allowable, WithinAbs(5.5, 0.05));
    CHECK_THAT(in_inches(screw_of_number(10)), WithinRel(0.190, 1e-12));
}

TEST_CASE("Metric and inch constants of the handbook agree", "[fastener][published]")
{
    const double lbf_mm = kNewtonsPerPoundForce / 25.4;
    CHECK_THAT(shared_facts().number("screw_withdrawal").value, WithinAbs(15700 * lbf_mm / 25.4, 0.01));
    CHECK_THAT(shared_facts().number("screw_withdrawal_allowable").value, WithinAbs(2850 * lbf_mm / 25.4, 0.005));
    CHECK_THAT(shared_facts().number("nail_withdrawal").value, WithinAbs(7850 * lbf_mm / 25.4, 0.01));
    CHECK_THAT(shared_facts().number("nail_withdrawal_allowable").value, WithinAbs(1380 * lbf_mm / 25.4, 0.0005));
    CHECK_THAT(shared_facts().number("lag_withdrawal").value, WithinAbs(8100 * lbf_mm / std::pow(25.4, 0.75), 0.1));
    CHECK_THAT(shared_facts().number("lag_withdrawal_allowable").value, WithinAbs(1800 * lbf_mm / std::pow(25.4, 0.75), 0.02));
    // K of table 8-4: screws and lag screws by 145.04, nails by 4.448/25.4^1.5; two decimals printed.
    for (const auto& [key, inch] : {std::pair{"screw_lateral_hardwood_light", 3360.0},
                                    {"screw_lateral_hardwood_medium", 4640.0},
                                    {"screw_lateral_hardwood_dense", 6400.0},
                                    {"screw_lateral_softwood_medium", 4320.0},
                                    {"screw_lateral_softwood_dense", 5280.0},
                                    {"lag_lateral_hardwood_light", 3820.0},
                                    {"lag_lateral_hardwood_medium", 4280.0},
                                    {"lag_lateral_hardwood_dense", 4950.0},
                                    {"lag_lateral_softwood_light", 3380.0}})
        CHECK_THAT(shared_facts().number(key).value, WithinAbs(inch / 145.04, 0.006));
    for (const auto& [key, inch] : {std::pair{"nail_lateral_hardwood_light", 1440.0},
                                    {"nail_lateral_hardwood_medium", 2000.0},
                                    {"nail_lateral_hardwood_dense", 2720.0},
                                    {"nail_lateral_softwood_medium", 1800.0},
                                    {"nail_lateral_softwood_dense", 2200.0}})
        CHECK_THAT(shared_facts().number(key).value, WithinAbs(inch * kNewtonsPerPoundForce / std::pow(25.4, 1.5), 0.05));
}

TEST_CASE("Screws across: the allowable C D² of the groups", "[fastener][published]")
{
    // C 4,800, 3,960, 3,240, 2,520 psi for groups I to IV; 3/4 of K 6,400, 5,280, 4,320, 3,360.
    const Length d = inches(0.2), deep = inches(2);
    const auto c_of = [&](double g, WoodKind kind) {
        return pounds(*hold_of(wood_of(g, kind), FastenerKind::wood_screw, d, deep).lateral) / 0.04;
    };
    CHECK_THAT(c_of(0.63, WoodKind::hardwood), WithinAbs(4800, 5));
    CHECK_THAT(c_of(0.50, WoodKind::softwood), WithinAbs(3960, 5));
    CHECK_THAT(c_of(0.45, WoodKind::softwood), WithinAbs(3240, 5));
    CHECK_THAT(c_of(0.36, WoodKind::softwood), WithinAbs(2520, 5));
    CHECK(lateral_class(WoodKind::hardwood, 0.16).outside);
    CHECK_FALSE(lateral_class(WoodKind::hardwood, 0.33).outside);
    CHECK(lateral_class(WoodKind::softwood, 0.60).outside);
}

TEST_CASE("Red oak takes the specific gravity that the table prints", "[fastener]")
{
    const WoodState oak = fastened_state(shared_facts(), shared_facts().find_wood("red oak"));
    CHECK(oak.specific_gravity->value == 0.63);
    // 108.25 × 0.63² × 5 × 30 N.
    CHECK_THAT(hold_of(oak, FastenerKind::wood_screw, millimetres(5), millimetres(30)).withdrawal_ultimate.value(),
               WithinRel(108.25 * 0.63 * 0.63 * 150, 1e-12));
}

TEST_CASE("End grain: nothing in withdrawal, two thirds across", "[fastener]")
{
    const WoodState oak = wood_of(0.63, WoodKind::hardwood);
    for (const FastenerKind kind : kMetal) {
        CAPTURE(name_of(kind));
        const FastenerCapacity side = hold_of(oak, kind, millimetres(5), millimetres(50)),
                               end = hold_of(oak, kind, millimetres(5), millimetres(50), true);
        CHECK_THAT(*end.lateral / *side.lateral, WithinAbs(2.0 / 3, 1e-4));
        CHECK(end.withdrawal_ultimate < side.withdrawal_ultimate);
        if (kind == FastenerKind::lag_screw)
            CHECK_THAT(end.withdrawal_allowable / side.withdrawal_allowable,
                       WithinRel(0.75, 1e-12)); // Wood Handbook: about three fourths
        else
            CHECK(end.withdrawal_allowable.value() == 0);
    }
}

TEST_CASE("Holes by the hardness of the wood", "[fastener]")
{
    // Root two thirds of the shank; 70 % of it in softwood, 90 % in hardwood.
    CHECK_THAT(in_millimetres(hold_of(wood_of(0.4), FastenerKind::wood_screw, millimetres(6), millimetres(30)).pilot),
               WithinAbs(2.8, 0.001));
    CHECK_THAT(in_millimetres(
                   hold_of(wood_of(0.6, WoodKind::hardwood), FastenerKind::wood_screw, millimetres(6), millimetres(30)).pilot),
               WithinAbs(3.6, 0.001));
    CHECK(hold_of(wood_of(0.4), FastenerKind::lag_screw, millimetres(8), millimetres(60)).pilot <
          hold_of(wood_of(0.65, WoodKind::hardwood), FastenerKind::lag_screw, millimetres(8), millimetres(60)).pilot);
    const FastenerDistances d = distances_for(shared_facts(), millimetres(5));
    CHECK_THAT(in_millimetres(d.end_loaded), WithinAbs(60, 1e-9));
    CHECK(d.end < d.end_loaded);
    CHECK(d.edge < d.edge_loaded);
}

TEST_CASE("More diameter, more depth and more density never hold less", "[fastener][identity]")
{
    for (const FastenerKind kind : kMetal) {
        CAPTURE(name_of(kind));
        double pull = 0, across = 0;
        for (int l = 10; l <= 90; l += 5) {
            const FastenerCapacity c = hold_of(wood_of(0.5), kind, millimetres(5), millimetres(l));
            CHECK(c.withdrawal_ultimate.value() >= pull);
            CHECK(c.lateral->value() >= across);
            pull = c.withdrawal_ultimate.value();
            across = c.lateral->value();
        }
        pull = across = 0;
        for (double g = 0.30; g < 0.75; g += 0.01) {
            const FastenerCapacity c = hold_of(wood_of(g, WoodKind::hardwood), kind, millimetres(5), millimetres(60));
            CHECK(c.withdrawal_allowable.value() >= pull);
            CHECK(c.lateral->value() >= across);
            pull = c.withdrawal_allowable.value();
            across = c.lateral->value();
        }
        // Wood screws want 6 D (NDS 2018), lag screws and nails 4 D; less in proportion to the full depth.
        const bool other = kind == FastenerKind::lag_screw || kind == FastenerKind::nail;
        const double least = other ? 20 : 30;
        CHECK(hold_of(wood_of(0.5), kind, millimetres(5), millimetres(least - 0.1)).lateral->value() == 0);
        const FastenerCapacity enough = hold_of(wood_of(0.5), kind, millimetres(5), millimetres(least));
        CHECK(enough.lateral->value() > 0);
        CHECK(enough.least_depth == least / 5);
        CHECK_THAT(*hold_of(wood_of(0.63, WoodKind::hardwood), kind, millimetres(5), millimetres(least)).lateral /
                       *hold_of(wood_of(0.63, WoodKind::hardwood), kind, millimetres(5), millimetres(35)).lateral,
                   WithinRel(least / 35, 1e-9));
    }
}

TEST_CASE("A lag screw pushed across the grain bears less the thicker it is", "[fastener]")
{
    // Table 8-11: 0.76 at 9.5 mm, 0.97 at 6.4 mm, straight between the rows.
    const WoodState oak = wood_of(0.63, WoodKind::hardwood);
    const auto share = [&](double d) {
        const FastenerCapacity c = hold_of(oak, FastenerKind::lag_screw, millimetres(d), millimetres(120));
        return c.lateral_across->value() / c.lateral->value();
    };
    CHECK_THAT(share(9.5), WithinAbs(0.76, 1e-9));
    CHECK_THAT(share(6.4), WithinAbs(0.97, 1e-9));
    CHECK_THAT(share(8.7), WithinRel((0.85 + 0.76) / 2, 1e-9));
    CHECK_FALSE(hold_of(oak, FastenerKind::wood_screw, millimetres(6), millimetres(40)).lateral_across);
}

TEST_CASE("A pocket screw pulls by the cosine of its slope, and bears across as any", "[fastener]")
{
    const WoodState ash = wood_of(0.60, WoodKind::hardwood);
    const FastenerCapacity straight = hold_of(ash, FastenerKind::wood_screw, millimetres(4.2), millimetres(32)),
                           sloped = hold_of(ash, FastenerKind::pocket_screw, millimetres(4.2), millimetres(32));
    CHECK_THAT(sloped.withdrawal_ultimate / straight.withdrawal_ultimate, WithinAbs(std::cos(15 * kRadiansPerDegree), 0.0005));
    CHECK_THAT(sloped.withdrawal_allowable / straight.withdrawal_allowable, WithinAbs(std::cos(15 * kRadiansPerDegree), 0.0005));
    CHECK(*sloped.lateral == *straight.lateral);
}

TEST_CASE("A button of unstated size pulls 150 N at the most", "[fastener]")
{
    const Length d = screw_of_number(8), deep = millimetres(16);
    CHECK_THAT(hold_of(wood_of(0.63, WoodKind::hardwood), FastenerKind::button, d, deep).withdrawal_allowable.value(),
               WithinRel(150.0, 1e-12));
    // In the lightest wood its screw gives first: 19.65 × 0.2² × 4.17 × 16 N.
    CHECK_THAT(hold_of(wood_of(0.20), FastenerKind::button, d, deep).withdrawal_allowable.value(),
               WithinRel(19.65 * 0.04 * in_millimetres(d) * 16, 1e-9));
    CHECK(hold_of(wood_of(0.63, WoodKind::hardwood), FastenerKind::figure_plate, d, deep).withdrawal_allowable.value() > 400);
}

TEST_CASE("What opens a face draws its screws by their distance from the pressed edge", "[fastener]")
{
    // 30 N m on screws 20, 60 and 130 mm from the edge: 30 × 0.130/(0.9 (0.020² + 0.060² + 0.130²)) N on the farthest.
    const std::vector<Length> places = {millimetres(20), millimetres(130), millimetres(60)};
    const auto pull = pull_of_turning(shared_facts(), newton_metres(-30), places);
    REQUIRE(pull);
    CHECK_THAT(pull->value(), WithinRel(30 * 0.130 / (0.9 * (0.0004 + 0.0036 + 0.0169)), 1e-9));
    // One row at 40 mm: each of two takes half of M/(0.9 z).
    CHECK_THAT(pull_of_turning(shared_facts(), newton_metres(9), {millimetres(40), millimetres(40)})->value(),
               WithinRel(9 / (0.9 * 0.040) / 2, 1e-9));
    CHECK_FALSE(pull_of_turning(shared_facts(), newton_metres(9), {millimetres(0), millimetres(-5)}));
    // Never less with a longer lever taken away.
    CHECK(*pull_of_turning(shared_facts(), newton_metres(30), {millimetres(20), millimetres(60)}) > *pull);
}

TEST_CASE("A dowel holds the lower of the published expression and its glue line, 5 MPa of its surface at the least",
          "[fastener]")
{
    const WoodState oak = wood_of(0.63, WoodKind::hardwood);
    const FastenerCapacity side = hold_of(oak, FastenerKind::dowel, millimetres(8), millimetres(25)),
                           end = hold_of(oak, FastenerKind::dowel, millimetres(8), millimetres(25), true);
    CHECK_THAT(side.withdrawal_ultimate.value(),
               WithinRel(5e6 * 3.14159265358979 * 0.008 * 0.025, 1e-9)); // the glue line alone 4.1 MPa
    const Stress s = oak.shear->value;
    CHECK_THAT(end.withdrawal_ultimate.value(),
               WithinRel(dowel_expression(shared_facts(), millimetres(8), millimetres(25), s, s).value(), 1e-9));
    CHECK(side.withdrawal_allowable < side.withdrawal_ultimate);
}

TEST_CASE("Screws in place of glue: enough of them, and none more than needed", "[fastener]")
{
    const WoodState oak = wood_of(0.63, WoodKind::hardwood);
    ScrewsWanted wanted;
    wanted.lateral = newtons(300);
    wanted.under_head = millimetres(19);
    wanted.depth = millimetres(40);
    const auto few = screws_for(shared_facts(), oak, wanted);
    REQUIRE(few);
    CHECK(few->count == 2);
    CHECK(few->use <= 1);
    CHECK(few->length > wanted.under_head);
    CHECK(few->length - wanted.under_head <= wanted.depth);
    wanted.lateral = newtons(6000);
    const auto many = screws_for(shared_facts(), oak, wanted);
    REQUIRE(many);
    CHECK((many->count > few->count || many->number > few->number));
    CHECK(many->use <= 1);
    wanted.lateral = newtons(60000);
    CHECK_FALSE(screws_for(shared_facts(), oak, wanted));
    wanted = {};
    wanted.withdrawal = newtons(100);
    wanted.under_head = millimetres(19);
    wanted.depth = millimetres(40);
    wanted.end_grain = true; // nothing is allowed to pull there
    CHECK_FALSE(screws_for(shared_facts(), oak, wanted));
    wanted.end_grain = false;
    wanted.depth = millimetres(8); // too thin for any thread
    CHECK_FALSE(screws_for(shared_facts(), oak, wanted));
    wanted.depth = millimetres(40);
    wanted.withdrawal = {};
    wanted.moment = newton_metres(100);
    wanted.lever = millimetres(80);
    const auto turned = screws_for(shared_facts(), oak, wanted);
    REQUIRE(turned);
    // 100/(0.9 × 0.080) = 1389 N on the far half of them, 1.6 × 19.65 × 0.63² × D L each.
    const double d = in_millimetres(turned->diameter), thread = in_millimetres(turned->length) - 19;
    CHECK_THAT(turned->use,
               WithinRel(100 / (0.9 * 0.080) / (turned->count / 2.0 * 1.6 * 19.65 * 0.63 * 0.63 * d * thread), 1e-4));
}
