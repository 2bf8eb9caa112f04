#pragma once
// The cautions of a report, from what the piece is made of.

#include "facts/facts.hpp"
#include "piece/model/piece.hpp"
#include "review/content/report_content.hpp"

namespace jointwright {

/// Puts the cautions that fit the piece's use, woods, glues and finishes into the report.
void add_cautions(ReportContent& content, const Piece& piece, const Facts& facts);

} // namespace jointwright
