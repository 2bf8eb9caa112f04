// A dovetailed drawer with a solid bottom, in an opening of two uprights and a board above and below.

#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// What the drawer's parts have in common.
struct DrawerSizes {
    double left, right, bottom, top; ///< of the drawer
    double front, side, base;        ///< thicknesses: of front, of sides and back, of the bottom
    double groove;                   ///< depth of the bottom's grooves
    double lap;                      ///< wood of the front before the ends of the tails
    double back;                     ///< y of the back's far face
    double height() const { return top - bottom; }
    double width() const { return right - left; }
};

DrawerSizes sizes_of(const PatternOrder& order, double board)
{
    const StockRule rule = order.rule();
    const double width = order.measure("width"), depth = order.measure("depth"), height = order.measure("height");
    const double ease = rule.of(1.0 / 64, 0.5); // at either end: from left to right nothing moves
    const double opening = height - 2 * board;
    const double swell = order.wood("drawer_wood").width.swell;
    DrawerSizes sizes{};
    sizes.left = board + ease;
    sizes.right = width - board - ease;
    sizes.bottom = board;
    sizes.top = height - board - rule.fine_up(opening * swell + 0.6e-3); // what slides in January must slide in August
    sizes.front = rule.thickness(rule.of(0.75, 20));
    sizes.side = rule.thickness(std::clamp(depth / 32, rule.of(0.375, 10), rule.of(0.625, 15)));
    sizes.base = rule.fine(std::clamp(width / 55, rule.of(0.3125, 8), rule.of(0.625, 16)));
    sizes.groove = rule.fine(sizes.side / 2);
    sizes.lap = rule.fine(sizes.front * 0.3);
    sizes.back = depth - rule.of(0.75, 20);
    return sizes;
}

int tails_for(double height) { return std::max(1, static_cast<int>(std::round(height / 0.038))); }

void add_case(const PatternOrder& order, double board, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const double width = draft.size[0], depth = draft.size[1], height = draft.size[2];
    const std::string& wood = order.wood().id;
    const double let_in = rule.fine(board * 0.4);
    const double inside = width - 2 * board + 2 * let_in;
    PatternPart upright{"panel", wood, height, depth, board, Axis::z, Axis::x, at_both_ends({0, 0, 0}, Axis::x, width - board)};
    PatternPart level{"board", wood,    inside,  depth,
                      board,   Axis::x, Axis::z, at_both_ends({board - let_in, 0, 0}, Axis::z, height - board)};
    upright.boards = level.boards = boards_for(depth);
    draft.parts.push_back(std::move(upright));
    draft.parts.push_back(std::move(level));
    // A rabbet glued on end grain would let the case rack.
    Joint corner = pattern_joint(order, "board", "panel", JointKind::dovetail, true);
    corner.dovetail = Joint::DovetailSizes{tails_for(depth), 7};
    draft.joints.push_back(std::move(corner));
}

void add_drawer_parts(const PatternOrder& order, const DrawerSizes& s, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const std::string& wood = order.wood("drawer_wood").id;
    const double under = rule.of(0.5, 12); // of the bottom above the sides' lower edge
    const double base_top = s.bottom + under + s.base;
    const double back_top = s.top - rule.of(0.25, 6);
    draft.parts.push_back({"drawer front", wood, s.width(), s.height(), s.front, Axis::x, Axis::y, {{s.left, 0, s.bottom}}});
    draft.parts.push_back({"drawer side", wood, s.back - s.lap, s.height(), s.side, Axis::y, Axis::x,
                           at_both_ends({s.left, s.lap, s.bottom}, Axis::x, s.right - s.side)});
    // The back stands above the bottom, which slides in from behind and grows that way.
    draft.parts.push_back(
        {"drawer back", wood, s.width(), back_top - base_top, s.side, Axis::x, Axis::y, {{s.left, s.back - s.side, base_top}}});
    const double inside = s.width() - 2 * s.side;
    PatternPart base{"drawer bottom",
                     wood,
                     inside + 2 * s.groove,
                     s.back - s.front + s.groove,
                     s.base,
                     Axis::x,
                     Axis::z,
                     {{s.left + s.side - s.groove, s.front - s.groove, s.bottom + under}}};
    base.boards = boards_for(base.width);
    draft.parts.push_back(std::move(base));
}

Joint dovetail(const PatternOrder& order, const std::string& onto, double height)
{
    Joint joint = pattern_joint(order, "drawer side", onto, JointKind::dovetail, true);
    joint.dovetail = Joint::DovetailSizes{tails_for(height), 7};
    return joint;
}

} // namespace

PatternDraft make_drawer_in_opening(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double board = rule.thickness(rule.of(0.75, 20));
    PatternDraft draft;
    draft.size = {order.measure("width"), order.measure("depth"), order.measure("height")};
    draft.carries = {"drawer bottom"};
    add_case(order, board, draft);
    const DrawerSizes sizes = sizes_of(order, board);
    add_drawer_parts(order, sizes, draft);

    draft.joints.push_back(dovetail(order, "drawer front", sizes.height()));
    draft.joints.push_back(dovetail(order, "drawer back", draft.parts[4].width));
    const double fit = fit_for(rule, sizes.base, order.wood("drawer_wood").thickness.swell, 0.25e-3);
    for (const auto& [frame, glued] : {std::pair{"drawer front", true}, std::pair{"drawer side", false}}) {
        Joint groove = pattern_joint(order, "drawer bottom", frame, JointKind::groove, glued);
        groove.groove_depth = metres(sizes.groove);
        groove.clearance = metres(fit);
        draft.joints.push_back(std::move(groove));
    }
    return draft;
}

} // namespace jointwright
