#pragma once
// A board lying on two posts: the plainest beam there is, for tests of sag, bending, shear and notches.

#include "checks/checked.hpp"
#include "checks/design_text.hpp"

namespace checked {

constexpr double kTrestleSpan = 0.960, kTrestleOverhang = 0.020; // m

/// White oak at 12 % in every season; the middles of the two bearings stand 960 mm apart, the board reaches 20 mm beyond them.
/// `face` z: the board lies flat; y: it stands on edge.
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
        return design({
            head_text({.name = "Trestle", .use = use, .more = head}),
            wood_text(species),
            part_text("post", {400, 120, 40}, "z", "x", "[0, 0, 0]", "copies = [ { at = [960, 0, 0] } ]"),
            part_text("board", {1000, width_mm, thickness_mm}, "x", face, "[0, 0, 400]", shape),
            more,
        });
    }
};

/// A lasting load at a point of the board, or spread over a length in its middle.
inline std::string point_load(const std::string& newtons, const std::string& x, bool lasting = true, const std::string& y = "10")
{
    return "[[load]]\nname = \"weight\"\non = \"board\"\nforce = \"" + newtons + " N\"\nat = [" + x + ", " + y +
           ", 415]\nlasting = " + (lasting ? "true" : "false") + "\n";
}

} // namespace checked
