#include "catch.hpp"
#include "checks/checked.hpp"

#include "checks/cut_list.hpp"

using namespace jointwright;

namespace {

std::string joint_lines_of(const char* design)
{
    const auto bench = checked::bench_of(checked::built_in_design(design));
    std::string all;
    for (const std::string& line : cut_joint_lines(bench->piece, bench->layout.contacts, bench->piece.units)) all += line + "\n";
    return all;
}

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
          "2 × long rail: 42 1/4 in long, 3 in wide, 7/8 in thick (40 3/4 in between shoulders, tenons 1 1/2 in in all)");
}

TEST_CASE("Joints are cut with their clearance, in the part that is cut", "[cut-list]")
{
    // A slat 1 3/4 in wide, 1/64 in of clearance on each side, 3/8 in into a rail 7/8 in thick.
    CHECK_THAT(joint_lines_of("boot-bench"), ContainsSubstring("slat / long rail, housing (34 places): in long rail 3/8 in deep, "
                                                               "1 25/32 in wide, 7/8 in long across the grain"));
    CHECK_THAT(joint_lines_of("boot-bench"),
               ContainsSubstring("side rail / leg, tenon (4 places): 7/8 in long, 2 1/4 in wide, 5/16 in "
                                 "thick; mortise in leg 2 1/4 in × 5/16 in and at least 7/8 in deep"));
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
