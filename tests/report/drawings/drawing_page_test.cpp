#include "catch.hpp"
#include "checks/checked.hpp"
#include "report/path_points.hpp"
#include "report/sample_content.hpp"

#include "report/drawings/deflected.hpp"
#include "report/drawings/joint.hpp"
#include "report/drawings/piece.hpp"
#include "report/drawings/scale.hpp"
#include "report/drawings/section.hpp"
#include "report/page/html.hpp"
#include "review/pictures/drawn_piece.hpp"
#include "wood/distortion.hpp"

#include <cmath>
#include <regex>

using namespace jointwright;

namespace {

ReportContent drawn_content(const std::string& text)
{
    CheckOptions options;
    options.drawn = true;
    return check_piece(checked::piece_of(text), testing::shared_facts(), options);
}

std::size_t index_of_finding(const ReportContent& content, std::string_view check)
{
    for (std::size_t i = 0; i < content.findings.size(); ++i)
        if (content.findings[i].check == check) return i;
    throw std::logic_error("no such finding");
}

template <class Draw>
std::string drawn_by(const Draw& draw)
{
    HtmlOut out;
    draw(out);
    return out;
}

std::size_t occurrences(const std::string& text, const std::string& words)
{
    std::size_t found = 0;
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + words.size())) ++found;
    return found;
}

/// Numbers of all coordinates lie within the view box, give or take a line's width.
void check_within_box(const std::string& figure)
{
    std::smatch box;
    REQUIRE(std::regex_search(figure, box, std::regex("viewBox=\"0 0 ([0-9]+) ([0-9]+)\"")));
    const double wide = std::stod(box[1]), high = std::stod(box[2]);
    // What is shown again by its id was looked at where it stands first.
    const std::vector<drawing::Dot> dots = drawn::points_of_paths(figure);
    for (const drawing::Dot& p : dots) CHECK((p.x > -1.5 && p.x < wide + 1.5 && p.y > -1.5 && p.y < high + 1.5));
    CHECK((dots.size() > 10 || figure.find("<use") != std::string::npos || figure.find("<path") == std::string::npos));
    CHECK(figure.find("nan") == std::string::npos);
    CHECK(figure.find("inf") == std::string::npos);
}

} // namespace

TEST_CASE("Every built-in design is drawn within its frame, with its sizes", "[drawing][page]")
{
    for (const char* name : {"boot-bench", "breadboard-glued-full-width", "cabinet-door-damp-coast", "cherry-top-glued",
                             "drawer-bottom-glued-all-round", "ledged-door-screwed-tight", "mirror-frame-wide-flat-sawn",
                             "wide-shelf-bookcase", "window-seat-metric"}) {
        CAPTURE(name);
        const ReportContent content = drawn_content(checked::built_in_design(name));
        const std::string corner = drawn_by([&](HtmlOut& out) { put_piece_drawing(out, content); });
        check_within_box(corner);
        const std::string views = drawn_by([&](HtmlOut& out) { put_three_views(out, content); });
        CHECK(occurrences(views, "<svg") == 3);
        std::size_t from = views.find("<figure");
        while (from != std::string::npos) {
            const std::size_t next = views.find("<figure", from + 1);
            check_within_box(views.substr(from, next - from));
            from = next;
        }
        for (std::size_t i = 0; i < content.findings.size(); ++i) {
            const std::string close = drawn_by([&](HtmlOut& out) {
                put_joint_drawing(out, content, i);
                put_row_drawing(out, content, i);
                put_end_grain_drawing(out, content, i);
            });
            if (!close.empty()) check_within_box(close);
        }
    }
}

TEST_CASE("The three views carry the overall sizes in the maker's units", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("boot-bench"));
    const std::string views = drawn_by([&](HtmlOut& out) { put_three_views(out, content); });
    CHECK(occurrences(views, ">44 in</text>") == 2);
    CHECK(occurrences(views, ">13 1/2 in</text>") == 2);
    CHECK(occurrences(views, ">18 in</text>") == 2);
}

