// Floating panels: room to swell at the dampest, still in the groove at the driest, and the groove and the panel to cut today.

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "checks/groove_fit.hpp"
#include "measure/write.hpp"
#include "mechanics/ties.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMicrometre = 1e-6;  // m: less is rounding
constexpr double kNoLimit = 10;       // utilisations beyond it say no more

/// One edge of a panel in a groove: which contact, along which axis, at which end.
struct Edge {
    std::size_t contact = 0, panel = 0, frame = 0;
    Axis axis = Axis::x;
    bool high = false; ///< the far end of the panel
    GrooveSide side;
    double at = 0;     ///< the panel's edge
};

/// The axis along which the panel enters the groove: it ends within the second part on one side and stands out of it on the other.
std::optional<Edge> edge_of(const Prepared& prepared, const Ties& ties, std::size_t index)
{
    const Contact& contact = prepared.layout->contacts[index];
    if (!contact.shared || !contact.joint) return std::nullopt;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    if (!joint.groove_depth) return std::nullopt;
    const Box& panel = ties.body_of(contact.first).box;
    std::optional<Edge> found;
    double farthest = 0;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t k = index_of(axis);
        const double below = contact.shared->lo[k] - panel.lo[k], above = panel.hi[k] - contact.shared->hi[k];
        if ((below > kTouch) == (above > kTouch) || std::max(below, above) <= farthest) continue;
        farthest = std::max(below, above);
        found = Edge{index, contact.first, contact.second, axis, below > above, {in_metres(*joint.groove_depth), contact.shared->size(axis)}, below > above ? panel.hi[k] : panel.lo[k]};
    }
    return found;
}

/// How an edge moves, and what opposes it.
struct Fit {
    const Edge* edge = nullptr;
    const Edge* opposite = nullptr; ///< the groove at the other side of the panel, where there is one
    bool held = false;
    std::string held_at;            ///< "the middle of panel" or where glue and pegs hold it
    PanelMovement here;             ///< at this edge
    PanelMovement whole;            ///< from edge to edge, or from the held place to this edge
    std::optional<std::size_t> frame_by; ///< the part that sets the width of the opening
    bool along_grain = false;
};

/// The place that holds a panel, nearest to an edge; grooves that it lies dry in do not hold it.
std::optional<Grip> hold_of(const Ties& ties, const Edge& edge)
{
    std::optional<Grip> best;
    for (const Grip& g : ties.grips(edge.panel, edge.axis)) {
        if (!g.tight()) continue;
        if (!best || std::abs(g.middle() - edge.at) < std::abs(best->middle() - edge.at)) best = g;
    }
    return best;
}

Fit fit_of(const Prepared& prepared, const Ties& ties, const Edge& edge, const Edge* opposite)
{
    Fit fit;
    fit.edge = &edge;
    fit.opposite = opposite;
    const Part& panel = prepared.piece->part_of(edge.panel);
    const PartState& state = prepared.state_of(edge.panel);
    fit.along_grain = edge.axis == panel.grain;
    BoardStrain frame_dry, frame_damp;
    double dry = 0, damp = 0;
    if (opposite) fit.frame_by = ties.spanning(edge.frame, opposite->frame, edge.axis, ties.body_of(edge.panel));
    if (fit.frame_by) {
        const Part& frame = prepared.piece->part_of(*fit.frame_by);
        dry = strain_along(frame, prepared.state_of(*fit.frame_by).dry, edge.axis);
        damp = strain_along(frame, prepared.state_of(*fit.frame_by).damp, edge.axis);
    }
    const double rel_dry = strain_along(panel, state.dry, edge.axis) - dry, rel_damp = strain_along(panel, state.damp, edge.axis) - damp;
    const Box& box = ties.body_of(edge.panel).box;
    const auto hold = hold_of(ties, edge);
    fit.held = hold.has_value();
    const double from = hold ? hold->middle() : box.middle(edge.axis), arm = std::abs(edge.at - from);
    const double across = hold ? arm : box.size(edge.axis);
    fit.held_at = hold ? (hold->glue ? "its glue on " : "the fastener on ") + prepared.piece->label(hold->partner, true) : "the middle of " + panel.id;
    fit.here = {rel_dry * arm, rel_damp * arm};
    fit.whole = {rel_dry * across, rel_damp * across};
    return fit;
}

