#pragma once
// Balance of a piece about the edges of the line round its feet. SI doubles: metres, newtons.

#include "mechanics/loads/footing.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// One way of being tipped: what is laid on, pulled out or pulled at.
struct Tipping {
    std::string name, source;
    std::vector<Weight> live;         ///< people and goods; the first is the one that the report tells of
    std::vector<Weight> moved;        ///< drawers and doors where they stand when open
    std::vector<Weight> against;      ///< what hangs on nothing, where it would be when open: counts only where it overturns
    Weight taken{};                   ///< what is `moved`, closed: taken off the piece as it is drawn
    double aside = 0, height = 0;     ///< a level force and its height above the floor
    std::optional<PlanPoint> towards; ///< it acts that way; else outwards, whichever way that is
    double lean = 0;                  ///< the piece leans to the front by so much in one: carpet under its rear feet

    /// Share of the level force that acts outwards over an edge.
    double outwards(const PlanPoint& out) const;
};

/// The worst edge for one way.
struct Tipped {
    Tipping by;
    double ratio = 0;                      ///< overturning over restoring moment
    double overturning = 0, restoring = 0; ///< N m
    double outside = 0, inside = 0;        ///< of the first live weight, of the piece's own
    double weight = 0;                     ///< the piece's own, without what is open
};

/// The edge about which a piece tips soonest in one of several ways; nothing for a piece without feet or without ways. A piece that nothing holds down has a
/// ratio of a million.
///
/// Overturning: every weight outside the edge by its distance, and the level force by its height. Restoring: every weight within. What hangs on nothing
/// counts only where it overturns. Where the piece leans, what is high moves to the front by height times lean.
/// Source: statics.
std::optional<Tipped> soonest_tipped(const Footing& footing, const std::vector<Tipping>& ways);

} // namespace jointwright
