#pragma once
// Reading measures as makers write them.

#include "measure/moisture.hpp"
#include "measure/outcome.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Unit of bare lengths in a design file, and of its report.
enum class LengthUnit { inch, millimetre, centimetre };

/// The short name used in design files: "in", "mm", "cm".
std::string_view short_name(LengthUnit unit);
/// The unit behind a short name; nothing for any other text.
std::optional<LengthUnit> length_unit_named(std::string_view name);
/// A bare number in a unit.
Length length_in(double number, LengthUnit unit);
/// A length as a plain number of that unit.
double number_in(Length length, LengthUnit unit);

/// Reads a length: `12in`, `12 1/2 in`, `12-1/2"`, `3' 6-1/2"`, `3 ft 6 in`, `17 1/8`, `½ in`, `305mm`, `30.5 cm`, `1.2 m`, `-0.25 in`.
///
/// @param bare  the unit of a text without one; without it such a text is a "wrong-unit" misreading
/// A decimal comma, a zero denominator, a missing number or words left over are misreadings that say what to write.
Outcome<Length> read_length(std::string_view text, std::optional<LengthUnit> bare = std::nullopt);

/// Reads lengths parted by `x` or `×`: `1/2in x 2in x 38mm`. A unit at the last one alone serves those before it that have none.
Outcome<std::vector<Length>> read_lengths(std::string_view text, std::optional<LengthUnit> bare = std::nullopt);

/// The parts of a text between its `x`, `X` or `×`, as they stand; for sizes that end in a count (`3/8in x 2in x 3`). At least one part.
std::vector<std::string_view> split_sizes(std::string_view text);

/// Reads a force: `800 N`, `1.2 kN`, `180 lbf`.
Outcome<Force> read_force(std::string_view text);
/// Reads a force per length: `1500 N/m`, `1.5 kN/m`, `25 lbf/ft`, `2 lbf/in`.
Outcome<LineLoad> read_line_load(std::string_view text);
/// Reads a mass: `80 kg`, `500 g`, `176 lb`.
Outcome<Mass> read_mass(std::string_view text);
/// Reads a density: `680 kg/m3`, `0.68 g/cm3`, `42 lb/ft3`.
Outcome<Density> read_density(std::string_view text);
/// Reads a stress or modulus: `12.5 GPa`, `95 MPa`, `95 N/mm2`, `1.8e6 psi`, `1.8 Mpsi`.
Outcome<Stress> read_stress(std::string_view text);
/// Reads a temperature: `20C`, `20 °C`, `68F`, `68 °F`.
Outcome<Temperature> read_temperature(std::string_view text);
/// Reads a moisture content or a humidity: `8`, `8 %`, `8.5%`. The number alone; the caller makes it a content or a humidity.
Outcome<double> read_percent(std::string_view text);
/// Reads an angle in degrees: `30`, `30 deg`, `30°`.
Outcome<Angle> read_angle(std::string_view text);
/// Reads a plain number with a decimal point; a decimal comma is refused with a word about it. NaN and infinity are refused.
Outcome<double> read_number(std::string_view text);

} // namespace jointwright
