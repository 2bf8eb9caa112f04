// What is let into a part, as bodies in space: where they meet, and what wood is left round them.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include "judging/joints/joint_as_drawn.hpp"
#include "piece/let_ins/joined_solid.hpp"
#include "piece/let_ins/let_in_walls.hpp"
#include "piece/let_ins/let_ins.hpp"

using namespace checked;

namespace {

/// A leg 40 x 50 mm, long rail from its right side with a tenon 8 thick at y = 14 to 22 and z = 310 to 360, end rail from its back with
/// one 6 thick at x = 12 to 18 and z = 300 to 340 unless it is moved up.
std::string corner(const std::string& long_tenon, const std::string& end_tenon, double end_bottom = 290,
                   const std::string& more = "")
{
    return design({head_text({}), wood_text("white oak"), part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]", more),
                   part_text("long rail", {500, 70, 20}, "x", "y", "[40, 8, 300]"),
                   part_text("end rail", {300, 60, 18}, "y", "x", fmt::format("[6, 50, {}]", end_bottom)),
                   joint_text("long rail", "leg", "tenon", "PVA", "tenon = { " + long_tenon + ", width = 50, thickness = 8 }"),
                   joint_text("end rail", "leg", "tenon", "PVA", "tenon = { " + end_tenon + ", width = 40, thickness = 6 }")});
}

double cheeks_of(const Contact& contact)
{
    double sum = 0;
    for (const Patch& p : contact.patches) sum += p.role == Patch::Role::cheek ? p.area : 0;
    return sum;
}

} // namespace

TEST_CASE("Two unlike tenons off the middle of a leg meet where both are drawn", "[let-ins]")
{
    // x: 10 to 40 with 12 to 18 shares 6; y: 14 to 22 with 17 to 50 shares 17 to 22, 5; z: 310 to 340, 30.
    const auto bench = bench_of(corner("length = 30", "length = 33"));
    const LetIns& found = bench->layout.let_ins;
    REQUIRE(found.all.size() == 2);
    REQUIRE(found.meetings.size() == 1);
    const Meeting& m = found.meetings[0];
    CHECK_THAT(m.depth, WithinAbs(0.005, 1e-9));
    CHECK_THAT(m.clear_first, WithinAbs(0.040 - 0.018, 1e-9));
    CHECK_THAT(m.clear_second, WithinAbs(0.050 - 0.022, 1e-9));
    CHECK_THAT(m.sideways, WithinAbs(0.340 - 0.310, 1e-9));
    // What is shared and what lies beyond it is lost over 30 of 50 and of 40 mm.
    const double kept_long = 1 - 8.0 / 30 * 30 / 50, kept_end = 1 - 5.0 / 33 * 30 / 40;
    const Contact &long_joint = bench->contact("long rail", "leg"), &end_joint = bench->contact("end rail", "leg");
    CHECK_THAT(cheeks_of(long_joint), WithinRel(2 * 0.030 * 0.050 * kept_long, 1e-9));
    CHECK_THAT(cheeks_of(end_joint), WithinRel(2 * 0.033 * 0.040 * kept_end, 1e-9));
    const auto drawn = drawn_joint(bench->prepared, end_joint);
    REQUIRE(drawn);
    CHECK_THAT(in_metres(drawn->sizes.length), WithinRel(0.033 * kept_end, 1e-9));
}

TEST_CASE("Tenons that clear each other by height or by length keep all they have", "[let-ins]")
{
    const auto higher = bench_of(corner("length = 30", "length = 33", 350)); // 360 to 400: above the other's 360
    CHECK(higher->layout.let_ins.meetings.empty());
    const auto lower = bench_of(corner("length = 30", "length = 33", 349)); // 359: shares one millimetre of height
    REQUIRE(lower->layout.let_ins.meetings.size() == 1);
    CHECK_THAT(lower->layout.let_ins.meetings[0].sideways, WithinAbs(0.001, 1e-9));
    const auto shorter = bench_of(corner("length = 30", "length = 28")); // ends where the other's cheek is
    CHECK(shorter->layout.let_ins.meetings.empty());
    CHECK_THAT(cheeks_of(shorter->contact("long rail", "leg")), WithinRel(2 * 0.030 * 0.050, 1e-9));
}

TEST_CASE("Mitred ends part at 45 degrees through the crossing of their inner cheeks", "[let-ins]")
{
    const auto bench = bench_of(corner("length = 30, mitred = true", "length = 33, mitred = true"));
    const LetIns& found = bench->layout.let_ins;
    REQUIRE(found.meetings.size() == 1);
    CHECK(found.meetings[0].mitred);
    // The plane y = x + 4 passes (18, 22). The long tenon, y 14 to 22, reaches x = y - 4: 14 on average, 26 mm long. The other one, x 12 to
    // 18, reaches y = x + 4, but 17 at most: (1 x 17 + 5 x 19.5)/6, 30.917 mm long.
    CHECK_THAT(found.meetings[0].mitre_first, WithinAbs(0.026, 1e-9));
    CHECK_THAT(found.meetings[0].mitre_second, WithinAbs(0.050 - (17 + 5 * 19.5) / 6000, 1e-9));
    const auto drawn = drawn_joint(bench->prepared, bench->contact("long rail", "leg"));
    CHECK_THAT(in_metres(drawn->sizes.length), WithinAbs(0.026, 1e-9));
    // As drawn on the page no two parts share space either.
    const auto solids = joined_solids(bench->piece, bench->layout.contacts);
    for (const kernel::Cell& a : solids[bench->copy("long rail")].cells)
        for (const kernel::Cell& b : solids[bench->copy("end rail")].cells) CHECK(kernel::clip(a, b.sides).empty());
}

