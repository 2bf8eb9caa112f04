// Where a place in plan falls on a part, turned or not.

#include "catch.hpp"
#include "piece/model/lying.hpp"

#include <cmath>
#include <numbers>

using namespace jointwright;

namespace {

/// A board 0.6 × 0.1 × 0.02, grain along x, face up, from the origin; turned about the middle of its box.
struct Board {
    Part part;
    Copy copy;
    explicit Board(std::optional<Axis> about = std::nullopt, double degrees_turned = 0, Axis grain = Axis::x)
    {
        part.grain = grain;
        part.face = grain == Axis::z ? Axis::y : Axis::z;
        part.length = metres(0.6);
        part.width = metres(0.1);
        part.thickness = metres(0.02);
        copy.box = grain == Axis::z ? Box{{0, 0, 0}, {0.1, 0.02, 0.6}} : Box{{0, 0, 0}, {0.6, 0.1, 0.02}};
        if (!about) return;
        part.turn = Turn{*about, degrees(degrees_turned), {}, {}};
    }
    Lying lying() const { return {part, copy}; }
};

} // namespace

TEST_CASE("Of a board along the axes a patch covers what both share", "[lying]")
{
    const auto under = Board().lying().under({0.1, 0.3, -0.5, 0.04});
    REQUIRE(under);
    CHECK_THAT(under->area, WithinRel(0.2 * 0.04, 1e-12));
    CHECK_THAT(under->from, WithinAbs(0.1, 1e-12));
    CHECK_THAT(under->to, WithinAbs(0.3, 1e-12));
    CHECK_THAT(under->across, WithinAbs(0.02, 1e-12));
    CHECK_THAT(under->breadth, WithinAbs(0.04, 1e-12));
    CHECK_FALSE(Board().lying().under({0.7, 0.8, 0, 1}));
}

TEST_CASE("A board turned a quarter round in plan is covered where it lies, not where it is drawn", "[lying]")
{
    // About its middle (0.3, 0.05): it now runs along y from −0.25 to 0.35, at x from 0.25 to 0.35.
    const Lying lying = Board(Axis::z, 90).lying();
    CHECK(lying.across() == Axis::y);
    CHECK_FALSE(lying.under({0, 0.2, -1, 1}));
    const auto under = lying.under({0, 1, -1, -0.05}); // the first 0.2 m of its grain, which points to the back
    REQUIRE(under);
    CHECK_THAT(under->area, WithinRel(0.2 * 0.1, 1e-9));
    CHECK_THAT(under->from, WithinAbs(0, 1e-9));
    CHECK_THAT(under->to, WithinAbs(0.2, 1e-9));
    CHECK_THAT(under->across, WithinAbs(0.05, 1e-9));
    CHECK_THAT(under->breadth, WithinAbs(0.1, 1e-9));
    const Point p = lying.place(0.1, 0.05);
    CHECK_THAT(p[0], WithinAbs(0.3, 1e-9));
    CHECK_THAT(p[1], WithinAbs(-0.15, 1e-9));
    CHECK_THAT(lying.drawn(p)[0], WithinAbs(0.1, 1e-9));
}

TEST_CASE("Of a board that lies askew a patch covers a strip, with its own middle", "[lying]")
{
    // Turned 30° in plan; a window as wide as the board is long, cut off at x: the strip left is a trapezium whose middle is known.
    const double angle = 30 * std::numbers::pi / 180, c = std::cos(angle), s = std::sin(angle);
    const Lying lying = Board(Axis::z, 30).lying();
    const auto whole = lying.under({-1, 2, -1, 1});
    REQUIRE(whole);
    CHECK_THAT(whole->area, WithinRel(0.06, 1e-9));
    CHECK_THAT(whole->from, WithinAbs(0, 1e-9));
    CHECK_THAT(whole->to, WithinAbs(0.6, 1e-9));
    CHECK_THAT(whole->breadth, WithinAbs(0.1, 1e-9));
    // Right of its middle: half of it, its cut edge slanting by tan 30° over the width b; middle of that trapezium along the grain.
    const auto half = lying.under({0.3, 2, -1, 1});
    REQUIRE(half);
    CHECK_THAT(half->area, WithinRel(0.03, 1e-9));
    const double b = 0.1, l = 0.3, slant = s / c; // of length l − v tan 30° at v across from the middle
    CHECK_THAT((half->from + half->to) / 2, WithinAbs(0.3 + l / 2 - slant * slant * b * b / (24 * l), 1e-9));
    CHECK_THAT(half->across, WithinAbs(0.05 - slant * b * b / (12 * l), 1e-9));
}

TEST_CASE("A sloping slat shows less of its width, and its load stays on its middle", "[lying]")
{
    const Lying slope = Board(Axis::x, 60).lying();
    const auto under = slope.under({0, 0.6, -1, 1});
    REQUIRE(under);
    CHECK_THAT(under->area, WithinRel(0.6 * 0.1 * 0.5, 1e-9));
    CHECK_THAT(under->across, WithinAbs(0.05, 1e-9));
    CHECK_THAT(under->breadth, WithinAbs(0.1, 1e-9));
    // On edge its thickness is what is seen from above.
    CHECK(Board(Axis::x, 90).lying().across() == Axis::z);
}

TEST_CASE("An upright part is loaded on its upper end, one laid down by its turn along its length", "[lying]")
{
    const auto on_top = Board(std::nullopt, 0, Axis::z).lying().under({-1, 1, -1, 1});
    REQUIRE(on_top);
    CHECK(on_top->from == 0.6);
    CHECK(on_top->to == 0.6);
    const Lying upside_down = Board(Axis::x, 180, Axis::z).lying();
    CHECK(upside_down.upright());
    CHECK(upside_down.top_end() == 0);
    const Lying laid = Board(Axis::y, 90, Axis::z).lying(); // the grain now runs along x
    CHECK_FALSE(laid.upright());
    const auto under = laid.under({-1, 1, -1, 1});
    REQUIRE(under);
    CHECK_THAT(under->to - under->from, WithinAbs(0.6, 1e-9));
}
