// mitre-gap: frames that open at their inside or outside corners.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <cmath>

using namespace checked;

namespace {

/// One corner of a frame that lies on the floor or stands against a wall: two members drawn to the outer corner.
constexpr const char* kCorner = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = "$rings"
[[part]]
id = "rail"
wood = "oak"
length = 500
width = $rail
thickness = 20
grain = "x"
face = "$face"
at = [0, 0, 0]
[[part]]
id = "stile"
wood = "oak"
length = 400
width = $stile
thickness = 20
grain = "$upright"
face = "$face"
at = [0, 0, 0]
[[joint]]
between = ["rail", "stile"]
kind = "mitre"
glue = "PVA"
)";

/// Dries by four points and swells by two, within 6 to 14 %.
std::string head(const char* made = "10")
{
    return fill(std::string(kStill), {{"driest", "6"}, {"dampest", "12"}, {"made", made}});
}

std::string corner(const std::string& rings, const std::string& rail = "75", const std::string& stile = "75",
                   bool upright = false)
{
    return fill(
        kCorner,
        {{"rings", rings}, {"rail", rail}, {"stile", stile}, {"face", upright ? "y" : "z"}, {"upright", upright ? "z" : "y"}});
}

Finding mitre(const std::string& design) { return finding_of(content_of(design).findings, "mitre-gap", "rail / stile"); }

} // namespace

TEST_CASE("Flat-sawn white oak, 75 mm wide, drying by 4 points, opens 1.53 mm inside", "[check-mitre-gap]")
{
    const Finding f = mitre(head() + corner("flat"));
    CHECK_THAT(value_of(f, "gap_driest"), WithinAbs(0.00153, 0.000005));
    CHECK_THAT(value_of(f, "opening_driest"), WithinAbs(0.0145, 0.00005));
    CHECK(value_of(f, "opening_dampest") < 0); // swelling opens the outside corner
    CHECK_THAT(value_of(f, "gap_dampest"), WithinRel(value_of(f, "gap_driest") / 2, 0.02));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("1.53 mm (0.83°)") && ContainsSubstring("inside corner at the driest"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("quarter-sawn") && ContainsSubstring("9 %"));
    CHECK_THAT(*f.utilisation, WithinRel(1.53 / 0.3, 0.01));
}

TEST_CASE("Made dry it opens outside, in the damp season", "[check-mitre-gap]")
{
    const Finding f = mitre(head("6") + corner("flat", "40", "40"));
    CHECK(value_of(f, "gap_driest") < 1e-12);
    CHECK_THAT(f.headline, ContainsSubstring("outside corner at the dampest"));
}

TEST_CASE("Narrow quarter-sawn members pass, those between warn", "[check-mitre-gap]")
{
    CHECK(mitre(head() + corner("quarter", "25", "25")).verdict == Verdict::pass); // √2 × 25 × 0.007 = 0.25 mm
    CHECK(mitre(head() + corner("quarter", "60", "60")).verdict == Verdict::warn); // 0.6 mm
    CHECK(mitre(head() + corner("quarter", "90", "90")).verdict == Verdict::fail); // 0.9 mm
}

TEST_CASE("A frame that stands moves as one that lies", "[check-mitre-gap]")
{
    const Finding lies = mitre(head() + corner("rift", "60", "90")), stands = mitre(head() + corner("rift", "60", "90", true));
    for (const char* name : {"gap_driest", "gap_dampest", "opening_driest", "opening_dampest"})
        CHECK_THAT(value_of(stands, name), WithinRel(value_of(lies, name), 1e-9));
    CHECK(stands.headline == lies.headline);
    // Unlike widths: the cut is the diagonal of 60 by 90, and each turns by half the sine of twice its angle.
    const double strain = (0.00365 + 0.00180) / 2 * 4 - 0.00005 * 4, angle = std::atan2(60.0, 90.0);
    CHECK_THAT(value_of(lies, "opening_driest"), WithinRel(std::sin(2 * angle) * strain, 0.02));
}

TEST_CASE("Members of unlike width and unlike wood turn each by its own movement", "[check-mitre-gap]")
{
    // Rail of flat-sawn white oak 60 mm wide, stile of quarter-sawn cherry 90 mm: the cut runs over 90 mm of the rail's length and 60 of the stile's.
    std::string text =
        head() + corner("flat", "60", "90") + "[[wood]]\nid = \"cherry\"\nspecies = \"black cherry\"\nrings = \"quarter\"\n";
    const std::string stile = "id = \"stile\"\nwood = \"oak\"";
    text.replace(text.find(stile), stile.size(), "id = \"stile\"\nwood = \"cherry\"");
    const Finding f = mitre(text);
    const double oak = (0.00365 - 0.00005) * 4, cherry = (0.00126 - 0.00005) * 4, half = std::sin(2 * std::atan2(60.0, 90.0)) / 2;
    CHECK_THAT(value_of(f, "opening_driest"), WithinRel(half * (oak + cherry), 0.02));
    CHECK_THAT(value_of(f, "gap_driest"), WithinRel(std::hypot(0.060, 0.090) * half * (oak + cherry), 0.02));
    // The other way round, the oak on the wide stile, the cuts turn alike: each is the other's complement.
    std::string turned =
        head() + corner("flat", "60", "90") + "[[wood]]\nid = \"cherry\"\nspecies = \"black cherry\"\nrings = \"quarter\"\n";
    const std::string rail = "id = \"rail\"\nwood = \"oak\"";
    turned.replace(turned.find(rail), rail.size(), "id = \"rail\"\nwood = \"cherry\"");
    CHECK_THAT(value_of(mitre(turned), "opening_driest"), WithinRel(value_of(f, "opening_driest"), 0.02));
}

TEST_CASE("A box mitred round its corner moves through its thickness", "[check-mitre-gap]")
{
    constexpr const char* kBox = R"(
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "rail"
wood = "oak"
length = 400
width = 150
thickness = 20
grain = "x"
face = "y"
at = [0, 0, 0]
[[part]]
id = "stile"
wood = "oak"
length = 300
width = 150
thickness = 20
grain = "y"
face = "x"
at = [0, 0, 0]
[[joint]]
between = ["rail", "stile"]
kind = "mitre"
)";
    const Finding f = mitre(head() + kBox);
    const double strain = 0.00180 * 4 - 0.00005 * 4; // radial through the thickness
    CHECK_THAT(value_of(f, "gap_driest"), WithinRel(std::sqrt(2.0) * 0.020 * strain, 0.02));
    CHECK(f.verdict == Verdict::pass);
}

TEST_CASE("Without a corner or without movement figures it cannot be told", "[check-mitre-gap]")
{
    std::string turned = head() + corner("flat");
    turned.replace(turned.find("at = [0, 0, 0]\n[[joint]]"), 14, "at = [0, 0, 0]\nturn = { about = \"z\", degrees = 4 }");
    const Finding askew = mitre(turned);
    CHECK(askew.verdict == Verdict::cannot_tell);
    CHECK_THAT(askew.headline, ContainsSubstring("shows no square corner"));
    std::string unknown = head() + corner("flat");
    unknown.replace(unknown.find("species = \"white oak\""), 21,
                    "properties = { modulus = \"12 GPa\", density = \"700 kg/m3\" }");
    CHECK(mitre(unknown).verdict == Verdict::cannot_tell);
}
