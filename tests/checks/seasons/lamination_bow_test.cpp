// lamination-bow: layers glued with their grains parallel that move by unlike amounts.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A lower board with an upper one glued on its whole face.
constexpr const char* kPair = R"(
[[wood]]
id = "lower wood"
$lower
[[wood]]
id = "upper wood"
$upper
[[part]]
id = "lower"
wood = "lower wood"
length = 900
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "upper"
wood = "upper wood"
length = 900
width = 100
thickness = $thick
grain = "x"
face = "z"
at = [0, 0, 20]
[[joint]]
between = ["upper", "lower"]
kind = "face"
$glue
)";

const std::string kGlue = "glue = \"PVA\"";

/// Dries by 3.6 points within 6 to 14 %.
std::string design(const std::string& lower, const std::string& upper, const std::string& thick = "20",
                   const std::string& glue = kGlue)
{
    return fill(std::string(kStill), {{"driest", "6.4"}, {"dampest", "10.5"}, {"made", "10"}}) +
           fill(kPair, {{"lower", lower}, {"upper", upper}, {"thick", thick}, {"glue", glue}});
}

std::string oak(const std::string& more) { return "species = \"red oak\"\n" + more; }

Finding bow(const std::string& text) { return finding_of(content_of(text).findings, "lamination-bow", "upper / lower"); }

std::size_t count(const std::string& text) { return count_of(content_of(text).findings, "lamination-bow"); }

} // namespace

TEST_CASE("Flat-sawn on quarter-sawn oak cups towards the flat-sawn layer as it dries", "[check-lamination-bow]")
{
    const Finding f = bow(design(oak("rings = \"quarter\""), oak("rings = \"flat\"")));
    CHECK_THAT(value_of(f, "rise_across_driest"), WithinAbs(0.0003, 0.00005)); // about 0.3 mm over 100 mm
    CHECK(value_of(f, "rise_across_dampest") < 0);
    CHECK_THAT(value_of(f, "rise_along_driest"), WithinAbs(0, 1e-12));
    CHECK_THAT(f.headline, ContainsSubstring("over 100 mm across the grain at the driest") &&
                               ContainsSubstring("hollow on the side of upper"));
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.sources.empty());
    const Finding turned_over = bow(design(oak("rings = \"flat\""), oak("rings = \"quarter\"")));
    CHECK_THAT(value_of(turned_over, "rise_across_driest"), WithinRel(-value_of(f, "rise_across_driest"), 1e-9));
    CHECK_THAT(turned_over.headline, ContainsSubstring("hollow on the side of lower"));
}

TEST_CASE("Layers of unlike moisture bow along the grain too", "[check-lamination-bow]")
{
    // The upper layer is glued on wetter by 6 points: along the grain Δε = 0.00005 × 6, like stiffness and thickness, κ = 1.5 Δε/h.
    const Finding f = bow(design(oak("rings = \"flat\""), oak("rings = \"flat\"\nmoisture = 16")));
    CHECK_THAT(value_of(f, "rise_along_driest"), WithinRel(1.5 * 0.00005 * 6 / 0.040 * 0.9 * 0.9 / 8, 1e-6));
    CHECK_THAT(value_of(f, "limit_along"), WithinRel(0.9 / 500, 1e-9));
    CHECK(f.verdict != Verdict::pass);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("same moisture"));
}

TEST_CASE("Like layers, dry joints and crossed grains are not its business", "[check-lamination-bow]")
{
    CHECK(count(design(oak("rings = \"flat\""), oak("rings = \"flat\""))) == 0);
    CHECK(count(design(oak("rings = \"quarter\""), oak("rings = \"flat\""), "20", "")) == 0);
    std::string crossed = design(oak("rings = \"quarter\""), oak("rings = \"flat\""));
    const std::size_t upper = crossed.find("grain = \"x\"", crossed.find("id = \"upper\""));
    crossed.replace(upper, 11, "grain = \"y\"");
    CHECK(count(crossed) == 0);
    // Edge to edge the boards differ over their thickness alone.
    std::string edges = design(oak("rings = \"quarter\""), oak("rings = \"flat\""));
    edges.replace(edges.find("at = [0, 0, 20]"), 15, "at = [0, 100, 0]");
    CHECK(count(edges) == 0);
}

TEST_CASE("A like layer on the other face balances the pair", "[check-lamination-bow]")
{
    const std::string pair = design("species = \"European beech\"\nrings = \"flat\"", oak("rings = \"quarter\""), "20");
    const std::string third = R"(
[[part]]
id = "under"
wood = "upper wood"
length = 900
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, -20]
[[joint]]
between = ["lower", "under"]
kind = "face"
glue = "PVA"
)";
    CHECK_THAT(bow(pair).headline, !ContainsSubstring("held flat"));
    const Finding balanced = bow(pair + third);
    CHECK_THAT(balanced.headline, ContainsSubstring("held flat"));
    CHECK(balanced.verdict == Verdict::pass);
}

TEST_CASE("Without movement figures of one layer the bow cannot be told", "[check-lamination-bow]")
{
    CHECK(bow(design("properties = { modulus = \"12 GPa\", density = \"700 kg/m3\" }", oak("rings = \"flat\""))).verdict ==
          Verdict::cannot_tell);
}
