#pragma once
// How much a part would sag if it were thinner or thicker: the whole check at a handful of sizes, for a chart. SI doubles: metres.

#include "facts/facts.hpp"
#include "judging/finding.hpp"
#include "piece/model/piece.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// One thickness and what the whole check says of it.
struct SagAtThickness {
    double thickness = 0, sag = 0, limit = 0; ///< m; the sag with creep
    Verdict sag_verdict = Verdict::pass;
    bool chosen = false;      ///< the one of the design
    bool others_fail = false; ///< some other finding fails here that does not fail as drawn
};

struct SagByThickness {
    std::string part;
    std::vector<SagAtThickness> sizes; ///< by thickness, the thinnest first; three at least
    /// Where the sag meets its limit, between two of the sizes.
    std::optional<double> meets_limit_at;
};

/// The part whose sag uses most of its limit at up to six thicknesses around the chosen one, whole milling steps.
/// Nothing when nothing sags, when the piece has more than 100 copies, or when fewer than three thicknesses make a piece.
/// @param text  the design that the piece was read from; empty: nothing
std::optional<SagByThickness> sag_by_thickness(std::string_view text, const Piece& piece, const Facts& facts,
                                               const std::vector<Finding>& findings, LengthUnit units);

} // namespace jointwright
