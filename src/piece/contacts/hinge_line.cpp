#include "piece/contacts/hinge_line.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

double dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
Point cross(const Point& a, const Point& b)
{
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

/// Direction of the longest side of a face.
Point longest_side(const Patch& patch)
{
    Point best{0, 0, 1};
    double most = 0;
    for (std::size_t i = 0; i < patch.outline.size(); ++i) {
        const Point &p = patch.outline[i], &q = patch.outline[(i + 1) % patch.outline.size()];
        const Point d{q[0] - p[0], q[1] - p[1], q[2] - p[2]};
        const double length = std::sqrt(dot(d, d));
        if (length <= most * (1 + 1e-9)) continue;
        most = length;
        best = {d[0] / length, d[1] / length, d[2] / length};
    }
    // One way round, whichever way the face is gone round: upwards, to the back, to the right.
    for (const std::size_t k : {std::size_t{2}, std::size_t{1}, std::size_t{0}})
        if (std::abs(best[k]) > 1e-6) return best[k] > 0 ? best : Point{-best[0], -best[1], -best[2]};
    return best;
}

struct Reach {
    double lo = 1e30, hi = -1e30;
};
Reach reach_of(const Contact& contact, const Point& direction)
{
    Reach reach;
    for (const Patch& patch : contact.patches)
        for (const Point& p : patch.outline) {
            reach.lo = std::min(reach.lo, dot(p, direction));
            reach.hi = std::max(reach.hi, dot(p, direction));
        }
    return reach;
}

/// Where across the faces the pins lie: in the middle, or at the edge that is named.
double across_of(const Joint::Hinges& hinges, const Reach& reach, const Point& across)
{
    const double middle = (reach.lo + reach.hi) / 2;
    if (!hinges.pin) return middle;
    const double towards = across[index_of(axis_of(*hinges.pin))] * (is_far(*hinges.pin) ? 1 : -1);
    constexpr double seen = 0.5; // cosine: an edge that does not look to that side is none of them
    if (std::abs(towards) < seen) return middle;
    return towards > 0 ? reach.hi : reach.lo;
}

} // namespace

bool HingeLine::upright() const { return std::abs(along[2]) > 0.7; }

HingeLine hinge_line(const Joint& joint, const Contact& contact)
{
    const Joint::Hinges hinges = joint.hinges.value_or(Joint::Hinges{});
    HingeLine line;
    line.along = longest_side(contact.patches.front());
    line.through = contact.patches.front().normal;
    const Point across = cross(line.through, line.along);
    const Reach side = reach_of(contact, line.along), wide = reach_of(contact, across);
    const double t = across_of(hinges, wide, across), n = dot(contact.patches.front().outline.front(), line.through);
    const double length = side.hi - side.lo;
    const double inset = hinges.inset ? std::min(in_metres(*hinges.inset), length / 2) : length / 2 / hinges.count;
    for (int i = 0; i < hinges.count; ++i) {
        const double share = hinges.count > 1 ? static_cast<double>(i) / (hinges.count - 1) : 0.5;
        const double s = hinges.count > 1 ? side.lo + inset + share * (length - 2 * inset) : side.lo + length / 2;
        Point place{};
        for (std::size_t k = 0; k < 3; ++k) place[k] = s * line.along[k] + t * across[k] + n * line.through[k];
        line.places.push_back(place);
    }
    return line;
}

} // namespace jointwright
