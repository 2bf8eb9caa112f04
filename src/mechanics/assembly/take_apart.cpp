#include "mechanics/assembly/take_apart.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace jointwright {

namespace {

constexpr double kSame = 1e-9;              // costs that differ by rounding
constexpr std::size_t kMostDirections = 40; // of turned joints; further ones alike are rare
constexpr std::size_t kMostTried = 400;     // parts of a set that is followed in large pieces

using Members = std::vector<std::size_t>;

Point opposite(const Point& d) { return {-d[0], -d[1], -d[2]}; }

/// The six axes, and the normals and grains of turned parts' joints.
std::vector<Point> directions_of(const std::vector<Contact>& contacts)
{
    std::vector<Point> all = {{-1, 0, 0}, {1, 0, 0}, {0, -1, 0}, {0, 1, 0}, {0, 0, 1}, {0, 0, -1}};
    for (const Contact& c : contacts)
        for (const Patch& p : c.patches) {
            if (all.size() >= kMostDirections) return all;
            const bool known = std::any_of(all.begin(), all.end(), [&](const Point& d) {
                return std::abs(d[0] * p.normal[0] + d[1] * p.normal[1] + d[2] * p.normal[2]) > 0.999;
            });
            if (known) continue;
            all.push_back(p.normal);
            all.push_back(opposite(p.normal));
        }
    return all;
}

/// What can be taken off a group.
struct TakenOff {
    std::vector<Members> sets; ///< disjoint, alike in cost, none glued to another
    std::vector<double> costs;
    double cost = std::numeric_limits<double>::infinity();
    double reach = 0;    ///< size of the group along the direction
    bool lifted = false; ///< upwards
};

class TakingApart {
public:
    TakingApart(const Piece& piece, const std::vector<Contact>& contacts, const std::vector<double>& costs, double easy)
        : contacts_(contacts), costs_(costs), easy_(easy), directions_(directions_of(contacts)), of_copy_(piece.copies.size()),
          inside_(piece.copies.size(), 0)
    {
        for (std::size_t i = 0; i < piece.copies.size(); ++i) boxes_.push_back(bounds_of(piece.part_of(i), piece.copies[i]));
        for (std::size_t c = 0; c < contacts.size(); ++c) {
            of_copy_[contacts[c].first].push_back(c);
            of_copy_[contacts[c].second].push_back(c);
        }
        free_.resize(directions_.size());
        for (std::size_t d = 0; d < directions_.size(); ++d)
            for (const Contact& c : contacts)
                free_[d].push_back({can_leave(piece, c, directions_[d]), can_leave(piece, c, opposite(directions_[d]))});
    }

    /// Groups, the one of these members last. @return its index
    std::size_t take_apart(const Members& members, PutTogether& out)
    {
        AssemblyGroup group;
        group.copies = members;
        group.cost = inner_cost(members);
        if (group.cost > 0) {
            const TakenOff off = best_of(members);
            if (off.sets.empty()) {
                group.locked = true;
            } else {
                Members rest = members;
                for (const Members& set : off.sets)
                    std::erase_if(rest, [&](std::size_t m) { return std::find(set.begin(), set.end(), m) != set.end(); });
                group.base = take_apart(rest, out);
                for (std::size_t i = 0; i < off.sets.size(); ++i) {
                    ClosingStep step;
                    step.contacts = crossing(off.sets[i], members);
                    step.cost = off.costs[i];
                    step.group = take_apart(off.sets[i], out);
                    group.steps.push_back(std::move(step));
                }
            }
        }
        out.groups.push_back(std::move(group));
        return out.groups.size() - 1;
    }

private:
    void mark(const Members& members)
    {
        std::fill(inside_.begin(), inside_.end(), 0);
        for (const std::size_t m : members) inside_[m] = 1;
    }

    double inner_cost(const Members& members)
    {
        mark(members);
        double cost = 0;
        for (const std::size_t m : members)
            for (const std::size_t c : of_copy_[m])
                if (contacts_[c].first == m && inside_[contacts_[c].second]) cost += costs_[c];
        return cost;
    }

    /// Glued contacts between a set and the rest of its group.
    std::vector<std::size_t> crossing(const Members& set, const Members& members)
    {
        mark(members);
        for (const std::size_t m : set) inside_[m] = 2;
        std::vector<std::size_t> found;
        for (const std::size_t m : set)
            for (const std::size_t c : of_copy_[m]) {
                const std::size_t other = contacts_[c].first == m ? contacts_[c].second : contacts_[c].first;
                if (inside_[other] == 1 && costs_[c] > 0) found.push_back(c);
            }
        std::sort(found.begin(), found.end());
        return found;
    }

