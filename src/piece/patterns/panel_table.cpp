// A table: four legs, aprons tenoned into them, a solid top on buttons.

#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// An even number of buttons, about 300 mm apart: the middle one of an odd row would hold the top.
int buttons_for(double apron) { return 2 * std::max(1, static_cast<int>(std::round(apron / 0.6))); }

Joint buttons(const PatternOrder& order, const std::string& apron, int count, double slot)
{
    Joint joint = pattern_joint(order, "top", apron, JointKind::buttons, false);
    joint.buttons = Joint::Buttons{count, metres(slot), std::nullopt};
    return joint;
}

} // namespace

PatternDraft make_panel_table(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double length = order.measure("length"), depth = order.measure("depth"), height = order.measure("height");
    const PatternWood& wood = order.wood();
    const PatternWood& top_wood = order.wood("top_wood");

    const double top_thickness = rule.thickness(std::clamp(length / 50, rule.of(0.75, 20), rule.of(1.25, 32)));
    const double overhang = rule.width(std::clamp(depth / 14, rule.of(1, 25), rule.of(2.5, 60)));
    const double leg = rule.thickness(std::clamp(length / 22, rule.of(1.5, 38), rule.of(3, 75)));
    const double leg_length = height - top_thickness;
    const double apron = rule.width(std::clamp(std::min(length / 13, leg_length / 4), rule.of(2.5, 65), rule.of(5, 120)));
    const double apron_thickness = rule.thickness(std::clamp(leg * 0.4, rule.of(0.75, 20), rule.of(1, 25)));
    const double setback = rule.of(0.25, 6);
    const double left = overhang, right = length - overhang, front = overhang, back = depth - overhang;

    PatternDraft draft;
    draft.size = {length, depth, height};
    draft.carries = {"top"};
    PatternPart top{"top", top_wood.id, length, depth, top_thickness, Axis::x, Axis::z, {{0, 0, leg_length}}};
    top.boards = boards_for(depth);
    draft.parts.push_back(std::move(top));
    draft.parts.push_back(
        {"leg", wood.id, leg_length, leg, leg, Axis::z, Axis::y, at_four_corners(left, right - leg, front, back - leg, 0)});
    draft.parts.push_back(
        {"long apron", wood.id, right - left - 2 * leg, apron, apron_thickness, Axis::x, Axis::y,
         at_both_ends({left + leg, front + setback, leg_length - apron}, Axis::y, back - setback - apron_thickness)});
    draft.parts.push_back(
        {"short apron", wood.id, back - front - 2 * leg, apron, apron_thickness, Axis::y, Axis::x,
         at_both_ends({left + setback, front + leg, leg_length - apron}, Axis::x, right - setback - apron_thickness)});

    const double tenon = corner_tenon_length(rule, leg, setback, apron_thickness);
    const double shoulder = rule.fine(apron / 8);
    for (const std::size_t rail : {std::size_t{2}, std::size_t{3}})
        draft.joints.push_back(pattern_tenon(order, draft.parts[rail], "leg", tenon, shoulder, wood));
    const double slot = slot_for(rule, top_wood.width, depth / 2);
    draft.joints.push_back(buttons(order, "long apron", buttons_for(draft.parts[2].length), slot));
    draft.joints.push_back(buttons(order, "short apron", buttons_for(draft.parts[3].length), slot));
    return draft;
}

} // namespace jointwright