TEST_CASE("Marks lead to the findings that do not pass", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("deep-tenon-glued-whole"));
    const std::string corner = drawn_by([&](HtmlOut& out) { put_piece_drawing(out, content); });
    REQUIRE(content.findings[1].verdict == Verdict::fail);
    CHECK_THAT(corner, ContainsSubstring("<a class=\"fail\" href=\"#finding-1\""));
    CHECK_THAT(corner, ContainsSubstring("<a class=\"fail\" href=\"#finding-2\""));
    std::size_t passing = 0; // the first that passes has no mark
    while (passing < content.findings.size() && content.findings[passing].verdict != Verdict::pass) ++passing;
    REQUIRE(passing < content.findings.size());
    CHECK(corner.find("#finding-" + std::to_string(passing + 1) + "\"") == std::string::npos);
}

TEST_CASE("So many places fail that only the first are marked", "[drawing][page]")
{
    ReportContent content = drawn_content(checked::built_in_design("boot-bench"));
    DrawnPiece drawn = *content.drawn;
    drawn.marks = {{{0.1, 0.1, 0.1}, {0}}};
    drawn.unmarked = 7;
    content.drawn = std::make_shared<const DrawnPiece>(drawn);
    CHECK_THAT(drawn_by([&](HtmlOut& out) { put_piece_drawing(out, content); }),
               ContainsSubstring("7 further places are not marked."));
}

TEST_CASE("A failing joint is taken apart once, with its movement and the scale of it in words", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("cherry-top-glued"));
    const std::size_t at = index_of_finding(content, "cross-grain");
    REQUIRE_FALSE(content.drawn->joints.empty());
    const ExplodedJoint& joint = content.drawn->joints.front();
    CHECK(joint.apart == Point{0, 0, 1}); // the top lifts off
    REQUIRE_FALSE(joint.moves.empty());
    // What the arrows show is what the finding says.
    const DrawnMove& move = joint.moves.front();
    CHECK_THAT(std::abs(move.of_first - move.of_second),
               WithinRel(checked::value_of(content.findings[at], "differential_movement"), 1e-6));
    const std::string close = drawn_by([&](HtmlOut& out) { put_joint_drawing(out, content, at); });
    CHECK_THAT(close, ContainsSubstring("grain of top"));
    CHECK_THAT(close, ContainsSubstring("end apron hardly moves"));
    CHECK_THAT(close, ContainsSubstring("20 times as large as it is"));
    CHECK(occurrences(close, "class=\"move\"") == 2);
    CHECK(drawn_by([&](HtmlOut& out) { put_joint_drawing(out, content, at + 1); }).empty());
}

TEST_CASE("Solids of a joint: the slat comes off the rail upwards, the tenon out of the leg along the rail", "[drawing][page]")
{
    const ReportContent bench = drawn_content(checked::built_in_design("plank-across-one-rail"));
    REQUIRE(bench.drawn->joints.size() == 1);
    CHECK(bench.drawn->joints.front().apart == Point{0, 0, 1});
    const ReportContent table = drawn_content(checked::built_in_design("deep-tenon-glued-whole"));
    REQUIRE(table.drawn->joints.size() == 2);
    for (const ExplodedJoint& joint : table.drawn->joints) CHECK(joint.apart[2] == 0);
}

TEST_CASE("A panel's edge moves in and out of its groove by half of the panel's width change", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("cabinet-door-damp-coast"));
    REQUIRE(content.drawn->joints.size() == 1);
    const ExplodedJoint& joint = content.drawn->joints.front();
    REQUIRE(joint.moves.size() == 1);
    const DrawnMove& move = joint.moves.front();
    CHECK(move.at_edge);
    const Finding& size = checked::finding_of(content.findings, "seasonal-size", "panel");
    CHECK_THAT(move.length, WithinAbs(checked::value_of(size, "size_made"), 1e-9));
    CHECK_THAT(move.of_first,
               WithinAbs(checked::value_of(size, move.driest ? "size_driest" : "size_dampest") - move.length, 1e-9));
    const std::string close = drawn_by([&](HtmlOut& out) { put_joint_drawing(out, content, joint.findings.front()); });
    CHECK(occurrences(close, "class=\"move\"") == 1);
    CHECK_THAT(close, ContainsSubstring("half of it at this edge"));
}

