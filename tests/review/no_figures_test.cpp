// A wood of which no figures are held: nothing that hangs on them is passed.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A bench of a seat on two boards; the boards may be of another wood than the seat.
ReportContent bench_of_woods(const std::string& boards)
{
    const std::string leg = part_text("board", {434, 320, 38}, "z", "x", "{ left = 40, front = 0, bottom = 0 }",
                                      "copies = [{ at = { right = 1200, front = 0, bottom = 0 } }]");
    std::string legs = leg;
    legs.replace(legs.find("\"stock\""), 7, "\"legs\"");
    return content_of(design({
        head_text({.name = "Bench", .use = "seat", .carries = {"seat"}}),
        wood_text("white oak"),
        "[[wood]]\nid = \"legs\"\nspecies = \"" + boards + "\"\nrings = \"flat\"\n",
        part_text("seat", {1240, 320, 27}, "x", "z", "{ left = 0, front = 0, top = 461 }"),
        legs,
        joint_text("board", "seat", "screws", "", "screws = { diameter = 5, length = 70, count = 4 }"),
    }));
}

} // namespace

TEST_CASE("Without figures neither weight nor sway nor tipping is told, and nothing of the kind passes", "[no-figures]")
{
    const ReportContent content = bench_of_woods("sheesham");
    CHECK(content.verdict != Verdict::pass);
    CHECK_FALSE(content.mass_kg);
    for (const PartLine& part : content.parts) {
        CAPTURE(part.id);
        CHECK(part.mass_kg.has_value() == (part.id == "seat"));
    }
    for (const char* check : {"rack", "tip"}) {
        const Finding f = finding_of(content.findings, check);
        CAPTURE(f.headline);
        CHECK(f.verdict == Verdict::cannot_tell);
    }
    const Finding leg = finding_of(content.findings, "leg", "board");
    CHECK(leg.verdict == Verdict::cannot_tell);
    CHECK_THAT(leg.remedy.words(), ContainsSubstring("nearest relative Indian rosewood"));
}

TEST_CASE("With figures for both woods all of it is told", "[no-figures]")
{
    const ReportContent content = bench_of_woods("Indian rosewood");
    REQUIRE(content.mass_kg);
    CHECK(*content.mass_kg > 10);
    CHECK(finding_of(content.findings, "tip").verdict != Verdict::cannot_tell);
}
