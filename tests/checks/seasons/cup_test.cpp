// cup: boards that go hollow, free or held flat.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <cmath>

using namespace checked;

namespace {

constexpr const char* kBoard = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "$rings"
[[part]]
id = "board"
wood = "oak"
length = 800
width = $width
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 100]
$more
)";

/// Two rails under the board's ends, across it.
constexpr const char* kRails = R"(
[[part]]
id = "rail"
wood = "oak"
length = 300
width = 60
thickness = 22
grain = "y"
face = "x"
at = [40, 0, 40]
repeat = { count = $count, along = "x", gap = 650 }
[[joint]]
between = ["board", "rail"]
kind = "$kind"
)";

/// Dries by 3.6 points, swells by 0.5. From 10 % the rule within 6 to 14 % holds.
std::string head() { return fill(std::string(kStill), {{"driest", "6.4"}, {"dampest", "10.5"}, {"made", "10"}}); }

std::string board(const std::string& rings, const std::string& width, const std::string& more = "")
{
    return head() + fill(kBoard, {{"rings", rings}, {"width", width}, {"more", more}});
}

Finding cup(const std::string& design) { return finding_of(content_of(design).findings, "cup", "board"); }

} // namespace

TEST_CASE("A wide flat-sawn board cups by the exact map, with the default radius unless it is stated", "[check-cup]")
{
    const Finding usual = cup(board("flat", "200"));
    CHECK_THAT(value_of(usual, "cup_driest"), WithinAbs(0.00059, 0.000005)); // r 100 mm
    CHECK_THAT(value_of(usual, "ring_radius"), WithinAbs(0.100, 1e-12));
    const Finding outer = cup(board("flat", "200", "ring_radius = 300"));
    CHECK_THAT(value_of(outer, "cup_driest"), WithinAbs(0.00024, 0.000005));
    CHECK(value_of(outer, "cup_dampest") < value_of(outer, "cup_driest") / 5);
    CHECK(usual.verdict == Verdict::pass);
    CHECK_THAT(*usual.utilisation, WithinRel(0.59, 0.01)); // of 1 mm
    CHECK_FALSE(usual.sources.empty());
    const auto says = [](const Finding& f, const std::string& words) {
        return std::any_of(f.working.begin(), f.working.end(),
                           [&](const WorkingStep& step) { return step.says.find(words) != std::string::npos; });
    };
    CHECK(says(usual, "the default is taken"));
    CHECK_FALSE(says(outer, "the default is taken"));
    const ReportContent content = content_of(board("flat", "200"));
    CHECK(std::any_of(content.assumed.begin(), content.assumed.end(), [](const std::string& line) {
        return line.find("Ring radius is not stated: 100 mm") != std::string::npos;
    }));
}

TEST_CASE("Drying makes a board hollow on its bark side, whichever way that lies", "[check-cup]")
{
    CHECK_THAT(cup(board("flat", "200")).headline, ContainsSubstring("hollow on its bark side"));
    CHECK_THAT(cup(board("flat", "200", "bark_side = \"top\"")).headline, ContainsSubstring("hollow on its top, the bark side"));
    CHECK_THAT(cup(board("flat", "200", "bark_side = \"bottom\"")).headline,
               ContainsSubstring("hollow on its bottom, the bark side"));
    // Made dry, it swells: hollow on the pith side.
    const std::string damp = fill(std::string(kStill), {{"driest", "6"}, {"dampest", "12"}, {"made", "6.5"}});
    const Finding swollen = cup(damp + fill(kBoard, {{"rings", "flat"}, {"width", "200"}, {"more", "bark_side = \"top\""}}));
    CHECK_THAT(swollen.headline,
               ContainsSubstring("at the dampest (12 %)") && ContainsSubstring("hollow on its bottom, the pith side"));
}

TEST_CASE("A mirrored copy has its bark side the other way", "[check-cup]")
{
    const std::string design = fill(board("flat", "200", "bark_side = \"top\"\nmirror = [\"z\"]"), {});
    const std::string sized =
        design.substr(0, design.find("use = ")) + "size = [800, 200, 400]\n" + design.substr(design.find("use = "));
    const auto bench = bench_of(sized);
    CHECK(bench->piece.copies.at(1).mirrored.at(2));
    CHECK_THAT(finding_of(run_check("cup", bench->prepared), "cup", "board").headline,
               ContainsSubstring("hollow on its top, the bark side")); // #1 stands for both
}

