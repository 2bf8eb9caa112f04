#pragma once
// A panel in its grooves: room to swell, what stays in the groove when it shrinks, and the groove that works. SI doubles: metres.

#include <optional>

namespace jointwright {

/// One edge of a panel in one groove, as drawn.
struct GrooveSide {
    double depth = 0;   ///< of the groove
    double engaged = 0; ///< how deep the panel is in it
    double room() const { return depth - engaged; }
};

/// Movement of the panel across the opening, less that of the frame, from one edge to the other [m]; positive when it swells.
struct PanelMovement {
    double dry = 0, damp = 0;
    double swell() const { return dry > damp ? (dry > 0 ? dry : 0) : (damp > 0 ? damp : 0); }    ///< at its widest, 0 or more
    double shrink() const { return dry < damp ? (dry < 0 ? -dry : 0) : (damp < 0 ? -damp : 0); } ///< at its narrowest, 0 or more
};

/// Depth that is left in the groove when the panel, held, has shrunk by `shrink` at this edge: e − shrink.
double engagement_held(const GrooveSide& side, double shrink);
/// Depth that is left in the other groove when a panel free to slide sits wholly to one side: e1 + e2 − d − |Δw|, d the deeper of the two.
double engagement_free(const GrooveSide& side, const GrooveSide& other, double shrink);

/// What a groove and a panel could be changed to.
struct GrooveAdvice {
    double depth = 0;    ///< of the groove
    double engaged = 0;  ///< of the panel's edge, at today's moisture
    bool pinned = false; ///< the panel has to be held at its middle for that
};

/// What an edge asks for: both amounts for this edge alone, half of the panel's for one that moves about its middle.
struct EdgeDemand {
    double swell = 0, shrink = 0;
    double wanted = 0; ///< room that should be left at the dampest
    double share = 0;  ///< of the depth that the panel should reach at the driest
    bool held = false; ///< the panel is held already
};

/// The panel to cut for a groove of this depth; first for a panel free to slide, else for a pinned one. Nothing when no panel fits the groove.
std::optional<GrooveAdvice> panel_for_groove(double depth, double engaged, const EdgeDemand& demand);
/// The groove to cut for the panel as it is, rounded up by `step`; nothing when the panel is too little in it.
std::optional<GrooveAdvice> groove_for_panel(double engaged, const EdgeDemand& demand, double step);
/// The shallowest groove in steps that works with some panel, pinned.
GrooveAdvice least_groove(const EdgeDemand& demand, double step);

} // namespace jointwright
