// What joints and notches take out of a part, and the section that is left.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <cmath>
#include <numbers>

using namespace checked;

namespace {

constexpr double kTenthOfMicron = 1e-7;

constexpr const char* kRail = R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "rail"
wood = "oak"
length = 1000
width = 80
thickness = 22
grain = "x"
face = "y"
at = [0, 100, 0]
$shape
)";

std::string rail(const std::string& shape = "", const std::string& more = "")
{
    return still_head(true) + fill(kRail, {{"shape", shape}}) + more;
}

std::string notches(const std::string& from, double depth, double width, double first, double step, int count)
{
    return "notches = [ { from = \"" + from + "\", depth = " + std::to_string(depth) + ", width = " + std::to_string(width) +
           ", first = " + std::to_string(first) + ", step = " + std::to_string(step) + ", count = " + std::to_string(count) +
           " } ]";
}

const NetStretch& stretch_at(const Bench& bench, std::string_view copy, double at)
{
    for (const NetStretch& s : bench.prepared.statics.stretches[bench.copy(copy)])
        if (at >= s.from && at <= s.to) return s;
    throw std::logic_error("no stretch there");
}

/// A slat let 10 mm into the rail's top.
constexpr const char* kHousedSlat = R"(
[[part]]
id = "slat"
wood = "oak"
length = 300
width = 50
thickness = 20
grain = "y"
face = "z"
at = [400, 0, 70]
[[joint]]
between = ["slat", "rail"]
kind = "housing"
)";

} // namespace

TEST_CASE("A whole rail is one stretch with the section of its drawing", "[cuts]")
{
    const auto bench = bench_of(rail());
    const auto& stretches = bench->prepared.statics.stretches[bench->copy("rail #1")];
    REQUIRE(stretches.size() == 1);
    const NetStretch& s = stretches.front();
    CHECK_THAT(s.from, WithinAbs(0, kTenthOfMicron));
    CHECK_THAT(s.to, WithinAbs(1.0, kTenthOfMicron));
    CHECK_THAT(s.breadth, WithinRel(0.022, 1e-9));
    CHECK_THAT(s.depth, WithinRel(0.080, 1e-9));
    CHECK_THAT(s.inertia, WithinRel(0.022 * std::pow(0.080, 3) / 12, 1e-9));
    CHECK_THAT(s.area, WithinRel(0.022 * 0.080, 1e-9));
    CHECK_THAT(s.outer, WithinRel(0.040, 1e-9));
    CHECK_FALSE(s.notched());
}

TEST_CASE("Stretches cover the part from end to end without gaps", "[cuts]")
{
    const auto bench = bench_of(rail(notches("top", 10, 30, 50, 150, 6)));
    const auto& stretches = bench->prepared.statics.stretches[bench->copy("rail #1")];
    double at = 0;
    for (const NetStretch& s : stretches) {
        CHECK_THAT(s.from, WithinAbs(at, 1e-12));
        CHECK(s.to > s.from);
        at = s.to;
    }
    CHECK_THAT(at, WithinAbs(1.0, kTenthOfMicron));
}

TEST_CASE("Teeth shorter than ten notch depths carry nothing; longer ones do", "[cuts]")
{
    SECTION("teeth of 90 mm between notches 10 mm deep")
    {
        const auto bench = bench_of(rail(notches("top", 10, 30, 50, 120, 6)));
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.065).depth, WithinRel(0.070, 1e-9));
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.125).depth, WithinRel(0.070, 1e-9)); // in a tooth
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.040).depth, WithinRel(0.080, 1e-9)); // before the row
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.900).depth, WithinRel(0.080, 1e-9)); // beyond it
    }
    SECTION("teeth of 120 mm")
    {
        const auto bench = bench_of(rail(notches("top", 10, 30, 50, 150, 6)));
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.065).depth, WithinRel(0.070, 1e-9));
        CHECK_THAT(stretch_at(*bench, "rail #1", 0.140).depth, WithinRel(0.080, 1e-9));
    }
}

TEST_CASE("Cuts from top and bottom both lessen the depth, each on its side", "[cuts]")
{
    const auto top = bench_of(rail(notches("top", 12, 30, 485, 60, 1)));
    const NetStretch& s = stretch_at(*top, "rail #1", 0.5);
    CHECK_THAT(s.top_loss, WithinRel(0.012, 1e-9));
    CHECK(s.bottom_loss == 0);
    const auto bottom = bench_of(rail(notches("bottom", 12, 30, 485, 60, 1)));
    CHECK_THAT(stretch_at(*bottom, "rail #1", 0.5).bottom_loss, WithinRel(0.012, 1e-9));
    const auto side = bench_of(rail(notches("front", 12, 30, 485, 60, 1)));
    const NetStretch& narrow = stretch_at(*side, "rail #1", 0.5);
    CHECK_THAT(narrow.breadth, WithinRel(0.010, 1e-9));
    CHECK_THAT(narrow.depth, WithinRel(0.080, 1e-9));
}

TEST_CASE("A housing is cut into the part that is let into, and into that one only", "[cuts]")
{
    const auto bench = bench_of(rail("", kHousedSlat));
    const NetStretch& s = stretch_at(*bench, "rail #1", 0.425);
    CHECK_THAT(s.depth, WithinRel(0.070, 1e-9));
    CHECK_THAT(s.top_loss, WithinRel(0.010, 1e-9));
    CHECK(bench->layout.cuts[bench->copy("slat #1")].empty());
    const auto& cuts = bench->layout.cuts[bench->copy("rail #1")];
    REQUIRE(cuts.size() == 1);
    CHECK(cuts[0].from_joint);
    CHECK(cuts[0].other == bench->copy("slat #1"));
    CHECK(cuts[0].place == Cut::Place::top);
    CHECK_THAT(joint_volumes(bench->piece, bench->layout.contacts)[bench->copy("rail #1")],
               WithinRel(0.050 * 0.022 * 0.010, 1e-9));
    CHECK_THAT(bench->layout.volumes[bench->copy("rail #1")], WithinRel(1.0 * 0.080 * 0.022 - 0.050 * 0.022 * 0.010, 1e-9));
}

