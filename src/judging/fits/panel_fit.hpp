#pragma once
// One edge of a floating panel in its groove through the year: what moves it, what is left, and the verdict on it. SI doubles: metres.

#include "judging/finding.hpp"
#include "judging/fits/groove_fit.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <optional>
#include <string>

namespace jointwright {

/// One edge of a panel in a groove: which contact, along which axis, at which end.
struct PanelEdge {
    std::size_t contact = 0, panel = 0, frame = 0;
    Axis axis = Axis::x;
    bool high = false; ///< the far end of the panel
    GrooveSide side;
    double at = 0; ///< the panel's edge
};

/// The edge that a contact lets into a groove of stated depth: along the axis in which the panel ends within the second part on one side and
/// stands out of it on the other. Nothing where the two share no space or the depth is not stated.
std::optional<PanelEdge> edge_of(const Prepared& prepared, const Ties& ties, std::size_t contact);

/// How an edge moves, and what opposes it.
struct PanelFit {
    const PanelEdge* edge = nullptr;
    const PanelEdge* opposite = nullptr; ///< the groove at the other side of the panel, where there is one
    bool held = false;
    std::string held_at;                 ///< "the middle of panel" or where glue and pegs hold it
    double from = 0;                     ///< the place along the axis that stays put
    PanelMovement here;                  ///< at this edge
    PanelMovement whole;                 ///< from edge to edge, or from the held place to this edge
    std::optional<std::size_t> frame_by; ///< the part that sets the width of the opening
    bool along_grain = false;
};

/// @param opposite  the dry groove at the panel's other side, or nullptr
PanelFit fit_of(const Prepared& prepared, const Ties& ties, const PanelEdge& edge, const PanelEdge* opposite);

/// Room and engagement of a fit through the year.
struct PanelYear {
    double made = 0, driest = 0, dampest = 0; ///< room at this edge
    double left = 0;                          ///< at the dampest: the room that counts; both sides shared where the panel is free
    double wanted = 0;
    double engaged = 0, engaged_wanted = 0; ///< at the driest, held
    std::optional<double> engaged_free;     ///< at the driest, pushed wholly to one side

    bool closes() const;
    bool is_close() const; ///< less room left than wanted
    bool leaves() const;   ///< the panel comes out of its groove
    bool reaches_little() const;
    bool shows_a_gap() const; ///< pushed to one side
};
PanelYear year_of(const Prepared& prepared, const PanelFit& fit);

Verdict verdict_of(const PanelFit& fit, const PanelYear& year);
/// The largest share used: of the room, of the depth that may be lost when dry.
double utilisation_of(const PanelFit& fit, const PanelYear& year);

} // namespace jointwright
