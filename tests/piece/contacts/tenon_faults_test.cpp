// A tenon whose stated length the drawing contradicts.

#include "catch.hpp"
#include "checks/design_text.hpp"
#include "facts/shared_facts.hpp"
#include "piece/read/read_design.hpp"

using namespace jointwright;
using namespace checked;

namespace {

const std::string kTenon = "tenon = { length = 30, width = 50, thickness = 8 }";

/// A rail between two legs 40 mm deep, drawn `left` and `right` into them.
std::string between_legs(double left, double right, const std::string& tenon = kTenon)
{
    return design({head_text({}), wood_text("white oak"),
                   part_text("leg", {400, 40, 50}, "z", "y", "[0, 0, 0]", "copies = [ { at = [540, 0, 0] } ]"),
                   part_text("rail", {500 + left + right, 70, 20}, "x", "y", fmt::format("[{}, 8, 300]", 40 - left)),
                   joint_text("rail", "leg", "tenon", "PVA", tenon)});
}

Faults faults_of(const std::string& text) { return read_design(text, testing::shared_facts()).faults; }

} // namespace

TEST_CASE("A rail drawn into its leg by another amount than its tenon is long is a contradiction, told once", "[errors][tenon]")
{
    const std::string text = between_legs(20, 20);
    const Faults faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].id == "one-too-many");
    CHECK_THAT(faults[0].says, ContainsSubstring("drawn 20 mm into leg #1") && ContainsSubstring("tenon says 30 mm"));
    CHECK_THAT(faults[0].note, ContainsSubstring("draw rail up to the face of leg, 20 mm shorter"));
    // The line that it offers parses.
    std::string mended = text;
    mended.replace(mended.find(kTenon), kTenon.size(), faults[0].fix);
    CHECK(faults_of(mended).empty());
    CHECK(faults_of(between_legs(0, 0)).empty());
    CHECK(faults_of(between_legs(30, 30)).empty());
}

TEST_CASE("A contradiction at the second of two copies is told too", "[errors][tenon]")
{
    const Faults faults = faults_of(between_legs(30, 29));
    REQUIRE(faults.size() == 1);
    CHECK_THAT(faults[0].says, ContainsSubstring("drawn 29 mm into leg #2"));
}

TEST_CASE("A loose tenon is not drawn into the leg", "[errors][tenon]")
{
    const Faults faults = faults_of(between_legs(30, 30, "tenon = { length = 30, width = 50, thickness = 8, loose = true }"));
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].id == "one-too-many");
    CHECK(faults_of(between_legs(0, 0, "tenon = { length = 30, width = 50, thickness = 8, loose = true }")).empty());
}

TEST_CASE("A tenon longer than its leg is deep says so, a flush one is a through tenon", "[errors][tenon]")
{
    const std::string tenon = "tenon = { length = 41, width = 50, thickness = 8, mitred = true }",
                      text = between_legs(0, 0, tenon);
    const Faults faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].id == "out-of-range");
    CHECK_THAT(faults[0].says, ContainsSubstring("41 mm long, longer than leg is deep there, 40 mm"));
    std::string mended = text;
    mended.replace(mended.find(tenon), tenon.size(), faults[0].fix);
    CHECK(faults_of(mended).empty());
    CHECK_THAT(faults[0].fix, ContainsSubstring("length = 40,") && ContainsSubstring("mitred = true"));
}
