#include "mechanics/loads/what_stands.hpp"

#include "piece/contacts/hung.hpp"
#include "piece/model/turn.hpp"

#include <algorithm>
#include <map>

namespace jointwright {

bool HeldGroup::contains(std::size_t copy) const { return std::binary_search(copies.begin(), copies.end(), copy); }

namespace {

constexpr double kThin = 6;        // times its thickness a leaf is high, at least
constexpr double kLeaf = 0.25;     // m: lower ones are boards on edge
constexpr double kWholeLeaf = 0.5; // share of the face that one board covers

/// Made like a door or gate: a closed frame, or one broad board with what is on it; upright and thin.
bool made_like_a_leaf(const Given& given, const HeldGroup& group)
{
    const Box& b = group.bounds;
    const double high = b.size(Axis::z), thin = std::min(b.size(Axis::x), b.size(Axis::y)),
                 wide = std::max(b.size(Axis::x), b.size(Axis::y));
    if (!group.made_up() || high < kLeaf || wide < kLeaf || thin * kThin > high) return false;
    std::size_t joints = 0;
    for (const Contact& c : given.layout->contacts)
        joints += c.joint && group.contains(c.first) && group.contains(c.second) ? 1 : 0;
    if (joints >= group.copies.size()) return true;
    return std::any_of(group.copies.begin(), group.copies.end(), [&](std::size_t i) {
        const Box own = bounds_of(given.piece->part_of(i), given.piece->copies[i]);
        const double broad = std::max(own.size(Axis::x), own.size(Axis::y));
        return broad * own.size(Axis::z) > kWholeLeaf * wide * high;
    });
}

} // namespace

std::vector<HeldGroup> held_groups(const Given& given)
{
    using How = HeldGroup::How;
    const Piece& piece = *given.piece;
    const LoadPath& path = given.layout->path;
    const std::vector<std::size_t> numbers = joined_groups(piece, given.layout->contacts);
    std::map<std::size_t, HeldGroup> groups; // by number, which is that of the first copy
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        HeldGroup& group = groups[numbers[i]];
        const Box bounds = bounds_of(piece.part_of(i), piece.copies[i]);
        if (group.copies.empty()) group.bounds = bounds;
        for (std::size_t k = 0; k < 3; ++k) {
            group.bounds.lo[k] = std::min(group.bounds.lo[k], bounds.lo[k]);
            group.bounds.hi[k] = std::max(group.bounds.hi[k], bounds.hi[k]);
        }
        group.copies.push_back(i);
    }
    std::vector<HeldGroup> all;
    for (auto& numbered : groups) {
        HeldGroup& group = numbered.second;
        const auto any = [&](auto is) { return std::any_of(group.copies.begin(), group.copies.end(), is); };
        if (any([&](std::size_t i) { return piece.hangs(i); }))
            group.how = How::hinged;
        else if (any([&](std::size_t i) { return path.on_floor[i]; }))
            group.how = How::stands;
        else
            group.how = any([&](std::size_t i) { return path.reached[i]; }) ? How::lies : How::nothing;
        group.on_edge = group.how == How::stands && piece.wall.empty() && made_like_a_leaf(given, group);
        all.push_back(std::move(group));
    }
    return all;
}

std::vector<bool> stood_on_edge(const Given& given)
{
    std::vector<bool> on_edge(given.piece->copies.size(), false);
    const std::vector<HeldGroup> groups = held_groups(given);
    const auto stands = [](const HeldGroup& g) { return g.how == HeldGroup::How::stands && !g.on_edge; };
    if (std::none_of(groups.begin(), groups.end(), stands)) return on_edge;
    for (const HeldGroup& group : groups)
        for (const std::size_t i : group.copies) on_edge[i] = group.on_edge;
    return on_edge;
}

} // namespace jointwright
