#pragma once
// The face that clamps press at a glued contact, and the wood around it. SI doubles where no quantity stands.

#include "bond/glue/clamping.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// What clamps press at one glued contact.
struct PressedFace {
    ClampFace face;
    Density density{};            ///< of the denser wood
    std::string denser;           ///< its name
    std::string across;           ///< direction of the pressure: "from top to bottom"
    bool wedges_itself = false;   ///< dovetails: driven home, no clamp presses their cheeks
    bool pulls_shoulders = false; ///< tenon, dowel: the clamp draws the shoulders tight; the cheeks press by their fit
    std::string fitted;           ///< then: what presses by its fit, "the cheeks press"
};

/// Nothing when neither wood has a density (named in `missing`).
std::optional<PressedFace> pressed_face(const Prepared& prepared, const Contact& contact, std::string* missing);

/// The edges of a part glued up from boards, all pressed at once across its width.
std::optional<PressedFace> pressed_edges(const Prepared& prepared, std::size_t part, std::string* missing);

/// Area that glue is spread on, on one of the two parts [m²]; a stated glued length lessens it.
double spread_area(const Contact& contact, const Joint& joint);

} // namespace jointwright
