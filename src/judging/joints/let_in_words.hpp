#pragma once
// How a maker speaks of what is let into a part, and of what to change.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/let_ins/let_in_walls.hpp"

#include <string>

namespace jointwright {

/// "the tenon of long rail", "a dowel of slat", "shelf in its housing".
std::string let_in_words(const Prepared& prepared, const LetIn& in);
/// "The tenons of long rail and end rail", "Two tenons of rail", "The tenon of rail and a bolt of leg".
std::string pair_of_let_ins(const Prepared& prepared, const LetIn& a, const LetIn& b);
/// "towards the front", "towards its slanting side".
std::string side_words(const kernel::Vec& out);
/// Ways out of a meeting, in the order in which a maker would try them: mitred ends, a shorter tenon, one set aside.
Remedy meeting_remedies(const Prepared& prepared, const Meeting& meeting);
/// @param wanted  the wall that would pass [m]
std::string wall_remedy(const Prepared& prepared, const LetIn& in, const Wall& wall, double wanted);

} // namespace jointwright
