#include "judging/fits/flatness.hpp"

#include "judging/finding_tools.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

const Datum<double>& flatness_limit(const Prepared& prepared, std::size_t part)
{
    const Piece& piece = *prepared.piece;
    const bool carries = std::any_of(piece.carries.begin(), piece.carries.end(), [&](const std::string& name) {
        const std::vector<std::size_t> named = piece.copies_named(name);
        return std::any_of(named.begin(), named.end(), [&](std::size_t copy) { return piece.copies[copy].part == part; });
    });
    const bool looked_at = piece.use == Use::panel || piece.use == Use::door || (piece.use == Use::table && carries);
    return prepared.facts->number(looked_at ? "flatness_top" : "flatness_other");
}

std::string WorseSeason::words() const
{
    return fmt::format("at the {} ({})", dry ? "driest" : "dampest", moisture_words(moisture));
}

WorseSeason worse_season(const PartState& state, double driest, double dampest)
{
    if (dampest > driest) return {dampest, false, state.dampest};
    return {driest, true, state.driest};
}

} // namespace jointwright
