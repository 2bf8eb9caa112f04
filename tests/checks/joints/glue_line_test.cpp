// glue-line: two faces of long grain are not yet a long-grain joint.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <numbers>

using namespace checked;

namespace {

constexpr double kTenthOfMm2 = 1e-7;

/// A board on the floor with something glued to it.
std::string on_board(const std::string& part, const std::string& joint)
{
    return design({
        still_head(true),
        wood_text("northern red oak"),
        part_text("panel", {500, 100, 20}, "x", "z", "[0, 0, 0]"),
        part,
        joint,
    });
}

/// A strip along the edge of the panel: its grain runs with the panel's.
std::string lipping()
{
    return on_board(part_text("lipping", {500, 20, 8}, "x", "y", "{ left = 0, front = 100, bottom = 0 }"),
                    joint_text("lipping", "panel", "edge", "PVA"));
}

/// A slat across it: also long grain on both faces, but the grains cross.
std::string slat(const char* glued = "")
{
    return on_board(part_text("slat", {100, 100, 12}, "y", "z", "[100, 0, 20]"),
                    joint_text("slat", "panel", "face", "PVA", glued));
}

/// A rail that meets its edge: end grain on one side of the glue.
std::string butted(const char* kind)
{
    return on_board(part_text("rail", {300, 60, 20}, "y", "z", "{ left = 200, front = 100, bottom = 0 }"),
                    joint_text("rail", "panel", kind, "PVA"));
}

} // namespace

TEST_CASE("A strip glued along an edge has the full shear strength and no quarrel across the grain", "[glue-line]")
{
    const auto content = content_of(lipping());
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
    const auto content = content_of(slat());
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
        finding_of(content_of(slat("glued = { length = 25, at = \"middle\" }")).findings, "glue-line", "slat / panel");
    CHECK_THAT(value_of(f, "area"), WithinAbs(0.025 * 0.100, kTenthOfMm2));
}

TEST_CASE("End grain alone counts as nothing", "[glue-line]")
{
    const Finding f = finding_of(content_of(butted("butt")).findings, "glue-line", "rail / panel");
    CHECK(value_of(f, "area") == 0);
    CHECK_THAT(value_of(f, "end_grain_area"), WithinAbs(0.060 * 0.020, kTenthOfMm2));
    CHECK(value_of(f, "resistance") == 0);
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("tenon"));
}

TEST_CASE("A narrow bead let in across the grain is glued by the bottom of its recess, a stopped shelf by nothing", "[glue-line]")
{
    // 4 mm wide and 10 deep: 400 mm² of long grain at the bottom, 2 x 1000 mm² of the panel's end grain beside it.
    const auto bead = [](double width) {
        const std::string text = on_board(part_text("bead", {100, width, 14}, "y", "z", "[200, 0, 10]"),
                                          joint_text("bead", "panel", "housing", "PVA"));
        return finding_of(content_of(text).findings, "glue-line", "bead / panel");
    };
    for (const double width : {3.0, 4.0, 4.9, 5.1, 12.0}) {
        CAPTURE(width);
        const Finding f = bead(width);
        CHECK(f.headline.find("end grain only") == std::string::npos);
        CHECK_THAT(value_of(f, "area"), WithinAbs(width * 1e-3 * 0.100, kTenthOfMm2));
        CHECK_THAT(value_of(f, "end_grain_area"), WithinAbs(2 * 0.010 * 0.100, kTenthOfMm2));
    }
    // A shelf's end in a housing that stops short of the front: the strip at the stop is long grain, and is no glue line to count on.
    const std::string shelf = design({
        still_head(true),
        wood_text("northern red oak"),
        part_text("side", {500, 300, 20}, "z", "x", "[0, 0, 0]"),
        part_text("shelf", {400, 270, 20}, "x", "z", "[12, 30, 200]"),
        joint_text("shelf", "side", "housing", "PVA"),
    });
    const Finding f = finding_of(content_of(shelf).findings, "glue-line", "shelf / side");
    CHECK(value_of(f, "area") == 0);
    CHECK_THAT(f.headline, ContainsSubstring("end grain"));
}

TEST_CASE("Of the word used for a joint nothing hangs: geometry tells which grain meets which", "[glue-line]")
{
    for (const char* kind : {"edge", "face", "butt"}) {
        CAPTURE(kind);
        CHECK(finding_of(content_of(butted(kind)).findings, "glue-line").verdict == Verdict::fail);
    }
}

TEST_CASE("A tenon is held by its two cheeks; its shoulder is end grain and no fault", "[glue-line]")
{
    const auto tenoned = [](const char* sizes) {
        const std::string text = design({
            still_head(true),
            wood_text("white oak", ""),
            part_text("post", {500, 50, 50}, "z", "y", "[0, 0, 0]"),
            part_text("rail", {300, 70, 24}, "x", "y", "{ left = 50, front = 10, top = 450 }"),
            joint_text("rail", "post", "tenon", "PVA", sizes),
        });
        return finding_of(content_of(text).findings, "glue-line", "rail / post");
    };
    const Finding f = tenoned("tenon = { length = 30, width = 50, thickness = 8 }");
    CHECK_THAT(value_of(f, "area"), WithinAbs(2 * 0.030 * 0.050, kTenthOfMm2));
    CHECK(value_of(f, "end_grain_area") > 0);
    CHECK(f.verdict == Verdict::pass);
    const Finding unknown = tenoned("");
    CHECK(unknown.verdict == Verdict::cannot_tell);
    CHECK_THAT(unknown.headline, ContainsSubstring("sizes are missing"));
}

TEST_CASE("A mitre without a key warns", "[glue-line]")
{
    const std::string text = design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("top", {300, 40, 20}, "x", "z", "[0, 0, 0]"),
        part_text("side", {300, 40, 20}, "y", "z", "[0, 0, 0]"),
        joint_text("top", "side", "mitre", "PVA"),
    });
    const Finding f = finding_of(content_of(text).findings, "glue-line", "top / side");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(value_of(f, "area"), WithinRel(0.040 * std::numbers::sqrt2 * 0.020, 1e-6));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("key, spline or dowel"));
}

TEST_CASE("A part that hangs from its glue always warns", "[glue-line]")
{
    const std::string text = design({
        head_text({.wall = {"cleat"}, .driest = 5.4, .dampest = 11.9, .made = 9}),
        wood_text("white oak", ""),
        part_text("shelf", {500, 100, 20}, "x", "z", "[0, 0, 0]"),
        part_text("cleat", {500, 30, 30}, "x", "z", "[0, 0, 20]"),
        joint_text("shelf", "cleat", "face", "PVA"),
        load_text("pans", "shelf", 60, "[250, 50]", "patch = [100, 80]\nlasting = true"),
    });
    const Finding f = finding_of(content_of(text).findings, "glue-line", "shelf / cleat");
    CHECK(f.verdict == Verdict::warn);
    CHECK(value_of(f, "tension_stress") > 0);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("ledge under it"));
}

TEST_CASE("Glue of a wood without strength figures cannot be judged", "[glue-line]")
{
    std::string text = lipping();
    text.replace(text.find("species = \"northern red oak\"\n"), 29,
                 "properties = { modulus = \"12 GPa\", tangential = 0.003, radial = 0.0015 }\n");
    CHECK(finding_of(content_of(text).findings, "glue-line").verdict == Verdict::cannot_tell);
}
