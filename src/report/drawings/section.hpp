#pragma once
// Sections across the grain: a board's end as it cups or goes out of square, and a row of slats through the year.

#include "report/drawings/lines.hpp"
#include "report/markup/html_parts.hpp"
#include "review/content/report_content.hpp"

#include <cstddef>
#include <vector>

namespace jointwright {

/// The end grain of the board that a finding speaks of: as made (dashed) and as it is in the season in which it moves more, with its rings,
/// so many times as much as it moves; the caption says how many times. Nothing for other findings.
void put_end_grain_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding);

/// For a finding on the gaps of a row: four of the row from the end, at the driest, as made and at the dampest. Nothing for other findings.
void put_row_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding);

namespace drawing {

/// Where a point of a board's end grain comes to lie when the wood moves freely round and across its rings. The pith is at (0, 0).
///
///     (ρ, θ) → (ρ (1 + ε_R), θ (1 + ε_T)/(1 + ε_R)), θ counted from `upright`, the direction from the pith to the board's middle
///
/// Exact for uniform strains; see wood/distortion.hpp.
Dot moved_round_pith(const Dot& p, double upright, double tangential, double radial);

} // namespace drawing

} // namespace jointwright
