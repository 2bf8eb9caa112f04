// stands: a stated joint that reaches only some of the copies that it could.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// Two legs and a rail that ends `gap` short of the right one.
std::string short_rail(double gap, double tenon_length, const std::string& leg_more = "")
{
    return design({head_text({}), wood_text("white oak"),
                   part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]", "copies = [ { at = [540, 0, 0] } ]\n" + leg_more),
                   part_text("rail", {500 - gap, 70, 20}, "x", "y", "[40, 8, 300]"),
                   joint_text("rail", "leg", "tenon", "PVA",
                              fmt::format("tenon = {{ length = {}, width = 50, thickness = 8 }}", tenon_length))});
}

std::vector<Finding> missed(const std::vector<Finding>& findings)
{
    std::vector<Finding> found;
    for (const Finding& f : findings)
        if (f.check == "stands" && has_value(f, "gap")) found.push_back(f);
    return found;
}
std::vector<Finding> missed(const std::string& text) { return missed(run_check("stands", bench_of(text)->prepared)); }

} // namespace

TEST_CASE("A rail half an inch short of one leg is the first thing told", "[stands][missed]")
{
    const auto findings = content_of(short_rail(12.7, 25)).findings;
    const Finding& f = findings.front();
    CHECK(f.check == "stands");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "gap"), WithinAbs(0.0127, 1e-9));
    CHECK_THAT(f.headline, ContainsSubstring("rail #1 and leg #2 stand 12.7 mm apart along x"));
    CHECK_THAT(f.remedy.words(), ContainsSubstring("12.7 mm along x"));
}

TEST_CASE("A joint is missed up to a tenon's length away", "[stands][missed]")
{
    CHECK(missed(short_rail(0, 25)).empty());
    CHECK(missed(short_rail(0.05, 25)).empty()); // touches
    CHECK(missed(short_rail(0.2, 25)).size() == 1);
    CHECK(missed(short_rail(24.9, 25)).size() == 1);
    CHECK(missed(short_rail(25.1, 25)).empty());
}

TEST_CASE("A rail that a tapered leg has shrunk away from is missed by the gap there", "[stands][missed]")
{
    // The right leg's left side slopes from x = 540 at z = 400 to 560 at z = 0; the rail's top is at 370: 1.5 mm away there, its least.
    const auto one =
        design({head_text({}), wood_text("white oak"),
                part_text("leg", {400, 40, 50}, "z", "y", "[540, 0, 0]",
                          "copies = [ { at = [0, 0, 0] } ]\n"
                          "taper = { end = \"bottom\", width = 20, thickness = 50, over = 400, flat = [\"right\"] }"),
                part_text("rail", {500, 70, 20}, "x", "y", "[40, 8, 300]"),
                joint_text("rail", "leg", "tenon", "PVA", "tenon = { length = 15, width = 50, thickness = 8 }")});
    const auto found = missed(one);
    REQUIRE(found.size() == 1);
    CHECK_THAT(value_of(found[0], "gap"), WithinAbs(0.0015, 2e-5));
}

TEST_CASE("A third rail that the slats are not meant to reach is no miss", "[stands][missed]")
{
    // Two rails under the slats, a third of the same part `lower` below them.
    const auto slats = [](double lower) {
        return design(
            {head_text({}), wood_text("white oak"),
             part_text("rail", {600, 60, 22}, "x", "y", "[0, 0, 300]",
                       fmt::format("copies = [ {{ at = [0, 300, 300] }}, {{ at = [0, 150, {}] }} ]", 300 - lower)),
             part_text("slat", {340, 50, 18}, "y", "z", "[20, 0, 360]", "repeat = { count = 5, along = \"x\", gap = 60 }"),
             joint_text("slat", "rail", "screws", "", "screws = { diameter = 4, length = 40, count = 1 }")});
    };
    CHECK(missed(slats(30)).empty());
    CHECK(missed(slats(10)).size() == 1);
}

TEST_CASE("What something else stands between is no miss", "[stands][missed]")
{
    // Two liners 5 thick, 3 mm apart, each with its cleat: the first cleat is 8 mm from the second liner, behind its own.
    const auto cleats = [](double liner) {
        return design(
            {head_text({}), wood_text("white oak"),
             part_text("liner", {500, 200, 5}, "z", "x", "[0, 0, 0]", fmt::format("copies = [ {{ at = [8, 0, {}] }} ]", liner)),
             part_text("cleat", {200, 30, 20}, "y", "x", "[-20, 0, 100]", "copies = [ { at = [13, 0, 100] } ]"),
             joint_text("cleat", "liner", "screws", "", "screws = { diameter = 3, length = 24, count = 2 }")});
    };
    CHECK(missed(cleats(0)).empty());
}

TEST_CASE("Boards of one part that nearly touch only warn", "[stands][missed]")
{
    // Four boards in a row, glued in pairs: 2 mm between the pairs may be meant.
    const auto found = missed(design({head_text({}), wood_text("white oak"),
                                      part_text("board", {500, 80, 20}, "x", "z", "[0, 0, 0]",
                                                "copies = [ { at = [0, 80, 0] }, { at = [0, 162, 0] }, { at = [0, 242, 0] } ]"),
                                      joint_text("board", "board", "edge", "PVA")}));
    REQUIRE(found.size() == 1);
    CHECK(found[0].verdict == Verdict::warn);
    CHECK_FALSE(found[0].comes_first);
}
