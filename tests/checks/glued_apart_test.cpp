// cross-grain: boards glued in two places that a frame keeps apart.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A top on two long aprons, 460 mm apart from middle to middle, that legs and end aprons hold together.
constexpr const char* kTable = R"(
[[wood]]
id = "oak"
species = "red oak"
rings = "flat"
[[part]]
id = "top"
wood = "oak"
length = 1200
width = 600
thickness = 25
grain = "x"
face = "z"
at = [0, 0, 700]
[[part]]
id = "apron"
wood = "oak"
length = 1000
width = 90
thickness = 20
grain = "x"
face = "y"
at = [100, 60, 610]
copies = [ { at = [100, 520, 610] } ]
[[part]]
id = "leg"
wood = "oak"
length = 680
width = 60
thickness = 60
grain = "z"
face = "x"
at = [40, 40, 0]
copies = [ { at = [1100, 40, 0] }, { at = [40, 500, 0] }, { at = [1100, 500, 0] } ]
[[part]]
id = "end apron"
wood = "oak"
length = 400
width = 90
thickness = 20
grain = "y"
face = "x"
at = [60, 100, 580]
copies = [ { at = [1120, 100, 580] } ]
[[joint]]
between = ["apron", "leg"]
kind = "tenon"
glue = "PVA"
tenon = { length = 40, width = 60, thickness = 6 }
$ends
[[joint]]
between = ["top", "apron"]
kind = "face"
$glue
)";

constexpr const char* kEnds = R"([[joint]]
between = ["end apron", "leg"]
kind = "tenon"
glue = "PVA"
tenon = { length = 40, width = 60, thickness = 6 }
)";

std::string table(const std::string& glue, const char* ends = kEnds)
{
    return still_head(true) + fill(kTable, {{"ends", ends}, {"glue", glue}});
}

Finding top_on_apron(const std::string& text) { return finding_of(content_of(text).findings, "cross-grain", "top / apron"); }

/// Red oak across the grain less along it, 9 to 5.4 %.
constexpr double kLoss = 3.6 / (1 / 0.00369 - 1) - 0.00005 * 3.6;

} // namespace

TEST_CASE("A top glued to the front and the back apron is held across its grain by the frame", "[cross-grain]")
{
    const Finding f = top_on_apron(table("glue = \"PVA\""));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(value_of(f, "glued_length"), WithinAbs(0.460, 1e-9)); // from middle to middle of the aprons
    CHECK_THAT(value_of(f, "differential_movement"), WithinAbs(0.460 * kLoss, 1e-8));
    CHECK_THAT(f.headline, ContainsSubstring("apron #1") && ContainsSubstring("apron #2") && ContainsSubstring("460 mm"));
    CHECK_THAT(*f.remedy, ContainsSubstring("one of the two only"));
}

TEST_CASE("Glued in spots it is held all the same, glued to one apron only or without a frame it is free", "[cross-grain]")
{
    CHECK(top_on_apron(table("glue = \"PVA\"\nglued = { length = 100, at = \"middle\" }")).verdict == Verdict::fail);
    // Nothing ties the front of the frame to its back.
    CHECK(top_on_apron(table("glue = \"PVA\"", "")).verdict == Verdict::pass);
    std::string one = table("glue = \"PVA\"");
    one.replace(one.find("[\"top\", \"apron\"]"), 16, "[\"top\", \"apron #1\"]");
    one += "[[joint]]\nbetween = [\"top\", \"apron #2\"]\nkind = \"buttons\"\nbuttons = { count = 3 }\n";
    CHECK(top_on_apron(one).verdict == Verdict::pass);
}

TEST_CASE("A case whose sides move with its shelves holds nothing back", "[cross-grain]")
{
    // Rails along the front and back edge of a shelf; the sides run upright and move from front to back as the shelf does.
    const auto findings = content_of(*testing::shared_facts().text("patterns/dado-bookcase.toml")).findings;
    for (const Finding& f : findings)
        if (f.check == "cross-grain") {
            CAPTURE(f.subject, f.headline);
            CHECK(f.headline.find("keeps") == std::string::npos);
        }
}

TEST_CASE("A stretcher that runs askew is not held across its grain by its ends", "[cross-grain]")
{
    std::string text = table("");
    text += R"(
[[part]]
id = "stretcher"
wood = "oak"
length = 1170
width = 40
thickness = 20
grain = "x"
face = "z"
at = [15, 280, 200]
turn = { about = "z", degrees = 23.5 }
[[joint]]
between = ["stretcher", "leg"]
kind = "housing"
glue = "PVA"
)";
    const Finding f = finding_of(content_of(text).findings, "cross-grain", "stretcher / leg");
    CHECK(f.headline.find("a frame keeps") == std::string::npos);
    CHECK(value_of(f, "differential_movement") < 0.001);
}
