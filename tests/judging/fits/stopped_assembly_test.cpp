// bind: doors and other assemblies of several parts in the opening of a case.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <fmt/format.h>

using namespace checked;

namespace {

/// An inset door of white oak, 396 mm wide and 596 high, in a case whose opening is `wide` by `high`: stiles 70 and 50 mm wide, a top rail of 60 and a
/// bottom rail of 90 mm, tenons. The case: red oak, sides tenoned to a top and a bottom that run from left to right.
struct Inset {
    double wide = 398, high = 598;
    const char* stile_rings = "flat";
    bool case_joined = true;
    const char* door_glue = "PVA";
    double left_gap = 1, bottom_gap = 1;
    bool hung = false; ///< on hinges at the left
};

std::string inset(const Inset& d)
{
    const double x = 20 + d.left_gap, z = 20 + d.bottom_gap; // lower left corner of the door
    const std::string board = "tenon = { length = 12, width = 200, thickness = 7 }";
    const std::string tenon = "tenon = { length = 35, width = 40, thickness = 7 }";
    return design({
        still_head(true),
        wood_text("red oak"),
        fmt::format("[[wood]]\nid = \"door wood\"\nspecies = \"white oak\"\nrings = \"{}\"\n", d.stile_rings),
        part_text("side", {d.high + 40, 250, 20}, "z", "x", "[0, 0, 0]",
                  fmt::format("copies = [ {{ at = [{}, 0, 0] }} ]", 20 + d.wide)),
        part_text("floor", {d.wide, 250, 20}, "x", "z", "[20, 0, 0]",
                  fmt::format("copies = [ {{ at = [20, 0, {}] }} ]", 20 + d.high)),
        d.case_joined ? joint_text("floor", "side", "tenon", "PVA", board) : "",
        fmt::format(
            "[[part]]\nid = \"left stile\"\nwood = \"door wood\"\nlength = 596\nwidth = 70\nthickness = 22\ngrain = \"z\"\n"
            "face = \"y\"\nat = [{}, 0, {}]\n",
            x, z),
        fmt::format(
            "[[part]]\nid = \"right stile\"\nwood = \"door wood\"\nlength = 596\nwidth = 50\nthickness = 22\ngrain = \"z\"\n"
            "face = \"y\"\nat = [{}, 0, {}]\n",
            x + 346, z),
        fmt::format(
            "[[part]]\nid = \"bottom rail\"\nwood = \"door wood\"\nlength = 276\nwidth = 90\nthickness = 22\ngrain = \"x\"\n"
            "face = \"y\"\nat = [{}, 0, {}]\n",
            x + 70, z),
        fmt::format("[[part]]\nid = \"top rail\"\nwood = \"door wood\"\nlength = 276\nwidth = 60\nthickness = 22\ngrain = \"x\"\n"
                    "face = \"y\"\nat = [{}, 0, {}]\n",
                    x + 70, z + 536),
        joint_text("bottom rail", "left stile", "tenon", d.door_glue, tenon),
        joint_text("bottom rail", "right stile", "tenon", d.door_glue, tenon),
        joint_text("top rail", "left stile", "tenon", d.door_glue, tenon),
        joint_text("top rail", "right stile", "tenon", d.door_glue, tenon),
        d.hung ? joint_text("left stile", "side #1", "hinge", "", fmt::format("hinges = {{ count = 2, gap = {} }}", d.left_gap))
               : "",
    });
}

/// The finding of the door from left to right, of whichever stile it is told.
std::vector<Finding> jams(const Inset& d)
{
    std::vector<Finding> found;
    for (Finding& f : content_of(inset(d)).findings)
        if (f.check == "bind" && f.subject.find(" / ") == std::string::npos) found.push_back(std::move(f));
    return found;
}

const Finding& level(const std::vector<Finding>& findings)
{
    for (const Finding& f : findings)
        if (f.where->find("left to right") != std::string::npos) return f;
    throw std::logic_error("nothing from left to right" + list_of(findings));
}

// White oak, made at 9 % and 11.9 % at the dampest: flat 0.00365, quartered 0.00180 per point; 0.00005 along the grain.
constexpr double kFlat = 0.00365 * 2.9, kQuarter = 0.00180 * 2.9, kAlong = 0.00005 * 2.9;

/// Growth beyond the opening's, which moves along the grain of floor and top: two unlike stiles, and 276 mm of rails along their grain.
double growth(double across) { return (0.070 + 0.050) * across + 0.276 * kAlong - 0.398 * kAlong; }

} // namespace