TEST_CASE("A rift board cups less, a quarter-sawn one and a square post are not boards that cup", "[check-cup]")
{
    const std::string far = "ring_radius = 1000"; // narrow against it: the cup goes with cos³
    const double flat = value_of(cup(board("flat", "100", far)), "cup_driest"),
                 rift = value_of(cup(board("rift", "100", far)), "cup_driest");
    CHECK_THAT(rift / flat, WithinRel(std::pow(std::sqrt(0.5), 3), 0.03));
    CHECK(value_of(cup(board("rift", "100")), "cup_driest") < value_of(cup(board("flat", "100")), "cup_driest"));
    CHECK(count_of(content_of(board("quarter", "200")).findings, "cup") == 0);
    CHECK(count_of(content_of(board("flat", "39")).findings, "cup") == 0);
    CHECK(count_of(content_of(board("flat", "40")).findings, "cup") == 1);
}

TEST_CASE("A board on edge cups over its thickness, by the angle of its rings to that", "[check-cup]")
{
    // Drawn with a width of 20 and a thickness of 200; its wide face is quarter-sawn when the narrow one is flat-sawn.
    const std::string design = head() + fill(fill(kBoard, {{"rings", "quarter"}, {"width", "20"}, {"more", ""}}), {});
    std::string on_edge = design;
    on_edge.replace(on_edge.find("thickness = 20"), 14, "thickness = 200");
    CHECK_THAT(value_of(cup(on_edge), "cup_driest"), WithinRel(value_of(cup(board("flat", "200")), "cup_driest"), 1e-9));
    on_edge.replace(on_edge.find("\"quarter\""), 9, "\"flat\"");
    CHECK(count_of(content_of(on_edge).findings, "cup") == 0);
}

TEST_CASE("Boards of a glued-up panel cup each by itself", "[check-cup]")
{
    const Finding panel = cup(board("flat", "800", "glued_up = { boards = 4 }"));
    CHECK_THAT(value_of(panel, "cup_driest"), WithinRel(value_of(cup(board("flat", "200")), "cup_driest"), 1e-9));
    CHECK_THAT(panel.headline, ContainsSubstring("Each of the 4 boards"));
    CHECK(panel.headline.find("turn every other") == std::string::npos);
    CHECK_THAT(cup(board("flat", "800", "glued_up = { boards = 4 }\nbark_side = \"top\"")).headline,
               ContainsSubstring("turn every other board over"));
}

TEST_CASE("A table top is judged more strictly, and a very wide swing fails a free board", "[check-cup]")
{
    std::string design = board("flat", "200");
    const std::size_t use = design.find("use = \"none\"");
    design.replace(use, 12, "use = \"panel\"");
    const Finding strict = cup(design);
    CHECK(strict.verdict == Verdict::warn);
    REQUIRE(strict.remedy);
    CHECK_THAT(strict.remedy.words(), ContainsSubstring("quarter-sawn") && ContainsSubstring("battens"));
    const std::string wet = fill(std::string(kStill), {{"driest", "6"}, {"dampest", "12"}, {"made", "25"}});
    CHECK(cup(wet + fill(kBoard, {{"rings", "flat"}, {"width", "350"}, {"more", ""}})).verdict == Verdict::fail);
}

TEST_CASE("Two rails hold a board flat when it is fastened to them; one, or two that merely touch, do not", "[check-cup]")
{
    const std::string wide = board("flat", "300");
    const auto on = [&](const std::string& count, const std::string& kind) {
        return cup(wide + fill(kRails, {{"count", count}, {"kind", kind}}));
    };
    const Finding held = on("2", "screws\"\nscrews = { diameter = 4, length = 40, count = 3, slot = 6 }\n#");
    CHECK_THAT(held.headline, ContainsSubstring("is held flat by rail #1 and rail #2"));
    CHECK(held.verdict == Verdict::pass);
    const Finding touching = on("2", "butt");
    CHECK_THAT(touching.headline, !ContainsSubstring("held flat"));
    CHECK(touching.verdict == Verdict::warn);
    CHECK_THAT(on("1", "buttons").headline, !ContainsSubstring("held flat"));
    CHECK_THAT(value_of(held, "cup_driest"), WithinRel(value_of(touching, "cup_driest"), 1e-12)); // what it would do free
}

TEST_CASE("Without movement figures cup cannot be told", "[check-cup]")
{
    std::string design = board("flat", "200");
    design.replace(design.find("species = \"red oak\""), 19, "properties = { modulus = \"12 GPa\", density = \"700 kg/m3\" }");
    const Finding f = cup(design);
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK_THAT(f.headline, ContainsSubstring("movement coefficient"));
}
