// What joints bear without or beside their glue: recesses, tails, pegs and the slips of mitres, worked by hand.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/joints/joint_capacity.hpp"

#include <cmath>
#include <numbers>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

WoodState oak_at_twelve()
{
    return wood_state(shared_facts(), shared_facts().find_wood("red oak"), {}, MoistureContent::percent(12));
}

JointCapacity oak_joint(JointForm form, const JointSizes& sizes, const char* glue = "PVA")
{
    const WoodState oak = oak_at_twelve();
    return *joint_capacity(shared_facts(), form, sizes,
                           {&oak, &oak, "red oak", "red oak", glue ? shared_facts().find_glue(glue) : nullptr});
}

/// A shelf end 200 mm wide and 18 mm thick, 8 mm deep in a side, 40 mm above the end of that side.
JointSizes housed_shelf()
{
    JointSizes s;
    s.rail_thickness = s.rail_depth = s.thickness = millimetres(18);
    s.width = millimetres(200);
    s.length = millimetres(8);
    s.lip = millimetres(40);
    return s;
}

/// A rail tenon 10 × 50 × 40 mm with one peg of 10 mm, cheeks of 17 mm.
JointSizes pegged_tenon()
{
    JointSizes s;
    s.rail_thickness = millimetres(30);
    s.rail_depth = millimetres(70);
    s.thickness = millimetres(10);
    s.width = millimetres(50);
    s.length = millimetres(40);
    s.pegs = {millimetres(10), 1, millimetres(17)};
    return s;
}

} // namespace

TEST_CASE("A shelf in a housing presses on its wall, and shears off the wood left below it", "[joint]")
{
    // Red oak: 7.0 MPa across the grain, twice that on a short end, 46.6 along it, shear 12.3.
    const JointCapacity deep = oak_joint(JointForm::housing, housed_shelf());
    CHECK_THAT(deep.pressed.value(), WithinRel(2 * 7.0e6 * 0.200 * 0.008, 1e-9));
    CHECK_THAT(deep.section_shear.value(),
               WithinRel(2.0 / 3 * 12.3e6 * 0.200 * 0.018, 1e-9)); // its own, before the wood below it
    // Turned, it presses at its end too, where no wood beside it helps.
    CHECK_THAT(deep.shape.value(), WithinRel(7.0e6 * 0.200 * 0.008 * 0.008 / 6, 1e-9));
    CHECK_THAT(deep.torsion_pressed.value(), WithinRel(7.0e6 * 0.008 * 0.200 * 0.200 / 6, 1e-9));
    CHECK_THAT(deep.shape_breaks.value(), WithinRel(12.3e6 * 0.040 * 0.200 * 2 / 3 * 0.008, 1e-9));
    JointSizes near_end = housed_shelf();
    near_end.lip = millimetres(3);
    CHECK_THAT(oak_joint(JointForm::housing, near_end).section_shear.value(), WithinRel(12.3e6 * 0.003 * 0.200, 1e-9));
    double last = 0;
    for (const double lip : {1.0, 2.0, 4.0, 8.0, 40.0}) { // more wood below it never bears less
        near_end.lip = millimetres(lip);
        const double v = oak_joint(JointForm::housing, near_end).section_shear.value();
        CHECK(v >= last);
        last = v;
    }
}

TEST_CASE("A groove along the grain tears its lip off across the grain", "[joint]")
{
    JointSizes s = housed_shelf();
    s.along_post = true;
    s.lip = millimetres(5);
    // min(12.3/3 × 5 × 200, 5.5 × 200 × 5²/(3 × 8)): torn off before it shears.
    const double rolled = 12.3e6 / 3 * 0.005 * 0.200, torn = 5.5e6 * 0.200 * 0.005 * 0.005 / (3 * 0.008);
    CHECK(torn < rolled);
    CHECK_THAT(oak_joint(JointForm::groove, s, nullptr).section_shear.value(), WithinRel(torn, 1e-6));
    // Both walls are side grain: glue counts, crossed.
    CHECK_THAT(oak_joint(JointForm::groove, s).withdrawal.value(), WithinRel(12.3e6 / 3 * 2 * 0.200 * 0.008, 1e-4));
    s.along_post = false;
    CHECK(oak_joint(JointForm::groove, s).withdrawal.value() == 0);
}

TEST_CASE("A sliding dovetail is held by its slopes where its walls are end grain", "[joint]")
{
    const JointCapacity c = oak_joint(JointForm::sliding_dovetail, housed_shelf());
    CHECK_THAT(c.wedge.value(), WithinRel(2 * 2 * 7.0e6 * 0.200 * 0.008 * std::sin(std::atan(1.0 / 8)), 1e-9));
    CHECK(c.withdrawal == c.wedge);
    JointSizes straight = housed_shelf();
    straight.slope = 0;
    CHECK(oak_joint(JointForm::sliding_dovetail, straight).withdrawal.value() == 0);
    JointSizes steeper = housed_shelf();
    steeper.slope = 6;
    CHECK(oak_joint(JointForm::sliding_dovetail, steeper).wedge > c.wedge);
}

