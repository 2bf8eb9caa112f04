// A fix is pasted in place of its line: then that fault is gone, and nothing new stands there.

#include "catch.hpp"
#include "facts/shared_facts.hpp"
#include "piece/read/read_design.hpp"

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

using namespace jointwright;

namespace {

/// A stool's slat on two rails, in a unit; the line that begins with a key may be replaced.
std::vector<std::string> design_lines(const std::string& units)
{
    const double one = units == "in" ? 1 : units == "cm" ? 2.5 : 25; // what an inch is in it
    const auto size = [&](double inches) {
        std::ostringstream text;
        text << inches * one;
        return text.str();
    };
    return {
        "[piece]",
        "name = \"Stool\"",
        "units = \"" + units + "\"",
        "use = \"seat\"",
        "carries = [\"slat\"]",
        "size = [" + size(20) + ", " + size(14) + ", " + size(3.8) + "]",
        "[room]",
        "air = \"heated, cold winters\"",
        "moisture_at_glue_up = 9",
        "[[wood]]",
        "id = \"w\"",
        "species = \"white oak\"",
        "rings = \"flat\"",
        "[[part]]",
        "id = \"rail\"",
        "wood = \"w\"",
        "length = " + size(20),
        "width = " + size(3),
        "thickness = " + size(1),
        "grain = \"x\"",
        "face = \"y\"",
        "at = [0, 0, 0]",
        "mirror = [\"y\"]",
        "[[part]]",
        "id = \"slat\"",
        "wood = \"w\"",
        "length = " + size(14),
        "width = " + size(2),
        "thickness = " + size(0.8),
        "grain = \"y\"",
        "face = \"z\"",
        "at = [0, 0, " + size(3) + "]",
        "repeat = { count = 6, along = \"x\", gap = " + size(0.6) + " }",
        "[[joint]]",
        "between = [\"slat\", \"rail\"]",
        "kind = \"screws\"",
        "screws = { diameter = " + size(0.2) + ", length = " + size(1.6) + ", count = 1 }",
    };
}

std::string joined(const std::vector<std::string>& lines)
{
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    return text;
}

struct Case {
    std::string instead_of; ///< beginning of the line
    std::string bad;
    std::string fix; ///< what is offered; a part of it
};

std::size_t line_of(const std::vector<std::string>& lines, const std::string& start)
{
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (lines[i].rfind(start, 0) == 0) return i;
    throw std::logic_error("no line begins with " + start);
}

} // namespace

TEST_CASE("The design that the fixes are tried on is sound in every unit", "[design][fixes]")
{
    for (const std::string units : {"in", "mm", "cm"}) {
        const DesignRead read = read_design(joined(design_lines(units)), testing::shared_facts());
        INFO((read.faults.empty() ? std::string() : read.faults.front().says));
        CHECK(read.piece);
    }
}

TEST_CASE("A fix that is pasted mends its line", "[design][fixes]")
{
    const std::vector<Case> cases = {
        {"use", "use = \u201cseat\u201d", "use = \"seat\""},
        {"thickness = 25", "thickness = 25,4", "thickness = 25.4"},
        {"species", "species = white oak", "species = \"white oak\""},
        {"name", "name = \"Stool", "name = \"Stool\""},
        {"width = 75", "width = 75 mm", "width = \"75 mm\""},
        {"grain = \"y\"", "grain = 3", "grain = \"x\""},
        {"units", "units = 3", "units = "},
        {"between", "between = [\"slat #0\", \"rail\"]", "slat #1"},
        {"between", "between = [\"slat #9\", \"rail\"]", "slat #6"},
        {"kind = \"screws\"", "kind = \"screw\"", "screws"},
        {"screws", "screws = 4", "diameter = 5, length = 38, count = 3"},
        {"screws", "screws = { diameter = 5, length = 40 }", "count = 2"},
        {"repeat", "repeat = { count = 6, along = \"x\" }", "gap = 16"},
        {"length = 500", "", "length = 980"},
    };
    for (const Case& c : cases) {
        std::vector<std::string> lines = design_lines("mm");
        const std::size_t at = line_of(lines, c.instead_of);
        lines[at] = c.bad;
        INFO(c.bad);
        const DesignRead read = read_design(joined(lines), testing::shared_facts());
        REQUIRE_FALSE(read.piece);
        const auto with_fix = std::find_if(read.faults.begin(), read.faults.end(), [](const Fault& f) { return !f.fix.empty(); });
        REQUIRE(with_fix != read.faults.end());
        INFO(with_fix->says << " | fix: " << with_fix->fix);
        CHECK(with_fix->fix.find(c.fix) != std::string::npos);
        // A key that is missing is added; everything else takes the place of its line.
        lines[c.bad.empty() ? at : with_fix->spot.line - 1] = with_fix->fix;
        const DesignRead again = read_design(joined(lines), testing::shared_facts());
        for (const Fault& f : again.faults) {
            INFO("then: " << f.says);
            CHECK(f.id != "syntax");
            CHECK((f.spot.line != with_fix->spot.line || f.id != with_fix->id));
        }
    }
}

