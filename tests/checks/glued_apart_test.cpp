// cross-grain: boards glued in two places that a frame keeps apart.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A top on two long aprons, 460 mm apart from middle to middle, that legs and end aprons hold together.
std::string table(const char* glue, bool ends = true, const char* glued = "")
{
    const char* tenon = "tenon = { length = 40, width = 60, thickness = 6 }";
    return design({
        still_head(true),
        wood_text("red oak"),
        part_text("top", {1200, 600, 25}, "x", "z", "[0, 0, 700]"),
        part_text("apron", {1000, 90, 20}, "x", "y", "[100, 60, 610]", "copies = [ { at = [100, 520, 610] } ]"),
        part_text("leg", {680, 60, 60}, "z", "x", "[40, 40, 0]",
                  "copies = [ { at = [1100, 40, 0] }, { at = [40, 500, 0] }, { at = [1100, 500, 0] } ]"),
        part_text("end apron", {400, 90, 20}, "y", "x", "[60, 100, 580]", "copies = [ { at = [1120, 100, 580] } ]"),
        joint_text("apron", "leg", "tenon", "PVA", tenon),
        ends ? joint_text("end apron", "leg", "tenon", "PVA", tenon) : "",
        joint_text("top", "apron", "face", glue, glued),
    });
}

Finding top_on_apron(const std::string& text) { return finding_of(content_of(text).findings, "cross-grain", "top / apron"); }

/// Red oak across the grain less along it, 9 to 5.4 %.
constexpr double kLoss = 3.6 / (1 / 0.00369 - 1) - 0.00005 * 3.6;

} // namespace

TEST_CASE("A top glued to the front and the back apron is held across its grain by the frame", "[cross-grain]")
{
    const Finding f = top_on_apron(table("PVA"));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "glued_length"), WithinAbs(0.460, 1e-9)); // from middle to middle of the aprons
    CHECK_THAT(value_of(f, "differential_movement"), WithinAbs(0.460 * kLoss, 1e-8));
    CHECK_THAT(f.headline, ContainsSubstring("apron #1") && ContainsSubstring("apron #2") && ContainsSubstring("460 mm"));
    CHECK_THAT(*f.remedy, ContainsSubstring("one of the two only"));
}

TEST_CASE("Glued in spots it is held all the same, glued to one apron only or without a frame it is free", "[cross-grain]")
{
    CHECK(top_on_apron(table("PVA", true, "glued = { length = 100, at = \"middle\" }")).verdict == Verdict::fail);
    // Nothing ties the front of the frame to its back.
    CHECK(top_on_apron(table("PVA", false)).verdict == Verdict::pass);
    std::string one = table("PVA");
    one.replace(one.find("[\"top\", \"apron\"]"), 16, "[\"top\", \"apron #1\"]");
    one += joint_text("top", "apron #2", "buttons", "", "buttons = { count = 3 }");
    CHECK(top_on_apron(one).verdict == Verdict::pass);
}

TEST_CASE("A case whose sides move with its shelves holds nothing back", "[cross-grain]")
{
    // Rails along the front and back edge of a shelf; the sides run upright and move from front to back as the shelf does.
    const auto findings = content_of(*testing::shared_facts().text("patterns/dado-bookcase.toml")).findings;
    for (const Finding& f : findings)
        if (f.check == "cross-grain") {
            CAPTURE(f.subject, f.headline);
            CHECK(f.headline.find("keeps") == std::string::npos);
        }
}

TEST_CASE("A stretcher that runs askew is not held across its grain by its ends", "[cross-grain]")
{
    const std::string text =
        table("") +
        part_text("stretcher", {1170, 40, 20}, "x", "z", "[15, 280, 200]", "turn = { about = \"z\", degrees = 23.5 }") +
        joint_text("stretcher", "leg", "housing", "PVA");
    const Finding f = finding_of(content_of(text).findings, "cross-grain", "stretcher / leg");
    CHECK(f.headline.find("a frame keeps") == std::string::npos);
    CHECK(value_of(f, "differential_movement") < 0.001);
}
