#include "mechanics/given/combination.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

std::string rings_words(Angle rings)
{
    const double d = in_degrees(rings);
    if (d < 1) return "flat-sawn";
    if (d > 89) return "quarter-sawn";
    if (d > 44 && d < 46) return "rift";
    return fmt::format("rings at {}", write_angle(rings));
}

} // namespace

std::vector<Combination> combinations_of(const Piece& piece)
{
    Combination first;
    first.species.assign(piece.woods.size(), 0);
    first.wood_rings.assign(piece.woods.size(), 0);
    first.part_rings.assign(piece.parts.size(), 0);
    std::vector<Combination> all{first};
    const auto multiply = [&](std::size_t choices, auto set, auto words) {
        if (choices < 2) return;
        std::vector<Combination> grown;
        for (const Combination& c : all)
            for (std::size_t k = 0; k < choices; ++k) {
                Combination next = c;
                set(next, k);
                if (!next.words.empty()) next.words += ", ";
                next.words += words(k);
                grown.push_back(std::move(next));
            }
        all = std::move(grown);
    };
    for (std::size_t w = 0; w < piece.woods.size(); ++w) {
        const WoodChoice& wood = piece.woods[w];
        multiply(
            wood.species.size(), [w](Combination& c, std::size_t k) { c.species[w] = k; },
            [&](std::size_t k) { return wood.species[k]; });
        multiply(
            wood.rings.size(), [w](Combination& c, std::size_t k) { c.wood_rings[w] = k; },
            [&](std::size_t k) { return fmt::format("{} {}", wood.id, rings_words(wood.rings[k])); });
    }
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        if (!part.own_rings) continue;
        multiply(
            part.rings.size(), [p](Combination& c, std::size_t k) { c.part_rings[p] = k; },
            [&](std::size_t k) { return fmt::format("{} {}", part.id, rings_words(part.rings[k])); });
    }
    return all;
}

} // namespace jointwright
