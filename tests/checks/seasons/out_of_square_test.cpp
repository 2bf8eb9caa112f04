// out-of-square: rift legs that turn into diamonds.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

constexpr const char* kLeg = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = $rings
[[part]]
id = "leg"
wood = "oak"
length = 700
width = $width
thickness = $thickness
grain = "z"
face = "y"
at = [0, 0, 0]
)";

std::vector<Finding> findings(const std::string& rings, const std::string& width, const std::string& thickness)
{
    return content_of(still_head(false) + fill(kLeg, {{"rings", rings}, {"width", width}, {"thickness", thickness}})).findings;
}

Finding leg(const std::string& rings, const std::string& width = "60", const std::string& thickness = "60")
{
    return finding_of(findings(rings, width, thickness), "out-of-square", "leg");
}

// White oak, C_T 0.00365, C_R 0.00180 (Wood Handbook table 13-5), 2 points either way: γ = (C_T − C_R) × 2 × sin 2φ.
constexpr double kRiftShear = (0.00365 - 0.00180) * 2;

} // namespace

TEST_CASE("A rift leg leaves square by the difference of its two movements", "[check-out-of-square]")
{
    const Finding f = leg("\"rift\"");
    CHECK_THAT(value_of(f, "shear_driest"), WithinRel(-kRiftShear, 1e-6));
    CHECK_THAT(value_of(f, "shear_dampest"), WithinRel(kRiftShear, 1e-6));
    CHECK_THAT(value_of(f, "offset_driest"), WithinRel(0.060 * kRiftShear, 1e-6));
    CHECK(f.verdict == Verdict::pass);
    CHECK(f.utilisation.value() < 0.5);
    CHECK_FALSE(f.working.empty());
    CHECK_THAT(value_of(leg("30"), "shear_dampest"), WithinRel(kRiftShear * 0.8660254, 1e-6));
}

TEST_CASE("A stout rift post is warned of, with what to do", "[check-out-of-square]")
{
    const Finding f = leg("\"rift\"", "320", "300");
    CHECK(f.verdict == Verdict::warn); // 320 × 0.0037 = 1.2 mm
    CHECK_THAT(f.headline, ContainsSubstring("leg leaves square by 1.18 mm over its side of 320 mm"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("8 %"));
}

TEST_CASE("Flat and quarter-sawn legs stay square, boards are left to cup", "[check-out-of-square]")
{
    for (const char* rings : {"\"flat\"", "\"quarter\""}) CHECK(count_of(findings(rings, "60", "60"), "out-of-square") == 0);
    CHECK(count_of(findings("\"rift\"", "60", "30"), "out-of-square") == 0);
    CHECK(count_of(findings("\"rift\"", "30", "60"), "out-of-square") == 0);
    CHECK(count_of(findings("\"rift\"", "59", "30"), "out-of-square") == 1);
    CHECK(count_of(findings("\"rift\"", "30", "59"), "out-of-square") == 1);
}

TEST_CASE("Of several ring cuts the worst leg is told", "[check-out-of-square]")
{
    const Finding f = leg("[\"flat\", 20, \"rift\"]");
    CHECK_THAT(value_of(f, "shear_dampest"), WithinRel(kRiftShear, 1e-6));
    REQUIRE(f.where);
    CHECK_THAT(*f.where, ContainsSubstring("45°"));
}
