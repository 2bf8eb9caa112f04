// assembly-time: stages that can go together, and glue-ups that cannot be split.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "judging/joints/glue_stages.hpp"

#include <algorithm>
#include <set>

using namespace checked;

namespace {

/// A room and a shop, and beech.
std::string beech(const std::string& shop)
{
    return still_head(false) + fmt::format("shop_temperature = \"{}\"\n", shop) + wood_text("European beech");
}

/// Spindles between two rails; the glue of the upper tenons and that of the lower ones.
std::string spindles(int count, const std::string& glue, const std::string& shop = "20 C")
{
    return design({
        beech(shop),
        part_text("rail", {1000, 50, 30}, "x", "y", "{ left = 0, front = 0, bottom = 0 }",
                  "copies = [ { at = { left = 0, front = 0, bottom = 450 } } ]"),
        part_text("spindle", {400, 20, 20}, "z", "y", "{ left = 20, front = 5, bottom = 50 }",
                  fmt::format("repeat = {{ count = {}, along = \"x\", gap = 40 }}", count)),
        joint_text("spindle", "rail", "tenon", glue, "tenon = { length = 20, width = 12, thickness = 12 }"),
    });
}

/// A table's frame with aprons tenoned into legs.
std::string table(const std::string& glue, const std::string& top_joint = "")
{
    const char* tenon = "tenon = { length = 30, width = 55, thickness = 7 }";
    return design({
        beech("20 C"),
        part_text("leg", {700, 50, 50}, "z", "y", "[0, 0, 0]",
                  "copies = [ { at = [950, 0, 0] }, { at = [0, 450, 0] }, { at = [950, 450, 0] } ]"),
        part_text("long apron", {900, 80, 20}, "x", "y", "[50, 10, 620]", "copies = [ { at = [50, 470, 620] } ]"),
        part_text("end apron", {400, 80, 20}, "y", "x", "[10, 50, 620]", "copies = [ { at = [970, 50, 620] } ]"),
        joint_text("long apron", "leg", "tenon", glue, tenon),
        joint_text("end apron", "leg", "tenon", glue, tenon),
        top_joint,
    });
}

StagePlan stages_of(const std::string& text) { return plan_stages(bench_of(text)->prepared); }

/// Every glued contact stands in exactly one stage.
void check_complete(const std::string& text)
{
    const auto bench = bench_of(text);
    const StagePlan plan = plan_stages(bench->prepared);
    std::multiset<std::size_t> seen;
    for (const GlueStage& stage : plan.stages) seen.insert(stage.contacts.begin(), stage.contacts.end());
    for (std::size_t c = 0; c < bench->layout.contacts.size(); ++c) {
        const auto& joint = bench->layout.contacts[c].joint;
        const bool glued = joint && bench->piece.joints[*joint].glue;
        CAPTURE(c);
        CHECK(seen.count(c) == (glued ? 1u : 0u));
    }
}

} // namespace

TEST_CASE("Nine spindles with a five-minute glue cannot be split, and the finding names them", "[assembly-time]")
{
    const Finding f = finding_of(content_of(spindles(9, "five-minute epoxy")).findings, "assembly-time");
    CHECK(f.verdict == Verdict::warn); // advice: no fault of the piece
    CHECK_FALSE(f.utilisation);
    CHECK(f.subject == "spindle / rail");
    CHECK_THAT(f.headline, ContainsSubstring("9 joints must close together"));
    CHECK_THAT(f.headline, ContainsSubstring("5 min"));
    CHECK(value_of(f, "open_time") == 300);
    CHECK(value_of(f, "joints") == 18);
    CHECK(value_of(f, "longest_stage") > 300);
    // All tenons alike: the share is that of the whole stage, closed and clamped within 5 + 1 min.
    CHECK_THAT(value_of(f, "share_of_open_time"), WithinRel(value_of(f, "longest_stage_to_pressure") / 360, 1e-9));
    CHECK(value_of(f, "share_of_open_time") > 1.25);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("stays open longer"));
    CHECK(f.remedy.words().find("dry") == std::string::npos);
}

TEST_CASE("The same spindles close in time with a glue that stays open, and two of them with any", "[assembly-time]")
{
    CHECK(finding_of(content_of(spindles(9, "urea-formaldehyde")).findings, "assembly-time").verdict == Verdict::pass);
    CHECK(finding_of(content_of(spindles(2, "five-minute epoxy")).findings, "assembly-time").verdict == Verdict::pass);
    // A glue that gels in a minute serves two tenons at once no more.
    CHECK(finding_of(content_of(spindles(2, "hide glue")).findings, "assembly-time").verdict == Verdict::warn);
}

