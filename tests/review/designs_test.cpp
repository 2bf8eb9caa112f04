// The designs that come with the program, each right or wrong in one way: what a cabinetmaker would say of them, pinned.

#include "catch.hpp"
#include "checks/checked.hpp"

using namespace checked;

namespace {

/// A design, its verdict, and the finding that carries the lesson.
struct Row {
    const char* design;
    Verdict whole;
    const char* check;
    const char* subject;
    Verdict lesson;
};

constexpr Row kRows[] = {
    {"boot-bench", Verdict::pass, "cross-grain", "slat / long rail", Verdict::pass},
    {"hall-table-glued-top", Verdict::fail, "cross-grain", "top / end apron", Verdict::fail},
    {"window-seat-metric", Verdict::pass, "species-unsure", "ash", Verdict::pass},
    {"cherry-top-glued", Verdict::fail, "cross-grain", "top / end apron", Verdict::fail},
    {"cherry-top-on-buttons", Verdict::pass, "slot-length", "top / end apron", Verdict::pass},
    {"cabinet-door-damp-coast", Verdict::fail, "groove-room", "panel / stile", Verdict::fail},
    {"breadboard-glued-full-width", Verdict::fail, "cross-grain", "field / end", Verdict::fail},
    {"breadboard-glued-middle", Verdict::pass, "cross-grain", "field / end", Verdict::pass},
    {"slats-2in-across-rail", Verdict::pass, "cross-grain", "slat / long rail", Verdict::pass},
    {"plank-across-one-rail", Verdict::fail, "cross-grain", "plank / rail", Verdict::fail},
    {"deep-tenon-glued-whole", Verdict::fail, "cross-grain", "long apron / leg", Verdict::fail},
    {"drawer-bottom-glued-all-round", Verdict::fail, "cross-grain", "bottom / side", Verdict::fail},
    {"desk-glued-front-and-back", Verdict::fail, "cross-grain", "top / apron", Verdict::fail},
    {"drawer-runner-glued-across-side", Verdict::fail, "cross-grain", "runner / side", Verdict::fail},
    {"ledged-door-screwed-tight", Verdict::fail, "slot-length", "batten / door", Verdict::fail},
    {"mirror-frame-wide-flat-sawn", Verdict::fail, "mitre-gap", "stile / bottom rail", Verdict::fail},
    {"porch-slats-too-close", Verdict::fail, "slat-gap", "slat", Verdict::fail},
    {"wide-shelf-bookcase", Verdict::fail, "sag", "shelf", Verdict::fail},
    {"garden-bench-interior-pva", Verdict::fail, "glue-suits", "long rail / back leg", Verdict::fail},
    {"nine-spindles-five-minute-glue", Verdict::warn, "assembly-time", "spindle / upper rail", Verdict::warn},
    {"slat-on-end-grain", Verdict::fail, "glue-line", "slat / long rail", Verdict::fail},
    {"waiting-bench-tenons-too-short", Verdict::fail, "joint-capacity", "long rail / leg", Verdict::fail},
    {"lipping-along-panel-edge", Verdict::pass, "glue-line", "lipping / board", Verdict::pass},
    {"table-batten-glued-whole", Verdict::fail, "cross-grain", "batten / top", Verdict::fail},
    {"table-batten-glued-front", Verdict::pass, "cross-grain", "batten / top", Verdict::pass},
    {"stool-seat-rail-tenons", Verdict::pass, "glue-line", "seat rail / leg", Verdict::pass},
};

} // namespace

TEST_CASE("The designs that come with the program get the verdicts they were made for", "[designs]")
{
    for (const Row& row : kRows) {
        CAPTURE(row.design, row.check, row.subject);
        const ReportContent content = content_of(built_in_design(row.design));
        CHECK(content.verdict == row.whole);
        const Finding& lesson = finding_of(content.findings, row.check, row.subject);
        CHECK(lesson.verdict == row.lesson);
        if (row.lesson == Verdict::fail) {
            REQUIRE(lesson.remedy);
            CHECK_FALSE(lesson.remedy.words().empty());
        }
    }
}

TEST_CASE("Designs that must fail, fail for the reason they were made for", "[designs]")
{
    const auto headline = [](const char* design, const char* check, const char* subject) {
        const ReportContent content = content_of(built_in_design(design));
        return finding_of(content.findings, check, subject).headline;
    };
    CHECK_THAT(headline("slat-on-end-grain", "glue-line", "slat / long rail"), ContainsSubstring("by end grain alone"));
    CHECK_THAT(headline("garden-bench-interior-pva", "glue-suits", "long rail / back leg"),
               ContainsSubstring("glue for dry rooms"));
    CHECK_THAT(headline("nine-spindles-five-minute-glue", "assembly-time", "spindle / upper rail"),
               ContainsSubstring("9 joints must close together"));
    CHECK_THAT(headline("waiting-bench-tenons-too-short", "joint-capacity", "long rail / leg"),
               ContainsSubstring("pushed to the"));
    CHECK_THAT(headline("waiting-bench-tenons-too-short", "joint-capacity", "long rail / leg"), ContainsSubstring("too weak"));
    // Long tenons make it good, mitred where they meet in the legs.
    std::string text = built_in_design("waiting-bench-tenons-too-short");
    const std::string sizes = "length = 10, width = 40, thickness = 10";
    text.replace(text.find(sizes), sizes.size(), "length = 40, width = 40, thickness = 10, mitred = true");
    CHECK(content_of(text).verdict == Verdict::pass);
}

TEST_CASE("A door that fails by its panel says which groove works and how wide to cut the panel today", "[designs]")
{
    const ReportContent content = content_of(built_in_design("cabinet-door-damp-coast"));
    const Finding& f = finding_of(content.findings, "groove-room", "panel / stile");
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("groove"));
    bool told = false;
    for (const std::string& line : content.cut_today) told = told || line.find("room of panel / stile") != std::string::npos;
    CHECK(told);
}
