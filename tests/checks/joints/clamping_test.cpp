// clamping: what is pressed, how hard and with how many clamps.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "judging/joints/pressed_face.hpp"

using namespace checked;

TEST_CASE("A lipping is pressed along its whole edge", "[clamping]")
{
    const Finding f = finding_of(content_of(built_in_design("lipping-along-panel-edge")).findings, "clamping", "lipping / board");
    CHECK(f.verdict == Verdict::pass);
    // 800 × 20 mm of ash, 1.4 to 1.7 MPa for a wood of 600 to 750 kg/m³.
    CHECK(value_of(f, "pressure") > 1.4e6);
    CHECK(value_of(f, "pressure") < 1.7e6);
    CHECK_THAT(value_of(f, "force"), WithinRel(value_of(f, "pressure") * 0.8 * 0.02, 1e-6));
    // Every 100 mm, over a board of 100/2 − 8 = 42 mm that spreads their pressure.
    CHECK_THAT(value_of(f, "spacing"), WithinRel(0.1, 1e-9));
    CHECK(value_of(f, "clamps") == 8);
    CHECK_THAT(value_of(f, "caul_depth"), WithinRel(0.042, 1e-9));
    CHECK_FALSE(f.utilisation);
    CHECK_THAT(value_of(f, "glue_mass"), WithinRel(0.150 * 0.016 * 1.2, 1e-6));
    CHECK_THAT(f.headline, ContainsSubstring("thin bead"));
}

TEST_CASE("A tenon is pressed at its shoulders, its cheeks by their fit", "[clamping]")
{
    const auto bench = bench_of(built_in_design("stool-seat-rail-tenons"));
    const auto pressed = pressed_face(bench->prepared, bench->contact("seat rail #1", "leg #1"), nullptr);
    REQUIRE(pressed);
    CHECK(pressed->pulls_shoulders);
    // Rail 60 × 22 mm less the tenon of 40 × 8 mm.
    CHECK_THAT(pressed->face.area.value(), WithinRel(0.060 * 0.022 - 0.040 * 0.008, 1e-6));
    CHECK(pressed->across == "from left to right");
    const Finding f = finding_of(content_of(built_in_design("stool-seat-rail-tenons")).findings, "clamping", "seat rail / leg");
    CHECK(value_of(f, "clamps") == 1);
    CHECK_THAT(f.headline, ContainsSubstring("fit"));
}

TEST_CASE("A slat in its housing is pressed on the bottom, not on the walls", "[clamping]")
{
    const auto bench = bench_of(built_in_design("boot-bench"));
    const auto pressed = pressed_face(bench->prepared, bench->contact("slat #5", "long rail #1"), nullptr);
    REQUIRE(pressed);
    CHECK(pressed->across == "from top to bottom");
    // Slat 1 3/4 in wide less its rounded edges on a rail 7/8 in thick.
    CHECK(pressed->face.area.value() <= 1.75 * 0.875 * kMetresPerInch * kMetresPerInch + 1e-9);
    CHECK(pressed->face.area.value() > 0.8 * 1.75 * 0.875 * kMetresPerInch * kMetresPerInch);
}

TEST_CASE("A sliding dovetail wedges itself", "[clamping]")
{
    const Finding f = finding_of(content_of(built_in_design("table-batten-glued-front")).findings, "clamping", "batten / top");
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.utilisation);
    CHECK_THAT(f.headline, ContainsSubstring("wedges itself"));
}

TEST_CASE("A wide face glued all over asks for more than clamps", "[clamping]")
{
    const std::string text = still_head(false) + R"(
[[wood]]
id = "stock"
species = "sugar maple"
rings = "flat"
[[part]]
id = "layer"
wood = "stock"
length = 600
width = 400
thickness = 12
grain = "x"
face = "z"
at = [0, 0, 0]
copies = [ { at = [0, 0, 12] } ]
[[joint]]
between = ["layer", "layer"]
kind = "face"
glue = "PVA"
)";
    const Finding f = finding_of(content_of(text).findings, "clamping", "layer / layer");
    CHECK(f.verdict == Verdict::warn);
    CHECK_FALSE(f.utilisation);
    CHECK(value_of(f, "clamps") == 12);
    CHECK(value_of(f, "pressure_reached") < 0.25 * value_of(f, "pressure"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("press"));
}
