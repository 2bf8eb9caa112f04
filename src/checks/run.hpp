#pragma once
// From a piece to the content of its report: every combination of woods prepared, every check run, the worst kept.

#include "checks/report_content.hpp"
#include "facts/facts.hpp"
#include "mechanics/prepared.hpp"
#include "piece/piece.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace jointwright {

struct CheckOptions {
    std::optional<LengthUnit> units; ///< of what people read; the design's own when empty
    bool drawn = false;              ///< the report will have drawings
    bool remedies_tried = false;     ///< changes that mend what does not pass are looked for and checked again; needs `text`
    std::string_view text;           ///< the design as read: for charts of what other sizes would do, and for remedies
};

/// The findings alone, sorted, as a report of that piece has them: for sweeps. @param layout  layout_of(piece), or of one alike in space
std::vector<Finding> findings_of(const Piece& piece, const Facts& facts, const Layout& layout, LengthUnit units);

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options = {});

} // namespace jointwright
