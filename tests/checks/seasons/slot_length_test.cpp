// slot-length: screws, buttons and pegs across the grain.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "judging/fits/slot_travel.hpp"
#include "measure/write.hpp"

using namespace checked;

namespace {

constexpr double kNanometre = 1e-9;
constexpr double kEase = 0.00079375;    // 1/32 in
constexpr double kDampest = 0.05 / 3.9; // a heated room's dampest, 11.9 %, is good to its last digit

/// Boards of red oak, flat-sawn, $width wide, with a batten screwed across them.
constexpr const char* kLedged = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "boards"
wood = "oak"
length = 800
width = $width
thickness = 20
grain = "z"
face = "y"
at = [0, 0, 0]
[[part]]
id = "batten"
wood = "oak"
length = $width
width = 70
thickness = 20
grain = "x"
face = "y"
at = [0, 20, 100]
[[joint]]
between = ["batten", "boards"]
kind = "screws"
$screws
)";

std::string ledged(const std::string& screws, const std::string& width = "640", bool wide_room = true)
{
    return still_head(wide_room) + fill(kLedged, {{"width", width}, {"screws", screws}});
}

Finding screwed(const std::string& screws, const std::string& width = "640")
{
    return finding_of(content_of(ledged(screws, width)).findings, "slot-length", "batten / boards");
}

/// Movement of the oak made at 9 %, for each metre: to 5.4 %, which lies below 6 % and so follows the wider law, and to 11.9 %.
constexpr double kOakDry = 3.6 / (1 / 0.00369 - 10 + 9), kOakDamp = 0.00369 * 2.9;
/// The boards' movement less that of the batten along its grain.
constexpr double kDry = kOakDry - 0.00005 * 3.6, kDamp = kOakDamp - 0.00005 * 2.9;

} // namespace

TEST_CASE("Flat-sawn red oak 300 mm away, made 9 %, room 5.4 to 11.9 %, screw 5 mm: 13.8 mm, milled 14", "[slot-length]")
{
    // As the sum is written: the movement of the oak alone.
    const double dry = -0.300 * kOakDry, damp = 0.300 * kOakDamp;
    const double slot = slot_length_needed(dry, damp, 0.005, kEase);
    CHECK_THAT(slot, WithinAbs(0.0138, 0.00005));
    CHECK(write_length_up(metres(slot), LengthUnit::millimetre) == "14 mm");
    CHECK_THAT(travel_needed(dry, damp, kEase), WithinAbs(slot - 0.005, kNanometre));
    CHECK_THAT(least_travel(dry, damp), WithinAbs(0.300 * (kOakDry + kOakDamp), kNanometre));
    CHECK_THAT(least_travel(-0.003, -0.001), WithinAbs(0.003, kNanometre)); // made too damp: it only shrinks
}

TEST_CASE("The outer of three screws in slots is reckoned from the tight one in the middle", "[slot-length]")
{
    const Finding f = screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 10 }");
    CHECK_THAT(value_of(f, "movement_driest"), WithinAbs(-0.3 * kDry, kNanometre));
    CHECK_THAT(value_of(f, "movement_dampest"), WithinAbs(0.3 * kDamp, kNanometre));
    CHECK_THAT(value_of(f, "travel"), WithinAbs(0.010, kNanometre));
    CHECK_THAT(value_of(f, "needed"), WithinAbs(0.6 * kDry + 0.005 + kEase, kNanometre));
    CHECK_THAT(value_of(f, "slot_to_mill"), WithinAbs(0.014, kNanometre));
    CHECK(value_of(f, "held_back") == 0);
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(f.headline, ContainsSubstring("the tight fastener"));
}

TEST_CASE("A slot that is too short warns, and the one printed passes", "[slot-length]")
{
    // 2 × 3.95 + 0.79 = 8.69 mm of travel are needed; from the most shrunk to the most swollen 7.11.
    const Finding off_centre = screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 7.5 }");
    CHECK(off_centre.verdict == Verdict::warn);
    REQUIRE(off_centre.remedy);
    CHECK_THAT(off_centre.remedy.words(), ContainsSubstring("slots 14 mm long"));
    CHECK_THAT(off_centre.remedy.words(), ContainsSubstring("slot = 9 mm"));
    CHECK_THAT(off_centre.remedy.words(), ContainsSubstring("off the middle"));

    const Finding short_slot = screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 6.5 }");
    CHECK(short_slot.verdict == Verdict::warn);
    // At either end the screw comes to the end of its slot 0.7 mm too early: 1.4 mm are held back between the two.
    CHECK_THAT(value_of(short_slot, "held_back"), WithinAbs(0.6 * kDry - 0.0065, kNanometre));
    CHECK(short_slot.remedy.words().find("off the middle") == std::string::npos);

    CHECK(screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 2 }").verdict == Verdict::fail);
    CHECK(screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 9 }").verdict == Verdict::pass);
}

