#pragma once
// Pressing a glue line: how hard by the density of the wood, with how many clamps, how far apart, over what cauls.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"

#include <optional>

namespace jointwright {

/// Pressure on a glue line [Pa]: from 0.7 MPa for light woods to 1.7 MPa for dense ones, straight between the tabled densities.
///
/// Where the glue and not the wood decides (epoxy, contact cement, cyanoacrylate), the glue's own figure. Never falls with density.
/// Source: Wood Handbook p. 10-17 (from memory); the densities are estimated.
Stress clamping_pressure(const Facts& facts, Density density, const GlueRecord* glue, Working* working = nullptr);

/// One face to press.
struct ClampFace {
    Area area{};                        ///< that the pressure acts on
    Length length{}, breadth{};         ///< of the face; breadth is the shorter
    Length reach{};                     ///< wood between the clamp and the glue line, on the thinner side
    std::optional<Stress> crushed_from; ///< stress across the grain at which the softer wood is marked
};

/// How to press it.
struct ClampPlan {
    Stress pressure{};
    Force force{};     ///< in all
    int clamps = 1;    ///< at least; each gives `per_clamp`
    Force per_clamp{}; ///< never more than one clamp gives by hand
    Stress reached{};  ///< what they give together; the pressure, or less where more clamps would be no sense
    Length spacing{};  ///< middle to middle, along the length; the first stands half of it from the end
    int rows = 1;      ///< 2: boards across as cauls, a clamp at either end of each
    std::optional<Length>
        board; ///< depth of the board that spreads the pressure from clamp to clamp, where the usual caul is too thin
    std::optional<Length> caul; ///< side of the least square pad or width of the caul under a clamp
    bool enough = true;         ///< what is reached bonds flat, well fitted faces
};

/// Clamps for a face as a maker sets them: force = pressure × area; the number by force and by spacing, whichever asks for more, but never
/// more than one for each 100 mm of the face (`clamp_nearest`): from there on each clamp is tightened to what a hand gives and no more are put.
///
/// Pressure spreads at 45° through the wood and the caul: where clamps stand farther apart than that, a board under them, as deep as half their
/// spacing, spreads it. Faces broader than two cones are pressed by boards across them, a clamp at either end. Laws: force grows with area and
/// density; the number never falls when the face grows. Leaves out: friction, bent cauls, vacuum and screw presses.
/// Sources: Wood Handbook p. 10-17 (from memory); the rest is common practice.
ClampPlan clamp_plan(const Facts& facts, const ClampFace& face, Density density, const GlueRecord* glue,
                     Working* working = nullptr);

/// Glue to have ready for faces of that area [kg], squeeze-out and what stays in the brush included; nothing when the table lacks it.
std::optional<Mass> glue_quantity(const Facts& facts, const GlueRecord& glue, Area area, Working* working = nullptr);

} // namespace jointwright