TEST_CASE("Tails wedge as well as glue holds them, and a comb joint has its glue alone", "[joint]")
{
    JointSizes s;
    s.rail_thickness = s.rail_depth = millimetres(120);
    s.thickness = millimetres(12);
    s.length = millimetres(20);
    s.count = 3;
    const JointCapacity glued = oak_joint(JointForm::dovetail, s), dry = oak_joint(JointForm::dovetail, s, nullptr);
    CHECK_THAT(dry.withdrawal.value(), WithinRel(7.0e6 * 6 * 0.012 * 0.020 * std::sin(std::atan(1.0 / 8)), 1e-9));
    CHECK(glued.withdrawal > dry.withdrawal);
    s.slope = 0;
    CHECK(oak_joint(JointForm::dovetail, s, nullptr).withdrawal.value() == 0);
    CHECK(oak_joint(JointForm::dovetail, s).withdrawal == glued.withdrawal);
}

TEST_CASE("One peg through a tenon by the yield equations, put in by hand", "[joint]")
{
    const WoodState oak = oak_at_twelve();
    const double g = oak.specific_gravity->value, d = 10 / 25.4, t = 10 / 25.4, cheek = 17 / 25.4, lbf = 4.4482216152605;
    const double fem = 11200 * g, fes = 6100 * std::pow(g, 1.45) / std::sqrt(d), re = fem / fes, fyb = 99e6 / 6894.757293168;
    const double k3 = -1 + std::sqrt(2 * (1 + re) / re + 2 * fyb * (2 + re) * d * d / (3 * fem * cheek * cheek));
    const double modes[] = {d * t * fem * lbf,
                            2 * d * cheek * fes * lbf,
                            2 * k3 * d * cheek * fem / (2 + re) * lbf,
                            2 * d * d * std::sqrt(2 * fem * fyb / (3 * (1 + re))) * lbf,
                            std::numbers::pi * d * d / 2 * 4810 * g * std::pow(g, 0.75) * lbf,
                            2 * 12.3e6 * 0.015 * 0.010};
    const double least = *std::min_element(std::begin(modes), std::end(modes));
    const JointCapacity c = oak_joint(JointForm::tenon, pegged_tenon(), nullptr);
    CHECK_THAT(c.pegs.value(), WithinRel(least, 1e-6));
    CHECK(c.withdrawal == c.pegs);
    CHECK_THAT(c.pegged.value(), WithinRel(0.9 * least * 0.035, 1e-6)); // about the edge of the rail, 35 mm from its middle
    CHECK(c.governs == "the pegs");
    CHECK_FALSE(c.published);
}

TEST_CASE("A peg in a short tenon tears its end out, and glue is not added to pegs", "[joint][identity]")
{
    JointSizes s = pegged_tenon();
    s.length = millimetres(18);
    const JointCapacity brief = oak_joint(JointForm::tenon, s, nullptr);
    CHECK_THAT(brief.pegs.value(), WithinRel(2 * 12.3e6 * 0.004 * 0.010, 1e-6));
    CHECK_THAT(brief.pegs_give, ContainsSubstring("shears out"));
    double last = 0;
    for (const double length : {12.0, 18.0, 25.0, 40.0, 60.0}) {
        s.length = millimetres(length);
        const double held = oak_joint(JointForm::tenon, s, nullptr).pegs.value();
        CHECK(held >= last);
        last = held;
    }
    JointSizes bare = pegged_tenon();
    bare.pegs = {};
    // A hole in it costs a glued tenon a fifth.
    CHECK_THAT(oak_joint(JointForm::tenon, pegged_tenon()).mean / oak_joint(JointForm::tenon, bare).mean, WithinRel(0.8, 1e-12));
    JointSizes two = pegged_tenon();
    two.pegs.count = 2;
    // A bridle's shoulder presses too.
    CHECK(oak_joint(JointForm::bridle, pegged_tenon(), nullptr).mean.value() > 0);
    CHECK(oak_joint(JointForm::tenon, two, nullptr).pegs > oak_joint(JointForm::tenon, pegged_tenon(), nullptr).pegs);
}

