// Grains at any angle to each other: the strain difference as a tensor.

#include "catch.hpp"
#include "facts/shared_facts.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/glued_face.hpp"
#include "piece/read/read_design.hpp"

#include <algorithm>
#include <cmath>
#include <string>

using namespace jointwright;

namespace {

/// A strip glued flat on a board, turned by so many degrees from the board's grain.
double largest_strain_difference(double degrees_off)
{
    const std::string text = R"(
[piece]
name = "askew"
units = "mm"
use = "none"
[room]
driest = { moisture = 6 }
dampest = { moisture = 12 }
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "board"
wood = "oak"
length = 600
width = 600
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "strip"
wood = "oak"
length = 200
width = 60
thickness = 20
grain = "x"
face = "z"
at = [200, 270, 20]
turn = { about = "z", degrees = )" +
                             std::to_string(degrees_off) + R"( }
[[joint]]
between = ["strip", "board"]
kind = "face"
glue = "PVA"
)";
    const DesignRead read = read_design(text, testing::shared_facts());
    REQUIRE(read.piece);
    const Prepared prepared =
        prepare(lay_out(*read.piece), testing::shared_facts(), combinations_of(*read.piece)[0], LengthUnit::millimetre);
    double most = 0;
    for (const FaceDirection& face : glued_directions(prepared)) most = std::max(most, std::abs(face.damp));
    return most;
}

} // namespace

TEST_CASE("The strain difference of two like boards grows as the sine of the angle between their grains",
          "[cross-grain][identity]")
{
    // For E_A − R E_B Rᵀ with like principal strains e_across, e_along the eigenvalues are ± (e_across − e_along) sin θ.
    const double whole = (0.00365 - 0.00005) * 4;
    for (const double angle : {0.0, 15.0, 30.0, 45.0, 60.0, 90.0}) {
        CAPTURE(angle);
        CHECK_THAT(largest_strain_difference(angle), WithinAbs(whole * std::sin(angle * 3.14159265358979 / 180), 1e-9));
    }
}
