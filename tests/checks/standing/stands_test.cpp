// stands: parts that touch nothing, or hang in the air.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A board on two posts, and whatever else.
std::string trestle(const std::string& more = "")
{
    return design({
        still_head(true),
        wood_text("white oak", ""),
        part_text("post", {400, 40, 40}, "z", "y", "[0, 0, 0]", "copies = [ { at = [560, 0, 0] } ]"),
        part_text("board", {600, 40, 20}, "x", "z", "[0, 0, 400]"),
        more,
    });
}

std::string block(int y, int z) { return part_text("block", {60, 40, 20}, "x", "z", fmt::format("[200, {}, {}]", y, z)); }
std::vector<Finding> stands(const std::string& more) { return content_of(trestle(more)).findings; }

} // namespace

TEST_CASE("A piece whose parts all rest on each other stands", "[stands]")
{
    const auto findings = stands("");
    CHECK(finding_of(findings, "stands", "Test piece").verdict == Verdict::pass);
}

TEST_CASE("A part that touches nothing warns", "[stands]")
{
    const auto findings = stands(block(0, 300));
    const Finding& f = finding_of(findings, "stands");
    CHECK(f.subject == "block");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(f.headline, ContainsSubstring("touches nothing"));
    CHECK(f.remedy);
}

TEST_CASE("A dry face does not hold a part on the side of another", "[stands]")
{
    const std::string beside = block(40, 400);
    CHECK_THAT(finding_of(stands(beside), "stands", "block").headline, ContainsSubstring("hangs on nothing"));
    const std::string glued = beside + joint_text("block", "board", "edge", "PVA");
    CHECK(finding_of(stands(glued), "stands").verdict == Verdict::pass);
}

TEST_CASE("A piece on the wall hangs on the parts that are screwed to it", "[stands]")
{
    std::string text = trestle();
    text.replace(text.find("use = \"none\""), 12, "use = \"none\"\nwall = [\"post\"]");
    CHECK(finding_of(content_of(text).findings, "stands").verdict == Verdict::pass);
    text.replace(text.find("wall = [\"post\"]"), 15, "wall = [\"post #1\"]");
    // The board still reaches the wall over its first post; the second post stands below it and hangs on it dry.
    CHECK(finding_of(content_of(text).findings, "stands").verdict == Verdict::pass);
}

TEST_CASE("A piece that a stated load tips over falls, however little the breadth of its feet would hold it in the sums",
          "[stands]")
{
    const auto pushed = [](double force) {
        const std::string text = design({
            still_head(true),
            wood_text("white oak", ""),
            part_text("leg", {400, 60, 60}, "z", "y", "[0, 0, 0]",
                      "copies = [ { at = [340, 0, 0] }, { at = [0, 340, 0] }, { at = [340, 340, 0] } ]"),
            part_text("seat", {400, 400, 40}, "x", "z", "[0, 0, 400]"),
            joint_text("leg", "seat", "tenon", "PVA", "tenon = { length = 30, width = 40, thickness = 40 }"),
            load_text("pull", "seat", force, "[200, 200, 420]", "direction = [1, 0, 0]"),
        });
        return content_of(text).findings;
    };
    // About 8.7 kg: W 0.17 m/0.42 m = 35 N is what it bears.
    CHECK(finding_of(pushed(25), "stands").verdict == Verdict::pass);
    const auto over = pushed(60);
    const Finding& f = finding_of(over, "stands");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("topples"));
    for (const Finding& other : over) CHECK((other.check != "sag" || other.verdict == Verdict::pass)); // what falls has no sag
}
