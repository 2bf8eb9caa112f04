#pragma once
// Names as people write them: forgiving of case, commas, hyphens and word order.

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Words of a name in lower case, sorted, parted by single blanks: "Oak, white" and "white oak" agree.
std::string normal_form(std::string_view name);
/// The same without blanks: "yellow-poplar", "yellow poplar" and "yellowpoplar" agree.
std::string compact_form(std::string_view name);
/// Words in the order written, lower case, parted by hyphens: a file name.
std::string slug_of(std::string_view name);
/// Number of letters to insert, drop, change or swap to get from one text to the other.
std::size_t edit_distance(std::string_view a, std::string_view b);

} // namespace jointwright
