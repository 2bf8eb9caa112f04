// glue-line: two faces of long grain are not yet a long-grain joint.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <numbers>

using namespace checked;

namespace {

constexpr double kTenthOfMm2 = 1e-7;

/// A board on the floor with something glued to it.
constexpr const char* kBoard = R"(
[[wood]]
id = "oak"
species = "northern red oak"
rings = "flat"
[[part]]
id = "panel"
wood = "oak"
length = 500
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
)";

/// A strip along the edge of the panel: its grain runs with the panel's.
constexpr const char* kLipping = R"(
[[part]]
id = "lipping"
wood = "oak"
length = 500
width = 20
thickness = 8
grain = "x"
face = "y"
at = { left = 0, front = 100, bottom = 0 }
[[joint]]
between = ["lipping", "panel"]
kind = "edge"
glue = "PVA"
)";

/// A slat across it: also long grain on both faces, but the grains cross.
constexpr const char* kSlat = R"(
[[part]]
id = "slat"
wood = "oak"
length = 100
width = 100
thickness = 12
grain = "y"
face = "z"
at = [100, 0, 20]
[[joint]]
between = ["slat", "panel"]
kind = "face"
glue = "PVA"
$more
)";

/// A post on the panel's end: end grain on one side of the glue.
constexpr const char* kButted = R"(
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 60
thickness = 20
grain = "y"
face = "z"
at = { left = 200, front = 100, bottom = 0 }
[[joint]]
between = ["rail", "panel"]
kind = "$kind"
glue = "PVA"
)";

std::string on_board(const std::string& more) { return still_head(true) + kBoard + more; }

} // namespace

TEST_CASE("A strip glued along an edge has the full shear strength and no quarrel across the grain", "[glue-line]")
{
    const auto content = content_of(on_board(kLipping));
    const Finding& f = finding_of(content.findings, "glue-line", "lipping / panel");
    CHECK_THAT(value_of(f, "area"), WithinAbs(0.500 * 0.020, kTenthOfMm2));
    CHECK(value_of(f, "grain_angle") == 0);
    CHECK_THAT(value_of(f, "wood_shear"), WithinRel(12.3e6, 1e-9));  // Wood Handbook table 5-3a; never above its 12 % value
    CHECK_THAT(value_of(f, "mean_strength"), WithinRel(10e6, 1e-9)); // the glue is the weaker
    CHECK(value_of(f, "end_grain_area") == 0);
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(f.headline, ContainsSubstring("full shear strength"));
    CHECK(content.contacts.front().grain_angle_deg == 0.0);
    const Finding& moving = finding_of(content.findings, "cross-grain", "lipping / panel");
    CHECK(moving.verdict == Verdict::pass);
    // 20 mm of the two edges move alike through their depth but for the rings: the strip's lie the other way.
    CHECK(value_of(moving, "differential_movement") < 0.25e-3);
}

TEST_CASE("A slat glued across has a third of it, and a finding about its movement", "[glue-line]")
{
    const auto content = content_of(on_board(fill(kSlat, {{"more", ""}})));
    const Finding& f = finding_of(content.findings, "glue-line", "slat / panel");
    CHECK_THAT(value_of(f, "area"), WithinAbs(0.100 * 0.100, kTenthOfMm2));
    CHECK_THAT(value_of(f, "grain_angle"), WithinAbs(std::numbers::pi / 2, 1e-9));
    CHECK_THAT(value_of(f, "wood_shear"), WithinRel(4.1e6, 1e-4));
    CHECK_THAT(value_of(f, "mean_strength"), WithinRel(4.1e6, 1e-4));
    CHECK_THAT(f.headline, ContainsSubstring("the grains cross"));
    CHECK(content.contacts.front().grain_angle_deg == 90.0);
    const Finding& moving = finding_of(content.findings, "cross-grain", "slat / panel");
    CHECK(value_of(moving, "differential_movement") > 1e-3); // 100 mm across the grain of one against the length of the other
    CHECK(has_value(moving, "restraint_stress"));
}

TEST_CASE("Glue on a part of the length only counts that part", "[glue-line]")
{
    const Finding f =
        finding_of(content_of(on_board(fill(kSlat, {{"more", "glued = { length = 25, at = \"middle\" }"}}))).findings,
                   "glue-line", "slat / panel");
    CHECK_THAT(value_of(f, "area"), WithinAbs(0.025 * 0.100, kTenthOfMm2));
}

