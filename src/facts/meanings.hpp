#pragma once
// Names that mean different woods in different places: data/names.toml.

#include "facts/facts.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// What a name means in one place.
struct LocalMeaning {
    std::string place;              ///< "North America"
    std::vector<std::string> woods; ///< names of the tables, the likeliest first
    std::string says;               ///< a remark, or empty
};

struct NameMeanings {
    std::string name;
    std::vector<LocalMeaning> places;

    /// "in North America white oak or red oak; in Europe European oak".
    std::string words() const;
};

/// What a name means where; nothing when it means one wood, or none.
/// @throws BrokenData  the table is wrong, or names a wood that is not there
std::optional<NameMeanings> meanings_of(const Facts& facts, std::string_view name);

/// All of them, in the order of the file.
std::vector<NameMeanings> all_meanings(const Facts& facts);

/// Of each place the likeliest wood of which figures are held, none twice: what to check when nobody knows which it is.
std::vector<std::string> likeliest_woods(const Facts& facts, const NameMeanings& meanings);

} // namespace jointwright
