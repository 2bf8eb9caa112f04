// A bookcase: two sides, a top in rabbets, shelves in dadoes, a rail at the back under the top and under the lowest shelf.

#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Shelves about 300 mm (12 in) apart, the lowest near the floor.
double shelves_for(double clear) { return std::max(1.0, std::round(clear / 0.31)); }

} // namespace

PatternDraft make_dado_bookcase(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double width = order.measure("width"), depth = order.measure("depth"), height = order.measure("height");
    const PatternWood& wood = order.wood();

    const double board = rule.thickness(std::clamp(width / 34, rule.of(0.75, 20), rule.of(1.25, 32)));
    const double toe = rule.width(std::clamp(height / 14, rule.of(2, 50), rule.of(3.5, 90)));
    const double clear = height - board - toe; // from the lowest shelf's underside to the top's
    const int shelves = static_cast<int>(order.measure_or("shelves", shelves_for(clear)));
    const double pitch = rule.fine_down(clear / shelves);
    const double rabbet = rule.fine(board / 2), dado = rule.fine(board * 0.35);
    const double inside = width - 2 * board;
    const double rail = rule.fine_down(std::min({toe - rule.of(0.25, 5), (pitch - board) / 2, rule.of(3, 75)}));
    const double rail_thickness = rule.thickness(board * 0.85);

    PatternDraft draft;
    draft.size = {width, depth, height};
    draft.carries = {"top", "shelf"};
    const int boards = boards_for(depth);
    PatternPart side{"side", wood.id, height, depth, board, Axis::z, Axis::x, at_both_ends({0, 0, 0}, Axis::x, width - board)};
    PatternPart top{"top", wood.id, inside + 2 * rabbet, depth, board, Axis::x, Axis::z, {{board - rabbet, 0, height - board}}};
    PatternPart shelf{"shelf", wood.id, inside + 2 * dado, depth, board, Axis::x, Axis::z, {}};
    for (int i = 0; i < shelves; ++i) shelf.corners.push_back({board - dado, 0, toe + i * pitch});
    for (PatternPart* wide : {&side, &top, &shelf}) wide->boards = boards;
    PatternPart back_rail{
        "rail",         wood.id,
        inside,         rail,
        rail_thickness, Axis::x,
        Axis::y,        at_both_ends({board, depth - rail_thickness, height - board - rail}, Axis::z, toe - rail)};
    draft.parts = {std::move(side), std::move(top), std::move(shelf), std::move(back_rail)};

    Joint dadoes = pattern_joint(order, "shelf", "side", JointKind::housing, true);
    dadoes.clearance = metres(fit_for(rule, board, wood.thickness.swell, 0.05e-3));
    draft.joints.push_back(std::move(dadoes));
    draft.joints.push_back(pattern_joint(order, "top", "side", JointKind::housing, true));
    draft.joints.push_back(pattern_tenon(order, draft.parts[3], "side", rule.fine_down(board * 0.6), rule.fine(rail / 8), wood));
    draft.joints.push_back(pattern_joint(order, "rail", "shelf", JointKind::face, true));
    draft.joints.push_back(pattern_joint(order, "rail", "top", JointKind::face, true));
    return draft;
}

} // namespace jointwright
