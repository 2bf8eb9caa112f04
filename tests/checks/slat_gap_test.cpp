// slat-gap: gaps in a row of like parts, through the year.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// Five slats 70 mm wide, side by side.
constexpr const char* kRow = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "slat"
wood = "oak"
length = 600
width = 70
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
repeat = { count = 5, along = "y", gap = $gap }
)";

std::string row(const std::string& gap, const std::string& more = "")
{
    return still_head(true) + fill(kRow, {{"gap", gap}}) + more;
}
Finding gap_finding(const std::string& text) { return finding_of(content_of(text).findings, "slat-gap", "slat"); }

// A slat of red oak, 70 mm, made at 9 %, room 5.4 to 11.9 % (see seasonal_size_test.cpp for the two rules).
constexpr double kSwells = 0.070 * 0.00369 * 2.9, kShrinks = 0.070 * 3.6 / (1 / 0.00369 - 1);
constexpr double kNanometre = 1e-9;

} // namespace

TEST_CASE("A gap changes by the width of one slat: half from each neighbour", "[slat-gap]")
{
    const Finding f = gap_finding(row("5"));
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.005, kNanometre));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.005 - kSwells, kNanometre));
    CHECK_THAT(value_of(f, "gap_driest"), WithinAbs(0.005 + kShrinks, kNanometre));
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.working.empty());
}

TEST_CASE("A gap that closes fails and says how wide to make it", "[slat-gap]")
{
    const Finding f = gap_finding(row("0.7"));
    CHECK(f.verdict == Verdict::fail);
    CHECK(value_of(f, "gap_dampest") < 0);
    CHECK(*f.utilisation > 1);
    REQUIRE(f.remedy);
    CHECK_THAT(*f.remedy, ContainsSubstring("1.7 mm")); // 0.75 mm of swelling and 1 mm left
}

TEST_CASE("A gap that is left too narrow warns", "[slat-gap]")
{
    CHECK(gap_finding(row("1.5")).verdict == Verdict::warn);
    CHECK(gap_finding(row("1.8")).verdict == Verdict::pass);
}

TEST_CASE("Gaps of 7 to 12 mm in any season can trap fingers", "[slat-gap]")
{
    for (const char* gap : {"6.5", "8", "12", "12.7"}) {
        CAPTURE(gap);
        const Finding f = gap_finding(row(gap));
        CHECK(f.verdict == Verdict::warn);
        CHECK_THAT(f.headline, ContainsSubstring("trap a finger"));
    }
    CHECK(gap_finding(row("6")).verdict == Verdict::pass);    // 6.93 mm at the driest
    CHECK(gap_finding(row("12.8")).verdict == Verdict::pass); // 12.05 mm at the dampest
}

TEST_CASE("Gaps wanted by the design are judged in every season", "[slat-gap]")
{
    CHECK(gap_finding(row("5", "[limits]\ngap_min = 4.5\n")).verdict == Verdict::warn);
    CHECK(gap_finding(row("5", "[limits]\ngap_min = 4\n")).verdict == Verdict::pass);
    CHECK(gap_finding(row("5", "[limits]\ngap_max = 5.5\n")).verdict == Verdict::warn);
    CHECK(gap_finding(row("5", "[limits]\ngap_max = 6\n")).verdict == Verdict::pass);
}

TEST_CASE("Boards laid tight and dry press on each other when they swell", "[slat-gap]")
{
    CHECK(gap_finding(row("0")).verdict == Verdict::fail);
}

TEST_CASE("What is no row of slats has no gaps", "[slat-gap]")
{
    const auto gaps = [](const std::string& text) { return count_of(content_of(text).findings, "slat-gap"); };
    SECTION("boards glued edge to edge")
    {
        CHECK(gaps(row("0", "[[joint]]\nbetween = [\"slat\", \"slat\"]\nkind = \"edge\"\nglue = \"PVA\"\n")) == 0);
    }
    SECTION("parts that stand far apart") { CHECK(gaps(row("150")) == 0); }
    SECTION("a gap that another part fills")
    {
        const std::string filler = R"(
[[part]]
id = "spline"
wood = "oak"
length = 600
width = 20
thickness = 5
grain = "x"
face = "y"
at = [0, 70, 0]
repeat = { count = 4, step = [0, 75, 0] }
)";
        CHECK(gaps(row("5", filler)) == 0);
    }
}