TEST_CASE("Tight screws hold back the movement between them: near ones pass, 300 mm apart they split the wood", "[slot-length]")
{
    struct Row {
        const char* width;
        double apart;
        Verdict verdict;
    };
    // Two screws stand at a quarter and three quarters of the batten: 13.2 μm for each mm between them; 1.0 mm passes, 1.6 warns.
    const Row rows[] = {{"120", 0.060, Verdict::pass}, {"200", 0.100, Verdict::warn}, {"600", 0.300, Verdict::fail}};
    for (const Row& row : rows) {
        CAPTURE(row.width);
        const Finding f = screwed("screws = { diameter = 5, length = 35, count = 2 }", row.width);
        CHECK_THAT(value_of(f, "held_back"), WithinAbs(row.apart * kDry, kNanometre));
        CHECK_THAT(*f.utilisation, WithinAbs(row.apart * kDry / 0.001, 1e-6));
        CHECK(f.verdict == row.verdict);
        CHECK(value_of(f, "travel") == 0);
        CHECK(static_cast<bool>(f.remedy) == (row.verdict != Verdict::pass));
    }
    const Finding one = screwed("screws = { diameter = 5, length = 35, count = 1 }");
    CHECK(one.verdict == Verdict::pass);
    CHECK(value_of(one, "held_back") == 0);
}

TEST_CASE("The worked door with tight battens fails, and is sound with the slot that the finding prints", "[slot-length]")
{
    std::string text = built_in_design("ledged-door-screwed-tight");
    const Finding f = finding_of(content_of(text).findings, "slot-length");
    CHECK(f.verdict == Verdict::fail);
    const std::string key = "slot = ";
    const std::size_t at = f.remedy.words().find(key);
    REQUIRE(at != std::string::npos);
    const std::string screws = "screws  = { diameter = 5, length = 35, count = 3, inset = 40 }";
    REQUIRE(text.rfind(screws) != std::string::npos);
    text.replace(text.rfind(screws), screws.size(),
                 "screws  = { diameter = 5, length = 35, count = 3, inset = 40, slot = " +
                     std::to_string(std::stod(f.remedy.words().substr(at + key.size()))) + " }");
    CHECK(finding_of(content_of(text).findings, "slot-length").verdict == Verdict::pass);
}

TEST_CASE("Rows that lie along the grain hold against each other only through a frame", "[slot-length]")
{
    // Two battens along the boards, 360 mm apart, one tight screw in each; a third part ties the battens or does not.
    const std::string boards =
        fill(kLedged, {{"width", "640"}, {"screws", "screws = { diameter = 5, length = 35, count = 1, slot = 12 }"}});
    const std::string rails = R"(
[[part]]
id = "rail"
wood = "oak"
length = 500
width = 40
thickness = 20
grain = "z"
face = "y"
at = [120, 20, 250]
copies = [ { at = [480, 20, 250] } ]
[[joint]]
between = ["rail", "boards"]
kind = "screws"
screws = { diameter = 5, length = 35, count = 2 }
)";
    const std::string tie = R"(
[[part]]
id = "tie"
wood = "oak"
length = 320
width = 40
thickness = 20
grain = "x"
face = "y"
at = [160, 20, 400]
[[joint]]
between = ["tie", "rail"]
kind = "tenon"
glue = "PVA"
tenon = { length = 10, width = 30, thickness = 7 }
)";
    const Finding apart = finding_of(content_of(still_head(true) + boards + rails).findings, "slot-length", "rail / boards");
    CHECK(apart.verdict == Verdict::pass);
    CHECK(value_of(apart, "held_back") == 0);
    const Finding tied = finding_of(content_of(still_head(true) + boards + rails + tie).findings, "slot-length", "rail / boards");
    CHECK(tied.verdict == Verdict::fail);
    CHECK_THAT(value_of(tied, "held_back"), WithinAbs(0.36 * kDry, kNanometre));
    CHECK_THAT(tied.headline, ContainsSubstring("together with what holds it on rail"));
}

TEST_CASE("Boards glued edge to edge and screwed one by one are held over their whole width", "[slot-length]")
{
    std::string text = ledged("screws = { diameter = 5, length = 35, count = 1 }", "600");
    text.replace(text.find("width = 600"), 11, "width = 120");
    text.replace(text.find("at = [0, 0, 0]"), 14, "at = [0, 0, 0]\nrepeat = { count = 5, along = \"x\", gap = 0 }");
    const std::string glued = "[[joint]]\nbetween = [\"boards\", \"boards\"]\nkind = \"edge\"\nglue = \"PVA\"\n";
    const Finding f = finding_of(content_of(text + glued).findings, "slot-length", "batten / boards");
    CHECK_THAT(value_of(f, "held_back"), WithinAbs(0.480 * kDry, kNanometre)); // from the first screw to the fifth
    CHECK(f.verdict == Verdict::fail);
    // The same boards side by side, free of each other, are held by one screw each.
    CHECK(value_of(finding_of(content_of(text).findings, "slot-length", "batten / boards"), "held_back") == 0);
}

