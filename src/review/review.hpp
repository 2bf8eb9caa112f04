#pragma once
// From a piece to the content of its report: every combination of woods prepared, every check run, the worst kept.

#include "facts/facts.hpp"
#include "piece/model/piece.hpp"
#include "review/content/report_content.hpp"

#include <optional>
#include <string_view>

namespace jointwright {

struct CheckOptions {
    std::optional<LengthUnit> units; ///< of what people read; the design's own when empty
    bool drawn = false;              ///< the report will have drawings
    bool remedies_tried = false;     ///< changes that mend what does not pass are looked for and checked again; needs `text`
    std::string_view text;           ///< the design as read: for charts of what other sizes would do, and for remedies
};

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options = {});

} // namespace jointwright
