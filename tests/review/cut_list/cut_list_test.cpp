#include "catch.hpp"
#include "checks/checked.hpp"

#include "review/cut_list/cut_list.hpp"

#include <algorithm>

using namespace jointwright;

namespace {

std::string joint_lines_in(const std::string& design)
{
    const auto bench = checked::bench_of(design);
    std::string all;
    for (const std::string& line : cut_joint_lines(bench->piece, bench->layout.contacts, {}, bench->piece.units))
        all += line + "\n";
    return all;
}

std::string joint_lines_of(const char* design) { return joint_lines_in(checked::built_in_design(design)); }

} // namespace

TEST_CASE("Blanks carry their tenons, shoulders are told apart", "[cut-list]")
{
    const auto bench = checked::bench_of(checked::built_in_design("boot-bench"));
    const auto parts = cut_parts_of(bench->piece, bench->layout.contacts);
    REQUIRE(parts.size() == 4);
    CHECK(parts[1].id == "long rail");
    CHECK(parts[1].copies == 2);
    CHECK_THAT(parts[1].length_m, WithinAbs(42.25 * kMetresPerInch, 1e-9));
    CHECK_THAT(parts[1].shoulders_m, WithinAbs(40.75 * kMetresPerInch, 1e-9));
    CHECK(parts[3].tenons_m == 0);
    CHECK_THAT(parts[3].rounded_m, WithinAbs(kMetresPerInch / 8, 1e-9));
    const auto lines = cut_part_lines(parts, LengthUnit::inch);
    CHECK(lines[1] ==
          "2 × long rail: 42 1/4 in long, 3 in wide, 7/8 in thick (40 3/4 in between shoulders and 1 1/2 in of tenons)");
}

TEST_CASE("Joints are cut with their clearance, in the part that is cut", "[cut-list]")
{
    // A slat 1 3/4 in wide, 1/64 in of clearance on each side, 3/8 in into a rail 7/8 in thick.
    CHECK_THAT(joint_lines_of("boot-bench"), ContainsSubstring("slat / long rail, housing (34 places): in long rail 3/8 in deep, "
                                                               "1 25/32 in wide, 7/8 in long across the grain"));
    CHECK_THAT(joint_lines_of("boot-bench"),
               ContainsSubstring("side rail / leg, tenon (4 places): 7/8 in long, 2 1/4 in wide, 5/16 in "
                                 "thick; mortise in leg 5/16 in wide, 2 1/4 in long, at least 7/8 in deep"));
    CHECK_THAT(joint_lines_of("cabinet-door-damp-coast"),
               ContainsSubstring(
                   "panel / stile, groove (2 places): in stile 1/4 in deep, 17/64 in wide, 21 7/8 in long along the grain"));
    CHECK_THAT(joint_lines_of("cabinet-door-damp-coast"), ContainsSubstring("panel goes 3/16 in into it"));
    CHECK_THAT(
        joint_lines_of("wide-shelf-bookcase"),
        ContainsSubstring("shelf / side, housing (6 places): in side 6 mm deep, 18.2 mm wide, 240 mm long across the grain"));
    CHECK_THAT(joint_lines_of("drawer-bottom-glued-all-round"), ContainsSubstring("3 tails on side, slope 1 in 7"));
    CHECK_THAT(joint_lines_of("mirror-frame-wide-flat-sawn"), ContainsSubstring("mitre (2 places)"));
}

namespace {

bool any_line(const ReportContent& content, std::string_view words)
{
    return std::any_of(content.cut_today.begin(), content.cut_today.end(),
                       [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("Cut today goes from blanks to glue-up, each group where it starts", "[cut-list]")
{
    const ReportContent content = checked::content_of(checked::built_in_design("boot-bench"));
    REQUIRE(content.cut_groups.size() == 4);
    CHECK(content.cut_groups[0].heading == "Blanks");
    CHECK(content.cut_groups[0].first == 0);
    CHECK(content.cut_groups[1].first == content.cut_parts.size());
    CHECK(content.cut_groups[3].heading == "Glue-up");
    CHECK(content.cut_groups[3].first < content.cut_today.size());
    CHECK(content.cut_today[content.cut_groups[3].first].rfind("stage 1: side rail", 0) == 0);
    CHECK(any_line(content, "clamps for long rail / leg; side rail / leg: 1 at each place"));
    CHECK(any_line(content, "clamps at once: up to 12;"));
    CHECK(any_line(content, "clamped for 45 min at least"));
}

TEST_CASE("A mortise has its room for the seasons in its line, once", "[cut-list]")
{
    const ReportContent content = checked::content_of(checked::built_in_design("boot-bench"));
    CHECK(any_line(content, "mortise in leg 5/16 in wide, 2 1/4 in long and 1/32 in more at each closed end"));
    CHECK_FALSE(any_line(content, "mortises of"));
    // A clearance that is drawn counts for the seasons, not on top of them: a tenon of 44 mm with 0.5 mm on each side.
    const ReportContent bench = checked::content_of(checked::built_in_design("garden-bench-interior-pva"));
    CHECK(any_line(bench, "mortise in back rail 11 mm wide, 45 mm long, at least 20 mm deep"));
}

TEST_CASE("Gaps are told by the rule, those that press with what to do", "[cut-list]")
{
    const ReportContent bench = checked::content_of(checked::built_in_design("boot-bench"));
    CHECK(any_line(bench, "gap between slat and the next: 37/64 in today"));
    const ReportContent door = checked::content_of(checked::built_in_design("cabinet-door-damp-coast"));
    CHECK(any_line(door, "pressed by 0.09 in at the dampest"));
    CHECK(any_line(door, "better: cut the groove"));
}

TEST_CASE("A mitre is cut at the angle of its corner's diagonal", "[cut-list]")
{
    CHECK_THAT(joint_lines_of("mirror-frame-wide-flat-sawn"),
               ContainsSubstring("stile / top rail, mitre (2 places): cut both along the diagonal of the corner, at 45°"));
    // Stiles of 3 in against rails of 4 1/2: tan of the angle at the edge of the stile is 3/4.5.
    std::string text = checked::built_in_design("mirror-frame-wide-flat-sawn");
    const std::string width = "width     = 4.5";
    text.replace(text.find(width), width.size(), "width     = 3");
    CHECK_THAT(joint_lines_in(text),
               ContainsSubstring("diagonal of the corner, stile at 33.7° and top rail at 56.3° to its edge"));
}