TEST_CASE("Buttons without a stated slot are free and say what they need", "[slot-length]")
{
    const std::string fixed = ledged("screws = { diameter = 5, length = 35, count = 1 }");
    std::string text = fixed;
    text.replace(text.find("kind = \"screws\"\nscrews = { diameter = 5, length = 35, count = 1 }"), 65,
                 "kind = \"buttons\"\nbuttons = { count = 2, inset = 20 }\n");
    const Finding f = finding_of(content_of(text).findings, "slot-length", "batten / boards");
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(has_value(f, "travel"));
    CHECK_THAT(value_of(f, "needed"), WithinAbs(0.6 * kDry + kEase, kNanometre)); // from the middle of the boards
    CHECK_THAT(f.headline, ContainsSubstring("9 mm of travel"));
}

TEST_CASE("A tabletop on buttons moves from its middle, in rows along its grain too", "[slot-length]")
{
    const auto findings = content_of(built_in_design("cherry-top-on-buttons")).findings;
    const Finding& along = finding_of(findings, "slot-length", "top / long apron");
    CHECK(along.verdict == Verdict::pass);
    // 18 in less 3 3/16 in to the middle of the apron; cherry 0.00248 a point, made at 8 %, the frame 0.00005.
    CHECK_THAT(value_of(along, "movement_dampest"), WithinRel(14.8125 * 0.0254 * (0.00248 - 0.00005) * 3.9, kDampest));
    CHECK(value_of(along, "needed") > value_of(finding_of(findings, "slot-length", "top / end apron"), "needed"));
}

TEST_CASE("A breadboard end glued at its middle has pegs that slide, reckoned from the glue", "[slot-length]")
{
    const Finding f = finding_of(content_of(built_in_design("breadboard-glued-middle")).findings, "slot-length", "field / end");
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(f.headline, ContainsSubstring("the glued stretch"));
    // Pegs stand at a sixth and five sixths of the tenon's 18 1/2 in.
    CHECK_THAT(value_of(f, "movement_dampest"), WithinRel(18.5 / 3 * 0.0254 * (0.00248 - 0.00005) * 3.9, kDampest));

    std::string tight = built_in_design("breadboard-glued-middle");
    tight.replace(tight.find(", slot = \"1/4\""), 14, "");
    CHECK(finding_of(content_of(tight).findings, "slot-length", "field / end").verdict == Verdict::fail);
}

TEST_CASE("Screws in a joint glued over its whole length are left to cross-grain", "[slot-length]")
{
    CHECK(count_of(content_of(ledged("glue = \"PVA\"\nscrews = { diameter = 5, length = 35, count = 3 }")).findings,
                   "slot-length") == 0);
}

TEST_CASE("Absent sizes of fasteners are named", "[slot-length]")
{
    const Finding f = screwed("");
    CHECK(f.verdict == Verdict::cannot_tell);
    CHECK_THAT(f.headline, ContainsSubstring("screws"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("screws = { diameter"));
    std::string unknown = ledged("screws = { diameter = 5, length = 35, count = 3 }");
    unknown.replace(unknown.find("species = \"red oak\""), 19, "properties = { modulus = \"12 GPa\" }");
    CHECK(finding_of(content_of(unknown).findings, "slot-length").verdict == Verdict::cannot_tell);
}

TEST_CASE("A batten turned with its boards has the same slots", "[slot-length]")
{
    const Finding upright = screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 7.5 }");
    std::string text = ledged("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 7.5 }");
    const auto swap = [&](const std::string& from, const std::string& to) {
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
    };
    swap("grain = \"z\"\nface = \"y\"", "grain = \"x\"\nface = \"z\"");
    swap("grain = \"x\"\nface = \"y\"\nat = [0, 20, 100]", "grain = \"y\"\nface = \"z\"\nat = [100, 0, 20]");
    const Finding lying = finding_of(content_of(text).findings, "slot-length", "batten / boards");
    CHECK(lying.verdict == upright.verdict);
    CHECK(lying.headline == upright.headline);
    CHECK(lying.remedy == upright.remedy);
    for (const NamedValue& v : upright.values) CHECK_THAT(value_of(lying, v.name), WithinAbs(v.value, kNanometre));
}

TEST_CASE("The moisture that a slot is reckoned for is told with it", "[slot-length]")
{
    const Finding f = screwed("screws = { diameter = 5, length = 35, count = 3, inset = 20, slot = 10 }");
    CHECK_THAT(value_of(f, "moisture_made"), WithinAbs(9, kNanometre));
    CHECK_THAT(value_of(f, "moisture_driest"), WithinAbs(5.4, kNanometre));
    CHECK_THAT(value_of(f, "moisture_dampest"), WithinAbs(11.9, kNanometre));
    CHECK(std::any_of(f.working.begin(), f.working.end(), [](const WorkingStep& step) {
        return step.says.find("To cut today (made at 9 %, driest 5.4 %, dampest 11.9 %): slot across the grain of boards") == 0;
    }));
}
