// A mitred frame for a picture or a mirror, hung on the wall.

#include "piece/patterns/rules.hpp"

#include <algorithm>

namespace jointwright {

namespace {

/// The widest member whose mitre opens by no more than about 0.7 mm: gap = √2 · width · strain.
double widest_member(const SeasonalStrain& strain) { return 0.7e-3 / (1.4142 * std::max(strain.most(), 1e-4)); }

} // namespace

PatternDraft make_mitred_frame(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double width = order.measure("width"), height = order.measure("height");
    const double looks = std::clamp(std::min(width, height) / 11, rule.of(1, 25), rule.of(2, 50));
    const double own = std::max(rule.fine_down(std::min(looks, widest_member(order.wood().width))), rule.of(0.75, 20));
    const double member = order.measure_or("member", own);
    const double thickness = rule.thickness(std::clamp(member * 0.6, rule.of(0.625, 16), rule.of(1, 25)));
    const std::string& wood = order.wood().id;

    PatternDraft draft;
    draft.size = {width, thickness, height};
    draft.wall = {"top rail"};
    // All four are drawn to the outer corners and share the corner squares.
    draft.parts.push_back(
        {"stile", wood, height, member, thickness, Axis::z, Axis::y, at_both_ends({0, 0, 0}, Axis::x, width - member)});
    draft.parts.push_back({"top rail", wood, width, member, thickness, Axis::x, Axis::y, {{0, 0, height - member}}});
    draft.parts.push_back({"bottom rail", wood, width, member, thickness, Axis::x, Axis::y, {{0, 0, 0}}});
    for (const char* rail : {"top rail", "bottom rail"}) {
        Joint mitre = pattern_joint(order, "stile", rail, JointKind::mitre, true);
        const double dowel = rule.fine(thickness * 0.3); // half of the glue is end grain: a dowel straight through carries it
        mitre.dowels = Joint::Dowels{metres(dowel), metres(rule.fine_down(std::min(5 * dowel, member))), 1, std::nullopt};
        draft.joints.push_back(std::move(mitre));
    }
    return draft;
}

} // namespace jointwright