TEST_CASE("A plain mitre bends over its face at 45° to the grain", "[joint]")
{
    JointSizes s;
    s.rail_thickness = millimetres(20);
    s.rail_depth = millimetres(45);
    const JointCapacity plain = oak_joint(JointForm::mitre, s);
    const double cut = 0.045 * std::numbers::sqrt2;
    // Hankinson of 99 along and 5.5 across at 45°: 2 × 99 × 5.5/104.5 = 10.42 MPa, more than the 10 that the glue itself is known to bear in shear.
    CHECK_THAT(plain.mean.value(), WithinRel(10e6 * 0.020 * cut * cut / 6, 1e-6));
    CHECK_THAT(plain.flat.value(), WithinRel(10e6 * cut * 0.020 * 0.020 / 6, 1e-6));
    // Along the cut 2 × 12.3 × 4.1/16.4 = 6.15 MPa; the share is printed as 0.3333.
    CHECK_THAT(plain.face_shear.value(), WithinRel(6.15e6 * cut * 0.020, 1e-4));
    CHECK_THAT(plain.torsion.value(), WithinRel(6.15e6 * twisting_capacity(metres(cut), millimetres(20)).value(), 1e-4));
    s.thickness = millimetres(5);
    s.length = millimetres(12);
    const JointCapacity splined = oak_joint(JointForm::splined_mitre, s);
    // Grain of the spline at 45° to either member: Hankinson of 12.3 and 4.1.
    const double f = 12.3e6 * 4.1e6 / (0.5 * 12.3e6 + 0.5 * 4.1e6);
    CHECK_THAT(splined.twist.value(), WithinRel(twist_capacity({metres(cut), millimetres(12), 2}, pascals(f)).value(), 1e-3));
    CHECK(splined.mean >= plain.mean);
    s.thickness = millimetres(4);
    s.length = millimetres(30);
    s.count = 2;
    CHECK(oak_joint(JointForm::keyed_mitre, s).mean >= plain.mean);
    CHECK(oak_joint(JointForm::mitre, s, nullptr).mean.value() == 0);
}

TEST_CASE("A paper-thin spline breaks itself, and is named", "[joint]")
{
    JointSizes s;
    s.rail_thickness = millimetres(20);
    s.rail_depth = millimetres(30);
    s.thickness = millimetres(3);
    s.length = millimetres(40);
    const JointCapacity c = oak_joint(JointForm::splined_mitre, s);
    const double cut = 0.030 * std::numbers::sqrt2;
    CHECK_THAT(c.mean.value(), WithinRel(0.003 * cut * cut / 6 * 99e6, 1e-9)); // as wide as the cut: nothing helps it
    CHECK_THAT(c.governs, ContainsSubstring("spline"));
}

TEST_CASE("A mitre of two woods and two widths goes by each wood at its own angle", "[joint][glue-line]")
{
    // Stile 40 mm wide of red oak, rail 60 mm of white pine: the cut runs over 40 × 60. The rail's grain lies along the 40, at atan(40/60) = 33.7°
    // to the cut and 56.3° to its normal; the stile's the other way about.
    const WoodState oak = oak_at_twelve(), pine = wood_state(shared_facts(), shared_facts().find_wood("eastern white pine"), {},
                                                             MoistureContent::percent(12));
    const double rail_tilt = std::atan2(60.0, 40.0), stile_tilt = std::numbers::pi / 2 - rail_tilt;
    const auto between = [](double along, double across, double angle) {
        return along * across / (along * std::pow(std::sin(angle), 2) + across * std::pow(std::cos(angle), 2));
    };
    const auto torn = [&](const WoodState& w, double tilt) {
        return between(w.bending_strength->value.value(), w.tension_across->value.value(), tilt);
    };
    const auto slid = [&](const WoodState& w, double tilt) {
        return between(w.shear->value.value(), 0.3333 * w.shear->value.value(), std::numbers::pi / 2 - tilt);
    };
    const auto found = mitre_strength(shared_facts(), pine, oak, rail_tilt, stile_tilt);
    REQUIRE(found);
    CHECK_THAT(found->tension.value(), WithinRel(std::min(torn(pine, rail_tilt), torn(oak, stile_tilt)), 1e-9));
    CHECK_THAT(found->shear.value(), WithinRel(std::min(slid(pine, rail_tilt), slid(oak, stile_tilt)), 1e-9));
    CHECK(found->first_tears);
    // The other way about the pine is torn nearer along its grain, and bears more.
    CHECK(mitre_strength(shared_facts(), pine, oak, stile_tilt, rail_tilt)->tension > found->tension);
    JointSizes s;
    s.rail_thickness = millimetres(18);
    const double cut = std::hypot(0.040, 0.060);
    s.rail_depth = metres(cut / std::numbers::sqrt2);
    s.tilt = rail_tilt;
    const auto c =
        joint_capacity(shared_facts(), JointForm::mitre, s, {&pine, &oak, "pine", "oak", shared_facts().find_glue("PVA")});
    REQUIRE(c);
    CHECK_THAT(c->mean.value(), WithinRel(found->tension.value() * 0.018 * cut * cut / 6, 1e-9));
}
