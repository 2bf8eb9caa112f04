#pragma once
// The cautions that stand in every report.

#include "facts/facts.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// What of a piece decides which cautions are said.
struct CautionInputs {
    std::string use;                       ///< as in the design: "seat", "table", "shelf", "cabinet", "panel", "none"
    bool oil_finish = false;               ///< a finish with a drying oil is on some part
    std::vector<std::string> glue_hazards; ///< for each glue used, "epoxy: Skin sensitizer: gloves, ..."
    std::vector<std::string> dust;         ///< a sentence for each wood used, "Dust of black cherry: irritant (skin)."
};

/// The cautions, most general first; never empty. Figures come from limits.toml, their sources stand in the sentences.
std::vector<std::string> general_cautions(const Facts& facts, const CautionInputs& inputs);

} // namespace jointwright
