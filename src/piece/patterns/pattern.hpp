#pragma once
// Patterns: pieces that a few leading measures describe. A pattern turns its measures into parts and joints by the proportions of
// the trade; what must move gets the room that the design's own woods and room ask for. Sizes are SI doubles: metres.

#include "measure/read.hpp"
#include "piece/model/piece.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// A number in inch pieces and its counterpart in metric ones: makers of either kind round in their own way.
struct InchesOrMillimetres {
    double inches = 0, millimetres = 0;
    /// In metres, for a piece in that unit.
    double in(LengthUnit unit) const;
};

/// One leading measure of a pattern.
struct PatternMeasure {
    std::string_view key;
    InchesOrMillimetres least, most, example;
    bool is_count = false; ///< then both numbers of each pair are the count
    bool required = true;  ///< else the pattern has a proportion of its own for it
};

/// Movement across the grain from glue-up to the seasons, as shares of the size; neither is below 0.
struct SeasonalStrain {
    double swell = 0, shrink = 0;
    double most() const { return swell > shrink ? swell : shrink; }
    double both() const { return swell + shrink; }
};

/// One of the design's woods as a pattern uses it: the worst of the species and ring cuts that it may be.
struct PatternWood {
    std::string id;
    SeasonalStrain width, thickness;
};

/// The steps in which stock is cut.
class StockRule {
public:
    explicit StockRule(LengthUnit unit) : inches_(unit == LengthUnit::inch) {}
    double width(double size) const { return step(size, 0.25, 5, 0); }      ///< of rails, aprons, stiles: 1/4 in, 5 mm
    double thickness(double size) const { return step(size, 0.125, 1, 0); } ///< of boards and legs: 1/8 in, 1 mm
    double fine(double size) const { return step(size, 0.0625, 1, 0); }     ///< of joints: 1/16 in, 1 mm
    double fine_up(double size) const { return step(size, 0.0625, 1, 1); }
    double fine_down(double size) const { return step(size, 0.0625, 1, -1); }
    double fit_up(double size) const { return step(size, 0.0025, 0.05, 1); } ///< of clearances
    /// One of two sizes, by the unit of the piece.
    double of(double inches, double millimetres) const { return inches_ ? inches * kMetresPerInch : millimetres * 1e-3; }

private:
    /// @param way  0: to the nearest, 1: up, -1: down; never below one step
    double step(double size, double inches, double millimetres, int way) const;
    bool inches_;
};

/// What the maker asks a pattern for.
struct PatternOrder {
    LengthUnit units = LengthUnit::millimetre;
    std::map<std::string, double, std::less<>> measures;   ///< m; counts bare
    std::map<std::string, PatternWood, std::less<>> woods; ///< by key: every key of the pattern
    std::string glue;

    StockRule rule() const { return StockRule(units); }
    /// A required measure. @throws std::out_of_range  the pattern has none such
    double measure(std::string_view key) const;
    /// A measure that may be left to the pattern.
    double measure_or(std::string_view key, double own) const;
    const PatternWood& wood(std::string_view key = "wood") const;
};

/// One part as a pattern draws it.
struct PatternPart {
    std::string id, wood;
    double length = 0, width = 0, thickness = 0;
    Axis grain = Axis::x, face = Axis::z;
    std::vector<Point> corners; ///< of each copy, nearest left, front, bottom
    double round_over = 0;      ///< 0: none
    int boards = 1;             ///< glued up of so many
};

/// A piece as a pattern draws it, standing at the origin.
struct PatternDraft {
    Point size{};
    std::vector<std::string> carries; ///< what bears people or goods, if the use has them
    std::vector<std::string> wall;    ///< what hangs on a wall
    std::vector<PatternPart> parts;
    std::vector<Joint> joints;
};

using PatternMaker = PatternDraft (*)(const PatternOrder& order);

/// One pattern of the registry.
struct Pattern {
    std::string_view name;
    std::vector<PatternMeasure> measures;
    std::vector<std::string_view> woods; ///< keys of its woods; the first is "wood", which further ones fall back on
    PatternMaker make;
};

/// What [pattern] takes beside its name, with the range of each measure: "length 16 to 72, depth 10 to 24, height 10 to 24, wood; if you like
/// also slat_wood, glue". Inches for inch pieces, else millimetres.
std::string keys_of(const Pattern& pattern, LengthUnit unit);

/// All patterns, in the order in which they are listed.
const std::vector<Pattern>& all_patterns();

PatternDraft make_slatted_bench(const PatternOrder& order);
PatternDraft make_panel_table(const PatternOrder& order);
PatternDraft make_breadboard_top(const PatternOrder& order);
PatternDraft make_panel_door(const PatternOrder& order);
PatternDraft make_dado_bookcase(const PatternOrder& order);
PatternDraft make_mitred_frame(const PatternOrder& order);
PatternDraft make_drawer_in_opening(const PatternOrder& order);
PatternDraft make_garden_bench(const PatternOrder& order);

} // namespace jointwright
