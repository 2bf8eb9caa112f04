#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numeric>

namespace jointwright {

namespace {

constexpr long long kRulerParts = 64;      // of an inch: the finest division of a maker's rule
constexpr double kMillingPartsOfInch = 32; // steps of write_length_up
constexpr double kMillingStepMillimetres = 0.5;
constexpr double kExactlyCounted = 1e12; // inches or millimetres: beyond, rounding to a step has no meaning

/// Drops zeros behind the point, and the sign of a zero.
std::string without_idle_zeros(std::string text)
{
    if (text.find('.') != std::string::npos) {
        text.resize(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

std::string fixed(double number, int decimals)
{
    if (!(std::abs(number) < kExactlyCounted)) return write_number(number, 6);
    return without_idle_zeros(fmt::format("{:.{}f}", number, decimals));
}

std::string whole_and_fraction(double number)
{
    if (!(std::abs(number) < kExactlyCounted)) return write_number(number, 6);
    const long long parts = std::llround(std::abs(number) * kRulerParts);
    const long long whole = parts / kRulerParts, rest = parts % kRulerParts;
    const std::string sign = number < 0 && parts > 0 ? "-" : "";
    if (rest == 0) return fmt::format("{}{}", sign, whole);
    const long long common = std::gcd(rest, kRulerParts);
    const std::string fraction = fmt::format("{}/{}", rest / common, kRulerParts / common);
    return whole == 0 ? sign + fraction : fmt::format("{}{} {}", sign, whole, fraction);
}

/// Numbers that stand for weights and areas: two digits matter, all digits before the point are kept.
std::string coarse(double number) { return std::abs(number) >= 100 ? write_number(number, 3) : write_number(number, 2); }

} // namespace

std::string write_length(Length length, LengthUnit unit)
{
    const double number = number_in(length, unit);
    switch (unit) {
    case LengthUnit::inch: return whole_and_fraction(number) + " in";
    case LengthUnit::millimetre: return fixed(number, 1) + " mm";
    case LengthUnit::centimetre: return fixed(number, 2) + " cm";
    }
    return {};
}

std::string write_small_length(Length length, LengthUnit unit)
{
    const int decimals = unit == LengthUnit::millimetre ? 2 : 3;
    return fmt::format("{} {}", fixed(number_in(length, unit), decimals), short_name(unit));
}

Length round_up_to_milling_step(Length length, LengthUnit unit)
{
    const double step = unit == LengthUnit::inch ? kMetresPerInch / kMillingPartsOfInch : kMillingStepMillimetres * 1e-3;
    // A length that is a step but for rounding of the last bits stays that step.
    constexpr double kSlack = 1e-6;
    const double steps = std::ceil(in_metres(length) / step - kSlack);
    return metres((steps + 0.0) * step);
}

std::string write_length_up(Length length, LengthUnit unit) { return write_length(round_up_to_milling_step(length, unit), unit); }

std::string write_number(double number, int significant_digits)
{
    if (std::isnan(number)) return "not a number";
    if (std::isinf(number)) return number > 0 ? "infinite" : "-infinite";
    constexpr double kNothing = 1e-11; // what is left of a sum that cancels
    if (std::abs(number) < kNothing) return "0";
    const int digits = std::max(significant_digits, 1);
    const std::string rounded = fmt::format("{:.{}e}", number, digits - 1);
    double value = 0;
    int exponent = 0;
    const std::size_t e = rounded.find('e');
    std::from_chars(rounded.data(), rounded.data() + e, value);
    const std::size_t exponent_from = e + (rounded[e + 1] == '+' ? 2 : 1);
    std::from_chars(rounded.data() + exponent_from, rounded.data() + rounded.size(), exponent);
    constexpr int kSmallestPlain = -7, kLargestPlain = 12;
    if (exponent < kSmallestPlain || exponent > kLargestPlain)
        return fmt::format("{}e{}", without_idle_zeros(rounded.substr(0, e)), exponent);
    std::from_chars(rounded.data(), rounded.data() + rounded.size(), value);
    return without_idle_zeros(fmt::format("{:.{}f}", value, std::max(digits - 1 - exponent, 0)));
}

std::string write_stress(Stress stress)
{
    constexpr double kFromHereGigapascals = 1000;
    constexpr double kNothing = 1e-6; // megapascals: what is left of a sum that cancels
    const double mpa = in_megapascals(stress);
    if (std::abs(mpa) >= kFromHereGigapascals) return write_number(mpa / 1000) + " GPa";
    if (std::abs(mpa) < kNothing) return "0 MPa";
    return write_number(mpa) + " MPa";
}

std::string write_force(Force force, LengthUnit unit)
{
    std::string metric = write_number(force.value()) + " N";
    if (unit != LengthUnit::inch) return metric;
    return fmt::format("{} ({} lbf)", metric, write_number(force.value() / kNewtonsPerPoundForce));
}

std::string write_mass(Mass mass, LengthUnit unit)
{
    std::string metric = write_number(mass.value()) + " kg";
    if (unit != LengthUnit::inch) return metric;
    return fmt::format("{} ({} lb)", metric, coarse(mass.value() / kKilogramsPerPound));
}

std::string write_percent(double percent) { return fixed(percent, 1) + " %"; }

std::string write_moisture(MoistureContent moisture) { return write_percent(moisture.percent()); }

std::string write_angle(Angle angle) { return fixed(in_degrees(angle), 1) + "°"; }

std::string write_area(Area area, LengthUnit unit)
{
    constexpr double kSquareCentimetre = 1e-4, kSquareInch = kMetresPerInch * kMetresPerInch;
    if (unit == LengthUnit::inch) return coarse(area.value() / kSquareInch) + " in²";
    return coarse(area.value() / kSquareCentimetre) + " cm²";
}

} // namespace jointwright
