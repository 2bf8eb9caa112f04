// What breaks a tenon itself: bending of its section, twisting about its length, holes through it; and where the published tests end.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/joints/joint_capacity.hpp"
#include "bond/joints/joint_forms.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

WoodState dry_state(const char* wood)
{
    return wood_state(shared_facts(), shared_facts().find_wood(wood), {}, MoistureContent::percent(12));
}

JointCapacity joint_of(JointForm form, const JointSizes& sizes, const char* rail = "red oak", const char* post = "red oak",
                       const char* glue = "PVA")
{
    const WoodState a = dry_state(rail), b = dry_state(post);
    const auto c =
        joint_capacity(shared_facts(), form, sizes, {&a, &b, rail, post, glue ? shared_facts().find_glue(glue) : nullptr});
    REQUIRE(c);
    return *c;
}

/// Rail 22.2 × 63.5, tenon 9.5 × 38 × 32 mm.
JointSizes tee()
{
    JointSizes s;
    s.rail_thickness = millimetres(22.2);
    s.rail_depth = millimetres(63.5);
    s.thickness = millimetres(9.5);
    s.width = millimetres(38);
    s.length = millimetres(32);
    return s;
}

double factor(double rail, double tongue) { return std::pow(rail / tongue, 0.8); }

} // namespace

TEST_CASE("The red oak tenon breaks itself at 341 N m, later than it is drawn out", "[joint]")
{
    const JointCapacity c = joint_of(JointForm::tenon, tee());
    // 9.5 × 38²/6 = 2286 mm³ × 99 MPa = 226.3 N m, × (63.5/38)^0.8 = 1.508.
    CHECK_THAT(c.tongue.value(), WithinAbs(341, 0.5));
    CHECK_THAT(c.glue_line.value(), WithinAbs(284.9, 0.1));
    CHECK_THAT(c.published->value(), WithinAbs(347, 1.0));
    CHECK_THAT(c.twist.value(), WithinAbs(134, 0.5));
    CHECK(c.governs == "the glue line");
    // Over its thickness: drawn out 9971 N × 0.9 × 11.1 mm = 99.6, its section 38 × 9.5²/6 × 99 × (22.2/9.5)^0.8 = 111.6.
    CHECK_THAT(c.flat.value(), WithinAbs(99.6, 0.1));
}

TEST_CASE("A thin tenon breaks before it is drawn out, and the answer names it", "[joint]")
{
    JointSizes s = tee();
    s.thickness = millimetres(6.5);
    const JointCapacity c = joint_of(JointForm::tenon, s);
    const double by_hand = 0.0065 * 0.038 * 0.038 / 6 * 99e6 * factor(63.5, 38);
    CHECK_THAT(c.mean.value(), WithinRel(by_hand, 1e-9));
    CHECK_THAT(c.governs, ContainsSubstring("own section"));
    CHECK_THAT(c.lower.value(), WithinRel(0.75 * by_hand, 1e-9));
    // Its flat side: 38 × 6.5²/6 mm³, which the rail's 22.2 mm help.
    CHECK_THAT(c.flat.value(), WithinRel(0.038 * 0.0065 * 0.0065 / 6 * 99e6 * factor(22.2, 6.5), 1e-9));
}

TEST_CASE("The tenon is of the rail's wood: its own section is that of the rail, the glue line that of the weaker", "[joint]")
{
    JointSizes s = tee();
    const WoodState pine = dry_state("eastern white pine"), oak = dry_state("red oak");
    const double section = 0.0095 * 0.038 * 0.038 / 6 * factor(63.5, 38);
    const JointCapacity soft = joint_of(JointForm::tenon, s, "eastern white pine", "red oak"),
                        hard = joint_of(JointForm::tenon, s, "red oak", "eastern white pine");
    CHECK_THAT(soft.tongue.value(), WithinRel(section * pine.bending_strength->value.value(), 1e-9));
    CHECK_THAT(hard.tongue.value(), WithinRel(section * oak.bending_strength->value.value(), 1e-9));
    CHECK(soft.glue_line == hard.glue_line);
    CHECK_THAT(soft.torsion.value() / hard.torsion.value(),
               WithinRel(pine.shear->value.value() / oak.shear->value.value(), 1e-9));
}

TEST_CASE("A bridle's tongue breaks by its own section where the faces would hold", "[joint]")
{
    JointSizes s = tee();
    s.width = millimetres(63.5);
    s.length = millimetres(70);
    const JointCapacity c = joint_of(JointForm::bridle, s);
    // 9.5 × 63.5²/6 × 99 MPa; the tongue is as wide as the rail, so nothing helps it. Its faces twist at more.
    CHECK_THAT(c.tongue.value(), WithinRel(0.0095 * 0.0635 * 0.0635 / 6 * 99e6, 1e-9));
    CHECK(c.twist > c.tongue);
    CHECK(c.mean == c.tongue);
    CHECK_THAT(c.lower_share, WithinAbs(0.67, 1e-12));
}

TEST_CASE("A section twisted about its length, by the sand heap", "[joint]")
{
    // 12.3 MPa × 9.5² × (3 × 38 − 9.5)/6 = 19.33 N m, whichever side is named first.
    const JointCapacity c = joint_of(JointForm::tenon, tee());
    CHECK_THAT(c.torsion.value(), WithinRel(12.3e6 * 0.0095 * 0.0095 * (3 * 0.038 - 0.0095) / 6, 1e-9));
    CHECK(section_twist(millimetres(38), millimetres(9.5), megapascals(12.3)) ==
          section_twist(millimetres(9.5), millimetres(38), megapascals(12.3)));
    // Its cheeks in their walls: 7.0 MPa × 32 × 38²/6.
    CHECK_THAT(c.torsion_pressed.value(), WithinRel(7.0e6 * 0.032 * 0.038 * 0.038 / 6, 1e-9));
    // The heap of sand over a square of side a holds a³/3.
    CHECK_THAT(section_twist(metres(1), metres(1), pascals(1)).value(), WithinRel(1.0 / 3, 1e-12));
}

