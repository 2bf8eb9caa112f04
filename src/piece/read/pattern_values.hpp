#pragma once
// A pattern's parts and joints as the design file would hold them.

#include "piece/patterns/pattern.hpp"
#include "piece/text/value.hpp"

namespace jointwright {

/// One [[part]] table. @param spot  where every value of it is said to stand: the [pattern] that it came from
DesignValue part_value(const PatternPart& part, const PatternOrder& order, Spot spot);
/// One [[joint]] table.
DesignValue joint_value(const Joint& joint, LengthUnit unit, Spot spot);

/// A list of lengths in the unit of the piece: [42, 14, 17.5].
DesignValue point_value(const Point& point, LengthUnit unit, Spot spot);
/// A list of texts: ["slat"].
DesignValue texts_value(const std::vector<std::string>& texts, Spot spot);

} // namespace jointwright
