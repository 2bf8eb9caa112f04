#include "mechanics/given/load_path.hpp"

#include "mechanics/given/floor.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace jointwright {

namespace {

constexpr int kUnreached = std::numeric_limits<int>::max();

std::vector<bool> floor_copies(const Piece& piece)
{
    std::vector<bool> on_floor(piece.copies.size(), false);
    for (const std::string& name : piece.wall)
        for (const std::size_t i : piece.copies_named(name)) on_floor[i] = true;
    if (!piece.wall.empty()) return on_floor;
    const double floor = floor_level(piece);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) on_floor[i] = meets_floor(piece, i, floor);
    return on_floor;
}

/// +1 when the second lies below the first on a level face, −1 the other way round, 0 at side faces.
int lies_below(const Contact& contact)
{
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge || p.bears <= 0)
            continue; // of a dovetail or tenon: they face each other, not the floor; nothing rests on a sliver
        if (p.normal[2] < -0.9) return 1;
        if (p.normal[2] > 0.9) return -1;
    }
    return 0;
}

/// A joint that carries a part on its side: by its shape, its fasteners or its glue. Dry faces side by side carry nothing.
bool holds_sideways(const Joint& joint)
{
    switch (joint.kind) {
    case JointKind::edge:
    case JointKind::face:
    case JointKind::butt:
    case JointKind::mitre: return joint.glue.has_value();
    default: return true;
    }
}

/// Kinds in which the first part sits in the second.
bool takes_the_first(JointKind kind)
{
    return kind == JointKind::housing || kind == JointKind::groove || kind == JointKind::sliding_dovetail;
}

Bearing bearing_of(const Piece& piece, const std::vector<Contact>& contacts, std::size_t c, std::size_t upper, std::size_t below)
{
    const Contact& contact = contacts[c];
    const std::size_t g = index_of(piece.part_of(upper).grain);
    Box box = contact.patches.front().bounds;
    bool any = false;
    // Cheeks and edges of a tenon reach beyond the shoulder; the load is handed over within what both parts show.
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge || p.bears <= 0) continue;
        for (std::size_t i = 0; i < 3; ++i) {
            box.lo[i] = any ? std::min(box.lo[i], p.bounds.lo[i]) : p.bounds.lo[i];
            box.hi[i] = any ? std::max(box.hi[i], p.bounds.hi[i]) : p.bounds.hi[i];
        }
        any = true;
    }
    Bearing bearing;
    bearing.contact = c;
    bearing.below = below;
    bearing.from = box.lo[g];
    bearing.to = box.hi[g];
    const std::size_t across = piece.part_of(upper).grain == Axis::x ? 1 : 0;
    bearing.across = (box.lo[across] + box.hi[across]) / 2;
    return bearing;
}

/// Orders the copies so that each comes before those that bear it; drops a bearing that would close a ring.
void put_in_order(LoadPath& path)
{
    enum class Mark { fresh, open, done };
    const std::size_t n = path.bearings.size();
    std::vector<Mark> marks(n, Mark::fresh);
    std::vector<std::size_t> finished;
    for (std::size_t start = 0; start < n; ++start) {
        if (marks[start] != Mark::fresh) continue;
        std::vector<std::pair<std::size_t, std::size_t>> stack{{start, 0}}; // a copy and its next bearing
        marks[start] = Mark::open;
        while (!stack.empty()) {
            auto& [copy, next] = stack.back();
            auto& bearings = path.bearings[copy];
            if (next == bearings.size()) {
                marks[copy] = Mark::done;
                finished.push_back(copy);
                stack.pop_back();
                continue;
            }
            const std::size_t below = bearings[next].below;
            if (marks[below] == Mark::open) {
                bearings.erase(bearings.begin() + static_cast<std::ptrdiff_t>(next));
                continue;
            }
            ++next;
            if (marks[below] == Mark::fresh) {
                marks[below] = Mark::open;
                stack.emplace_back(below, 0);
            }
        }
    }
    path.order.assign(finished.rbegin(), finished.rend());
}

} // namespace

LoadPath load_path_of(const Piece& piece, const std::vector<Contact>& contacts)
{
    const std::size_t n = piece.copies.size();
    LoadPath path;
    path.bearings.resize(n);
    path.on_floor = floor_copies(piece);
    std::vector<std::vector<std::size_t>> at(n); // contacts of each copy
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        at[contacts[c].first].push_back(c);
        at[contacts[c].second].push_back(c);
    }
    const auto can_bear = [&](const Contact& contact) {
        return lies_below(contact) != 0 || (contact.joint && holds_sideways(piece.joints[*contact.joint]));
    };

    std::vector<int> level(n, kUnreached);
    std::queue<std::size_t> queue;
    for (std::size_t i = 0; i < n; ++i)
        if (path.on_floor[i]) {
            level[i] = 0;
            queue.push(i);
        }
    while (!queue.empty()) {
        const std::size_t now = queue.front();
        queue.pop();
        for (const std::size_t c : at[now]) {
            const std::size_t next = contacts[c].first == now ? contacts[c].second : contacts[c].first;
            if (level[next] != kUnreached || !can_bear(contacts[c])) continue;
            level[next] = level[now] + 1;
            queue.push(next);
        }
    }
    path.reached.resize(n);
    for (std::size_t i = 0; i < n; ++i) path.reached[i] = level[i] != kUnreached;

    // A part stands without another when something nearer the floor than itself bears it.
    const auto stands_without = [&](std::size_t part, std::size_t other) {
        if (level[part] == 0) return true;
        return std::any_of(at[part].begin(), at[part].end(), [&](std::size_t c) {
            const std::size_t next = contacts[c].first == part ? contacts[c].second : contacts[c].first;
            return next != other && can_bear(contacts[c]) && level[next] < level[part];
        });
    };
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!can_bear(contact)) continue;
        const std::size_t a = contact.first, b = contact.second;
        if (level[a] == kUnreached || level[b] == kUnreached) continue;
        const int below = lies_below(contact);
        // What lies on a part that stands by itself is borne by it, however many parts it is from the floor: a slat that also touches a leg.
        const bool a_on_b = below > 0 && level[a] > 0 && stands_without(b, a),
                   b_on_a = below < 0 && level[b] > 0 && stands_without(a, b);
        // On one level what sits in a housing or groove is borne by what is cut to take it: a drawer bottom by its sides.
        const bool a_in_b =
            level[a] == level[b] && level[a] > 0 && contact.joint && takes_the_first(piece.joints[*contact.joint].kind);
        if (a_on_b || a_in_b || (!b_on_a && level[b] < level[a]))
            path.bearings[a].push_back(bearing_of(piece, contacts, c, a, b));
        else if (b_on_a || level[a] < level[b])
            path.bearings[b].push_back(bearing_of(piece, contacts, c, b, a));
    }

    put_in_order(path);
    return path;
}

} // namespace jointwright
