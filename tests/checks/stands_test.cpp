// stands: parts that touch nothing, or hang in the air.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A board on two posts, and whatever else.
constexpr const char* kTrestle = R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "post"
wood = "oak"
length = 400
width = 40
thickness = 40
grain = "z"
face = "y"
at = [0, 0, 0]
copies = [ { at = [560, 0, 0] } ]
[[part]]
id = "board"
wood = "oak"
length = 600
width = 40
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 400]
)";

constexpr const char* kBlock = R"(
[[part]]
id = "block"
wood = "oak"
length = 60
width = 40
thickness = 20
grain = "x"
face = "z"
at = [200, $y, $z]
)";

std::string block(const std::string& y, const std::string& z) { return fill(kBlock, {{"y", y}, {"z", z}}); }
std::vector<Finding> stands(const std::string& more) { return content_of(still_head(true) + kTrestle + more).findings; }

} // namespace

TEST_CASE("A piece whose parts all rest on each other stands", "[stands]")
{
    const auto findings = stands("");
    CHECK(finding_of(findings, "stands", "Test piece").verdict == Verdict::pass);
}

TEST_CASE("A part that touches nothing warns", "[stands]")
{
    const auto findings = stands(block("0", "300"));
    const Finding& f = finding_of(findings, "stands");
    CHECK(f.subject == "block");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(f.headline, ContainsSubstring("touches nothing"));
    CHECK(f.remedy);
}

TEST_CASE("A dry face does not hold a part on the side of another", "[stands]")
{
    const std::string beside = block("40", "400");
    CHECK_THAT(finding_of(stands(beside), "stands", "block").headline, ContainsSubstring("hangs on nothing"));
    const std::string glued = beside + "[[joint]]\nbetween = [\"block\", \"board\"]\nkind = \"edge\"\nglue = \"PVA\"\n";
    CHECK(finding_of(stands(glued), "stands").verdict == Verdict::pass);
}

TEST_CASE("A piece on the wall hangs on the parts that are screwed to it", "[stands]")
{
    std::string text = still_head(true) + kTrestle;
    text.replace(text.find("use = \"none\""), 12, "use = \"none\"\nwall = [\"post\"]");
    CHECK(finding_of(content_of(text).findings, "stands").verdict == Verdict::pass);
    text.replace(text.find("wall = [\"post\"]"), 15, "wall = [\"post #1\"]");
    // The board still reaches the wall over its first post; the second post stands below it and hangs on it dry.
    CHECK(finding_of(content_of(text).findings, "stands").verdict == Verdict::pass);
}

TEST_CASE("A piece that a stated load tips over falls, however little the breadth of its feet would hold it in the sums",
          "[stands]")
{
    const auto pushed = [](const std::string& force) {
        return content_of(still_head(true) + fill(R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "leg"
wood = "oak"
length = 400
width = 60
thickness = 60
grain = "z"
face = "y"
at = [0, 0, 0]
copies = [ { at = [340, 0, 0] }, { at = [0, 340, 0] }, { at = [340, 340, 0] } ]
[[part]]
id = "seat"
wood = "oak"
length = 400
width = 400
thickness = 40
grain = "x"
face = "z"
at = [0, 0, 400]
[[joint]]
between = ["leg", "seat"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 40, thickness = 40 }
[[load]]
name = "pull"
on = "seat"
force = "$force N"
direction = [1, 0, 0]
at = [200, 200, 420]
)",
                                                  {{"force", force}}))
            .findings;
    };
    // About 8.7 kg: W 0.17 m/0.42 m = 35 N is what it bears.
    CHECK(finding_of(pushed("25"), "stands").verdict == Verdict::pass);
    const auto over = pushed("60");
    const Finding& f = finding_of(over, "stands");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("topples"));
    for (const Finding& other : over) CHECK((other.check != "sag" || other.verdict == Verdict::pass)); // what falls has no sag
}
