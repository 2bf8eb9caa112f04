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

/// Red oak across the grain less along it, 9 to 5.4 %; flat-sawn legs with their face to the side are wide from front to back.
constexpr double kLoss = 3.6 / (1 / 0.00369 - 1) - 0.00005 * 3.6;

} // namespace

TEST_CASE("A top glued to the front and the back apron is held across its grain by the frame", "[cross-grain]")
{
    const Finding f = top_on_apron(table("PVA"));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "glued_length"), WithinAbs(0.460, 1e-9)); // from middle to middle of the aprons
    // The aprons stand in the middles of the legs; of the 460 mm between them the end aprons are 400 and move along their grain, and twice half a leg,
    // 30 mm, moves across its grain as the top does.
    CHECK_THAT(value_of(f, "differential_movement"), WithinAbs(0.400 * kLoss, 1e-7));
    CHECK_THAT(f.headline, ContainsSubstring("apron #1") && ContainsSubstring("apron #2") && ContainsSubstring("460 mm"));
    CHECK_THAT(f.remedy.words(), ContainsSubstring("one of the two only"));
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

TEST_CASE("Rails tied by solid sides that swell as the top does hold nothing back, by a runner along the grain they do",
          "[cross-grain]")
{
    // A chest: front and back rail under the top, glued to it, tenoned into sides of solid boards, 500 mm from front to back. A cleat along the foot of one
    // side runs from front to back and is tied to nothing else.
    const auto chest = [](const char* more, const char* sides = "flat") {
        return design({
            still_head(true),
            wood_text("red oak"),
            fmt::format("[[wood]]\nid = \"sides\"\nspecies = \"red oak\"\nrings = \"{}\"\n", sides),
            part_text("top", {900, 500, 20}, "x", "z", "[0, 0, 800]"),
            "[[part]]\nid = \"side\"\nwood = \"sides\"\nlength = 800\nwidth = 500\nthickness = 20\ngrain = \"z\"\nface = \"x\"\n"
            "at = [0, 0, 0]\ncopies = [ { at = [880, 0, 0] } ]\n",
            part_text("rail", {860, 60, 20}, "x", "z", "[20, 10, 780]", "copies = [ { at = [20, 430, 780] } ]"),
            joint_text("rail", "side", "tenon", "PVA", "tenon = { length = 14, width = 45, thickness = 7 }"),
            joint_text("top", "rail", "face", "PVA", "glued = { length = 50, at = \"middle\" }"),
            more,
        });
    };
    const auto apart = [&](const std::string& text) {
        for (const Finding& f : content_of(text).findings)
            if (f.check == "cross-grain" && f.headline.find(" apart, and across its grain") != std::string::npos)
                return value_of(f, "differential_movement");
        return 0.0;
    };
    CHECK(apart(chest("")) == 0);
    // A cleat along the foot of one side, glued at its middle only: it keeps nothing apart up at the rails.
    const std::string cleat = part_text("cleat", {480, 30, 20}, "y", "x", "[20, 10, 20]") +
                              joint_text("cleat", "side #1", "face", "PVA", "glued = { length = 40, at = \"middle\" }");
    CHECK(apart(chest(cleat.c_str())) == 0);
    // A runner from rail to rail, along its grain, does: 420 mm lie between the middles of the rails, 360 of them are its own, twice 30 mm of rail.
    const std::string runner = part_text("runner", {360, 60, 20}, "y", "z", "[400, 70, 780]") +
                               joint_text("runner", "rail", "tenon", "PVA", "tenon = { length = 14, width = 45, thickness = 7 }");
    const double held = apart(chest(runner.c_str()));
    CHECK(held > 0.25 * 0.360 * kLoss); // the sides pull the rails in as well
    CHECK(held < 0.360 * kLoss);
    // Quartered sides lose 0.43 of what the flat-sawn top does: 420 mm of the difference.
    const double quartered = 3.6 / (1 / 0.00369 - 1) - 3.6 / (1 / 0.00158 - 1);
    CHECK_THAT(apart(chest("", "quarter")), WithinAbs(0.420 * quartered, 0.02 * 0.420 * quartered));
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
