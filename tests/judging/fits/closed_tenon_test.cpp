// bind: loose tenons and the tongues of breadboard ends, across their own width.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <cmath>

using namespace checked;

namespace {

/// A field of boards 500 mm wide with an end across it; the tongue is $tongue wide.
constexpr const char* kBreadboard = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "field"
wood = "oak"
length = 600
width = 500
thickness = 22
grain = "x"
face = "z"
at = [60, 0, 0]
[[part]]
id = "end"
wood = "oak"
length = 500
width = 60
thickness = 22
grain = "y"
face = "z"
at = [0, 0, 0]
[[joint]]
between = ["field", "end"]
kind = "tenon"
tenon = { length = 25, width = $tongue, thickness = 8 }
$more
)";

constexpr const char* kInTheMiddle = "glue = \"PVA\"\nglued = { length = 70, at = \"middle\" }\n";

std::vector<Finding> all_of(const std::string& more, const char* tongue = "460")
{
    return content_of(still_head(true) + fill(kBreadboard, {{"tongue", tongue}, {"more", more}})).findings;
}
Finding breadboard(const std::string& more, const char* tongue = "460")
{
    return finding_of(all_of(more, tongue), "bind", "field / end");
}

/// Growth of flat-sawn red oak from 9 to 11.9 %, less that of the end along its grain; and what it loses down to 5.4 %.
constexpr double kGrowth = (0.00369 - 0.00005) * 2.9, kLoss = 3.6 / (1 / 0.00369 - 1) - 0.00005 * 3.6;
constexpr double kNanometre = 1e-9;

} // namespace

TEST_CASE("Where no clearance is stated the mortise of a breadboard end is told its length today", "[bind]")
{
    const Finding f = breadboard(kInTheMiddle);
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.utilisation);
    // 230 mm from the glue to either end: 2.43 mm of growth and 0.1 mm left, up to the next half millimetre.
    CHECK_THAT(value_of(f, "room_each_end_today"), WithinAbs(0.003, kNanometre));
    CHECK_THAT(f.headline, ContainsSubstring("466 mm long today, 3 mm beyond the tenon at either end"));
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.006, kNanometre));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.006 - 0.460 * kGrowth, kNanometre));
    CHECK_THAT(value_of(f, "gap_driest"), WithinAbs(0.006 + 0.460 * kLoss, kNanometre));
    CHECK_THAT(value_of(f, "moisture_made"), WithinAbs(9, kNanometre));
    const auto content = content_of(still_head(true) + fill(kBreadboard, {{"tongue", "460"}, {"more", kInTheMiddle}}));
    const auto tells = [](const std::vector<std::string>& lines, const char* words) {
        return std::any_of(lines.begin(), lines.end(), [&](const std::string& l) { return l.find(words) != std::string::npos; });
    };
    CHECK(tells(content.assumed, "mortises are cut longer than their tenons"));
    CHECK(tells(content.cut_today, "460 mm long and 3 mm more at each closed end"));
}

TEST_CASE("A breadboard end says how far the boards stand past it", "[bind]")
{
    const Finding f = breadboard(kInTheMiddle);
    CHECK_THAT(value_of(f, "stands_past_dampest"), WithinAbs(0.250 * kGrowth, kNanometre));
    CHECK_THAT(value_of(f, "stands_past_driest"), WithinAbs(-0.250 * kLoss, kNanometre));
    CHECK_THAT(f.headline, ContainsSubstring("field stands 2.64 mm past end"));
}

TEST_CASE("A stated clearance at the ends of a tongue is judged", "[bind]")
{
    const auto with = [](const char* clearance) { return breadboard(std::string(kInTheMiddle) + "clearance = " + clearance); };
    const Finding ample = with("2.6"); // 2.43 mm of growth at either end
    CHECK(ample.verdict == Verdict::pass);
    CHECK_THAT(value_of(ample, "gap_dampest"), WithinAbs(0.0052 - 0.460 * kGrowth, kNanometre));
    CHECK(*ample.utilisation < 1);
    CHECK(with("2.45").verdict == Verdict::warn); // under 0.1 mm left at either end
    const Finding tight = with("1");
    CHECK(tight.verdict == Verdict::warn); // pressed by 2.86 mm of 460: 0.6 %
    CHECK_THAT(value_of(tight, "squeeze"), WithinAbs(kGrowth - 0.002 / 0.460, kNanometre));
    const Finding crushed = with("0.05");
    CHECK(crushed.verdict == Verdict::fail);
    CHECK(*crushed.utilisation > 1);
    CHECK_THAT(crushed.remedy.words(), ContainsSubstring("466 mm long today"));
}

