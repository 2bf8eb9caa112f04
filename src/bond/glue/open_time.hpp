#pragma once
// How long a glue stays open in the maker's shop, and how long a joint takes to spread and close.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"

#include <boost/units/systems/si/time.hpp>

#include <optional>

namespace jointwright {

using TimeSpan = Quantity<si::time>; ///< s
inline TimeSpan seconds(double v) { return TimeSpan::from_value(v); }
inline double in_seconds(TimeSpan v) { return v.value(); }

/// Times of a glue at one temperature.
struct GlueTimes {
    TimeSpan open{};    ///< from spreading the first face to closing it
    TimeSpan closed{};  ///< from closing to full pressure
    TimeSpan clamped{}; ///< until the clamps may come off; at 20 °C
    TimeSpan total() const { return open + closed; }
};

/// Open and closed time at a shop temperature: the tabled time at 20 °C × f^((T − 20)/10), f the glue's factor for 10 K.
///
/// Nothing when the table has no open time. Exactly the tabled times at 20 °C. Holds from about 10 to 30 °C, and is held level outside.
/// Leaves out: dry air and thirsty wood, which shorten it further.
/// Source: labels of glues (from memory); the factors are estimated, 1/2 for glues that set by a reaction.
std::optional<GlueTimes> glue_times(const GlueRecord& glue, Temperature shop, Working* working = nullptr);

/// Time to spread one joint of that glued area and to put it together [s].
///
///     t = t_joint + A × t_area
///
/// @param shaped  a tenon, dowel, bridle or dovetail: two halves to coat and to start; else a plain face
/// Source: common practice, estimated.
TimeSpan spreading_time(const Facts& facts, Area area, bool shaped);

} // namespace jointwright
