#include "mechanics/loads/tipping.hpp"

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kHeldByNothing = 1e6;

/// The piece's own weight less what was taken off it.
Weight left_of(const Footing& footing, const Weight& taken)
{
    Weight own{footing.weight - taken.down, {}, 0};
    if (own.down <= 0) return {};
    for (std::size_t k = 0; k < 2; ++k) own.at[k] = (footing.weight * footing.centre[k] - taken.down * taken.at[k]) / own.down;
    own.height = (footing.weight * footing.height - taken.down * taken.height) / own.down;
    return own;
}

Tipped balance(const Footing& footing, const Tipping& way, const Leverage& edge)
{
    Tipped t;
    t.by = way;
    const auto beyond = [&](const Weight& w) { return edge.beyond({w.at[0], w.at[1] - way.lean * w.height}); };
    const auto add = [&](const Weight& w) {
        const double out = beyond(w);
        (out > 0 ? t.overturning : t.restoring) += w.down * std::abs(out);
    };
    const Weight own = left_of(footing, way.taken);
    add(own);
    for (const Weight& w : way.live) add(w);
    for (const Weight& w : way.moved) add(w);
    for (const Weight& w : way.against) t.overturning += w.down * std::max(0.0, beyond(w));
    t.overturning += footing.unborne.down * std::max(0.0, beyond(footing.unborne));
    t.overturning += way.aside * way.outwards(edge.out) * way.height;
    t.ratio = t.restoring > 0 ? std::min(t.overturning / t.restoring, kHeldByNothing) : kHeldByNothing;
    t.outside = way.live.empty() ? 0 : beyond(way.live.front());
    t.inside = -beyond(own);
    t.weight = own.down;
    return t;
}

} // namespace

double Tipping::outwards(const PlanPoint& out) const
{
    return towards ? std::max(0.0, (*towards)[0] * out[0] + (*towards)[1] * out[1]) : 1;
}

std::optional<Tipped> soonest_tipped(const Footing& footing, const std::vector<Tipping>& ways)
{
    constexpr double same = 1 + 1e-9; // of ways alike the first is told
    std::optional<Tipped> worst;
    for (const Tipping& way : ways)
        for (const Leverage& edge : leverages(footing, footing.centre))
            if (Tipped t = balance(footing, way, edge); !worst || t.ratio > worst->ratio * same) worst = std::move(t);
    return worst;
}

} // namespace jointwright
