// A door: stiles and rails round a solid panel that floats in grooves.

#include "piece/patterns/rules.hpp"

#include <algorithm>

namespace jointwright {

namespace {

/// A panel in the grooves of two stiles: how deep they are cut, how deep it sits in them.
struct PanelSeat {
    double depth = 0, engaged = 0;
};

/// Room to swell on either side, and enough in the grooves that the panel hides its edge at the driest even when it has
/// slid wholly to one side: e1 + e2 − d stays above the shrinkage.
PanelSeat seat_for(const StockRule& rule, double opening, double deepest, const SeasonalStrain& strain)
{
    PanelSeat seat;
    seat.engaged = rule.of(0.25, 6);
    for (int round = 0; round < 4; ++round) { // the deeper it sits, the wider it is
        const double width = opening + 2 * seat.engaged;
        const double room = rule.fine_up(width * strain.swell / 2 + 0.3e-3);
        const double engaged = std::max(rule.of(0.25, 6), rule.fine_up(room + width * strain.shrink + 0.5e-3));
        seat.depth = std::min(room + engaged, deepest);
        seat.engaged = std::max(seat.depth - room, seat.depth / 3);
    }
    return seat;
}

} // namespace

PatternDraft make_panel_door(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double width = order.measure("width"), height = order.measure("height");
    const double thickness = order.measure_or("thickness", rule.of(0.75, 20));
    const PatternWood& wood = order.wood();
    const PatternWood& panel_wood = order.wood("panel_wood");

    const double stile = rule.width(std::clamp(width / 7, rule.of(1.75, 45), rule.of(3, 75)));
    const double rail = stile + rule.of(0.25, 5);
    const double panel_thickness = tenon_thickness(rule, thickness); // one plough cuts grooves and mortises alike
    const double across = width - 2 * stile, along = height - 2 * rail;
    const PanelSeat seat = seat_for(rule, across, rule.fine_down(stile * 0.45), panel_wood.width);
    const double along_room = rule.of(0.0625, 1); // along the grain a panel hardly changes
    const double along_engaged = seat.depth - along_room;
    const double set_back = (thickness - panel_thickness) / 2;

    PatternDraft draft;
    draft.size = {width, thickness, height};
    draft.parts.push_back(
        {"stile", wood.id, height, stile, thickness, Axis::z, Axis::y, at_both_ends({0, 0, 0}, Axis::x, width - stile)});
    draft.parts.push_back(
        {"rail", wood.id, across, rail, thickness, Axis::x, Axis::y, at_both_ends({stile, 0, 0}, Axis::z, height - rail)});
    PatternPart panel{"panel",
                      panel_wood.id,
                      along + 2 * along_engaged,
                      across + 2 * seat.engaged,
                      panel_thickness,
                      Axis::z,
                      Axis::y,
                      {{stile - seat.engaged, set_back, rail - along_engaged}}};
    panel.boards = boards_for(panel.width);
    draft.parts.push_back(std::move(panel));

    const double tenon = rule.fine_down(std::max(stile * 0.62, seat.depth));
    draft.joints.push_back(pattern_tenon(order, draft.parts[1], "stile", tenon, seat.depth, wood));
    const double fit = fit_for(rule, panel_thickness, panel_wood.thickness.swell, 0.25e-3);
    for (const char* frame : {"stile", "rail"}) {
        Joint groove = pattern_joint(order, "panel", frame, JointKind::groove, false);
        groove.groove_depth = metres(seat.depth);
        groove.clearance = metres(fit);
        draft.joints.push_back(std::move(groove));
    }
    return draft;
}

} // namespace jointwright