TEST_CASE("A half lap takes half from each", "[cuts]")
{
    const std::string crossing = R"(
[[part]]
id = "stretcher"
wood = "oak"
length = 300
width = 80
thickness = 22
grain = "y"
face = "x"
at = [400, 0, 0]
[[joint]]
between = ["stretcher", "rail"]
kind = "lap"
$more
)";
    const auto even = bench_of(rail("", fill(crossing, {{"more", ""}})));
    const auto lost = joint_volumes(even->piece, even->layout.contacts);
    const double shared = 0.022 * 0.022 * 0.080;
    CHECK_THAT(lost[even->copy("rail #1")], WithinRel(shared / 2, 1e-9));
    CHECK_THAT(lost[even->copy("stretcher #1")], WithinRel(shared / 2, 1e-9));
    CHECK_THAT(stretch_at(*even, "rail #1", 0.411).depth, WithinRel(0.040, 1e-9));
    CHECK_THAT(stretch_at(*even, "stretcher #1", 0.111).depth, WithinRel(0.040, 1e-9));
    // One is cut from below, the other from above.
    CHECK((stretch_at(*even, "rail #1", 0.411).top_loss > 0) != (stretch_at(*even, "stretcher #1", 0.111).top_loss > 0));
    const auto uneven = bench_of(rail("", fill(crossing, {{"more", "lap = { first = 20 }"}})));
    CHECK_THAT(joint_volumes(uneven->piece, uneven->layout.contacts)[uneven->copy("stretcher #1")], WithinRel(shared / 4, 1e-9));
    CHECK_THAT(stretch_at(*uneven, "stretcher #1", 0.111).depth, WithinRel(0.060, 1e-9));
    CHECK_THAT(stretch_at(*uneven, "rail #1", 0.411).depth, WithinRel(0.020, 1e-9));
}

TEST_CASE("A mortise is taken out of the section where it lies", "[cuts]")
{
    const std::string cross_rail = R"(
[[part]]
id = "stretcher"
wood = "oak"
length = 300
width = 60
thickness = 20
grain = "y"
face = "x"
at = { left = 400, back = 100, bottom = 10 }
[[joint]]
between = ["stretcher", "rail"]
kind = "tenon"
glue = "PVA"
tenon = { length = 12, width = 40, thickness = 8 }
)";
    const auto bench = bench_of(rail("", cross_rail));
    const NetStretch& s = stretch_at(*bench, "rail #1", 0.410);
    // 8 mm wide along the rail, 12 mm deep across it, 40 mm high in its middle: from 20 to 60 mm.
    CHECK_THAT(s.inertia, WithinRel(0.022 * std::pow(0.080, 3) / 12 - 0.012 * std::pow(0.040, 3) / 12, 1e-9));
    CHECK_THAT(s.area, WithinRel(0.022 * 0.080 - 0.012 * 0.040, 1e-9));
    CHECK_THAT(s.depth, WithinRel(0.080, 1e-9));
    CHECK_THAT(stretch_at(*bench, "rail #1", 0.3).area, WithinRel(0.022 * 0.080, 1e-9));
    // Drawn touching at the shoulder, the tenon is wood on top of the drawn length and fills the mortise: nothing is lost in all.
    const auto lost = joint_volumes(bench->piece, bench->layout.contacts);
    CHECK_THAT(lost[bench->copy("rail #1")], WithinRel(0.012 * 0.040 * 0.008, 1e-9));
    CHECK_THAT(lost[bench->copy("stretcher #1")], WithinRel(-0.012 * 0.040 * 0.008, 1e-9));
}

TEST_CASE("A taper is followed in steps", "[cuts]")
{
    const auto bench = bench_of(rail("taper = { end = \"right\", width = 40, thickness = 22 }"));
    const auto& stretches = bench->prepared.statics.stretches[bench->copy("rail #1")];
    CHECK(stretches.size() >= 10);
    for (const NetStretch& s : stretches) {
        const double middle = (s.from + s.to) / 2;
        CHECK_THAT(s.depth, WithinAbs(0.080 - 0.040 * middle, 1e-9));
        CHECK_THAT(s.breadth, WithinRel(0.022, 1e-9));
    }
    CHECK_THAT(bench->layout.volumes[bench->copy("rail #1")], WithinRel(0.060 * 0.022, 1e-9));
}

TEST_CASE("Rounded edges lessen the section", "[cuts]")
{
    const auto bench = bench_of(rail("round_over = 5"));
    const double sliver = (1 - std::numbers::pi / 4) * 0.005 * 0.005;
    const NetStretch& s = stretch_at(*bench, "rail #1", 0.5);
    CHECK_THAT(s.area, WithinRel(0.022 * 0.080 - 4 * sliver, 1e-9));
    CHECK_THAT(s.inertia, WithinRel(0.022 * std::pow(0.080, 3) / 12 - 4 * sliver * std::pow(0.040 - 0.223 * 0.005, 2),
                                    1e-6)); // slivers about their middles
    CHECK_THAT(bench->layout.volumes[bench->copy("rail #1")], WithinRel(1.0 * (0.022 * 0.080 - 4 * sliver), 1e-9));
}
