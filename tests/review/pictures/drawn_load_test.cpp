#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include "mechanics/structure/structure.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;

namespace {

ReportContent content_with_drawings(const std::string& text)
{
    CheckOptions options;
    options.drawn = true;
    options.text = text;
    return check_piece(checked::piece_of(text), testing::shared_facts(), options);
}

double farthest(const DrawnLoad& load, std::size_t axis)
{
    double most = 0;
    for (const MovedLine& line : load.lines)
        for (const Point& p : line.moved_by) most = std::max(most, std::abs(p[axis]));
    return most;
}

double value_in(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name) return v.value;
    throw std::logic_error("no such value");
}

} // namespace

TEST_CASE("The drawn load is that of the largest sag, and every part has a line", "[drawing][load]")
{
    const ReportContent content = content_with_drawings(checked::built_in_design("boot-bench"));
    REQUIRE(content.drawn);
    REQUIRE(content.drawn->load);
    const DrawnLoad& load = *content.drawn->load;
    const Finding& governing = content.findings[load.finding];
    CHECK(governing.check == "sag");
    for (const Finding& f : content.findings)
        if (f.check == "sag") CHECK(f.utilisation.value_or(0) <= governing.utilisation.value_or(0));
    REQUIRE(governing.where);
    CHECK(governing.where->find(load.words) != std::string::npos);
    CHECK(load.lines.size() == content.drawn->bodies.size());
    CHECK_FALSE(load.acts.empty());
    // A rail goes down by its sag at least, its bearers with it; far less than a hundredth of the span.
    CHECK(farthest(load, 2) > value_in(governing, "deflection_at_once") * 0.99);
    CHECK(farthest(load, 2) < 0.01);
}

TEST_CASE("A bench whose feet slide is drawn as it was judged, on a floor that gives way", "[drawing][load]")
{
    using namespace checked;
    const ReportContent content = content_with_drawings(design({
        head_text({.name = "Bench", .use = "seat", .carries = {"seat"}}),
        wood_text("white oak"),
        part_text("seat", {1640, 320, 27}, "x", "z", "{ left = 0, front = 0, top = 450 }"),
        part_text("board", {434, 320, 38}, "z", "x", "{ left = 40, front = 0, bottom = 0 }",
                  "copies = [{ at = { right = 1600, front = 0, bottom = 0 } }]"),
        joint_text("board", "seat", "sliding dovetail", "PVA"),
    }));
    REQUIRE(content.drawn);
    REQUIRE(content.drawn->load);
    const Finding& f = content.findings[content.drawn->load->finding];
    REQUIRE(f.check == "sag");
    const double drawn = farthest(*content.drawn->load, 2), told = value_in(f, "deflection_at_once");
    // Between stops it would sag by less than half as much.
    CHECK(drawn > 0.98 * told);
    CHECK(drawn < 1.1 * told);
}

TEST_CASE("A wide part is drawn out of shape by its edges and middle lines", "[drawing][load]")
{
    const ReportContent content = content_with_drawings(checked::built_in_design("wide-shelf-bookcase"));
    REQUIRE(content.drawn);
    REQUIRE(content.drawn->load);
    CHECK(content.drawn->load->lines.size() > content.drawn->bodies.size());
    for (const MovedLine& line : content.drawn->load->lines) {
        CHECK(line.at_rest.size() == line.moved_by.size());
        for (const Point& p : line.moved_by) CHECK(std::isfinite(p[0] + p[1] + p[2]));
    }
}

TEST_CASE("A piece that carries nothing has no load drawn and no chart of sag", "[drawing][load]")
{
    const ReportContent content = content_with_drawings(checked::built_in_design("mirror-frame-wide-flat-sawn"));
    REQUIRE(content.drawn);
    CHECK_FALSE(content.drawn->load);
    CHECK_FALSE(content.drawn->sag_by);
}

TEST_CASE("A thicker part sags less, and where the limit is met lies between one size beyond it and one within",
          "[drawing][load]")
{
    const ReportContent content = content_with_drawings(checked::built_in_design("wide-shelf-bookcase"));
    REQUIRE(content.drawn);
    REQUIRE(content.drawn->sag_by);
    const SagByThickness& by = *content.drawn->sag_by;
    REQUIRE(by.sizes.size() >= 3);
    CHECK(by.sizes.size() <= 6);
    CHECK(std::count_if(by.sizes.begin(), by.sizes.end(), [](const SagAtThickness& a) { return a.chosen; }) == 1);
    for (std::size_t i = 1; i < by.sizes.size(); ++i) {
        CHECK(by.sizes[i - 1].thickness < by.sizes[i].thickness);
        CHECK(by.sizes[i - 1].sag > by.sizes[i].sag);
    }
    REQUIRE(by.meets_limit_at);
    for (const SagAtThickness& at : by.sizes) CHECK((at.thickness < *by.meets_limit_at) == (at.sag > at.limit));
}

TEST_CASE("Without the text of the design no other thickness is worked out", "[drawing][load]")
{
    CheckOptions options;
    options.drawn = true;
    const auto content =
        check_piece(checked::piece_of(checked::built_in_design("wide-shelf-bookcase")), testing::shared_facts(), options);
    REQUIRE(content.drawn);
    CHECK_FALSE(content.drawn->sag_by);
}
