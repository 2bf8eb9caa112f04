// seasonal-size: how wide and thick every part is when made, at the driest and at the dampest.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

constexpr const char* kBoard = R"(
[[wood]]
id = "wood"
$wood
[[part]]
id = "board"
wood = "wood"
length = 600
width = 300
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
)";

Finding board(const std::string& wood)
{
    return finding_of(content_of(still_head(true) + fill(kBoard, {{"wood", wood}})).findings, "seasonal-size", "board");
}

// Strains of red oak from 9 % (C 0.00369 and 0.00158, Wood Handbook table 13-5): to 11.9 % by the straight rule; to 5.4 %, outside 6 to 14 %,
// by the wider one, whose denominator is 1/C + 20 − 30 + 9.
constexpr double kTangentialDamp = 0.00369 * 2.9, kRadialDamp = 0.00158 * 2.9;
constexpr double kTangentialDry = -3.6 / (1 / 0.00369 - 1), kRadialDry = -3.6 / (1 / 0.00158 - 1);
constexpr double kNanometre = 1e-9;

} // namespace

TEST_CASE("A flat-sawn board moves tangentially across its face and radially through its thickness", "[seasonal-size]")
{
    const Finding f = board("species = \"red oak\"\nrings = \"flat\"");
    CHECK_THAT(value_of(f, "size_made"), WithinAbs(0.300, kNanometre));
    CHECK_THAT(value_of(f, "size_driest"), WithinAbs(0.300 * (1 + kTangentialDry), kNanometre));
    CHECK_THAT(value_of(f, "size_dampest"), WithinAbs(0.300 * (1 + kTangentialDamp), kNanometre));
    CHECK_THAT(value_of(f, "thickness_made"), WithinAbs(0.020, kNanometre));
    CHECK_THAT(value_of(f, "thickness_driest"), WithinAbs(0.020 * (1 + kRadialDry), kNanometre));
    CHECK_THAT(value_of(f, "thickness_dampest"), WithinAbs(0.020 * (1 + kRadialDamp), kNanometre));
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.utilisation);
    CHECK_THAT(f.headline, ContainsSubstring("300 mm") && ContainsSubstring("296 mm") && ContainsSubstring("303.21 mm"));
    CHECK_FALSE(f.working.empty());
}

TEST_CASE("A quarter-sawn board exchanges the two, one at 45 degrees takes their mean", "[seasonal-size]")
{
    const Finding quarter = board("species = \"red oak\"\nrings = \"quarter\"");
    CHECK_THAT(value_of(quarter, "size_dampest"), WithinAbs(0.300 * (1 + kRadialDamp), kNanometre));
    CHECK_THAT(value_of(quarter, "thickness_dampest"), WithinAbs(0.020 * (1 + kTangentialDamp), kNanometre));
    const Finding rift = board("species = \"red oak\"\nrings = \"rift\"");
    CHECK_THAT(value_of(rift, "size_dampest"), WithinAbs(0.300 * (1 + (kTangentialDamp + kRadialDamp) / 2), kNanometre));
}

TEST_CASE("A wood glued up at its own moisture starts from there", "[seasonal-size]")
{
    const Finding f = board("species = \"red oak\"\nrings = \"flat\"\nmoisture = 11.9");
    CHECK_THAT(value_of(f, "size_dampest"), WithinAbs(0.300, kNanometre));
    CHECK(value_of(f, "size_driest") < 0.300 * (1 + kTangentialDry));
    CHECK(value_of(f, "moisture_made") == 11.9);
}

TEST_CASE("Test values of the maker's own replace the table's one by one", "[seasonal-size]")
{
    const Finding f = board("species = \"red oak\"\nproperties = { tangential = 0.0040 }");
    CHECK_THAT(value_of(f, "size_dampest"), WithinAbs(0.300 * (1 + 0.0040 * 2.9), kNanometre));
    CHECK_THAT(value_of(f, "thickness_dampest"), WithinAbs(0.020 * (1 + kRadialDamp), kNanometre));
}

