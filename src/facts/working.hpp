#pragma once
// The sums behind a number, as a reader can follow them.

#include <string>
#include <vector>

namespace jointwright {

/// One step of a calculation. Numbers are SI; `unit` is one of the units of the JSON contract ("m", "Pa", "%", "1", ...).
struct WorkingStep {
    std::string says;    ///< what is computed, in words
    std::string formula; ///< in the letters of the source
    std::string with;    ///< the numbers put in, with units
    double value = 0;
    std::string unit;
    std::string source;
};

/// The steps that led to a result. Calculators take a pointer and write only when someone will read (a sweep passes nullptr).
using Working = std::vector<WorkingStep>;

} // namespace jointwright