TEST_CASE("Clamps, open time and stages fail no piece, while glue that lets go does", "[assembly-time]")
{
    for (const std::string& text :
         {spindles(9, "five-minute epoxy"), spindles(14, "hide glue"), table("PVA"), built_in_design("garden-bench-interior-pva"),
          built_in_design("nine-spindles-five-minute-glue")})
        for (const Finding& f : content_of(text).findings) {
            CAPTURE(f.check, f.headline);
            if (f.check == "clamping" || f.check == "assembly-time") {
                CHECK(f.verdict <= Verdict::warn);
                CHECK_FALSE(f.utilisation);
            }
            if (f.check == "seasonal-size") CHECK_FALSE(f.utilisation);
            if (f.check == "glue-suits") CHECK(f.utilisation.has_value() <= (f.verdict != Verdict::pass));
        }
    const auto outdoors = content_of(built_in_design("garden-bench-interior-pva")).findings;
    CHECK(std::any_of(outdoors.begin(), outdoors.end(),
                      [](const Finding& f) { return f.check == "glue-suits" && f.verdict == Verdict::fail; }));
}

TEST_CASE("A warm shop takes open time away", "[assembly-time]")
{
    const auto used = [](const std::string& shop) {
        return value_of(finding_of(content_of(spindles(6, "epoxy", shop)).findings, "assembly-time"), "share_of_open_time");
    };
    CHECK(used("28 C") > used("20 C"));
    CHECK(used("20 C") > used("12 C"));
}

TEST_CASE("More spindles never take less of the open time", "[assembly-time]")
{
    double last = 0;
    for (int count = 1; count <= 14; ++count) {
        const double used =
            value_of(finding_of(content_of(spindles(count, "resorcinol")).findings, "assembly-time"), "share_of_open_time");
        CAPTURE(count);
        // Under three quarters of the time, stages are filled as it suits; above it, the spindles set the time.
        if (last > 0.75) CHECK(used > last);
        last = used;
    }
    CHECK(last < 1);
}

TEST_CASE("A table is glued up in two end frames, then with its long aprons", "[assembly-time]")
{
    const StagePlan plan = stages_of(table("PVA"));
    REQUIRE(plan.stages.size() == 3);
    CHECK_THAT(plan.stages[0].words, ContainsSubstring("end apron"));
    CHECK_THAT(plan.stages[1].words, ContainsSubstring("end apron"));
    CHECK(plan.stages[2].words == "long apron / leg: 4 joints");
    CHECK(plan.stages[0].contacts.size() == 2);
    CHECK(plan.stages[1].contacts.size() == 2);
    const Finding f = finding_of(content_of(table("PVA")).findings, "assembly-time");
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(f.headline, ContainsSubstring("3 stages"));
    // With a glue that stays open long enough nothing is split.
    CHECK(stages_of(table("urea-formaldehyde")).stages.size() == 1);
}

TEST_CASE("A glued top is laid on last", "[assembly-time]")
{
    const StagePlan plan = stages_of(
        table("PVA", part_text("top", {1000, 500, 20}, "x", "z", "[0, 0, 700]", "glued_up = { boards = 5, glue = \"PVA\" }") +
                         joint_text("top", "long apron", "face", "PVA")));
    REQUIRE(plan.stages.size() >= 3);
    CHECK(plan.stages.front().part.has_value()); // boards first
    CHECK_THAT(plan.stages.back().words, ContainsSubstring("top / long apron"));
}

TEST_CASE("Every glued joint is in one stage, of every design that comes with the program", "[assembly-time]")
{
    std::size_t looked_at = 0;
    for (const std::string& path : testing::shared_facts().paths_under("designs")) {
        CAPTURE(path);
        check_complete(*testing::shared_facts().text(path));
        ++looked_at;
    }
    CHECK(looked_at > 15);
    check_complete(spindles(9, "PVA"));
    check_complete(table("PVA"));
}

TEST_CASE("A panel in its grooves comes out only with its frame, and costs no glue", "[assembly-time]")
{
    // Four tenons; the panel is dry. All in one go with the panel in, never a stage of the panel alone.
    const StagePlan plan = stages_of(built_in_design("cabinet-door-damp-coast"));
    REQUIRE(plan.stages.size() == 2);
    CHECK(plan.stages[0].subject == "panel"); // its boards
    CHECK(plan.stages[1].words == "rail / stile: 4 joints");
}

TEST_CASE("A piece without glue has no time to keep", "[assembly-time]")
{
    std::string text = table("PVA");
    for (std::size_t at; (at = text.find("glue = \"PVA\"\n")) != std::string::npos;) text.erase(at, 13);
    CHECK(count_of(content_of(text).findings, "assembly-time") == 0);
    CHECK(count_of(content_of(text).findings, "clamping") == 0);
    CHECK(count_of(content_of(text).findings, "glue-suits") == 0);
}
