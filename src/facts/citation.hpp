#pragma once
// Where a number comes from. Every number of the program carries one of these.

#include <string>
#include <string_view>

namespace jointwright {

/// How a value came into the tables.
enum class Provenance {
    retrieved, ///< read in the named source, or in a text that quotes it
    memory,    ///< recalled from the named source, not seen
    computed,  ///< follows from other values by a named formula
    estimated, ///< an engineering estimate of this project
};

std::string_view word_of(Provenance provenance);

/// A source and the place in it.
struct Citation {
    std::string source; ///< readable, for example "Wood Handbook (USDA FPL GTR-190, 2010)"
    std::string where;  ///< for example "table 13-5"
    Provenance provenance = Provenance::estimated;
    std::string note; ///< oddities of this value, or empty

    /// "Wood Handbook (USDA FPL GTR-190, 2010), table 13-5 (retrieved)".
    std::string text() const;
};

/// A value together with where it comes from.
template <class Q>
struct Datum {
    Q value{};
    Citation cite;
};

} // namespace jointwright
