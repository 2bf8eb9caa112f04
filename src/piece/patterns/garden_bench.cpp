// A garden bench with a back: seat slats from end to end, screwed to side rails and bearers; upright slats in the back.

#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Seat slats from the front edge towards the back legs. The gaps let rain through and stay under the 7 mm that catch a finger;
/// where the wood moves too much for that, over the 12 mm.
struct SeatField {
    int count = 1;
    double width = 0, gap = 0;
};

/// @param leg  the front slat covers the front legs, so that the next one lies on side rails and bearers alone
SeatField seat_for(const StockRule& rule, double room, double leg, const SeasonalStrain& strain)
{
    const double wide = leg * 1.1;
    const double least = wide * strain.swell + 2e-3, most = 6.7e-3 - wide * strain.shrink;
    SeatField field;
    field.gap = least <= most ? rule.of(0.125, 1) * std::floor(most / rule.of(0.125, 1) + 1e-6) : 0;
    if (field.gap < least) field.gap = rule.fine_up(12.7e-3 + wide * strain.swell);
    field.count = std::max(2, static_cast<int>(std::floor((room + field.gap) / (leg + field.gap + rule.of(0.125, 2)) + 1e-9)));
    field.width = rule.fine_down((room - (field.count - 1) * field.gap) / field.count);
    return field;
}

/// The measures that everything else is placed by.
struct BenchSizes {
    double length, depth, height, seat; ///< over all; `seat`: top of the frame, the slats lie on it
    double leg, rail, rail_thickness, setback;
    double slat_thickness;
    SeatField field;
    double back_rail, back_low, back_high; ///< depth of the back's rails; lower edges of the two
};

BenchSizes sizes_of(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    BenchSizes s{};
    s.length = order.measure("length");
    s.depth = order.measure("depth");
    s.height = order.measure("height");
    s.slat_thickness = rule.of(0.875, 22);
    s.seat = order.measure_or("seat_height", rule.of(16.5, 420)) - s.slat_thickness;
    s.leg = rule.thickness(std::clamp(s.length / 22, rule.of(2.25, 58), rule.of(3, 75)));
    s.rail = rule.width(std::clamp(s.length / 14, rule.of(3.25, 85), rule.of(4.5, 115)));
    s.rail_thickness = rule.thickness(s.leg / 2);
    const double free_of_leg = rule.of(0.1875, 5);
    s.field = seat_for(rule, s.depth - s.leg - free_of_leg, s.leg, order.wood("slat_wood").width);
    // The front rail stands in the middle of its leg, or under the middle of the front slat where that is wide.
    const double under_slat = rule.fine_up(0.45 * s.field.width - s.rail_thickness / 2);
    s.setback = std::clamp(under_slat, (s.leg - s.rail_thickness) / 2, s.leg - s.rail_thickness);
    const double above = s.height - s.seat;
    s.back_rail = rule.width(std::clamp(above / 6, rule.of(2, 50), rule.of(2.75, 70)));
    s.back_low = s.seat + rule.fine(above * 0.2);
    s.back_high = s.height - rule.of(0.375, 10) - s.back_rail;
    return s;
}

void add_frame(const PatternOrder& order, const BenchSizes& s, PatternDraft& draft)
{
    const std::string& wood = order.wood().id;
    const double inside = s.length - 2 * s.leg, rail_bottom = s.seat - s.rail;
    draft.parts.push_back(
        {"front leg", wood, s.seat, s.leg, s.leg, Axis::z, Axis::y, at_both_ends({0, 0, 0}, Axis::x, s.length - s.leg)});
    draft.parts.push_back({"back leg", wood, s.height, s.leg, s.leg, Axis::z, Axis::y,
                           at_both_ends({0, s.depth - s.leg, 0}, Axis::x, s.length - s.leg)});
    draft.parts.push_back({"long rail", wood, inside, s.rail, s.rail_thickness, Axis::x, Axis::y,
                           at_both_ends({s.leg, s.setback, rail_bottom}, Axis::y, s.depth - s.setback - s.rail_thickness)});
    draft.parts.push_back({"side rail", wood, s.depth - 2 * s.leg, s.rail, s.rail_thickness, Axis::y, Axis::x,
                           at_both_ends({s.setback, s.leg, rail_bottom}, Axis::x, s.length - s.setback - s.rail_thickness)});
}

/// Bearers from long rail to long rail, no more than about 400 mm apart: the slats lie on them too.
void add_bearers(const PatternOrder& order, const BenchSizes& s, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const int count = std::max(1, static_cast<int>(std::ceil(s.length / 0.43)) - 1);
    const double front = s.setback + s.rail_thickness;
    const double depth = rule.width(s.rail * 2 / 3);
    PatternPart bearer{"bearer", order.wood().id, s.depth - 2 * front, depth, s.rail_thickness, Axis::y, Axis::x, {}};
    for (int i = 1; i <= count; ++i)
        bearer.corners.push_back({s.length * i / (count + 1) - s.rail_thickness / 2, front, s.seat - depth});
    draft.parts.push_back(std::move(bearer));
}

