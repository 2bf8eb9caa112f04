// bind: parts fitted by hand, and loose parts and drawers between two stops.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

constexpr double kNanometre = 1e-9;

/// A loose board of red oak, $size wide, lying between two rails 200 mm apart that two ties hold together.
constexpr const char* kBetween = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "board"
wood = "oak"
length = 500
width = $size
thickness = 20
grain = "x"
face = "z"
at = [100, $front, 30]
[[part]]
id = "rail"
wood = "oak"
length = 700
width = 60
thickness = 20
grain = "x"
face = "y"
at = [0, 0, 0]
copies = [ { at = [0, 220, 0] } ]
$ties
)";

constexpr const char* kTiedRails = R"(
[[part]]
id = "tie"
wood = "oak"
length = 200
width = 40
thickness = 20
grain = "y"
face = "x"
at = [0, 20, 0]
copies = [ { at = [680, 20, 0] } ]
[[joint]]
between = ["tie", "rail"]
kind = "butt"
glue = "PVA"
)";

std::vector<Finding> between(const std::string& size, const std::string& front, const char* ties = kTiedRails)
{
    return content_of(still_head(true) + fill(kBetween, {{"size", size}, {"front", front}, {"ties", ties}})).findings;
}

/// Growth of the board to 11.9 %, less that of the ties along their grain, for each metre of its width.
constexpr double kGrowth = (0.00369 - 0.00005) * 2.9, kTieGrowth = 0.00005 * 2.9;

/// A panel in a groove, or a key in a housing, of red oak: $thick thick in the groove.
constexpr const char* kFitted = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "$rings"
[[part]]
id = "panel"
wood = "oak"
length = 400
width = 300
thickness = 10
grain = "z"
face = "y"
at = [43, 6, 0]
[[part]]
id = "stile"
wood = "oak"
rings = "flat"
length = 400
width = 50
thickness = 22
grain = "z"
face = "y"
at = [0, 0, 0]
[[joint]]
between = ["panel", "stile"]
kind = "groove"
groove = { depth = 10 }
$clearance
)";

Finding fitted(const std::string& rings, const std::string& clearance)
{
    return finding_of(content_of(still_head(true) + fill(kFitted, {{"rings", rings}, {"clearance", clearance}})).findings, "bind",
                      "panel / stile");
}

} // namespace

TEST_CASE("A panel fitted to the width of its groove by hand passes with a word", "[bind]")
{
    // Both are flat-sawn: through the thickness they move alike.
    const Finding same = fitted("flat", "");
    CHECK(same.verdict == Verdict::pass);
    CHECK_THAT(same.headline, ContainsSubstring("by hand"));
    CHECK_FALSE(same.remedy);
    // Rift panel, flat stile: of what the panel grows more, under 0.5 % springs back.
    const Finding rift = fitted("rift", "");
    const double squeeze = value_of(rift, "squeeze");
    CHECK_THAT(squeeze, WithinAbs((0.00369 - 0.00158) / 2 * 2.9, 1e-9));
    CHECK(squeeze < 0.005);
    CHECK(rift.verdict == Verdict::pass);
    CHECK_THAT(*rift.utilisation, WithinAbs(squeeze / 0.005, 1e-6));
}

TEST_CASE("A panel that grows by more than springs back warns, whether its clearance is stated or not", "[bind]")
{
    const Finding quarter = fitted("quarter", "");
    CHECK(value_of(quarter, "squeeze") > 0.005);
    CHECK(quarter.verdict == Verdict::warn);
    REQUIRE(quarter.remedy);
    CHECK_THAT(quarter.remedy.words(), ContainsSubstring("clearance ="));
    // More room is never worse than less.
    double last = 1e9;
    for (const char* clearance : {"", "clearance = 0.01", "clearance = 0.02", "clearance = 0.05", "clearance = 0.25"}) {
        CAPTURE(clearance);
        const Finding f = fitted("quarter", clearance);
        CHECK(value_of(f, "squeeze") <= last);
        last = value_of(f, "squeeze");
        const bool springs_back = value_of(f, "squeeze") <= 0.005;
        CHECK((f.verdict == Verdict::pass) == springs_back);
    }
    CHECK(last == 0);
}

TEST_CASE("A loose board between two stops sticks when its room closes", "[bind]")
{
    const Finding f = finding_of(between("198", "21"), "bind", "board");
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.002, kNanometre));
    // The opening is 200 mm of ties, 2 mm more than the board.
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.002 - 0.198 * kGrowth + 0.002 * kTieGrowth, kNanometre));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("than rail #1 and rail #2 leave it: it sticks"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("today (at 9 %)"));

    // 2.08 mm of growth: 0.1 mm left of 2.2 warns, 0.9 of 3 passes.
    CHECK(finding_of(between("197.8", "21"), "bind", "board").verdict == Verdict::warn);
    CHECK(finding_of(between("197", "21.5"), "bind", "board").verdict == Verdict::pass);
}

TEST_CASE("The width that a stuck board is told to have today passes", "[bind]")
{
    const Finding f = finding_of(between("198", "21"), "bind", "board");
    const std::string key = "make board ";
    const double width = std::stod(f.remedy.words().substr(f.remedy.words().find(key) + key.size()));
    CHECK(finding_of(between(std::to_string(width), "21"), "bind", "board").verdict == Verdict::pass);
}

TEST_CASE("A board drawn touching at both sides is judged by its squeeze", "[bind]")
{
    const Finding f = finding_of(between("200", "20"), "bind", "board");
    CHECK_THAT(value_of(f, "squeeze"), WithinAbs(kGrowth, 1e-6));
    CHECK(f.verdict == Verdict::fail); // 1.06 %
}

TEST_CASE("Stops that nothing ties together do not hold, nor does a joint to the frame make a stop", "[bind]")
{
    CHECK(count_of(between("200", "20", ""), "bind") == 0);
    const std::string fastened =
        std::string(kTiedRails) + "[[joint]]\nbetween = [\"board\", \"rail\"]\nkind = \"edge\"\nglue = \"PVA\"\n";
    CHECK(count_of(between("200", "20", fastened.c_str()), "bind") == 0);
    CHECK(count_of(between("170.2", "34.9"), "bind") == 1); // 14.9 mm from either stop
    CHECK(count_of(between("169.8", "35.1"), "bind") == 0); // 15.1 mm: too far to run against
}

TEST_CASE("A drawer keeps its room in the opening of the starter design", "[bind]")
{
    const auto findings = content_of(*testing::shared_facts().text("patterns/drawer-in-opening.toml")).findings;
    for (const char* part : {"drawer front", "drawer side"}) {
        const Finding& f = finding_of(findings, "bind", part);
        CAPTURE(part);
        CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.002, kNanometre));
        CHECK(value_of(f, "gap_dampest") < 0.002);
        CHECK(f.verdict == Verdict::pass);
    }
}
