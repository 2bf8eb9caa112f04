#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

Point unit(Axis axis)
{
    Point p{};
    p[index_of(axis)] = 1;
    return p;
}

Point middle_of(const Box& box) { return {box.middle(Axis::x), box.middle(Axis::y), box.middle(Axis::z)}; }

} // namespace

Point CopyTurn::direct(const Point& d) const
{
    // The two axes that follow `about` in the order x, y, z, x turn into each other.
    const std::size_t a = index_of(about), u = (a + 1) % 3, v = (a + 2) % 3;
    const double c = std::cos(angle), s = std::sin(angle);
    Point turned = d;
    turned[u] = c * d[u] - s * d[v];
    turned[v] = s * d[u] + c * d[v];
    return turned;
}

Point CopyTurn::place(const Point& p) const
{
    const Point moved = direct({p[0] - at[0], p[1] - at[1], p[2] - at[2]});
    return {moved[0] + at[0], moved[1] + at[1], moved[2] + at[2]};
}

std::optional<CopyTurn> turn_of(const Part& part, const Copy& copy)
{
    if (!part.turn) return std::nullopt;
    CopyTurn turn{part.turn->about, part.turn->angle.value(), middle_of(copy.box)};
    for (std::size_t i = 0; i < 3; ++i) {
        const bool mirrored = copy.mirrored[i] != part.turn->mirrored_as_placed[i];
        turn.at[i] += (mirrored ? -1 : 1) * part.turn->offset[i];
        // Seen in a mirror that holds the axis of the turn, the turn runs the other way round.
        if (mirrored && i != index_of(turn.about)) turn.angle = -turn.angle;
    }
    return turn;
}

PartAxes axes_of(const Part& part, const Copy& copy)
{
    PartAxes axes{unit(part.grain), unit(part.width_axis()), unit(part.face)};
    if (const auto turn = turn_of(part, copy)) {
        axes.grain = turn->direct(axes.grain);
        axes.width = turn->direct(axes.width);
        axes.face = turn->direct(axes.face);
    }
    return axes;
}

Box bounds_of(const Part& part, const Copy& copy)
{
    const auto turn = turn_of(part, copy);
    if (!turn) return copy.box;
    Box bounds;
    bool first = true;
    for (const double x : {copy.box.lo[0], copy.box.hi[0]})
        for (const double y : {copy.box.lo[1], copy.box.hi[1]})
            for (const double z : {copy.box.lo[2], copy.box.hi[2]}) {
                const Point p = turn->place({x, y, z});
                for (std::size_t i = 0; i < 3; ++i) {
                    bounds.lo[i] = first ? p[i] : std::min(bounds.lo[i], p[i]);
                    bounds.hi[i] = first ? p[i] : std::max(bounds.hi[i], p[i]);
                }
                first = false;
            }
    return bounds;
}

} // namespace jointwright