TEST_CASE("Where no line mends it none is offered, and the words say what is wrong", "[design][fixes]")
{
    const auto first = [](const std::string& start, const std::string& bad) {
        std::vector<std::string> lines = design_lines("mm");
        lines[line_of(lines, start)] = bad;
        return read_design(joined(lines), testing::shared_facts()).faults.front();
    };
    CHECK(first("width = 75", "width = 1e999").fix.empty());
    CHECK(first("width = 75", "width = 99999999999999999999999").fix.empty());
    std::vector<std::string> twice = design_lines("mm");
    twice.insert(twice.begin() + static_cast<std::ptrdiff_t>(line_of(twice, "width = 75")), "width = 75");
    const Fault fault = read_design(joined(twice), testing::shared_facts()).faults.front();
    CHECK(fault.fix.empty());
    CHECK_THAT(fault.says, ContainsSubstring("width is given twice"));
    CHECK_THAT(first("name", "name = \"Stool").says, ContainsSubstring("a quote is opened on this line and not closed"));
}

TEST_CASE("A wrong count brings no second fault", "[design][fixes]")
{
    for (const std::string count : {"0", "-1", "\"6\"", "1000000000"}) {
        std::vector<std::string> lines = design_lines("mm");
        lines[line_of(lines, "repeat")] = "repeat = { count = " + count + ", along = \"x\", to = 480 }";
        INFO(count);
        CHECK(read_design(joined(lines), testing::shared_facts()).faults.size() == 1);
    }
}

TEST_CASE("Sizes that cannot be meant are refused where they stand", "[design][fixes]")
{
    const auto faults = [](const std::string& start, const std::string& bad) {
        std::vector<std::string> lines = design_lines("mm");
        lines[line_of(lines, start)] += "\n" + bad;
        return read_design(joined(lines), testing::shared_facts()).faults;
    };
    const auto refused = [&](const std::string& start, const std::string& bad, const std::string& says) {
        INFO(bad);
        const Faults found = faults(start, bad);
        REQUIRE(found.size() == 1);
        CHECK(found.front().id == "out-of-range");
        CHECK_THAT(found.front().says, ContainsSubstring(says));
    };
    refused("face = \"z\"", "glued_up = { boards = 1000, glue = \"PVA\" }", "a board is at least 5 mm");
    refused("face = \"z\"", "ring_radius = 1", "from the pith");
    refused("kind = \"screws\"", "glue = \"PVA\"\nglued = { length = 5000 }", "they touch along");
    CHECK(faults("face = \"z\"", "glued_up = { boards = 4, glue = \"PVA\" }").empty());
    CHECK(faults("face = \"z\"", "ring_radius = 60").empty());
    CHECK(faults("kind = \"screws\"", "glue = \"PVA\"\nglued = { length = 20 }").empty());

    std::vector<std::string> thick = design_lines("mm");
    thick[line_of(thick, "screws")] = "screws = { diameter = 50, length = 60, count = 1 }";
    const Faults found = read_design(joined(thick), testing::shared_facts()).faults;
    REQUIRE(found.size() == 1);
    CHECK_THAT(found.front().says, ContainsSubstring("none is thicker than 25.4 mm"));

    std::vector<std::string> soft = design_lines("mm");
    soft[line_of(soft, "species")] = "properties = { modulus = \"1 GPa\", shear_modulus = \"90 GPa\", bending_strength = \"60 "
                                     "MPa\", density = \"600 kg/m3\" }";
    CHECK_THAT(read_design(joined(soft), testing::shared_facts()).faults.front().says,
               ContainsSubstring("shear_modulus is not below modulus"));
}
