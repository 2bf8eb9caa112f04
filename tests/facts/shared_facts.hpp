#pragma once
// The tables as they are built into the program, loaded once for all tests.

#include "facts/facts.hpp"

#include <string>
#include <utility>
#include <vector>

namespace jointwright::testing {

inline const Facts& shared_facts()
{
    static const Facts facts(embedded_data());
    return facts;
}

/// Every wood file, parsed.
inline std::vector<const WoodRecord*> all_woods()
{
    std::vector<const WoodRecord*> woods;
    for (const Listing& listing : shared_facts().woods())
        if (const WoodRecord* wood = shared_facts().find_wood(listing.name)) woods.push_back(wood);
    return woods;
}

/// The built-in texts with one of them replaced or added.
inline DataTexts data_with(const std::string& path, std::string text)
{
    DataTexts texts = embedded_data();
    texts[path] = std::move(text);
    return texts;
}

} // namespace jointwright::testing
