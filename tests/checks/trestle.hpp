#pragma once
// A board lying on two posts: the plainest beam there is, for tests of sag, bending, shear and notches.

#include "checks/checked.hpp"

namespace checked {

/// White oak at 12 % in every season; the middles of the two bearings stand 960 mm apart, the board reaches 20 mm beyond them.
/// $width × $thickness, `face` z: lying flat; y: on edge.
constexpr std::string_view kTrestle = R"(
[piece]
name = "Trestle"
units = "mm"
use = "$use"
$head
[room]
driest = { moisture = 12 }
dampest = { moisture = 12 }
moisture_at_glue_up = 12
[[wood]]
id = "oak"
species = "$species"
rings = "flat"
[[part]]
id = "post"
wood = "oak"
length = 400
width = 120
thickness = 40
grain = "z"
face = "x"
at = [0, 0, 0]
copies = [ { at = [960, 0, 0] } ]
[[part]]
id = "board"
wood = "oak"
length = 1000
width = $width
thickness = $thickness
grain = "x"
face = "$face"
at = [0, 0, 400]
)";

constexpr double kTrestleSpan = 0.960, kTrestleOverhang = 0.020; // m

struct Trestle {
    double width_mm = 120, thickness_mm = 20;
    const char* face = "z";
    const char* species = "white oak";
    const char* use = "none";
    std::string head;  ///< more lines of [piece]
    std::string shape; ///< more lines of the board
    std::string more;  ///< loads and limits
    std::string text() const
    {
        return fill(std::string(kTrestle), {{"use", use},
                                            {"head", head},
                                            {"species", species},
                                            {"width", std::to_string(width_mm)},
                                            {"thickness", std::to_string(thickness_mm)},
                                            {"face", face}}) +
               shape + more;
    }
};

/// A lasting load at a point of the board, or spread over a length in its middle.
inline std::string point_load(const std::string& newtons, const std::string& x, bool lasting = true)
{
    return "[[load]]\nname = \"weight\"\non = \"board\"\nforce = \"" + newtons + " N\"\nat = [" + x +
           ", 10, 415]\nlasting = " + (lasting ? "true" : "false") + "\n";
}

} // namespace checked
