#include "measure/unit.hpp"

#include "measure/quantity.hpp"
#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace jointwright {

namespace {

using Kind = MeasureKind;

constexpr double kFoot = 12 * kMetresPerInch;

constexpr auto kUnits = std::to_array<Unit>({
    {"in", Kind::length, kMetresPerInch},
    {"in.", Kind::length, kMetresPerInch},
    {"inch", Kind::length, kMetresPerInch},
    {"inches", Kind::length, kMetresPerInch},
    {"\"", Kind::length, kMetresPerInch},
    {"ft", Kind::length, kFoot},
    {"ft.", Kind::length, kFoot},
    {"foot", Kind::length, kFoot},
    {"feet", Kind::length, kFoot},
    {"'", Kind::length, kFoot},
    {"mm", Kind::length, 1e-3},
    {"millimetre", Kind::length, 1e-3},
    {"millimetres", Kind::length, 1e-3},
    {"millimeter", Kind::length, 1e-3},
    {"millimeters", Kind::length, 1e-3},
    {"cm", Kind::length, 1e-2},
    {"centimetre", Kind::length, 1e-2},
    {"centimetres", Kind::length, 1e-2},
    {"centimeter", Kind::length, 1e-2},
    {"centimeters", Kind::length, 1e-2},
    {"m", Kind::length, 1},
    {"metre", Kind::length, 1},
    {"metres", Kind::length, 1},
    {"meter", Kind::length, 1},
    {"meters", Kind::length, 1},
    {"N", Kind::force, 1},
    {"kN", Kind::force, 1e3},
    {"lbf", Kind::force, kNewtonsPerPoundForce},
    {"kgf", Kind::force, kStandardGravity},
    {"N/m", Kind::line_load, 1},
    {"N/mm", Kind::line_load, 1e3},
    {"kN/m", Kind::line_load, 1e3},
    {"lbf/ft", Kind::line_load, kNewtonsPerPoundForce / kFoot},
    {"lbf/in", Kind::line_load, kNewtonsPerPoundForce / kMetresPerInch},
    {"g", Kind::mass, 1e-3},
    {"kg", Kind::mass, 1},
    {"lb", Kind::mass, kKilogramsPerPound},
    {"lb.", Kind::mass, kKilogramsPerPound},
    {"lbs", Kind::mass, kKilogramsPerPound},
    {"lbs.", Kind::mass, kKilogramsPerPound},
    {"pound", Kind::mass, kKilogramsPerPound},
    {"pounds", Kind::mass, kKilogramsPerPound},
    {"kg/m3", Kind::density, 1},
    {"g/cm3", Kind::density, 1e3},
    {"lb/ft3", Kind::density, kKilogramsPerPound / (kFoot * kFoot * kFoot)},
    {"Pa", Kind::stress, 1},
    {"kPa", Kind::stress, 1e3},
    {"MPa", Kind::stress, 1e6},
    {"GPa", Kind::stress, 1e9},
    {"N/mm2", Kind::stress, 1e6},
    {"psi", Kind::stress, kPascalsPerPsi},
    {"lbf/in2", Kind::stress, kPascalsPerPsi},
    {"ksi", Kind::stress, 1e3 * kPascalsPerPsi},
    {"Mpsi", Kind::stress, 1e6 * kPascalsPerPsi},
    {"C", Kind::temperature, 1},
    {"°C", Kind::temperature, 1},
    {"℃", Kind::temperature, 1},
    {"F", Kind::temperature, 1 / 1.8, 32},
    {"°F", Kind::temperature, 1 / 1.8, 32},
    {"℉", Kind::temperature, 1 / 1.8, 32},
    {"%", Kind::percent, 1},
    {"percent", Kind::percent, 1},
    {"°", Kind::angle, 1},
    {"deg", Kind::angle, 1},
    {"degree", Kind::angle, 1},
    {"degrees", Kind::angle, 1},
    {"mm2", Kind::area, 1e-6},
    {"cm2", Kind::area, 1e-4},
    {"m2", Kind::area, 1},
    {"in2", Kind::area, kMetresPerInch* kMetresPerInch},
    {"ft2", Kind::area, kFoot* kFoot},
    {"kg/m", Kind::mass_per_length, 1},
    {"lb/ft", Kind::mass_per_length, kKilogramsPerPound / kFoot},
    {"lb/in", Kind::mass_per_length, kKilogramsPerPound / kMetresPerInch},
});

bool same_but_for_capitals(std::string_view a, std::string_view b)
{
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return lower_case(x) == lower_case(y); });
}