TEST_CASE("A framed door in its opening moves by the sum of what its members move across", "[bind]")
{
    const auto findings = jams({});
    const Finding& f = level(findings);
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.002, 1e-9));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.002 - growth(kFlat), 2e-7));
    CHECK(f.verdict == Verdict::pass); // 1.25 mm of the two
    CHECK(value_of(f, "gap_driest") > 0.002);
}

TEST_CASE("A door with a millimetre in all jams in the damp season, quarter-sawn stiles do not", "[bind]")
{
    const Inset tight{397, 598, "flat", true, "PVA", 0.3, 1};
    const auto findings = jams(tight);
    const Finding& f = level(findings);
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline,
               ContainsSubstring("jams at the dampest") && ContainsSubstring("side #1") && ContainsSubstring("side #2"));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.001 - (0.120 * kFlat + 0.276 * kAlong - 0.397 * kAlong), 2e-7));
    CHECK(f.subject == "left stile"); // the wider of the two moves more
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("395.5 mm")); // 396 − 0.25 − 0.2, down to half a millimetre
    Inset sawn = tight;
    sawn.stile_rings = "quarter";
    const auto quartered = jams(sawn);
    CHECK_THAT(value_of(level(quartered), "gap_dampest"),
               WithinAbs(0.001 - (0.120 * kQuarter + 0.276 * kAlong - 0.397 * kAlong), 2e-7));
    CHECK(level(quartered).verdict == Verdict::pass);
}

TEST_CASE("Up and down a door moves by half its rails beyond their tenons, no more", "[bind]")
{
    // The tenons sit in the middles of the rails' widths: 45 mm of the bottom rail and 30 of the top rail lie outside them, the stiles between, along
    // their grain. Of the case the sides move along theirs, 618 mm from tenon to tenon, less half the thickness of floor and top, radially.
    const auto findings = jams({});
    const Finding* upright = nullptr;
    for (const Finding& f : findings)
        if (f.where->find("up and down") != std::string::npos) upright = &f;
    REQUIRE(upright);
    CHECK_THAT(value_of(*upright, "gap_dampest"),
               WithinAbs(0.002 - (0.075 * kFlat + 0.521 * kAlong) + 0.618 * kAlong - 0.020 * 0.00158 * 2.9, 2e-7));
    CHECK(upright->verdict == Verdict::pass);
    // With 0.5 mm in all it jams upwards, while it has its room from left to right.
    const auto tight = jams({398, 596.5, "flat", true, "PVA", 1, 0.2});
    bool jammed = false;
    for (const Finding& f : tight)
        jammed = jammed || (f.verdict == Verdict::fail && f.headline.find("up and down") != std::string::npos);
    CHECK(jammed);
    CHECK(level(tight).verdict == Verdict::pass);
}

TEST_CASE("Hinges keep the room on their side; what a hung door grows goes to its latch side", "[bind]")
{
    // 1 mm at the hinges, 0.3 at the latch: 1.3 in all for 1.25 mm of growth, of which a hung door has only the 0.3.
    Inset door{397.3, 598, "flat", true, "PVA", 1, 1};
    const double grows = 0.120 * kFlat + 0.276 * kAlong - 0.3973 * kAlong;
    const auto loose = jams(door);
    CHECK_THAT(value_of(level(loose), "gap_dampest"), WithinAbs(0.0013 - grows, 2e-7));
    CHECK(level(loose).verdict == Verdict::warn);
    door.hung = true;
    const auto hung = jams(door);
    CHECK_THAT(value_of(level(hung), "gap_dampest"), WithinAbs(0.0003 - grows, 2e-7));
    CHECK(level(hung).verdict == Verdict::fail);
    Inset roomy{399, 598, "flat", true, "PVA", 1, 1, true};
    const auto free = jams(roomy);
    CHECK(level(free).verdict == Verdict::pass);
}

TEST_CASE("Sides of a case that nothing ties stop no door", "[bind]")
{
    Inset loose{397, 598, "flat", false, "PVA", 0.3, 1};
    CHECK(jams(loose).empty());
}