    /// Everything that must move when `start` moves along a direction; nothing when that is more than half of the group.
    std::optional<Members> moved_with(std::size_t start, std::size_t direction, std::size_t most)
    {
        Members set{start};
        inside_[start] = 2;
        for (std::size_t i = 0; i < set.size() && set.size() <= most; ++i)
            for (const std::size_t c : of_copy_[set[i]]) {
                const bool is_first = contacts_[c].first == set[i];
                const std::size_t other = is_first ? contacts_[c].second : contacts_[c].first;
                if (inside_[other] != 1) continue;
                if (is_first ? free_[direction][c].first : free_[direction][c].second) continue;
                inside_[other] = 2;
                set.push_back(other);
            }
        for (const std::size_t m : set) inside_[m] = 1;
        if (set.size() > most) return std::nullopt;
        std::sort(set.begin(), set.end());
        return set;
    }

    double crossing_cost(const Members& set)
    {
        for (const std::size_t m : set) inside_[m] = 2;
        double cost = 0;
        for (const std::size_t m : set)
            for (const std::size_t c : of_copy_[m]) {
                const std::size_t other = contacts_[c].first == m ? contacts_[c].second : contacts_[c].first;
                if (inside_[other] == 1) cost += costs_[c];
            }
        for (const std::size_t m : set) inside_[m] = 1;
        return cost;
    }

    double reach_along(const Members& members, const Point& d) const
    {
        Box all = boxes_[members.front()];
        for (const std::size_t m : members)
            for (std::size_t i = 0; i < 3; ++i) {
                all.lo[i] = std::min(all.lo[i], boxes_[m].lo[i]);
                all.hi[i] = std::max(all.hi[i], boxes_[m].hi[i]);
            }
        double reach = 0;
        for (std::size_t i = 0; i < 3; ++i) reach += std::abs(d[i]) * (all.hi[i] - all.lo[i]);
        return reach;
    }

    /// True when some contact joins the set to one already taken.
    bool touches_taken(const Members& set, const std::vector<Members>& taken) const
    {
        for (const std::size_t m : set) {
            for (const Members& other : taken)
                if (std::binary_search(other.begin(), other.end(), m)) return true;
            for (const std::size_t c : of_copy_[m]) {
                const std::size_t far = contacts_[c].first == m ? contacts_[c].second : contacts_[c].first;
                if (costs_[c] <= 0) continue;
                for (const Members& other : taken)
                    if (std::binary_search(other.begin(), other.end(), far)) return true;
            }
        }
        return false;
    }

    TakenOff best_along(const Members& members, std::size_t direction)
    {
        TakenOff best;
        best.reach = reach_along(members, directions_[direction]);
        best.lifted = directions_[direction][2] > 0.9;
        const std::size_t most = members.size() <= kMostTried ? members.size() - 1 : kMostTried / 2;
        std::vector<std::pair<double, Members>> sets;
        mark(members);
        for (const std::size_t m : members) {
            auto set = moved_with(m, direction, most);
            if (!set) continue;
            const double cost = crossing_cost(*set);
            best.cost = std::min(best.cost, cost);
            sets.emplace_back(cost, std::move(*set));
        }
        // Of sets alike in cost the small ones first, as a larger one may hold them.
        std::stable_sort(sets.begin(), sets.end(),
                         [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
        std::size_t taken = 0;
        for (auto& [cost, set] : sets) {
            if (cost > best.cost + kSame || taken + set.size() >= members.size() || touches_taken(set, best.sets)) continue;
            taken += set.size();
            best.costs.push_back(cost);
            best.sets.push_back(std::move(set));
        }
        return best;
    }

    TakenOff best_of(const Members& members)
    {
        TakenOff best;
        for (std::size_t d = 0; d < directions_.size(); ++d) {
            TakenOff off = best_along(members, d);
            if (off.sets.empty()) continue;
            if (best.sets.empty() || is_better(off, best)) best = std::move(off);
        }
        return best;
    }

    /// Cheaper, where either is dear; else lifted before drawn, then the long way first, then cheaper.
    bool is_better(const TakenOff& a, const TakenOff& b) const
    {
        const double of_a = std::max(a.cost, easy_), of_b = std::max(b.cost, easy_);
        if (std::abs(of_a - of_b) > kSame) return of_a < of_b;
        // What nothing glued holds is out of the way first.
        if ((a.cost <= 0) != (b.cost <= 0)) return a.cost <= 0;
        if (a.lifted != b.lifted) return a.lifted;
        if (std::abs(a.reach - b.reach) > kTouch) return a.reach > b.reach;
        return a.cost < b.cost - kSame;
    }

    const std::vector<Contact>& contacts_;
    const std::vector<double>& costs_;
    double easy_;
    std::vector<Point> directions_;
    std::vector<std::vector<std::size_t>> of_copy_; ///< contacts by copy
    std::vector<char> inside_;                      ///< 0: not of the group, 1: of the group, 2: of the set in hand
    std::vector<Box> boxes_;
    std::vector<std::vector<std::pair<bool, bool>>> free_; ///< by direction and contact: first, second may move
};

} // namespace

PutTogether put_together(const Piece& piece, const std::vector<Contact>& contacts, const std::vector<double>& costs, double easy)
{
    PutTogether out;
    Members all(piece.copies.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    TakingApart(piece, contacts, costs, easy).take_apart(all, out);
    return out;
}

} // namespace jointwright
