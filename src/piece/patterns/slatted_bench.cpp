// A bench on four legs whose slats are let into two long rails.

#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kTrapFree = 12.7e-3; // m: gaps stay wider than the 12 mm that catch a finger, in every season
constexpr double kWidestSlat = 48e-3; // m: wider ones want to move too much for the glue in their housings

/// Slats and gaps that fill the clear space between the legs: a slat's width, and gaps alike beside the legs and between slats.
struct SlatField {
    int count = 2;
    double width = 0, gap = 0;
};

SlatField field_for(const StockRule& rule, double clear, const SeasonalStrain& strain)
{
    SlatField field;
    field.gap = rule.fine_up(std::max(rule.of(0.625, 16), kTrapFree + kWidestSlat * strain.swell));
    const double pairs = std::ceil((clear - field.gap) / (2 * (kWidestSlat + field.gap)) - 1e-9);
    field.count = 2 * std::max(1, static_cast<int>(pairs)); // an even number: a gap, not a slat, is in the middle
    field.width = rule.fine_down((clear - (field.count + 1) * field.gap) / field.count);
    return field;
}

} // namespace

PatternDraft make_slatted_bench(const PatternOrder& order)
{
    const StockRule rule = order.rule();
    const double length = order.measure("length"), depth = order.measure("depth"), height = order.measure("height");
    const PatternWood& wood = order.wood();
    const PatternWood& slat_wood = order.wood("slat_wood");

    const double leg = rule.thickness(std::clamp(length / 22, rule.of(1.5, 38), rule.of(2.5, 65)));
    const double rail_thickness = rule.thickness(leg / 2);
    const double setback = rule.of(0.25, 6), let_in = rule.of(0.25, 6);
    const double slat_thickness = rule.thickness(std::clamp(depth / 18, rule.of(0.625, 16), rule.of(1.25, 32)));
    const double frame_top = height - slat_thickness + let_in;
    const double rail_width = rule.width(std::clamp(std::min(length / 12, frame_top * 0.4), rule.of(2.5, 60), rule.of(5, 130)));
    const double rail_bottom = frame_top - rail_width;

    PatternDraft draft;
    draft.size = {length, depth, height};
    draft.carries = {"slat"};
    draft.parts.push_back(
        {"leg", wood.id, frame_top, leg, leg, Axis::z, Axis::y, at_four_corners(0, length - leg, 0, depth - leg, 0)});
    draft.parts.push_back({"long rail", wood.id, length - 2 * leg, rail_width, rail_thickness, Axis::x, Axis::y,
                           at_both_ends({leg, setback, rail_bottom}, Axis::y, depth - setback - rail_thickness)});
    draft.parts.push_back({"side rail", wood.id, depth - 2 * leg, rail_width, rail_thickness, Axis::y, Axis::x,
                           at_both_ends({setback, leg, rail_bottom}, Axis::x, length - setback - rail_thickness)});

    const double clear = length - 2 * leg;
    const SlatField field = field_for(rule, clear, slat_wood.width);
    const double first = leg + field.gap;
    const double step = (clear - 2 * field.gap - field.width) / (field.count - 1);
    PatternPart slat{"slat", slat_wood.id, depth, field.width, slat_thickness, Axis::y, Axis::z, {}, rule.of(0.125, 3)};
    for (int i = 0; i < field.count; ++i) slat.corners.push_back({first + i * step, 0, height - slat_thickness});
    draft.parts.push_back(std::move(slat));

    Joint housing = pattern_joint(order, "slat", "long rail", JointKind::housing, true);
    housing.clearance = metres(fit_for(rule, field.width, slat_wood.width.swell, 0.05e-3));
    draft.joints.push_back(std::move(housing));
    const double tenon = corner_tenon_length(rule, leg, setback, rail_thickness);
    const double shoulder = rule.fine(rail_width / 8);
    for (const std::size_t rail : {std::size_t{1}, std::size_t{2}})
        draft.joints.push_back(pattern_tenon(order, draft.parts[rail], "leg", tenon, shoulder, wood));
    return draft;
}

} // namespace jointwright