TEST_CASE("Held at one edge, all of the growth goes to the other end of the mortise", "[bind]")
{
    const Finding f = breadboard("glue = \"PVA\"\nglued = { length = 70, at = \"front\" }");
    // The glue covers the front 70 mm of the shoulder; from its middle to the tongue's back edge: 480 − 35 mm.
    CHECK(value_of(f, "room_each_end_today") > 0.445 * kGrowth + 0.0001 - kNanometre);
    CHECK(value_of(f, "room_each_end_today") < 0.445 * kGrowth + 0.0007);
    CHECK_THAT(value_of(f, "stands_past_dampest"), WithinAbs(0.465 * kGrowth, kNanometre));
}

TEST_CASE("A tongue as long as its end runs through it: nothing stops it", "[bind]")
{
    CHECK(count_of(all_of(kInTheMiddle, "500"), "bind") == 0);
}

TEST_CASE("Pegs that reach the ends of their slots warn", "[bind]")
{
    // Three pegs; the outer ones 460/3 mm from the middle move 1.6 mm when damp and 2.0 when dry.
    const auto pegged = [](const char* slot) {
        return breadboard(std::string(kInTheMiddle) + "pegs = { diameter = 6, count = 3, slot = " + slot + " }");
    };
    const Finding ample = pegged("6");
    CHECK(ample.verdict == Verdict::pass);
    CHECK_THAT(value_of(ample, "peg_travel_left"), WithinAbs(0.003 - 0.460 / 3 * kLoss, kNanometre));
    const Finding closed = pegged("3");
    CHECK(closed.verdict == Verdict::warn);
    CHECK_THAT(closed.headline, ContainsSubstring("pegs reach the ends of their slots"));
    CHECK_THAT(closed.remedy.words(), ContainsSubstring("slot-length"));
}

TEST_CASE("A dry tenon shifts in its mortise, a glued one is held by its glue", "[bind]")
{
    const Finding dry = breadboard("");
    CHECK_THAT(value_of(dry, "gap_made") - value_of(dry, "gap_dampest"), WithinAbs(0.460 * kGrowth, kNanometre));
    const Finding glued = breadboard("glue = \"PVA\"\nclearance = 0.05");
    CHECK(glued.verdict == Verdict::pass);
    CHECK_FALSE(glued.utilisation);
    CHECK_THAT(glued.headline, ContainsSubstring("held across its width by its glue"));
}

TEST_CASE("A dry tenon without sizes cannot be told to bind or not", "[bind]")
{
    std::string text = still_head(true) + fill(kBreadboard, {{"tongue", "460"}, {"more", ""}});
    const std::string sizes = "tenon = { length = 25, width = 460, thickness = 8 }\n";
    text.erase(text.find(sizes), sizes.size());
    const Finding f = finding_of(content_of(text).findings, "bind", "field / end");
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK_THAT(f.headline, ContainsSubstring("sizes are missing"));
}

TEST_CASE("The tongues of boards glued to each other move from where one of them is held", "[bind]")
{
    // Five boards of 100 mm with a tongue of 80 mm each; the middle one is pegged, the others are dry.
    const auto findings = content_of(still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "board"
wood = "oak"
length = 600
width = 100
thickness = 22
grain = "x"
face = "z"
at = [60, 0, 0]
repeat = { count = 5, along = "y", gap = 0 }
[[part]]
id = "end"
wood = "oak"
length = 500
width = 60
thickness = 22
grain = "y"
face = "z"
at = [0, 0, 0]
[[joint]]
between = ["board", "board"]
kind = "edge"
glue = "PVA"
[[joint]]
between = ["board #3", "end"]
kind = "tenon"
tenon = { length = 25, width = 80, thickness = 8 }
pegs = { diameter = 6, count = 1 }
[[joint]]
between = ["board #1", "end"]
kind = "tenon"
tenon = { length = 25, width = 80, thickness = 8 }
clearance = 2
)")
                              .findings;
    const Finding f = finding_of(findings, "bind", "board / end");
    // Board #1's tongue ends 240 and 160 mm from the middle: swelling takes it 2.53 mm to its outer stop, where 2 are free; shrinking
    // 2.14 mm to its inner one.
    CHECK_THAT(*f.where, ContainsSubstring("board #1 on end"));
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(2 * (0.002 - 0.240 * kGrowth), kNanometre));
}

TEST_CASE("A tenon held at the very end that is closed has nothing to press with", "[bind]")
{
    // The tongue runs out at the front and is pegged at its back edge, the only closed end.
    std::string text = still_head(true) +
                       fill(kBreadboard, {{"tongue", "500"}, {"more", "clearance = 0.1\npegs = { diameter = 6, count = 1 }"}});
    text.replace(text.find("length = 500\nwidth = 60"), 12, "length = 760");
    const Finding f = finding_of(content_of(text).findings, "bind", "field / end");
    CHECK(std::isfinite(value_of(f, "squeeze")));
    CHECK(std::isfinite(value_of(f, "gap_dampest")));
    text.replace(text.find("count = 1"), 9, "count = 2, inset = 0");
    const Finding pegged = finding_of(content_of(text).findings, "bind", "field / end");
    CHECK(value_of(pegged, "squeeze") == 0);
    CHECK(pegged.verdict <= Verdict::warn);
}