void add_slats(const PatternOrder& order, const BenchSizes& s, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const PatternWood& wood = order.wood("slat_wood");
    const SeatField& field = s.field;
    PatternPart slat{"slat", wood.id, s.length, field.width, s.slat_thickness, Axis::x, Axis::z, {}, rule.of(0.125, 3)};
    for (int i = 0; i < field.count; ++i) slat.corners.push_back({0, i * (field.width + field.gap), s.seat});
    draft.parts.push_back(std::move(slat));
}

void add_back(const PatternOrder& order, const BenchSizes& s, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const std::string& wood = order.wood().id;
    const double y = s.depth - s.setback - s.rail_thickness;
    draft.parts.push_back({"back rail", wood, s.length - 2 * s.leg, s.back_rail, s.rail_thickness, Axis::x, Axis::y,
                           at_both_ends({s.leg, y, s.back_high}, Axis::z, s.back_low)});
    const double width = rule.of(2.25, 60), thickness = rule.thickness(s.rail_thickness * 0.6);
    const double bottom = s.back_low + s.back_rail, clear = s.length - 2 * s.leg;
    const int count = std::max(2, static_cast<int>(std::floor(clear / (width * 2.3))));
    const double gap = (clear - count * width) / (count + 1);
    PatternPart slat{"back slat", order.wood("slat_wood").id, s.back_high - bottom, width, thickness, Axis::z, Axis::y, {}};
    for (int i = 0; i < count; ++i)
        slat.corners.push_back({s.leg + gap + i * (width + gap), y + (s.rail_thickness - thickness) / 2, bottom});
    draft.parts.push_back(std::move(slat));
}

Joint screwed(const PatternOrder& order, const std::string& onto, const BenchSizes& s, int count)
{
    const StockRule rule = order.rule();
    Joint joint = pattern_joint(order, "slat", onto, JointKind::screws, false);
    const double length = rule.fine(s.slat_thickness + rule.of(1.5, 38));
    joint.screws = Joint::Screws{metres(rule.of(0.1875, 5)), metres(length), count, std::nullopt, std::nullopt};
    return joint;
}

void add_joints(const PatternOrder& order, const BenchSizes& s, PatternDraft& draft)
{
    const StockRule rule = order.rule();
    const PatternWood& wood = order.wood();
    const double tenon = corner_tenon_length(rule, s.leg, s.setback, s.rail_thickness);
    const PatternPart &long_rail = draft.parts[2], &side_rail = draft.parts[3], &bearer = draft.parts[4],
                      &back_rail = draft.parts[6], &back_slat = draft.parts[7];
    for (const PatternPart* rail : {&long_rail, &side_rail})
        for (const char* leg : {"front leg", "back leg"})
            draft.joints.push_back(pattern_tenon(order, *rail, leg, tenon, rule.fine(s.rail / 8), wood));
    draft.joints.push_back(
        pattern_tenon(order, bearer, "long rail", rule.fine(long_rail.thickness * 0.6), rule.fine(bearer.width / 6), wood));
    draft.joints.push_back(pattern_tenon(order, back_rail, "back leg", tenon, rule.fine(s.back_rail / 8), wood));
    Joint loose =
        pattern_tenon(order, back_slat, "back rail", rule.of(0.75, 20), rule.fine(back_slat.width / 8), order.wood("slat_wood"));
    loose.glue.reset(); // the back slats sit loose in their mortises and cannot fall out
    loose.clearance = metres(fit_for(rule, back_slat.width, order.wood("slat_wood").width.swell, 0.3e-3));
    draft.joints.push_back(std::move(loose));
    // One screw at each crossing, in the middle of the slat: both its edges stay free to move.
    draft.joints.push_back(screwed(order, "side rail", s, 1));
    draft.joints.push_back(screwed(order, "bearer", s, 1));
    // The front slat lies along the front rail, grain along grain, so it may be held all the way.
    draft.joints.push_back(screwed(order, "long rail", s, 2 * std::max(1, static_cast<int>(std::round(s.length / 0.6)))));
}

} // namespace

PatternDraft make_garden_bench(const PatternOrder& order)
{
    const BenchSizes sizes = sizes_of(order);
    PatternDraft draft;
    draft.size = {sizes.length, sizes.depth, sizes.height};
    draft.carries = {"slat"};
    add_frame(order, sizes, draft);
    add_bearers(order, sizes, draft);
    add_slats(order, sizes, draft);
    add_back(order, sizes, draft);
    add_joints(order, sizes, draft);
    return draft;
}

} // namespace jointwright
