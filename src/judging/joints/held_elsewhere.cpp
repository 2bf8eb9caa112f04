#include "judging/joints/held_elsewhere.hpp"

#include "judging/finding_tools.hpp"
#include "judging/joints/glue_demand.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace jointwright {

namespace {

constexpr double kSamePlace = 0.15; // m: from middle to middle, one connection

/// A joint that holds its parts together both ways.
bool holds_together(const Prepared& prepared, const Contact& contact)
{
    using enum JointKind;
    if (!contact.joint) return false;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    switch (joint.kind) {
    case screws:
    case dowel:
    case tenon:
    case bridle:
    case dovetail:
    case sliding_dovetail: return true;
    default: return joint.glue && glued_area(contact, joint).area > 0;
    }
}

Point middle_of(const Contact& contact)
{
    const Box& b = contact.patches.front().bounds;
    return {b.middle(Axis::x), b.middle(Axis::y), b.middle(Axis::z)};
}

double distance_between(const Contact& a, const Contact& b)
{
    const Point p = middle_of(a), q = middle_of(b);
    return std::hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

/// Copies that holding joints tie to one, without a contact and without a way through that copy again.
std::vector<bool> tied_to(const Prepared& prepared, std::size_t from, std::size_t without, std::size_t never)
{
    std::vector<bool> tied(prepared.piece->copies.size(), false);
    tied[from] = true;
    for (bool more = true; more;) {
        more = false;
        for (std::size_t c = 0; c < prepared.layout->contacts.size(); ++c) {
            const Contact& contact = prepared.layout->contacts[c];
            if (c == without || contact.first == never || contact.second == never ||
                tied[contact.first] == tied[contact.second] || !holds_together(prepared, contact))
                continue;
            tied[contact.first] = tied[contact.second] = true;
            more = true;
        }
    }
    return tied;
}

} // namespace

std::optional<HeldElsewhere> held_elsewhere(const Prepared& prepared, std::size_t index)
{
    const auto& contacts = prepared.layout->contacts;
    const Contact& contact = contacts[index];
    const bool first_ends = contact.patches.front().end_grain_first;
    const std::size_t held = first_ends ? contact.first : contact.second, holder = first_ends ? contact.second : contact.first;
    const std::vector<bool> tied = tied_to(prepared, holder, index, held);
    std::optional<HeldElsewhere> found;
    double nearest = 1e9;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& other = contacts[c];
        if (c == index || (other.first != held && other.second != held) || !holds_together(prepared, other)) continue;
        if (!tied[other.first == held ? other.second : other.first]) continue;
        const double distance = distance_between(contact, other);
        if (distance >= nearest) continue;
        nearest = distance;
        found = HeldElsewhere{c, distance < kSamePlace};
    }
    return found;
}

} // namespace jointwright
