#pragma once
// Changes that mend what does not pass: each is put into the design, and the whole piece is checked again before it is offered.

#include "facts/facts.hpp"
#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/model/piece.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

/// Looks for changes that make a finding pass and no other worse, for every finding that fails or warns: fills in `tried`, and writes
/// `remedy` anew where there is one. A remedy with a size that no trial confirms says that it was not tried.
/// The number of pieces worked out is bounded, for each finding and for all; the same input gives the same remedies.
/// @param text      the one that the piece was read from, with the same facts
/// @param findings  sorted, as gathered, of the piece as drawn
void try_remedies(std::string_view text, const Piece& piece, const Facts& facts, const Layout& layout, LengthUnit units,
                  std::vector<Finding>& findings);

/// What to do first: of each finding that does not pass and has a remedy the first, alike ones once.
std::vector<FirstStep> first_steps(const std::vector<Finding>& findings);

} // namespace jointwright
