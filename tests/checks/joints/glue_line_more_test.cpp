// glue-line, further: end grain beside a block that holds, peeling, the ends of long faces, and a loose fit.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A rail that meets the edge of a panel with its end, and what is `more`.
std::string butted(const std::string& more = "")
{
    return design({
        still_head(true),
        wood_text("northern red oak"),
        part_text("panel", {500, 100, 20}, "x", "z", "[0, 0, 0]"),
        part_text("rail", {300, 60, 20}, "y", "z", "{ left = 200, front = 100, bottom = 0 }"),
        joint_text("rail", "panel", "butt", "PVA"),
        more,
    });
}

} // namespace

TEST_CASE("End grain beside a glued block is no fault of the connection", "[glue-line]")
{
    const std::string block = part_text("block", {60, 60, 20}, "y", "z", "[200, 70, 20]"),
                      to_panel = joint_text("block", "panel", "face", "PVA"),
                      to_rail = joint_text("block", "rail", "face", "PVA");
    const Finding bare = finding_of(content_of(butted()).findings, "glue-line", "rail / panel");
    CHECK(bare.verdict == Verdict::fail);
    const Finding held = finding_of(content_of(butted(block + to_panel + to_rail)).findings, "glue-line", "rail / panel");
    CHECK(held.verdict == Verdict::pass);
    CHECK_THAT(held.headline, ContainsSubstring("block"));
    // A block that is glued to the rail alone holds nothing to the panel.
    CHECK(finding_of(content_of(butted(block + to_rail)).findings, "glue-line", "rail / panel").verdict == Verdict::fail);
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
    const double peeled = value_of(f, "peel_stress") / value_of(f, "tension_resistance");
    CHECK_THAT(*f.utilisation, WithinRel(std::max(peeled, value_of(f, "use_without_peel")), 1e-6));
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
    const auto pushed = [](const std::string& direction) {
        const std::string text = design({
            still_head(true),
            wood_text("northern red oak"),
            part_text("panel", {500, 200, 30}, "x", "z", "[0, 0, 0]"),
            part_text("strip", {120, 40, 15}, "x", "z", "[190, 80, 30]"),
            joint_text("strip", "panel", "face", "resorcinol"),
            load_text("stop", "strip", 40, "[250, 100, 37.5]", "lasting = true\ndirection = " + direction),
        });
        return finding_of(content_of(text).findings, "glue-line", "strip / panel");
    };
    const Finding along = pushed("[1, 0, 0]"), across = pushed("[0, 1, 0]");
    CHECK_FALSE(has_value(along, "resistance_rolling"));
    REQUIRE(has_value(across, "resistance_rolling"));
    CHECK(value_of(across, "resistance") == value_of(along, "resistance"));
    CHECK_THAT(value_of(across, "resistance_rolling"), WithinRel(value_of(across, "resistance") / 3, 1e-3));
}
