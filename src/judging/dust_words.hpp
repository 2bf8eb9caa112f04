#pragma once
// What is said of the dust of a wood.

#include "facts/facts.hpp"

#include <string>

namespace jointwright {

/// "Wood dust is carcinogenic to humans (group 1; IARC Monographs, volume 62 (1995), 5.5 Evaluation)": holds for every wood.
std::string dust_of_all_woods(const Facts& facts);

/// What is listed for one wood, a whole sentence; or that nothing is, and that what holds for all dust holds for it too.
std::string dust_of(const WoodRecord& wood);

/// Oak and beech: the woods whose dust the evaluation rests on most.
bool is_oak_or_beech(const WoodRecord& wood);

} // namespace jointwright
