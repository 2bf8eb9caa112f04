#pragma once
// Places along a part, sorted.

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace jointwright {

/// Sorts places; those nearer to the next than `apart` become one in the middle of them, the same from whichever end they are counted.
inline void sort_apart(std::vector<double>& places, double apart)
{
    std::sort(places.begin(), places.end());
    std::vector<double> kept;
    for (std::size_t first = 0; first < places.size();) {
        std::size_t last = first;
        while (last + 1 < places.size() && places[last + 1] - places[last] <= apart) ++last;
        kept.push_back((places[first] + places[last]) / 2);
        first = last + 1;
    }
    places = std::move(kept);
}

} // namespace jointwright
