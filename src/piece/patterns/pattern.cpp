#include "piece/patterns/pattern.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace jointwright {

namespace {

using M = PatternMeasure;

M required(std::string_view key, InchesOrMillimetres least, InchesOrMillimetres most, InchesOrMillimetres example)
{
    return {key, least, most, example, false, true};
}

M optional(std::string_view key, InchesOrMillimetres least, InchesOrMillimetres most, InchesOrMillimetres example)
{
    return {key, least, most, example, false, false};
}

M optional_count(std::string_view key, double least, double most, double example)
{
    return {key, {least, least}, {most, most}, {example, example}, true, false};
}

// The ranges are those in which the proportions make furniture that people build; estimated.
std::vector<Pattern> listed_patterns()
{
    return {
        {"slatted-bench",
         {required("length", {16, 400}, {72, 1800}, {42, 1050}), required("depth", {10, 250}, {24, 600}, {14, 360}),
          required("height", {10, 250}, {24, 600}, {17.5, 450})},
         {"wood", "slat_wood"},
         make_slatted_bench},
        {"panel-table",
         {required("length", {20, 500}, {84, 2100}, {52, 1300}), required("depth", {16, 400}, {42, 1050}, {28, 700}),
          required("height", {14, 350}, {36, 900}, {29.25, 745})},
         {"wood", "top_wood"},
         make_panel_table},
        {"breadboard-top",
         {required("length", {18, 450}, {96, 2400}, {42, 1050}), required("depth", {10, 250}, {42, 1050}, {18, 450}),
          optional("thickness", {0.625, 16}, {1.5, 40}, {0.875, 22})},
         {"wood", "end_wood"},
         make_breadboard_top},
        {"panel-door",
         {required("width", {8, 200}, {30, 750}, {16, 400}), required("height", {10, 250}, {72, 1800}, {26, 650}),
          optional("thickness", {0.625, 16}, {1.5, 40}, {0.75, 20})},
         {"wood", "panel_wood"},
         make_panel_door},
        {"dado-bookcase",
         {required("width", {14, 350}, {42, 1050}, {30, 750}), required("depth", {6, 150}, {16, 400}, {11, 280}),
          required("height", {24, 600}, {84, 2100}, {40, 1000}), optional_count("shelves", 1, 8, 3)},
         {"wood"},
         make_dado_bookcase},
        {"mitred-frame",
         {required("width", {8, 200}, {48, 1200}, {16, 400}), required("height", {8, 200}, {72, 1800}, {22, 550}),
          optional("member", {0.75, 20}, {2.5, 65}, {1.5, 40})},
         {"wood"},
         make_mitred_frame},
        {"drawer-in-opening",
         {required("width", {10, 250}, {36, 900}, {18, 460}), required("depth", {10, 250}, {28, 700}, {16, 400}),
          required("height", {4.5, 115}, {14, 350}, {6, 152})},
         {"wood", "drawer_wood"},
         make_drawer_in_opening},
        {"garden-bench",
         {required("length", {36, 900}, {84, 2100}, {52, 1300}), required("depth", {16, 400}, {26, 660}, {19, 480}),
          required("height", {28, 700}, {42, 1050}, {32, 820}), optional("seat_height", {14, 350}, {19, 480}, {16.5, 420})},
         {"wood", "slat_wood"},
         make_garden_bench},
    };
}

} // namespace

const std::vector<Pattern>& all_patterns()
{
    static const std::vector<Pattern> patterns = listed_patterns();
    return patterns;
}

std::string keys_of(const Pattern& pattern, LengthUnit unit)
{
    const bool inches = unit == LengthUnit::inch;
    std::string must, may;
    const auto add = [](std::string& words, const std::string& word) { words += (words.empty() ? "" : ", ") + word; };
    for (const PatternMeasure& m : pattern.measures)
        add(m.required ? must : may, fmt::format("{} {:g} to {:g}", m.key, inches ? m.least.inches : m.least.millimetres,
                                                 inches ? m.most.inches : m.most.millimetres));
    for (const std::string_view wood : pattern.woods) add(wood == pattern.woods.front() ? must : may, std::string(wood));
    add(may, "glue");
    return must + "; if you like also " + may;
}

double InchesOrMillimetres::in(LengthUnit unit) const { return StockRule(unit).of(inches, millimetres); }

double StockRule::step(double size, double inches, double millimetres, int way) const
{
    constexpr double kRounding = 1e-6; // of a step: 0.75 in comes as 0.749999999 and is no less
    const double one = of(inches, millimetres);
    const double steps = size / one;
    const double whole = way > 0 ? std::ceil(steps - kRounding) : way < 0 ? std::floor(steps + kRounding) : std::round(steps);
    return std::max(whole, 1.0) * one;
}

double PatternOrder::measure(std::string_view key) const
{
    const auto found = measures.find(key);
    if (found == measures.end()) throw std::out_of_range("the pattern has no measure " + std::string(key));
    return found->second;
}

double PatternOrder::measure_or(std::string_view key, double own) const
{
    const auto found = measures.find(key);
    return found == measures.end() ? own : found->second;
}

const PatternWood& PatternOrder::wood(std::string_view key) const
{
    const auto found = woods.find(key);
    if (found == woods.end()) throw std::out_of_range("the pattern has no wood " + std::string(key));
    return found->second;
}

} // namespace jointwright
