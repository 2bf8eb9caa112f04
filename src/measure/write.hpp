#pragma once
// Writing measures for people: inches to the nearest 1/64, millimetres to 0.1.

#include "measure/moisture.hpp"
#include "measure/quantity.hpp"
#include "measure/read.hpp"

#include <string>

namespace jointwright {

/// A length for people: `17 1/8 in` (nearest 1/64, reduced), `434.9 mm` (0.1 mm), `43.49 cm`. Never "-0".
std::string write_length(Length length, LengthUnit unit);
/// A small length such as a gap or a movement: `0.022 in`, `0.56 mm`, `0.056 cm` (inches to 0.001, millimetres to 0.01).
std::string write_small_length(Length length, LengthUnit unit);
/// A length rounded UP to what can be milled: 1/32 in or 0.5 mm.
std::string write_length_up(Length length, LengthUnit unit);
/// The length that write_length_up shows.
Length round_up_to_milling_step(Length length, LengthUnit unit);

/// A plain number with so many significant digits and no exponent for everyday sizes: 0.00412, 12.3, 1180. Under 1e-11
/// it is 0.
std::string write_number(double number, int significant_digits = 3);
/// `9.1 MPa`; under one pascal `0 MPa`.
std::string write_stress(Stress stress);
/// `1180 N`, in inch designs `1180 N (265 lbf)`.
std::string write_force(Force force, LengthUnit unit);
/// `12.3 kg`, in inch designs `12.3 kg (27 lb)`.
std::string write_mass(Mass mass, LengthUnit unit);
/// `8 %`, `5.4 %`.
std::string write_percent(double percent);
std::string write_moisture(MoistureContent moisture);
/// `45°`.
std::string write_angle(Angle angle);
/// `4.1 cm²`, in inch designs `0.64 in²`.
std::string write_area(Area area, LengthUnit unit);

} // namespace jointwright
