#include "judging/fits/groove_fit.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

double engagement_held(const GrooveSide& side, double shrink) { return side.engaged - shrink; }

double engagement_free(const GrooveSide& side, const GrooveSide& other, double shrink)
{
    return side.engaged + other.engaged - std::max(side.depth, other.depth) - shrink;
}

namespace {

constexpr double kHalf = 0.5; // free to slide: 2e − d − |Δw| > 0, so each edge reaches half of the depth and its shrinkage
constexpr double kLeastWindow = 0.0002; // m: a panel has to be cut to some tolerance

/// Where the edge has to end: between what it must reach when shrunk and what the groove leaves when swollen.
struct Window {
    double low, high;
    bool open() const { return high - low >= kLeastWindow; }
    double nearest(double wish) const { return wish >= low && wish <= high ? wish : (low + high) / 2; }
};

Window window_of(double depth, const EdgeDemand& demand, double share)
{
    return {depth * share + demand.shrink, depth - demand.swell - demand.wanted};
}

double up_to_step(double depth, double step) { return std::ceil(depth / step - 1e-6) * step; }

} // namespace

std::optional<GrooveAdvice> panel_for_groove(double depth, double engaged, const EdgeDemand& demand)
{
    const Window free = window_of(depth, demand, kHalf), pinned = window_of(depth, demand, demand.share);
    if (!demand.held && free.open()) return GrooveAdvice{depth, free.nearest(engaged), false};
    if (pinned.open()) return GrooveAdvice{depth, pinned.nearest(engaged), true};
    return std::nullopt;
}

std::optional<GrooveAdvice> groove_for_panel(double engaged, const EdgeDemand& demand, double step)
{
    const double depth = up_to_step(engaged + demand.swell + demand.wanted, step), left = engaged - demand.shrink;
    if (!demand.held && left > kHalf * depth) return GrooveAdvice{depth, engaged, false};
    if (left >= demand.share * depth) return GrooveAdvice{depth, engaged, true};
    return std::nullopt;
}

GrooveAdvice least_groove(const EdgeDemand& demand, double step)
{
    // From low + tolerance <= high: d (1 − share) >= swell + shrink + wanted + tolerance.
    const double depth = up_to_step((demand.swell + demand.shrink + demand.wanted + kLeastWindow) / (1 - demand.share), step);
    const Window window = window_of(depth, demand, demand.share);
    return {depth, (window.low + window.high) / 2, true};
}

} // namespace jointwright