TEST_CASE("A mitre shows how each part moves across its own grain", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("mirror-frame-wide-flat-sawn"));
    REQUIRE(content.drawn->joints.size() == 2);
    for (const ExplodedJoint& joint : content.drawn->joints) {
        CHECK(joint.moves.empty());
        REQUIRE(joint.across.size() == 2);
        const std::size_t bodies[] = {joint.first, joint.second};
        for (std::size_t k = 0; k < 2; ++k) {
            const std::string& part = content.parts[content.drawn->bodies[bodies[k]].part].id;
            const Finding& size = checked::finding_of(content.findings, "seasonal-size", part);
            const double made = checked::value_of(size, "size_made");
            CHECK_THAT(joint.across[k].length, WithinAbs(made, 1e-9));
            CHECK_THAT(joint.across[k].change,
                       WithinAbs(checked::value_of(size, joint.driest ? "size_driest" : "size_dampest") - made, 1e-9));
        }
        const Point &a = joint.across[0].direction, &b = joint.across[1].direction;
        CHECK_THAT(a[0] * b[0] + a[1] * b[1] + a[2] * b[2], WithinAbs(0, 1e-12));
        const std::string close = drawn_by([&](HtmlOut& out) { put_joint_drawing(out, content, joint.findings.front()); });
        CHECK(occurrences(close, "class=\"move\"") == 4);
        CHECK_THAT(close, ContainsSubstring("times as large as it is"));
    }
}

TEST_CASE("A lap shows both ways in which its parts move, boards side by side that they move alike", "[drawing][page]")
{
    const auto content_of_two = [](const std::string& second, const std::string& kind) {
        return drawn_content(R"([piece]
name = "two"
units = "mm"
use = "none"
[room]
air = "heated, cold winters"
moisture_at_glue_up = 12
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "a"
wood = "oak"
length = 600
width = 200
thickness = 30
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "b"
wood = "oak"
length = 600
width = 200
thickness = 30
face = "z"
)" + second + R"([[joint]]
between = ["a", "b"]
kind = ")" + kind + "\"\nglue = \"hide glue\"\n");
    };
    const ReportContent lap = content_of_two("grain = \"y\"\nat = [200, -200, 0]\n", "lap");
    REQUIRE(lap.drawn->joints.size() == 1);
    REQUIRE(lap.drawn->joints[0].moves.size() == 2);
    const std::string crossed =
        drawn_by([&](HtmlOut& out) { put_joint_drawing(out, lap, lap.drawn->joints[0].findings.front()); });
    CHECK(occurrences(crossed, "class=\"move\"") == 4);
    CHECK_THAT(crossed, ContainsSubstring("The other way, from made to the driest, over 200 mm"));
    const ReportContent edge = content_of_two("grain = \"x\"\nat = [0, 200, 0]\n", "edge");
    REQUIRE(edge.drawn->joints.size() <= 1);
    for (const ExplodedJoint& joint : edge.drawn->joints) {
        CHECK(joint.alike);
        CHECK(joint.moves.empty());
    }
}

TEST_CASE("A board's end moves round its pith as the cup formula says", "[drawing][page]")
{
    // Flat-sawn, 200 mm wide, rings of 300 mm, drying: the edges drop by the cup of cup_of.
    const double tangential = -0.0133, radial = -0.0057, half = 0.1, r = 0.3;
    const double upright = std::acos(-1.0) / 2;
    const drawing::Dot middle = drawing::moved_round_pith({0, r}, upright, tangential, radial);
    const drawing::Dot edge = drawing::moved_round_pith({half, r}, upright, tangential, radial);
    const Cup cup = cup_of({metres(2 * half), metres(r), degrees(0)}, {tangential, radial});
    CHECK_THAT(edge.y - middle.y, WithinAbs(in_metres(cup.depth), 1e-12));
    CHECK_THAT(edge.x / half - 1, WithinAbs(cup.width_strain, 1e-12));
}