TEST_CASE("A wood without movement figures cannot be told, and what is missing is named", "[seasonal-size]")
{
    const Finding f = board("properties = { modulus = \"12 GPa\", density = \"700 kg/m3\" }");
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK(f.remedy);
    CHECK_THAT(f.headline, ContainsSubstring("movement coefficient"));
    CHECK(f.values.empty());
}

TEST_CASE("A row of slats moves by one slat, boards glued edge to edge by all of them", "[seasonal-size]")
{
    const auto row = [](const std::string& gap, const std::string& joint) {
        return content_of(R"(
[piece]
name = "row"
units = "mm"
use = "none"
[room]
driest = { moisture = 6 }
dampest = { moisture = 12 }
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "board"
wood = "oak"
length = 500
width = 50
thickness = 20
grain = "y"
face = "z"
at = [0, 0, 0]
repeat = { count = 4, along = "x", gap = )" +
                          gap + " }\n" + joint);
    };
    const double swell = 0.00365 * 4; // white oak, 8 to 12 %
    const auto apart = row("10", "").findings;
    CHECK_THAT(value_of(finding_of(apart, "seasonal-size", "board"), "row_made"), WithinRel(0.230, 1e-9));
    CHECK_THAT(value_of(finding_of(apart, "seasonal-size", "board"), "row_dampest"), WithinRel(0.230 + 0.050 * swell, 1e-9));
    const auto glued = row("0", "[[joint]]\nbetween = [\"board\", \"board\"]\nkind = \"edge\"\nglue = \"PVA\"\n").findings;
    CHECK_THAT(value_of(finding_of(glued, "seasonal-size", "board"), "row_dampest"), WithinRel(0.200 * (1 + swell), 1e-9));
}

TEST_CASE("The height of a stack adds up the parts that stand on each other", "[seasonal-size]")
{
    const auto content = content_of(R"(
[piece]
name = "stack"
units = "mm"
use = "none"
[room]
driest = { moisture = 6 }
dampest = { moisture = 12 }
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "leg"
wood = "oak"
length = 400
width = 40
thickness = 40
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "rail"
wood = "oak"
length = 600
width = 80
thickness = 20
grain = "x"
face = "y"
at = [0, 10, 400]
)");
    const Finding& f = finding_of(content.findings, "seasonal-size", "stack");
    CHECK_THAT(value_of(f, "size_made"), WithinRel(0.480, 1e-9));
    // The leg along its grain, 0.00005 per point; the rail across its width, flat-sawn: tangential.
    CHECK_THAT(value_of(f, "size_dampest"), WithinRel(0.480 + 0.400 * 0.00005 * 4 + 0.080 * 0.00365 * 4, 1e-9));
}

TEST_CASE("A panel glued up from boards of mixed cut adds up board by board", "[seasonal-size]")
{
    const auto findings = content_of(still_head(true) + R"(
[[wood]]
id = "oak"
species = "red oak"
[[part]]
id = "flat board"
wood = "oak"
rings = "flat"
length = 600
width = 120
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
copies = [ { at = [0, 200, 0] } ]
[[part]]
id = "quarter board"
wood = "oak"
rings = "quarter"
length = 600
width = 80
thickness = 20
grain = "x"
face = "z"
at = [0, 120, 0]
[[joint]]
between = ["flat board", "quarter board"]
kind = "edge"
glue = "PVA"
)")
                              .findings;
    const double growth = (0.240 * 0.00369 + 0.080 * 0.00158) * 2.9;
    for (const char* part : {"flat board", "quarter board"}) {
        const Finding f = finding_of(findings, "seasonal-size", part);
        CAPTURE(part, f.headline);
        CHECK_THAT(value_of(f, "panel_made"), WithinAbs(0.320, 1e-9));
        CHECK_THAT(value_of(f, "panel_dampest"), WithinAbs(0.320 + growth, 1e-9));
        CHECK_THAT(f.headline, ContainsSubstring("it makes a width of 320 mm"));
    }
}
