#pragma once
// Proportions that several patterns share: common practice, no source, unless said otherwise. SI doubles: metres.

#include "piece/patterns/pattern.hpp"

namespace jointwright {

/// A joint of a kind between two parts; with the order's glue or dry.
Joint pattern_joint(const PatternOrder& order, std::string first, std::string second, JointKind kind, bool glued);

/// A glued mortise and tenon: the tenon a third of the rail's thickness, with shoulders, and no wider than its glue across the
/// mortise's grain stands in every season.
/// @param shoulder  above and below the tenon
Joint pattern_tenon(const PatternOrder& order, const PatternPart& rail, const std::string& post, double length, double shoulder,
                    const PatternWood& wood);

/// Thickness of a tenon in stock of that thickness: a third.
double tenon_thickness(const StockRule& rule, double stock);

/// Longest tenon of rails that meet in one leg without running into each other.
/// @param setback  of the rails' outer faces from the leg's
double corner_tenon_length(const StockRule& rule, double leg, double setback, double rail_thickness);

/// Four corners of a rectangle of legs: left front, right front, left back, right back.
std::vector<Point> at_four_corners(double left, double right, double front, double back, double bottom);
/// Two places that differ along one axis.
std::vector<Point> at_both_ends(Point near, Axis axis, double far);

/// Number of boards to glue up a panel of that width from, none wider than about 150 mm (6 in).
int boards_for(double width);

/// Length across the grain that may be glued onto wood lying the other way: its movement stays below the millimetre that
/// a tenon's glue stands.
double glued_length_for(const SeasonalStrain& strain);

/// Travel of a slotted fastener so far from the place that stays put, with 1/32 in of ease.
double slot_for(const StockRule& rule, const SeasonalStrain& strain, double distance);

/// Clearance of either face of a captured part that swells by that share, with some room left over.
double fit_for(const StockRule& rule, double size, double swell, double left_over);

} // namespace jointwright
