#include "catch.hpp"
#include "report/path_points.hpp"

#include "report/drawings/scene.hpp"
#include "report/drawings/svg_path.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;
using namespace jointwright::drawing;

namespace {

double total_length(const std::vector<Stroke>& strokes)
{
    double sum = 0;
    for (const Stroke& s : strokes) sum += std::hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    return sum;
}

void add_ring(LineSet& lines, const std::vector<Dot>& ring)
{
    for (std::size_t i = 0; i < ring.size(); ++i) lines.add(ring[i], ring[(i + 1) % ring.size()]);
}

} // namespace

TEST_CASE("Edges between areas vanish, even where corners of one meet the middle of the other's side", "[drawing]")
{
    LineSet lines;
    add_ring(lines, {{0, 0}, {2, 0}, {2, 1}, {0, 1}});
    add_ring(lines, {{0, 1}, {1, 1}, {1, 2}, {0, 2}});
    add_ring(lines, {{1, 1}, {2, 1}, {2, 2}, {1, 2}});
    CHECK_THAT(total_length(lines.boundary()), WithinAbs(8, 1e-9));
}

TEST_CASE("Edges of areas that only touch at corners stay", "[drawing]")
{
    LineSet lines;
    add_ring(lines, {{0, 0}, {1, 0}, {1, 1}, {0, 1}});
    add_ring(lines, {{1, 1}, {2, 1}, {2, 2}, {1, 2}});
    CHECK_THAT(total_length(lines.boundary()), WithinAbs(8, 1e-9));
}

TEST_CASE("Lines over each other are drawn once and tell how many they are", "[drawing]")
{
    LineSet lines;
    lines.add({0, 0}, {2, 0});
    lines.add({3, 0}, {1, 0});
    lines.add({0, 1}, {0, 1}); // no line
    const auto cover = lines.cover();
    CHECK_THAT(total_length(cover), WithinAbs(3, 1e-9));
    double twice = 0;
    for (const Stroke& s : cover)
        if (s.times == 2) twice += std::abs(s.to.x - s.from.x);
    CHECK_THAT(twice, WithinAbs(1, 1e-9));
}

TEST_CASE("A line is cut to the polygon that it crosses", "[drawing]")
{
    const kernel::Polygon square{{{0, 0, 0}, {1, 0, 0}, {1, 1, 0}, {0, 1, 0}}, {0, 0, 1}};
    const auto across = line_within(square, {-1, 0.5}, {3, 0.5});
    REQUIRE(across.size() == 1);
    CHECK_THAT(across[0].from.x, WithinAbs(0, 1e-12));
    CHECK_THAT(across[0].to.x, WithinAbs(1, 1e-12));
    CHECK(line_within(square, {-1, 1.5}, {3, 1.5}).empty());
    CHECK(line_within(square, {2, -1}, {2, 2}).empty());
}

TEST_CASE("A board's rim is heavy, its inner edges light, its grain runs along it and rings stand on its ends", "[drawing]")
{
    const std::vector<kernel::Cell> cells{kernel::box_cell({0, 0, 0}, {1, 0.1, 0.02})};
    const WoodBody board{cells, {1, 0, 0}, {0.5, 0.05, -0.1}, 0};
    const Scene above = look_at({board}, view_from_above(), {0.01, 0.004, 0.01});
    CHECK(above.edges.empty());
    CHECK_THAT(total_length(above.outlines), WithinAbs(2.2, 1e-9));
    REQUIRE_FALSE(above.grain.empty());
    for (const Stroke& s : above.grain) {
        CHECK_THAT(s.from.y, WithinAbs(s.to.y, 1e-12));
        CHECK((s.from.y > 0 && s.from.y < 0.1));
    }
    REQUIRE(above.end_grain.size() == 1);
    CHECK_FALSE(above.end_grain[0]);

    const Scene end = look_at({board}, view_from_left(), {0.01, 0.004, 0.01});
    REQUIRE(end.end_grain.size() == 1);
    CHECK(end.end_grain[0]);
    REQUIRE_FALSE(end.grain.empty());
    // Rings of 4 mm round the pith, 100 mm below the foot of the end (seen from the left, front at the right: x = -0.05).
    for (const Stroke& s : end.grain) {
        const double r = std::hypot((s.from.x + s.to.x) / 2 + 0.05, (s.from.y + s.to.y) / 2 + 0.1);
        CHECK(std::abs(std::remainder(r, 0.004)) < 3e-4);
        CHECK((s.from.y > -1e-9 && s.from.y < 0.02 + 1e-9));
    }

    const Scene corner = look_at({board}, view_from_corner(0.6, 0.5), {0.01, 0.004, 0.01});
    // Three inner edges meet at the near corner.
    CHECK(corner.edges.size() == 3);
    CHECK(corner.outlines.size() == 6);
}