/// Room and engagement of a fit through the year.
struct Year {
    double made = 0, driest = 0, dampest = 0; ///< room at this edge
    double left = 0;                          ///< at the dampest: the room that counts; both sides shared where the panel is free
    double wanted = 0;
    double engaged = 0, engaged_wanted = 0;   ///< at the driest, held
    std::optional<double> engaged_free;       ///< at the driest, pushed wholly to one side
};

Year year_of(const Prepared& prepared, const Fit& fit)
{
    const Edge& edge = *fit.edge;
    Year y;
    y.made = edge.side.room();
    y.driest = y.made - fit.here.dry;
    y.dampest = y.made - fit.here.damp;
    y.wanted = fit.along_grain ? -kTouch : prepared.facts->number("wanted_clearance").value / 2;
    y.left = y.made - fit.here.swell();
    if (!fit.held && fit.opposite) y.left = (y.made + fit.opposite->side.room() - fit.whole.swell()) / 2;
    y.engaged = engagement_held(edge.side, fit.here.shrink());
    y.engaged_wanted = prepared.facts->number("groove_engaged_share").value * edge.side.depth;
    if (!fit.held && fit.opposite) y.engaged_free = engagement_free(edge.side, fit.opposite->side, fit.whole.shrink());
    return y;
}

bool closes(const Year& y) { return y.left < (y.wanted < 0 ? y.wanted : 0) - kMicrometre; }
bool is_close(const Year& y) { return y.left < y.wanted - kMicrometre; }
bool leaves(const Year& y) { return y.engaged <= kMicrometre; }
bool reaches_little(const Year& y) { return y.engaged < y.engaged_wanted - kMicrometre; }
bool shows_a_gap(const Year& y) { return y.engaged_free && *y.engaged_free <= kMicrometre; }

Verdict verdict_of(const Fit& fit, const Year& y)
{
    const bool open_behind = !fit.held && !fit.opposite; // what cannot go on here goes back there
    if (closes(y)) return open_behind ? Verdict::warn : Verdict::fail;
    if (leaves(y)) return Verdict::fail;
    return is_close(y) || reaches_little(y) || shows_a_gap(y) ? Verdict::warn : Verdict::pass;
}

double share_used(double used, double allowed)
{
    if (used <= kMicrometre) return allowed < -kMicrometre ? kNoLimit : 0;
    return allowed <= used / kNoLimit ? kNoLimit : used / allowed;
}

double utilisation_of(const Fit& fit, const Year& y)
{
    const double room = share_used(y.made - y.left, y.made - std::max(y.wanted, 0.0) + (y.wanted < 0 ? kTouch : 0.0));
    const GrooveSide& side = fit.edge->side;
    const double held = share_used(side.engaged - y.engaged, side.engaged - y.engaged_wanted);
    const double free = y.engaged_free ? share_used(fit.whole.shrink(), *y.engaged_free + fit.whole.shrink()) : 0;
    return std::max({room, held, free});
}

/// "panel 391.5 mm wide": the panel with this edge, and its like on the other side, brought to another depth.
std::string panel_words(const Prepared& prepared, const Fit& fit, const GrooveAdvice& advice, double width)
{
    return fmt::format("{} {} {} today (at {})", prepared.piece->part_of(fit.edge->panel).id, size_words(prepared, width), fit.along_grain ? "long" : "wide", moisture_words(prepared.state_of(fit.edge->panel).made)) + (advice.pinned && !fit.held ? ", pinned at its middle" : "");
}

double width_for(const Ties& ties, const Fit& fit, const GrooveAdvice& advice)
{
    const double width = ties.body_of(fit.edge->panel).box.size(fit.edge->axis);
    const double here = advice.engaged - fit.edge->side.engaged;
    const bool both = fit.opposite && !(fit.held && std::abs(fit.edge->at - (fit.edge->high ? fit.opposite->at : fit.opposite->at)) < kTouch);
    return width + here + (both ? advice.engaged - fit.opposite->side.engaged : 0);
}

} // namespace

std::vector<Finding> check_groove_room(const Prepared& prepared);

} // namespace jointwright