TEST_CASE("A tenon off the middle of the rail is drawn out about the nearer edge", "[joint]")
{
    JointSizes s = tee();
    s.off_middle = millimetres(8);
    const JointCapacity middle = joint_of(JointForm::tenon, tee()), off = joint_of(JointForm::tenon, s);
    CHECK_THAT(off.glue_line / middle.glue_line, WithinRel((31.75 - 8) / 31.75, 1e-12));
    CHECK(off.twist == middle.twist);
}

TEST_CASE("A peg through a glued tenon takes a fifth from it and adds nothing", "[joint]")
{
    JointSizes s = tee();
    const JointCapacity bare = joint_of(JointForm::tenon, s);
    s.pegs = {millimetres(6), 1, millimetres(14)};
    const JointCapacity pegged = joint_of(JointForm::tenon, s),
                        dry = joint_of(JointForm::tenon, s, "red oak", "red oak", nullptr);
    CHECK_THAT(pegged.mean / bare.mean, WithinRel(0.8, 1e-12));
    CHECK_THAT(pegged.withdrawal / bare.withdrawal, WithinRel(0.8, 1e-12));
    CHECK_THAT(*pegged.published / *bare.published, WithinRel(0.8, 1e-12));
    CHECK(dry.pegs > newtons(0));
    CHECK(dry.tongue == bare.tongue); // the hole is in what tears at the pegs
}

TEST_CASE("A wedge keeps a dry tenon from being drawn out by the wood beyond it", "[joint]")
{
    JointSizes s = tee();
    s.wedge = {1, millimetres(25)};
    const JointCapacity c = joint_of(JointForm::tenon, s, "red oak", "eastern white pine", nullptr);
    CHECK_THAT(c.withdrawal.value(), WithinRel(2 * 12.3e6 * 0.025 * 0.0095, 1e-9)); // the tenon's wood, not the post's
    s.wedge.beyond = {};
    CHECK(joint_of(JointForm::tenon, s, "red oak", "red oak", nullptr).withdrawal.value() == 0);
}

TEST_CASE("A dry tenon turned in its mortise presses on its ends, from mouth to bottom", "[joint]")
{
    // The rail's oak across the grain, 7.0 MPa, is softer than its post's along; 9.5 × 32²/6.
    const JointCapacity c = joint_of(JointForm::tenon, tee(), "red oak", "red oak", nullptr);
    CHECK_THAT(c.shape.value(), WithinRel(7.0e6 * 0.0095 * 0.032 * 0.032 / 6, 1e-9));
    CHECK_THAT(c.flat.value(), WithinRel(7.0e6 * 0.038 * 0.032 * 0.032 / 6, 1e-9));
    CHECK(c.flat_by_shape);
    // In a pine post its cheeks press on pine, its edges on the pine's end grain, which is harder than oak's side.
    const WoodState pine = dry_state("eastern white pine");
    const JointCapacity soft = joint_of(JointForm::tenon, tee(), "red oak", "eastern white pine", nullptr);
    CHECK(soft.shape == c.shape);
    CHECK_THAT(soft.flat / c.flat, WithinRel(pine.compression_across->value.value() / 7.0e6, 1e-9));
    CHECK_THAT(soft.pressed.value(),
               WithinRel(std::min(2 * 7.0e6, pine.compression_along->value.value()) * 0.0095 * 0.032, 1e-9));
}

TEST_CASE("Sizes beyond the published tests are named, and may be cut back to them", "[joint]")
{
    CHECK(joint_of(JointForm::tenon, tee()).untested.empty());
    JointSizes s = tee();
    s.length = millimetres(60);
    REQUIRE(joint_of(JointForm::tenon, s).untested.size() == 1);
    CHECK(joint_of(JointForm::tenon, s).untested.front().what == std::string("long"));
    CHECK(sure_share(joint_of(JointForm::tenon, s)) == 1); // no weaker for being longer
    s.thickness = millimetres(16);
    const JointSizes tested = within_tested(shared_facts(), s);
    CHECK_THAT(in_millimetres(tested.length), WithinAbs(50, 1e-9));
    CHECK_THAT(in_millimetres(tested.thickness), WithinAbs(13, 1e-9));
    CHECK(joint_of(JointForm::tenon, tested).untested.empty());
    CHECK(joint_of(JointForm::tenon, tested).mean <= joint_of(JointForm::tenon, s).mean);
    s = tee();
    s.length = millimetres(20);
    s.thickness = millimetres(5);
    const JointCapacity small = joint_of(JointForm::tenon, within_tested(shared_facts(), s)); // too small stays too small
    REQUIRE(small.untested.size() == 2);
    CHECK_THAT(sure_share(small), WithinRel(20.0 / 25 * 5 / 6, 1e-9));
}

TEST_CASE("Lower strengths: 0.75 of a tenon's mean, 0.67 of the others'", "[joint]")
{
    JointSizes s = tee();
    s.diameter = millimetres(9.5);
    s.count = 2;
    for (const JointForm form : {JointForm::tenon, JointForm::loose_tenon}) CHECK(joint_of(form, s).lower_share == 0.75);
    for (const JointForm form :
         {JointForm::lap, JointForm::bridle, JointForm::dowels, JointForm::mitre, JointForm::keyed_mitre}) {
        const JointCapacity c = joint_of(form, s);
        CHECK(c.lower_share == 0.67);
        CHECK_THAT(c.lower / c.mean, WithinRel(0.67, 1e-12));
    }
}