namespace {

double area_of(const Ring& ring)
{
    double twice = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Dot &a = ring[i], &b = ring[(i + 1) % ring.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return twice / 2;
}

} // namespace

TEST_CASE("The edges of areas close to outlines, with holes the other way round", "[drawing]")
{
    LineSet lines; // four bars round an empty square, their corners in the middle of their neighbours' sides
    add_ring(lines, {{0, 0}, {3, 0}, {3, 1}, {0, 1}});
    add_ring(lines, {{0, 2}, {3, 2}, {3, 3}, {0, 3}});
    add_ring(lines, {{0, 1}, {1, 1}, {1, 2}, {0, 2}});
    add_ring(lines, {{2, 1}, {3, 1}, {3, 2}, {2, 2}});
    const auto rings = closed_rings(lines.boundary());
    REQUIRE(rings);
    REQUIRE(rings->size() == 2);
    for (const Ring& ring : *rings) CHECK(ring.size() == 4);
    CHECK_THAT(area_of((*rings)[0]) + area_of((*rings)[1]), WithinAbs(8, 1e-9));
    CHECK_THAT(std::max(area_of((*rings)[0]), area_of((*rings)[1])), WithinAbs(9, 1e-9));
}

TEST_CASE("Areas that touch at one corner close all the same, and an open run does not", "[drawing]")
{
    LineSet lines;
    add_ring(lines, {{0, 0}, {1, 0}, {1, 1}, {0, 1}});
    add_ring(lines, {{1, 1}, {2, 1}, {2, 2}, {1, 2}});
    const auto rings = closed_rings(lines.boundary());
    REQUIRE(rings);
    double sum = 0;
    for (const Ring& ring : *rings) sum += area_of(ring);
    CHECK_THAT(sum, WithinAbs(2, 1e-9));
    CHECK_FALSE(closed_rings({{{0, 0}, {1, 0}, 1}, {{1, 0}, {1, 1}, 1}}));
}

TEST_CASE("A path leads where its points lie, however short it is written", "[drawing]")
{
    const std::vector<Dot> wanted{{10.04, 20}, {30.26, 20}, {30.26, -5.55}, {0.31, 0.29}, {0.31, 0.3}, {-12, 0.9}};
    SvgPath path;
    path.move_to(wanted[0]);
    for (std::size_t i = 1; i < wanted.size(); ++i) path.line_to(wanted[i]);
    path.close();
    path.move_to({1, 1});
    path.line_to({1.5, 1.5});
    const std::vector<Dot> points = drawn::points_of_path(path.text());
    // The step from (0.31, 0.29) to (0.31, 0.3) stays on the same tenth: left out.
    const std::vector<Dot> left{wanted[0], wanted[1], wanted[2], wanted[3], wanted[5], wanted[0], {1, 1}, {1.5, 1.5}};
    REQUIRE(points.size() == left.size());
    for (std::size_t i = 0; i < left.size(); ++i) {
        CHECK_THAT(points[i].x, WithinAbs(left[i].x, 0.0501));
        CHECK_THAT(points[i].y, WithinAbs(left[i].y, 0.0501));
    }
    CHECK(path.text().find("e") == std::string::npos);
    SvgPath nothing;
    nothing.move_to({1, 1});
    nothing.line_to({1.01, 1.01});
    CHECK(nothing.empty());
}

TEST_CASE("A curve keeps its shape to within what is asked when points are left out", "[drawing]")
{
    std::vector<Dot> arc;
    for (int i = 0; i <= 100; ++i) arc.push_back({std::cos(i * 0.01), std::sin(i * 0.01)});
    const std::vector<Dot> few = thinned(arc, 1e-3);
    CHECK(few.size() < 20);
    CHECK(few.front().x == arc.front().x);
    CHECK(few.back().y == arc.back().y);
    // The sagitta of every chord is within what was asked, but for that of the run's own steps, 0.01²/8.
    for (std::size_t i = 0; i + 1 < few.size(); ++i)
        CHECK(std::hypot((few[i].x + few[i + 1].x) / 2, (few[i].y + few[i + 1].y) / 2) > 1 - 1e-3 - 1.3e-5);
    CHECK(thinned({{0, 0}, {1, 0}, {2, 0}}, 1e-9).size() == 2);
}
