#pragma once
// From a piece to the content of its report: every combination of woods prepared, every check run, the worst kept.

#include "checks/report_content.hpp"
#include "facts/facts.hpp"
#include "piece/piece.hpp"

#include <optional>

namespace jointwright {

struct CheckOptions {
    std::optional<LengthUnit> units; ///< of what people read; the design's own when empty
    bool drawn = false;              ///< the report will have drawings
};

ReportContent check_piece(const Piece& piece, const Facts& facts, const CheckOptions& options = {});

} // namespace jointwright
