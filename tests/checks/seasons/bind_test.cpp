// bind: a part that swells between two walls of another.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A slat 44 mm wide in a housing across a rail.
constexpr const char* kHoused = R"(
[[wood]]
id = "wood"
species = "$wood"
rings = "flat"
[[part]]
id = "slat"
wood = "wood"
length = 400
width = 44
thickness = 16
grain = "y"
face = "z"
at = [100, 0, 60]
[[part]]
id = "rail"
wood = "wood"
length = 600
width = 76
thickness = 22
grain = "x"
face = "y"
at = [0, 100, 0]
[[joint]]
between = ["slat", "rail"]
kind = "housing"
clearance = $clearance
$glue
)";

Finding housed(const std::string& wood, const std::string& clearance, const std::string& glue = "")
{
    return finding_of(
        content_of(still_head(true) + fill(kHoused, {{"wood", wood}, {"clearance", clearance}, {"glue", glue}})).findings, "bind",
        "slat / rail");
}

constexpr double kNanometre = 1e-9;
constexpr double kAlong = 0.00005 * 2.9; // the rail grows along its grain
constexpr double kCherry = 0.044 * (0.00248 * 2.9 - kAlong), kRedOak = 0.044 * (0.00369 * 2.9 - kAlong);

} // namespace

TEST_CASE("The room in a housing is what was cut, less what the part grows beyond its opening", "[bind]")
{
    const Finding f = housed("black cherry", "0.4");
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.0008, kNanometre));
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.0008 - kCherry, kNanometre));
    CHECK(value_of(f, "gap_driest") > 0.0008);
    CHECK(f.verdict == Verdict::pass);
}

TEST_CASE("A snug housing is as makers cut it: little room passes, dry or glued", "[bind]")
{
    const Finding f = housed("black cherry", "0.2");
    CHECK(value_of(f, "gap_dampest") > 0);
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.remedy);
    CHECK(housed("black cherry", "0.2", "glue = \"PVA\"").verdict == Verdict::pass);
    // 0.31 mm of swelling against 0.2 mm of room: pressed by 0.25 %, which springs back.
    const Finding snug = housed("black cherry", "0.1");
    CHECK_THAT(value_of(snug, "squeeze"), WithinAbs((kCherry - 0.0002) / 0.044, 1e-9));
    CHECK(snug.verdict == Verdict::pass);
    CHECK_THAT(snug.headline, ContainsSubstring("snug") && ContainsSubstring("spring back"));
    CHECK_THAT(*snug.utilisation, WithinRel((kCherry - 0.0002) / 0.044 / 0.005, 1e-6));
}

TEST_CASE("A part pressed by its housing warns, and fails when it is crushed", "[bind]")
{
    // Pressed without room: cherry by 0.70 %, red oak by 1.06 %. A set begins at 0.5 %, crushing at 1 %.
    const Finding cherry = housed("black cherry", "0");
    CHECK_THAT(value_of(cherry, "squeeze"), WithinAbs(kCherry / 0.044, 1e-9));
    CHECK(cherry.verdict == Verdict::warn);
    CHECK_THAT(cherry.headline, ContainsSubstring("keeps a set"));
    CHECK(*cherry.utilisation > 1);
    REQUIRE(cherry.remedy);
    CHECK_THAT(cherry.remedy.words(),
               ContainsSubstring("clearance = \"0.25 mm\"")); // the housing half a millimetre wider than the slat
    const Finding oak = housed("red oak", "0");
    CHECK_THAT(value_of(oak, "gap_dampest"), WithinAbs(-kRedOak, kNanometre));
    CHECK(oak.verdict == Verdict::fail);
    CHECK(oak.remedy);
}

TEST_CASE("The room that a housing is told to have can be cut, and then passes", "[bind]")
{
    CHECK(housed("black cherry", "\"0.25 mm\"").verdict == Verdict::pass);
    // In inches: 1/64 on either side.
    std::string text = still_head(true) + fill(kHoused, {{"wood", "red oak"}, {"clearance", "0"}, {"glue", ""}});
    text.replace(text.find("units = \"mm\""), 12, "units = \"in\"");
    for (const char* size : {"length = 400", "width = 44", "thickness = 16", "at = [100, 0, 60]", "length = 600", "width = 76",
                             "thickness = 22", "at = [0, 100, 0]"}) {
        // The same numbers in millimetres, told with their unit.
        const std::string key(size, std::string_view(size).find('=') + 2), rest(size + key.size());
        std::string with = key;
        if (rest.front() == '[') {
            with += "[";
            for (std::size_t at = 1, end = 0; at < rest.size(); at = end + 2) {
                end = rest.find_first_of(",]", at);
                with += (at > 1 ? ", \"" : "\"") + rest.substr(at, end - at) + " mm\"";
            }
            with += "]";
        } else {
            with += "\"" + rest + " mm\"";
        }
        text.replace(text.find(size), std::string_view(size).size(), with);
    }
    const Finding f = finding_of(content_of(text).findings, "bind", "slat / rail");
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    const std::size_t at = f.remedy.words().find("clearance = ");
    CHECK_THAT(f.remedy.words(), ContainsSubstring("clearance = \"1/64 in\""));
    text.replace(text.find("clearance = 0"), 13, f.remedy.words().substr(at));
    CHECK(finding_of(content_of(text).findings, "bind", "slat / rail").verdict == Verdict::pass);
}

TEST_CASE("A part that is free on one side cannot bind", "[bind]")
{
    std::string text = still_head(true) + fill(kHoused, {{"wood", "red oak"}, {"clearance", "0"}, {"glue", ""}});
    // Let in at the end of the rail: one wall only.
    text.replace(text.find("at = [100, 0, 60]"), 17, "at = [-4, 0, 60]");
    CHECK(count_of(content_of(text).findings, "bind") == 0);
}

TEST_CASE("Without movement figures binding cannot be told", "[bind]")
{
    std::string text = still_head(true) + fill(kHoused, {{"wood", "red oak"}, {"clearance", "0"}, {"glue", ""}});
    text.replace(text.find("species = \"red oak\"\n"), 20, "properties = { modulus = \"12 GPa\" }\n");
    CHECK(finding_of(content_of(text).findings, "bind", "slat / rail").verdict == Verdict::cannot_tell);
}
