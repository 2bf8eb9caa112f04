#include "mechanics/load_path.hpp"

#include "piece/turn.hpp"

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
    double lowest = std::numeric_limits<double>::infinity();
    std::vector<double> feet;
    for (const Copy& copy : piece.copies) feet.push_back(bounds_of(piece.parts[copy.part], copy).lo[2]);
    for (const double foot : feet) lowest = std::min(lowest, foot);
    for (std::size_t i = 0; i < feet.size(); ++i) on_floor[i] = feet[i] < lowest + kTouch;
    return on_floor;
}

/// +1 when the second lies below the first on a level face, −1 the other way round, 0 at side faces.
int lies_below(const Contact& contact)
{
    for (const Patch& p : contact.patches) {
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

Bearing bearing_of(const Piece& piece, const std::vector<Contact>& contacts, std::size_t c, std::size_t upper, std::size_t below)
{
    const Contact& contact = contacts[c];
    const std::size_t g = index_of(piece.part_of(upper).grain);
    Box box = contact.patches.front().bounds;
    bool any = false;
    // Cheeks and edges of a tenon reach beyond the shoulder; the load is handed over within what both parts show.
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
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
    const auto can_bear = [&](const Contact& contact) { return lies_below(contact) != 0 || (contact.joint && holds_sideways(piece.joints[*contact.joint])); };

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

    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!can_bear(contact)) continue;
        const std::size_t a = contact.first, b = contact.second;
        if (level[a] == kUnreached || level[b] == kUnreached) continue;
        const int below = lies_below(contact);
        if (level[b] < level[a] || (level[a] == level[b] && below > 0 && level[a] > 0))
            path.bearings[a].push_back(bearing_of(piece, contacts, c, a, b));
        else if (level[a] < level[b] || (level[a] == level[b] && below < 0 && level[a] > 0))
            path.bearings[b].push_back(bearing_of(piece, contacts, c, b, a));
    }

    path.order.resize(n);
    for (std::size_t i = 0; i < n; ++i) path.order[i] = i;
    std::stable_sort(path.order.begin(), path.order.end(), [&](std::size_t a, std::size_t b) {
        if (level[a] != level[b]) return level[a] > level[b];
        return piece.copies[a].box.middle(Axis::z) > piece.copies[b].box.middle(Axis::z) + 1e-9;
    });
    return path;
}

} // namespace jointwright
