// Sizes that cannot well be meant are asked about, with what may have been meant; sound pieces are left in peace.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <algorithm>

using namespace checked;

namespace {

bool asks(const ReportContent& content, const std::string& words)
{
    return std::any_of(content.assumed.begin(), content.assumed.end(),
                       [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("A piece drawn ten times too large is asked about, by its weight and by the height of its seat", "[checks][doubts]")
{
    const ReportContent content = content_of(design({
        head_text({.name = "Bench", .use = "seat", .carries = {"seat"}}),
        wood_text("white oak"),
        part_text("seat", {9400, 3200, 270}, "x", "z", "{ left = 0, front = 0, top = 4500 }"),
        part_text("board", {4340, 3200, 380}, "z", "x", "{ left = 400, front = 0, bottom = 0 }",
                  "copies = [{ at = { right = 9000, front = 0, bottom = 0 } }]"),
        joint_text("board", "seat", "sliding dovetail", "PVA"),
    }));
    CHECK(asks(content, "which is much for furniture: was a digit too many written?"));
    CHECK(asks(content, "he seat is 4500 mm above the floor, more than anyone sits at"));
    REQUIRE(!content.assumed.empty());
    CHECK(content.assumed.front().find("weighs") != std::string::npos); // first of all
}

TEST_CASE("No example is asked about its sizes", "[checks][doubts]")
{
    for (const std::string& path : testing::shared_facts().paths_under("designs")) {
        INFO(path);
        const ReportContent content = content_of(*testing::shared_facts().text(path));
        for (const char* words : {"much for furniture", "more than anyone sits at", "as thin as veneer", "more than a plank"})
            CHECK_FALSE(asks(content, words));
    }
}

TEST_CASE("Veneer and planks longer than trees give are asked about", "[checks][doubts]")
{
    const auto board = [](const std::string& length, const std::string& thickness) {
        return content_of(fill(R"([piece]
name = "Board"
units = "mm"
use = "none"
[room]
air = "heated, cold winters"
moisture_at_glue_up = 9
[[wood]]
id = "w"
species = "white oak"
[[part]]
id = "board"
wood = "w"
length = $length
width = 100
thickness = $thickness
grain = "x"
face = "z"
at = [0, 0, 0]
)",
                               {{"length", length}, {"thickness", thickness}}));
    };
    CHECK(asks(board("900", "0.5"), "oard is 0.5 mm thick, as thin as veneer: are its sizes in inches or centimetres?"));
    CHECK(asks(board("14000", "20"), "more than a plank is sold in"));
    CHECK_FALSE(asks(board("900", "20"), "?"));
}