/// Spellings that would be another unit with the other m: mm and Mm, MPa and mPa, Mpsi and mpsi.
bool unclear_in_capitals(std::string_view table, std::string_view written)
{
    if (table == "mm") return written == "Mm";
    return (table == "MPa" || table == "Mpsi") && written.front() == 'm';
}

/// What the maker may have meant, in the kind that is wanted: a weight for a mass, a mass for a weight. Empty: no idea.
std::string likely_meant(std::string_view number, double value, const Unit& unit, Kind wanted)
{
    const bool pound = unit.spelling.starts_with("lb") || unit.spelling.starts_with("pound");
    const bool mass_meant_as_force =
        (wanted == Kind::force && unit.kind == Kind::mass) || (wanted == Kind::line_load && unit.kind == Kind::mass_per_length);
    if (mass_meant_as_force && pound)
        return fmt::format("{} lbf{}", number, unit.kind == Kind::mass ? "" : unit.spelling.substr(2));
    if (mass_meant_as_force)
        return fmt::format("{} {}", write_number(value * unit.factor * kStandardGravity, 4), wanted == Kind::force ? "N" : "N/m");
    if (wanted == Kind::mass && unit.spelling == "lbf") return fmt::format("{} lb", number);
    if (wanted == Kind::mass && unit.kind == Kind::force)
        return fmt::format("{} kg", write_number(value * unit.factor / kStandardGravity, 4));
    if (wanted == Kind::plain_number && (unit.kind == Kind::percent || unit.kind == Kind::angle)) return std::string(number);
    return {};
}

struct Words {
    std::string_view name, examples, unit; ///< `unit`: what a number without one is most likely in
};

Words words_for(Kind kind)
{
    switch (kind) {
    case Kind::length: return {"a length", "12 1/2 in or 305 mm", "mm"};
    case Kind::force: return {"a force", "800 N or 180 lbf", "N"};
    case Kind::line_load: return {"a force per length", "1500 N/m or 25 lbf/ft", "N/m"};
    case Kind::mass: return {"a mass", "80 kg or 176 lb", "kg"};
    case Kind::density: return {"a density", "680 kg/m3 or 42 lb/ft3", "kg/m3"};
    case Kind::stress: return {"a stress", "12.5 GPa, 95 MPa or 1.8e6 psi", "MPa"};
    case Kind::temperature: return {"a temperature", "20 C or 68 F", "C"};
    case Kind::percent: return {"a percentage", "8 or 8 %", "%"};
    case Kind::angle: return {"an angle in degrees", "30 or 30 deg", "deg"};
    case Kind::plain_number: return {"a plain number", "0.5 or 12", ""};
    case Kind::area: return {"an area", "4.1 cm2", "cm2"};
    case Kind::mass_per_length: return {"a mass per length", "2 kg/m", "kg/m"};
    }
    return {};
}

} // namespace

UnitFound find_unit(std::string_view spelling)
{
    if (spelling.empty()) return {};
    for (const Unit& unit : kUnits)
        if (unit.spelling == spelling) return {&unit, false};
    for (const Unit& unit : kUnits)
        if (same_but_for_capitals(unit.spelling, spelling)) return {&unit, unclear_in_capitals(unit.spelling, spelling)};
    return {};
}

std::string_view name_of(MeasureKind kind) { return words_for(kind).name; }

std::string_view examples_of(MeasureKind kind) { return words_for(kind).examples; }

Misreading no_unit(std::string_view number, bool fraction, MeasureKind wanted)
{
    return {"wrong-unit",
            fmt::format("{} has no unit; {} is written like {}", in_quotes(number), name_of(wanted), examples_of(wanted)),
            // Lengths with a fraction are inches nearly always; the sentence shows both kinds, the fix is a guess to look at.
            fmt::format("{} {}", number, fraction && wanted == Kind::length ? "in" : words_for(wanted).unit)};
}

Misreading wrong_unit(std::string_view text, std::string_view number, double value, std::string_view spelling, MeasureKind wanted)
{
    const UnitFound found = find_unit(spelling);
    if (found.unit == nullptr)
        return {
            "wrong-unit",
            fmt::format("no unit is named {}; {} is written like {}", in_quotes(spelling), name_of(wanted), examples_of(wanted)),
            {}};
    if (found.unclear)
        return {
            "wrong-unit",
            fmt::format("{} could be read as milli or mega; the unit is written {}", in_quotes(spelling), found.unit->spelling),
            fmt::format("{} {}", number, found.unit->spelling)};
    return {"wrong-unit",
            fmt::format("{} is {}, but {} is wanted here, such as {}", in_quotes(text), name_of(found.unit->kind),
                        name_of(wanted), examples_of(wanted)),
            likely_meant(number, value, *found.unit, wanted)};
}

} // namespace jointwright
