#include "judging/fits/panel_fit.hpp"

#include "judging/finding_tools.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMicrometre = 1e-6; // m: less is rounding
constexpr double kNoLimit = 10;      // utilisations beyond it say no more

/// The place that holds a panel, nearest to an edge; grooves that it lies dry in do not hold it.
std::optional<Grip> hold_of(const Ties& ties, const PanelEdge& edge)
{
    std::optional<Grip> best;
    for (const Grip& g : ties.grips(edge.panel, edge.axis)) {
        if (!g.tight()) continue;
        if (!best || std::abs(g.middle() - edge.at) < std::abs(best->middle() - edge.at)) best = g;
    }
    return best;
}

double share_used(double used, double allowed)
{
    if (used <= kMicrometre) return allowed < -kMicrometre ? kNoLimit : 0;
    return allowed <= used / kNoLimit ? kNoLimit : used / allowed;
}

} // namespace

std::optional<PanelEdge> edge_of(const Prepared& prepared, const Ties& ties, std::size_t index)
{
    const Contact& contact = prepared.layout->contacts[index];
    if (!contact.shared || !contact.joint) return std::nullopt;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    if (!joint.groove_depth) return std::nullopt;
    const Box& panel = ties.body_of(contact.first).box;
    std::optional<PanelEdge> found;
    double farthest = 0;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t k = index_of(axis);
        const double below = contact.shared->lo[k] - panel.lo[k], above = panel.hi[k] - contact.shared->hi[k];
        if ((below > kTouch) == (above > kTouch) || std::max(below, above) <= farthest) continue;
        farthest = std::max(below, above);
        found = PanelEdge{index,
                          contact.first,
                          contact.second,
                          axis,
                          below > above,
                          {in_metres(*joint.groove_depth), contact.shared->size(axis)},
                          below > above ? panel.hi[k] : panel.lo[k]};
    }
    return found;
}

PanelFit fit_of(const Prepared& prepared, const Ties& ties, const PanelEdge& edge, const PanelEdge* opposite)
{
    PanelFit fit;
    fit.edge = &edge;
    fit.opposite = opposite;
    const Part& panel = prepared.piece->part_of(edge.panel);
    fit.along_grain = runs_along(*prepared.piece, edge.panel, edge.axis);
    const Box& box = ties.body_of(edge.panel).box;
    const auto hold = hold_of(ties, edge);
    fit.held = hold.has_value();
    double dry = 0, damp = 0;
    if (opposite || hold)
        fit.frame_by = ties.spanning(edge.frame, opposite ? opposite->frame : hold->partner, edge.axis, ties.body_of(edge.panel));
    if (fit.frame_by) {
        dry = strain_in_space(*prepared.piece, *fit.frame_by, prepared.state_of(*fit.frame_by).dry, edge.axis);
        damp = strain_in_space(*prepared.piece, *fit.frame_by, prepared.state_of(*fit.frame_by).damp, edge.axis);
    }
    const SeasonalStrains panel_strain = ties.body_strain(edge.panel, edge.axis);
    const double rel_dry = panel_strain.dry - dry, rel_damp = panel_strain.damp - damp;
    fit.from = hold ? hold->middle() : box.middle(edge.axis);
    const double arm = std::abs(edge.at - fit.from);
    const double across = hold ? arm : box.size(edge.axis);
    fit.held_at = hold ? (hold->glue ? "its glue on " : "the fastener on ") + prepared.piece->label(hold->partner, true)
                       : "the middle of " + panel.id;
    // Boards of one kind in each other's grooves, all fixed at their middles: a joint takes half of either neighbour's movement.
    const bool neighbours = prepared.piece->copies[edge.panel].part == prepared.piece->copies[edge.frame].part;
    const double reach = arm + (neighbours ? ties.box_of(edge.frame).size(edge.axis) / 2 : 0);
    fit.here = {rel_dry * reach, rel_damp * reach};
    fit.whole = {rel_dry * across, rel_damp * across};
    return fit;
}

PanelYear year_of(const Prepared& prepared, const PanelFit& fit)
{
    const PanelEdge& edge = *fit.edge;
    PanelYear y;
    y.made = std::abs(edge.side.room()) < kMicrometre ? 0 : edge.side.room();
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

bool PanelYear::closes() const { return left < std::min(wanted, 0.0) - kMicrometre; }
bool PanelYear::is_close() const { return left < wanted - kMicrometre; }
bool PanelYear::leaves() const { return engaged <= kMicrometre; }
bool PanelYear::reaches_little() const { return engaged < engaged_wanted - kMicrometre; }
bool PanelYear::shows_a_gap() const { return engaged_free && *engaged_free <= kMicrometre; }

Verdict verdict_of(const PanelFit& fit, const PanelYear& y)
{
    const bool open_behind = !fit.held && !fit.opposite; // what cannot go on here goes back there
    if (y.closes()) return open_behind ? Verdict::warn : Verdict::fail;
    if (y.leaves()) return Verdict::fail;
    return y.is_close() || y.reaches_little() || y.shows_a_gap() ? Verdict::warn : Verdict::pass;
}

double utilisation_of(const PanelFit& fit, const PanelYear& y)
{
    const double made = !fit.held && fit.opposite ? (y.made + fit.opposite->side.room()) / 2 : y.made;
    const double room = share_used(made - y.left, made - y.wanted);
    const GrooveSide& side = fit.edge->side;
    const double held = share_used(side.engaged - y.engaged, side.engaged - y.engaged_wanted);
    const double free = y.engaged_free ? share_used(fit.whole.shrink(), *y.engaged_free + fit.whole.shrink()) : 0;
    return std::max({room, held, free});
}

} // namespace jointwright
