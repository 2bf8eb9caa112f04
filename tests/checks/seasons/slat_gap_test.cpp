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
    CHECK_THAT(f.remedy.words(), ContainsSubstring("1.7 mm")); // 0.75 mm of swelling and 1 mm left
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

TEST_CASE("Beside a leg a gap takes half of the slat's growth and half of the leg's", "[slat-gap]")
{
    const auto beside = [](const std::string& place, const std::string& more = "") {
        return content_of(row("5") +
                          "[[part]]\nid = \"leg\"\nwood = \"oak\"\nrings = \"quarter\"\nlength = 400\nwidth = 60\n"
                          "thickness = 60\ngrain = \"z\"\nface = \"x\"\nat = [0, " +
                          place + ", -380]\n" + more)
            .findings;
    };
    // Five slats of 70 mm and four gaps of 5 mm: the last ends at 370 mm. The leg's width runs along y, radially.
    const Finding f = finding_of(beside("375"), "slat-gap", "slat / leg");
    const double leg_damp = 0.060 * 0.00158 * 2.9, leg_dry = 0.060 * 3.6 / (1 / 0.00158 - 1);
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.005, kNanometre));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.005 - (kSwells + leg_damp) / 2, kNanometre));
    CHECK_THAT(value_of(f, "gap_driest"), WithinAbs(0.005 + (kShrinks + leg_dry) / 2, kNanometre));
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(*f.where, ContainsSubstring("slat #5 and leg"));
    CHECK(finding_of(beside("370.4"), "slat-gap", "slat / leg").verdict == Verdict::fail);
    CHECK(finding_of(beside("379"), "slat-gap", "slat / leg").verdict == Verdict::warn); // 9 mm: a finger trap
    CHECK(count_of(beside("396"), "slat-gap") == 1);                                     // 26 mm: no matter
    // A leg that ends under the slats is not beside them.
    CHECK(count_of(beside("375", "[[part]]\nid = \"post\"\nwood = \"oak\"\nlength = 300\nwidth = 60\nthickness = 60\n"
                                 "grain = \"z\"\nface = \"x\"\nat = [300, 375, -300]\n"),
                   "slat-gap") == 2);
}

TEST_CASE("The gap and the slat to cut today are told, also where all is well", "[slat-gap]")
{
    const Finding well = gap_finding(row("5"));
    CHECK_THAT(value_of(well, "gap_today"), WithinAbs(0.005, kNanometre));
    CHECK_THAT(value_of(well, "gap_least_today"), WithinAbs(0.001 + kSwells, kNanometre));
    CHECK_THAT(value_of(well, "slat_width_today"), WithinAbs(0.070, kNanometre));
    CHECK_THAT(value_of(well, "moisture_made"), WithinAbs(9, 1e-9));
    CHECK_THAT(value_of(well, "moisture_driest"), WithinAbs(5.4, 1e-9));
    CHECK_THAT(value_of(well, "moisture_dampest"), WithinAbs(11.9, 1e-9));

    const Finding closed = gap_finding(row("0.7"));
    CHECK_THAT(value_of(closed, "gap_today"), WithinAbs(0.001 + kSwells, kNanometre));
    CHECK_THAT(value_of(closed, "slat_width_today"), WithinAbs(0.070 + 0.0007 - 0.001 - kSwells, kNanometre));

    // The nearer way out of the finger trap: under 7 mm when driest, or over 12 mm when dampest.
    CHECK_THAT(value_of(gap_finding(row("8")), "gap_today"), WithinAbs(0.0065 - kShrinks, kNanometre));
    CHECK_THAT(value_of(gap_finding(row("12")), "gap_today"), WithinAbs(0.0125 + kSwells, kNanometre));
}

TEST_CASE("A gap that adults' fingers pass may still catch a child's", "[slat-gap]")
{
    CHECK_THAT(gap_finding(row("5")).headline, ContainsSubstring("young children"));
    CHECK(gap_finding(row("3")).headline.find("children") == std::string::npos);
}
