#pragma once
// What to cut today: sizes at the moisture the wood has now, so that the fit is right in every season. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string>

namespace jointwright {

/// "made at 9 %, driest 5.4 %, dampest 11.9 %".
std::string moistures_words(const PartState& state);

/// Puts the moisture as made, at the driest and at the dampest into the values: `moisture_made`, `moisture_driest`, `moisture_dampest` [%].
void add_moistures(Finding& finding, const PartState& state);

/// A size to cut today: a value of that name [m] and a step of the working.
struct SizeToday {
    std::string name;    ///< of the value: "gap_today"
    std::string what;    ///< "gap between two slats"
    std::string formula; ///< how it comes about; may be empty
    std::string with;
    double size = 0;
};
void add_size_today(Finding& finding, const PartState& state, SizeToday today);

} // namespace jointwright