TEST_CASE("A movement is drawn a round number of times too large", "[drawing][page]")
{
    CHECK(drawing::round_times(0.3) == 1);
    CHECK(drawing::round_times(4.9) == 2);
    CHECK(drawing::round_times(5) == 5);
    CHECK(drawing::round_times(99) == 50);
    CHECK(drawing::round_times(100) == 100);
    CHECK(drawing::round_times(std::nan("")) == 1);
}

TEST_CASE("A gap that closes is drawn closed, one that stays open is drawn open", "[drawing][page]")
{
    const ReportContent closing = drawn_content(checked::built_in_design("porch-slats-too-close"));
    const std::string row = drawn_by([&](HtmlOut& out) { put_row_drawing(out, closing, index_of_finding(closing, "slat-gap")); });
    CHECK_THAT(row, ContainsSubstring(">driest</text>"));
    CHECK_THAT(row, ContainsSubstring("closed, pressed"));
    CHECK(occurrences(row, "<rect") == 12);
    const ReportContent open = drawn_content(checked::built_in_design("boot-bench"));
    const std::string wide = drawn_by([&](HtmlOut& out) { put_row_drawing(out, open, index_of_finding(open, "slat-gap")); });
    CHECK_THAT(wide, ContainsSubstring("gap 0.578 in"));
    CHECK_THAT(wide, ContainsSubstring("times as large as they are"));
}

TEST_CASE("Centrelines under load: dashed at rest, full where they go, the scale told", "[drawing][page]")
{
    const ReportContent content = drawn_content(checked::built_in_design("boot-bench"));
    const MovedLine rail{{{0, 0.02, 0.4}, {0.5, 0.02, 0.4}, {1, 0.02, 0.4}}, {{0, 0, 0}, {0, 0, -0.003}, {0, 0, 0}}};
    const std::string figure = drawn_by([&](HtmlOut& out) {
        put_deflected_drawing(out, content, {0, "two <people>", {rail}, {}});
    });
    check_within_box(figure);
    CHECK_THAT(figure, ContainsSubstring("The farthest point moves 0.118 in"));
    CHECK_THAT(figure, ContainsSubstring("two &lt;people&gt;"));
    CHECK(occurrences(figure, "class=\"made\"") == 1);
    CHECK(occurrences(figure, "class=\"move\"") == 1);
    CHECK(drawn_by([&](HtmlOut& out) { put_deflected_drawing(out, content, {0, "nobody", {}, {}}); }).empty());
    CHECK(drawn_by([&](HtmlOut& out) { put_deflected_drawing(out, sample_content(), {0, "nobody", {rail}, {}}); }).empty());
}

TEST_CASE("Hostile names come out of drawings as text", "[drawing][page][hostile]")
{
    ReportContent content = drawn_content(checked::built_in_design("cherry-top-glued"));
    for (const std::string& name : hostile_names()) {
        CAPTURE(name.substr(0, 40));
        ReportContent hostile = content;
        hostile.piece_name = name;
        for (PartLine& part : hostile.parts) part.id = name;
        for (Finding& f : hostile.findings) f.subject = f.headline = name;
        const std::string page = write_html(hostile);
        const std::string markup = page.substr(page.find("</style>"));
        for (const char* never : {"<script", "<img", "<b>", "\x1b", "\xff", "\u202E", "\u2067"})
            CHECK(markup.find(never) == std::string::npos);
    }
}

TEST_CASE("A design without drawings asked for carries none, and its page stands all the same", "[drawing][page]")
{
    const ReportContent content = checked::content_of(checked::built_in_design("boot-bench"));
    CHECK_FALSE(content.drawn);
    CHECK(write_html(content).find("class=\"drawing corner") == std::string::npos);
}
