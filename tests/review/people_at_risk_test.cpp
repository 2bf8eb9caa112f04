// Pieces that would hurt someone, and slips of the maker that must be told: each fails or warns for its own reason.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <algorithm>
#include <cmath>

using namespace checked;

namespace {

const DesignHead kSeatHead{.name = "Seat", .use = "seat", .carries = {"seat"}};

/// A board on two slabs that stand on end, with nothing between them; and what joins them.
std::string slab_bench(const std::string& joint)
{
    return design({head_text(kSeatHead), wood_text("white oak"),
                   part_text("slab", {420, 300, 30}, "z", "x", "[100, 0, 0]", "copies = [{ at = [1070, 0, 0] }]"),
                   part_text("seat", {1200, 300, 30}, "x", "z", "[0, 0, 420]"), joint});
}

bool has_finding(const std::vector<Finding>& findings, std::string_view check, std::string_view subject)
{
    return std::any_of(findings.begin(), findings.end(),
                       [&](const Finding& f) { return f.check == check && f.subject == subject; });
}

} // namespace

TEST_CASE("Screws in end grain do not keep a seat on slabs upright", "[fastener]")
{
    const auto report =
        content_of(slab_bench(joint_text("seat", "slab", "screws", "", "screws = { diameter = 3.5, length = 60, count = 2 }")));
    const Finding& f = finding_of(report.findings, "fastener", "seat / slab");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("turn the joint"));
    // The pull of the working is that of the moment it names, less what lies on the slab, over 0.9 of half the slab's thickness.
    const auto at = std::find_if(f.working.begin(), f.working.end(),
                                 [](const WorkingStep& step) { return step.says.find("turns the joint") != std::string::npos; });
    REQUIRE(at != f.working.end());
    const double moment = std::stod(at->with);
    CHECK_THAT(value_of(f, "pull"), WithinRel(moment / (0.9 * 0.015), 0.01));
}

TEST_CASE("A leg with its grain across its height fails", "[leg]")
{
    const auto stool = [](const std::string& leg) {
        return content_of(design({head_text(kSeatHead), wood_text("white oak"), leg,
                                  part_text("seat", {400, 400, 30}, "x", "z", "[0, 0, 420]"),
                                  joint_text("seat", "leg", "screws", "", "screws = { diameter = 5, length = 70, count = 2 }")}))
            .findings;
    };
    const std::string others = "copies = [{ at = [355, 0, 0] }, { at = [0, 355, 0] }, { at = [355, 355, 0] }]";
    const auto across = stool(part_text("leg", {45, 420, 45}, "x", "y", "[0, 0, 0]", others));
    const Finding& f = finding_of(across, "leg", "leg");
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("grain across its height"));
    const auto along = stool(part_text("leg", {420, 45, 45}, "z", "y", "[0, 0, 0]", others));
    CHECK_THAT(finding_of(along, "leg", "leg").headline, !ContainsSubstring("grain across"));
}

TEST_CASE("A seat that nothing holds on its slabs is told to lie loose", "[stands]")
{
    const auto loose = content_of(slab_bench(""));
    const Finding& f = finding_of(loose.findings, "stands", "seat");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(f.headline, ContainsSubstring("only lies"));
    const auto held =
        content_of(slab_bench(joint_text("seat", "slab", "screws", "", "screws = { diameter = 5, length = 70, count = 2 }")));
    CHECK_FALSE(has_finding(held.findings, "stands", "seat"));
}

TEST_CASE("A tall case is pulled forwards: 44.5 N at its top or at 1.422 m against its weight", "[tip]")
{
    const auto [height, used_height] = GENERATE(std::pair{1000.0, 1.0}, std::pair{2100.0, 1.422});
    const auto bench =
        bench_of(design({head_text({.name = "Case", .use = "shelf", .carries = {"shelf"}}), wood_text("white oak"),
                         part_text("side", {height, 200, 20}, "z", "x", "[0, 0, 0]", "copies = [{ at = [620, 0, 0] }]"),
                         part_text("shelf", {600, 200, 20}, "x", "z", "[20, 0, 300]"),
                         joint_text("side", "shelf", "dowel", "PVA", "dowels = { diameter = 8, length = 40, count = 3 }")}));
    const auto findings = run_check("tip", bench->prepared);
    REQUIRE(findings.size() == 1);
    const Finding& f = findings.front();
    CHECK(f.where == "a pull of 44.5 N on its front");
    const double holds = bench->prepared.whole_mass() * 9.80665 * 0.100;
    CHECK_THAT(value_of(f, "overturning_ratio"), WithinRel(44.5 * used_height / holds, 1e-6));
    CHECK(f.verdict == Verdict::warn); // a bookcase: it asks for an anchor, whatever the ratio
    CHECK_THAT(f.remedy.words(), ContainsSubstring("anchor it to the wall"));
}

TEST_CASE("A tilted tenon is as long as stated, not as the wedge that its end shares", "[joint-capacity]")
{
    // A rail between a straight and a raked leg, its end drawn up to the middle of the raked face.
    const auto tilted = [](double degrees) {
        return content_of(
                   design({head_text(kSeatHead), wood_text("white oak"), part_text("leg", {440, 50, 50}, "z", "x", "[0, 0, 0]"),
                           part_text("raked leg", {440, 50, 50}, "z", "x", "[450, 0, 0]",
                                     fmt::format("turn = {{ about = \"y\", degrees = {} }}", degrees)),
                           part_text("rail", {402, 80, 25}, "x", "y", "[50, 12, 340]"),
                           part_text("seat", {300, 200, 25}, "x", "z", "[0, -75, 440]"),
                           joint_text("rail", "leg", "tenon", "PVA", "tenon = { length = 30, width = 60, thickness = 9 }"),
                           joint_text("rail", "raked leg", "tenon", "PVA", "tenon = { length = 30, width = 60, thickness = 9 }"),
                           joint_text("seat", "leg", "screws", "", "screws = { diameter = 5, length = 70, count = 2 }")}))
            .findings;
    };
    const auto findings = tilted(-4);
    const double straight = value_of(finding_of(findings, "joint-capacity", "rail / leg"), "moment_mean"),
                 raked = value_of(finding_of(findings, "joint-capacity", "rail / raked leg"), "moment_mean");
    CHECK_THAT(raked, WithinRel(straight, 0.05));
}

TEST_CASE("The strip of long grain at the stop of a housing is not what bears a shelf", "[glue-line]")
{
    const auto shelf = [](double deep) {
        return content_of(design({head_text({.name = "Case", .use = "shelf", .carries = {"shelf"}}), wood_text("white oak"),
                                  part_text("side", {900, 280, 22}, "z", "x", "[0, 0, 0]", "copies = [{ at = [778, 0, 0] }]"),
                                  part_text("shelf", {770, deep, 22}, "x", "z", "[15, 0, 500]"),
                                  joint_text("shelf", "side", "housing", "PVA")}))
            .findings;
    };
    // Stopped short of the back edge, and run through: the recess bears either alike.
    for (const double deep : {262.0, 280.0}) {
        CAPTURE(deep);
        CHECK(finding_of(shelf(deep), "glue-line", "shelf / side").verdict == Verdict::pass);
    }
}