TEST_CASE("One mitred end does not clear the other's square one", "[let-ins]")
{
    const auto bench = bench_of(corner("length = 30, mitred = true", "length = 33"));
    REQUIRE(bench->layout.let_ins.meetings.size() == 1);
    CHECK_FALSE(bench->layout.let_ins.meetings[0].mitred);
}

TEST_CASE("Walls are measured to the faces that a mortise does not open to", "[let-ins]")
{
    const auto bench = bench_of(corner("length = 30", "length = 28"));
    const LetIns& found = bench->layout.let_ins;
    double front = 0, back = 0, bottom = 0, above = 0;
    for (const Wall& w : walls_of(bench->piece, found.all[0])) {
        if (w.out.y() < -0.9) front = w.left;
        if (w.out.y() > 0.9) back = w.left;
        if (w.out.z() > 0.9) above = w.left;
        if (w.place == Wall::Place::bottom) bottom = w.left;
    }
    CHECK_THAT(front, WithinAbs(0.014, 1e-9));
    CHECK_THAT(back, WithinAbs(0.028, 1e-9));
    CHECK_THAT(above, WithinAbs(0.040, 1e-9));
    CHECK_THAT(bottom, WithinAbs(0.010, 1e-9));
}

TEST_CASE("A tapered leg leaves less behind a mortise towards its thin end", "[let-ins]")
{
    // The left side slopes from x = 0 at z = 400 to x = 20 at z = 0; the right one stays straight. A stretcher's tenon 40 wide at z = 60 to
    // 100 and 19 long ends at x = 21; at z = 60 the side is at x = 17, 4 mm along x, 4 cos(atan(1/20)) square to it.
    const auto bench =
        bench_of(design({head_text({}), wood_text("white oak"),
                         part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]",
                                   "taper = { end = \"bottom\", width = 20, thickness = 50, over = 400, flat = [\"right\"] }"),
                         part_text("stretcher", {500, 60, 20}, "x", "y", "[40, 8, 50]"),
                         joint_text("stretcher", "leg", "tenon", "", "tenon = { length = 19, width = 40, thickness = 8 }")}));
    double bottom = 0;
    for (const Wall& w : walls_of(bench->piece, bench->layout.let_ins.all[0]))
        if (w.place == Wall::Place::bottom) bottom = w.left;
    CHECK_THAT(bottom, WithinAbs(0.004 * 20 / std::sqrt(401.0), 1e-9));
}

TEST_CASE("A tenon of a turned rail goes in along its own grain", "[let-ins]")
{
    // A brace 30 degrees off level: its tenon's body has the stated volume and leans as the brace does.
    const auto bench =
        bench_of(design({head_text({}), wood_text("white oak"), part_text("post", {600, 60, 60}, "z", "y", "[0, 0, 0]"),
                         part_text("brace", {400, 50, 24}, "x", "y", "[40, 18, 300]", "turn = { about = \"y\", degrees = -30 }"),
                         joint_text("brace", "post", "tenon", "PVA", "tenon = { length = 20, width = 30, thickness = 8 }")}));
    REQUIRE(bench->layout.let_ins.all.size() == 1);
    const LetIn& in = bench->layout.let_ins.all[0];
    CHECK_THAT(kernel::volume(in.bodies.at(0)), WithinRel(0.020 * 0.030 * 0.008, 1e-6));
    CHECK_THAT(std::abs(in.along.x()), WithinAbs(std::sqrt(3.0) / 2, 1e-9));
    CHECK_THAT(std::abs(in.along.z()), WithinAbs(0.5, 1e-9));
}

TEST_CASE("A bore is as wide as its fastener and as deep as it reaches", "[let-ins]")
{
    // 2 dowels of 10 x 60: 30 deep in either part, at a quarter and three quarters of the face's height.
    const auto bench =
        bench_of(design({head_text({}), wood_text("white oak"), part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]"),
                         part_text("rail", {500, 60, 22}, "x", "y", "[40, 10, 300]"),
                         joint_text("rail", "leg", "dowel", "PVA", "dowels = { diameter = 10, length = 60, count = 2 }")}));
    const auto& all = bench->layout.let_ins.all;
    REQUIRE(all.size() == 4);
    for (const LetIn& in : all) {
        const kernel::Cell body = body_of_bore(in);
        CHECK_THAT(kernel::volume(body), WithinRel(3.14159265 * 0.005 * 0.005 * 0.030, 0.03)); // a prism stands for it
        CHECK_THAT(in.at.y(), WithinAbs(0.021, 1e-9));
        CHECK((std::abs(in.at.z() - 0.315) < 1e-9 || std::abs(in.at.z() - 0.345) < 1e-9));
        CHECK_THAT(in.along.x(), WithinAbs(in.into == bench->copy("leg") ? -1 : 1, 1e-9));
    }
}
