#include "piece/patterns/rules.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kGluedMovement = 0.92e-3; // m: under the 1.0 mm of data/limits.toml that a glued tenon stands, with some in hand
constexpr double kSlotEase = 1.0 / 32 * kMetresPerInch;

} // namespace

Joint pattern_joint(const PatternOrder& order, std::string first, std::string second, JointKind kind, bool glued)
{
    Joint joint;
    joint.first = std::move(first);
    joint.second = std::move(second);
    joint.kind = kind;
    if (glued) joint.glue = order.glue;
    return joint;
}

double tenon_thickness(const StockRule& rule, double stock) { return std::min(rule.fine(stock / 3), stock / 2); }

double glued_length_for(const SeasonalStrain& strain) { return kGluedMovement / std::max(strain.most(), 1e-4); }

Joint pattern_tenon(const PatternOrder& order, const PatternPart& rail, const std::string& post, double length, double shoulder,
                    const PatternWood& wood)
{
    const StockRule rule = order.rule();
    const double room = std::max(rail.width - 2 * shoulder, rail.width / 3);
    const double least = std::min(room, rail.width / 3);
    const double width = std::clamp(std::min(room, glued_length_for(wood.width)), least, room);
    Joint joint = pattern_joint(order, rail.id, post, JointKind::tenon, true);
    joint.tenon = Joint::Tenon{metres(length), metres(std::min(rule.fine_down(width), rail.width)),
                               metres(tenon_thickness(rule, rail.thickness))};
    return joint;
}

double corner_tenon_length(const StockRule& rule, double leg, double setback, double rail_thickness)
{
    const double to_other_tenon = leg - setback - (rail_thickness + tenon_thickness(rule, rail_thickness)) / 2;
    return rule.fine_down(std::min(to_other_tenon, leg * 2 / 3));
}

std::vector<Point> at_four_corners(double left, double right, double front, double back, double bottom)
{
    return {{left, front, bottom}, {right, front, bottom}, {left, back, bottom}, {right, back, bottom}};
}

std::vector<Point> at_both_ends(Point near, Axis axis, double far)
{
    Point other = near;
    other[index_of(axis)] = far;
    return {near, other};
}

int boards_for(double width) { return std::max(1, static_cast<int>(std::ceil(width / 0.155))); }

double slot_for(const StockRule& rule, const SeasonalStrain& strain, double distance)
{
    return rule.fine_up(2 * strain.most() * distance + kSlotEase);
}

double fit_for(const StockRule& rule, double size, double swell, double left_over)
{
    return rule.fit_up((size * swell + left_over) / 2);
}

} // namespace jointwright
