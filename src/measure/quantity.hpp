#pragma once
// The quantities of the program, as Boost.Units types in SI. Only the few headers of the library that are needed.

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/surface_tension.hpp>
#include <boost/units/systems/si/volume.hpp>

namespace jointwright {

namespace si = boost::units::si;
template <class Unit>
using Quantity = boost::units::quantity<Unit>;

using Length = Quantity<si::length>;            ///< m
using Area = Quantity<si::area>;                ///< m²
using Volume = Quantity<si::volume>;            ///< m³
using Mass = Quantity<si::mass>;                ///< kg
using Density = Quantity<si::mass_density>;     ///< kg/m³
using Force = Quantity<si::force>;              ///< N
using LineLoad = Quantity<si::surface_tension>; ///< N/m, a force per length
using Stress = Quantity<si::pressure>;          ///< Pa, also a modulus of elasticity
using Moment = Quantity<si::energy>;            ///< N m
using Angle = Quantity<si::plane_angle>;        ///< rad

constexpr double kMetresPerInch = 0.0254;
constexpr double kNewtonsPerPoundForce = 4.4482216152605;
constexpr double kKilogramsPerPound = 0.45359237;
constexpr double kPascalsPerPsi = 6894.757293168361;
constexpr double kRadiansPerDegree = 0.017453292519943295;
constexpr double kStandardGravity = 9.80665; ///< m/s²

// Makers and readers at the doors of the program, where a plain number becomes a quantity or the other way round.
inline Length metres(double v) { return v * si::meter; }
inline Length millimetres(double v) { return metres(v * 1e-3); }
inline Length inches(double v) { return metres(v * kMetresPerInch); }
inline Area square_metres(double v) { return Area::from_value(v); }
inline Volume cubic_metres(double v) { return Volume::from_value(v); }
inline Mass kilograms(double v) { return Mass::from_value(v); }
inline Density kilograms_per_cubic_metre(double v) { return Density::from_value(v); }
inline Force newtons(double v) { return Force::from_value(v); }
inline LineLoad newtons_per_metre(double v) { return LineLoad::from_value(v); }
inline Stress pascals(double v) { return Stress::from_value(v); }
inline Stress megapascals(double v) { return pascals(v * 1e6); }
inline Stress gigapascals(double v) { return pascals(v * 1e9); }
inline Moment newton_metres(double v) { return Moment::from_value(v); }
inline Angle radians(double v) { return Angle::from_value(v); }
inline Angle degrees(double v) { return radians(v * kRadiansPerDegree); }

inline double in_metres(Length v) { return v.value(); }
inline double in_millimetres(Length v) { return v.value() * 1e3; }
inline double in_inches(Length v) { return v.value() / kMetresPerInch; }
inline double in_megapascals(Stress v) { return v.value() * 1e-6; }
inline double in_degrees(Angle v) { return v.value() / kRadiansPerDegree; }

/// Weight of a mass at rest on the floor.
inline Force weight_of(Mass m) { return newtons(m.value() * kStandardGravity); }

} // namespace jointwright
