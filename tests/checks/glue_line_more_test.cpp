// glue-line, further: end grain beside a block that holds, peeling, the ends of long faces, and a loose fit.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A rail that meets the edge of a panel with its end, $block besides.
std::string butted(const char* block)
{
    return still_head(true) + fill(R"(
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
kind = "butt"
glue = "PVA"
$block
)",
                                   {{"block", block}});
}

constexpr const char* kBlock = R"(
[[part]]
id = "block"
wood = "oak"
length = 60
width = 60
thickness = 20
grain = "y"
face = "z"
at = [200, 70, 20]
[[joint]]
between = ["block", "panel"]
kind = "face"
glue = "PVA"
[[joint]]
between = ["block", "rail"]
kind = "face"
glue = "PVA"
)";

} // namespace

TEST_CASE("End grain beside a glued block is no fault of the connection", "[glue-line]")
{
    const Finding bare = finding_of(content_of(butted("")).findings, "glue-line", "rail / panel");
    CHECK(bare.verdict == Verdict::fail);
    const Finding held = finding_of(content_of(butted(kBlock)).findings, "glue-line", "rail / panel");
    CHECK(held.verdict == Verdict::pass);
    CHECK_THAT(held.headline, ContainsSubstring("block"));
    // A block that is glued to the rail alone holds nothing to the panel.
    std::string loose = kBlock;
    loose.erase(loose.find("[[joint]]"), loose.rfind("[[joint]]") - loose.find("[[joint]]"));
    CHECK(finding_of(content_of(butted(loose.c_str())).findings, "glue-line", "rail / panel").verdict == Verdict::fail);
}

TEST_CASE("Peeling by a lifted edge is checked apart and comes first", "[glue-line]")
{
    const Finding f = finding_of(content_of(built_in_design("window-seat-metric")).findings, "glue-line", "slat / bearer");
    REQUIRE(has_value(f, "peel_stress"));
    CHECK(value_of(f, "peel_stress") == value_of(f, "tension_stress"));
    CHECK_THAT(*f.utilisation, WithinRel(value_of(f, "peel_stress") / value_of(f, "tension_resistance"), 1e-9));
    CHECK(value_of(f, "use_without_peel") < *f.utilisation);
    bool told = false;
    for (const WorkingStep& step : f.working) told = told || step.says.find("Peeling, checked apart") != std::string::npos;
    CHECK(told);
}

TEST_CASE("The stress at the ends of a face is shown and not counted", "[glue-line]")
{
    const Finding f = finding_of(content_of(built_in_design("slats-2in-across-rail")).findings, "glue-line", "slat / long rail");
    REQUIRE(has_value(f, "end_peak"));
    CHECK(value_of(f, "end_peak") >= 1);
    CHECK_THAT(*f.utilisation, WithinRel(value_of(f, "shear_stress") / value_of(f, "resistance"), 1e-9));
}

TEST_CASE("A looser tenon leaves less of its glue, and a gap that is too wide none", "[glue-line][identity]")
{
    const auto used = [](const char* clearance) {
        std::string text = built_in_design("stool-seat-rail-tenons");
        const std::size_t at = text.find("tenon   = {");
        text.insert(at, std::string("clearance = ") + clearance + "\n");
        return finding_of(content_of(text).findings, "glue-line", "seat rail / leg");
    };
    const Finding close = used("0.05"), loose = used("0.3");
    CHECK(*loose.utilisation > *close.utilisation);
    CHECK_THAT(*loose.utilisation, WithinRel(2 * *close.utilisation, 1e-6)); // half way from 0.1 to 0.5 mm
}

TEST_CASE("A strip pushed across its grain rolls: a third of what it bears along it", "[glue-line]")
{
    const auto pushed = [](const char* direction) {
        return finding_of(content_of(still_head(true) + fill(R"(
[[wood]]
id = "oak"
species = "northern red oak"
rings = "flat"
[[part]]
id = "panel"
wood = "oak"
length = 500
width = 200
thickness = 30
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "strip"
wood = "oak"
length = 120
width = 40
thickness = 15
grain = "x"
face = "z"
at = [190, 80, 30]
[[joint]]
between = ["strip", "panel"]
kind = "face"
glue = "resorcinol"
[[load]]
name = "stop"
on = "strip"
force = "40 N"
direction = $direction
at = [250, 100, 37.5]
lasting = true
)",
                                                             {{"direction", direction}}))
                              .findings,
                          "glue-line", "strip / panel");
    };
    const Finding along = pushed("[1, 0, 0]"), across = pushed("[0, 1, 0]");
    CHECK_FALSE(has_value(along, "resistance_rolling"));
    REQUIRE(has_value(across, "resistance_rolling"));
    CHECK(value_of(across, "resistance") == value_of(along, "resistance"));
    CHECK_THAT(value_of(across, "resistance_rolling"), WithinRel(value_of(across, "resistance") / 3, 1e-3));
}