TEST_CASE("End grain alone counts as nothing", "[glue-line]")
{
    const Finding f = finding_of(content_of(on_board(fill(kButted, {{"kind", "butt"}}))).findings, "glue-line", "rail / panel");
    CHECK(value_of(f, "area") == 0);
    CHECK_THAT(value_of(f, "end_grain_area"), WithinAbs(0.060 * 0.020, kTenthOfMm2));
    CHECK(value_of(f, "resistance") == 0);
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    CHECK_THAT(*f.remedy, ContainsSubstring("tenon"));
}

TEST_CASE("Of the word used for a joint nothing hangs: geometry tells which grain meets which", "[glue-line]")
{
    for (const char* kind : {"edge", "face", "butt"}) {
        CAPTURE(kind);
        CHECK(finding_of(content_of(on_board(fill(kButted, {{"kind", kind}}))).findings, "glue-line").verdict == Verdict::fail);
    }
}

TEST_CASE("A tenon is held by its two cheeks; its shoulder is end grain and no fault", "[glue-line]")
{
    const std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "post"
wood = "oak"
length = 500
width = 50
thickness = 50
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 70
thickness = 24
grain = "x"
face = "y"
at = { left = 50, front = 10, top = 450 }
[[joint]]
between = ["rail", "post"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 50, thickness = 8 }
)";
    const Finding f = finding_of(content_of(text).findings, "glue-line", "rail / post");
    CHECK_THAT(value_of(f, "area"), WithinAbs(2 * 0.030 * 0.050, kTenthOfMm2));
    CHECK(value_of(f, "end_grain_area") > 0);
    CHECK(f.verdict == Verdict::pass);
    std::string without = text;
    without.replace(without.find("tenon = { length"), 51, "");
    const Finding unknown = finding_of(content_of(without).findings, "glue-line", "rail / post");
    CHECK(unknown.verdict == Verdict::cannot_tell);
    CHECK_THAT(unknown.headline, ContainsSubstring("sizes are missing"));
}

TEST_CASE("A mitre without a key warns", "[glue-line]")
{
    const std::string text = still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "top"
wood = "oak"
length = 300
width = 40
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "side"
wood = "oak"
length = 300
width = 40
thickness = 20
grain = "y"
face = "z"
at = [0, 0, 0]
[[joint]]
between = ["top", "side"]
kind = "mitre"
glue = "PVA"
)";
    const Finding f = finding_of(content_of(text).findings, "glue-line", "top / side");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(value_of(f, "area"), WithinRel(0.040 * std::numbers::sqrt2 * 0.020, 1e-6));
    REQUIRE(f.remedy);
    CHECK_THAT(*f.remedy, ContainsSubstring("key, spline or dowel"));
}

TEST_CASE("A part that hangs from its glue always warns", "[glue-line]")
{
    const std::string hung = still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "shelf"
wood = "oak"
length = 500
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "cleat"
wood = "oak"
length = 500
width = 30
thickness = 30
grain = "x"
face = "z"
at = [0, 0, 20]
[[joint]]
between = ["shelf", "cleat"]
kind = "face"
glue = "PVA"
[[load]]
name = "pans"
on = "shelf"
force = "60 N"
patch = [100, 80]
at = [250, 50]
lasting = true
)";
    std::string on_wall = hung;
    on_wall.replace(on_wall.find("use = \"none\""), 12, "use = \"none\"\nwall = [\"cleat\"]");
    const Finding f = finding_of(content_of(on_wall).findings, "glue-line", "shelf / cleat");
    CHECK(f.verdict == Verdict::warn);
    CHECK(value_of(f, "tension_stress") > 0);
    REQUIRE(f.remedy);
    CHECK_THAT(*f.remedy, ContainsSubstring("ledge under it"));
}

TEST_CASE("Glue of a wood without strength figures cannot be judged", "[glue-line]")
{
    std::string text = on_board(kLipping);
    text.replace(text.find("species = \"northern red oak\"\n"), 29,
                 "properties = { modulus = \"12 GPa\", tangential = 0.003, radial = 0.0015 }\n");
    CHECK(finding_of(content_of(text).findings, "glue-line").verdict == Verdict::cannot_tell);
}
