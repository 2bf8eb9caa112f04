#pragma once
// The units a maker may write, what kind of measure each one belongs to, and the words for a wrong one.

#include "measure/outcome.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace jointwright {

/// What a unit measures. The kinds after `angle` are never asked for; they are known so that a message can name them.
enum class MeasureKind {
    length,
    force,
    line_load,
    mass,
    density,
    stress,
    temperature,
    percent,
    angle,
    plain_number,
    area,
    mass_per_length
};

/// One spelling of a unit: SI value = (number − offset) · factor; temperatures in °C, angles in degrees, percent as it is.
struct Unit {
    std::string_view spelling;
    MeasureKind kind;
    double factor;
    double offset = 0;
};

/// What was found under a spelling.
struct UnitFound {
    const Unit* unit = nullptr; ///< nullptr: unknown
    bool unclear = false;       ///< known but for a capital M or small m that would change its size a millionfold
};

/// Looks a unit up. Capitals do not matter except where they tell milli from mega.
UnitFound find_unit(std::string_view spelling);

/// "a length", "a force per length".
std::string_view name_of(MeasureKind kind);
/// "12 1/2 in or 305 mm".
std::string_view examples_of(MeasureKind kind);

/// The unit is missing. @param number the number as written; @param fraction it is written with a fraction
Misreading no_unit(std::string_view number, bool fraction, MeasureKind wanted);
/// The unit exists but measures something else, or is unknown, or is unclear in its capitals.
/// @param text the whole text; @param number its number as written; @param value that number
Misreading wrong_unit(std::string_view text, std::string_view number, double value, std::string_view spelling,
                      MeasureKind wanted);

} // namespace jointwright
