// A long row of notches: what each takes out, and that no other notch matters to it.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "piece/solid/solid.hpp"

using namespace checked;

namespace {

/// A rail with a row of notches in its top and another, wider and fewer, in its bottom.
Piece rail_with(int count)
{
    return piece_of(fill(R"([piece]
name = "Rail"
units = "mm"
use = "none"
[room]
air = "heated, cold winters"
moisture_at_glue_up = 9
[[wood]]
id = "w"
species = "white oak"
[[part]]
id = "rail"
wood = "w"
length = 12000
width = 80
thickness = 31
grain = "x"
face = "y"
at = [5, 7, 11]
notches = [
  { from = "top", depth = 10, width = 4, first = 20, count = $count, step = 11 },
  { from = "bottom", depth = 6, width = 30, first = 45, count = 9, step = 1201 },
]
)",
                         {{"count", std::to_string(count)}}));
}

} // namespace

TEST_CASE("A row of a thousand notches takes out a thousand times what one does", "[solid][notches]")
{
    for (const int count : {1, 7, 1000}) {
        CAPTURE(count);
        const Piece piece = rail_with(count);
        const Solid solid = solid_of(piece.parts[0], piece.copies[0]);
        const double whole = 12.0 * 0.080 * 0.031, taken = 0.031 * (count * 0.010 * 0.004 + 9 * 0.006 * 0.030);
        CHECK_THAT(solid.volume(), WithinRel(whole - taken, 1e-9));
        double skin = 0;
        for (const kernel::Polygon& face : solid.skin) skin += kernel::area(face);
        // Each notch lays open two walls and a bottom; two ends of it lie open in the long faces.
        const double box = 2 * (12.0 * 0.080 + 12.0 * 0.031 + 0.080 * 0.031);
        const double opened = count * (2 * 0.010 * 0.031 - 2 * 0.010 * 0.004) + 9 * (2 * 0.006 * 0.031 - 2 * 0.006 * 0.030);
        CHECK_THAT(skin, WithinRel(box + opened, 1e-9));
    }
}

TEST_CASE("A body that a notch does not reach is left whole", "[solid][notches]")
{
    const Piece piece = rail_with(1);
    const Solid solid = solid_of(piece.parts[0], piece.copies[0]);
    // Ten notches cut a bar into few cells; cut by the planes of notches far off it would fall into many more.
    CHECK(solid.cells.size() <= 40);
}
