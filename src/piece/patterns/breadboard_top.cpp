// A top with breadboard ends: glued in the middle alone, pegged in slots towards the edges.

#include "piece/patterns/rules.hpp"

#include <algorithm>

namespace jointwright {

PatternDraft make_breadboard_top(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double length = order.measure("length"), depth = order.measure("depth");
    const double thickness = order.measure_or("thickness", rule.of(0.875, 22));
    const PatternWood& wood = order.wood();
    const PatternWood& end_wood = order.wood("end_wood");

    const double end = rule.width(std::clamp(depth / 7, rule.of(2, 50), rule.of(4, 100)));
    const double tongue = rule.fine(end * 0.4);
    const double stopped = rule.of(0.75, 20); // short of either edge, so that no gap shows
    const int pegs = depth < rule.of(26, 650) ? 3 : 5;

    PatternDraft draft;
    draft.size = {length, depth, thickness};
    draft.carries = {"field", "end"};
    PatternPart field{"field", wood.id, length - 2 * end, depth, thickness, Axis::x, Axis::z, {{end, 0, 0}}};
    field.boards = boards_for(depth);
    draft.parts.push_back(std::move(field));
    draft.parts.push_back(
        {"end", end_wood.id, depth, end, thickness, Axis::y, Axis::z, at_both_ends({0, 0, 0}, Axis::x, length - end)});

    Joint joint = pattern_joint(order, "field", "end", JointKind::tenon, true);
    const double glued = rule.fine_down(std::min({glued_length_for(wood.width), depth / 6, rule.of(4, 100)}));
    joint.glued = GluedShare{metres(glued), GluedAt::middle};
    joint.tenon = Joint::Tenon{metres(tongue), metres(depth - 2 * stopped), metres(tenon_thickness(rule, thickness))};
    const double outermost = depth / 2 * (1 - 1.0 / pegs);
    joint.pegs = Joint::Pegs{metres(rule.of(0.3125, 8)), pegs, metres(slot_for(rule, wood.width, outermost)), std::nullopt};
    draft.joints.push_back(std::move(joint));
    return draft;
}

} // namespace jointwright
