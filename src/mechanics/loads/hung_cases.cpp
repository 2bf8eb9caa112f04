#include "mechanics/loads/hung_cases.hpp"

#include "measure/write.hpp"
#include "mechanics/loads/placing.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

Box round_about(const Piece& piece, const std::vector<std::size_t>& copies)
{
    Box box{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    for (const std::size_t i : copies) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        for (std::size_t k = 0; k < 3; ++k) {
            box.lo[k] = std::min(box.lo[k], b.lo[k]);
            box.hi[k] = std::max(box.hi[k], b.hi[k]);
        }
    }
    return box;
}

bool near_each_other(const Box& a, const Box& b, double reach)
{
    for (std::size_t k = 0; k < 3; ++k)
        if (b.lo[k] - a.hi[k] > reach || a.lo[k] - b.hi[k] > reach) return false;
    return true;
}

/// Where two boxes meet, or the room between them.
Box between(const Box& a, const Box& b)
{
    Box meeting;
    for (std::size_t k = 0; k < 3; ++k) {
        meeting.lo[k] = std::max(a.lo[k], b.lo[k]);
        meeting.hi[k] = std::min(a.hi[k], b.hi[k]); // less than lo across a gap: its middle is what is asked for
    }
    return meeting;
}

/// What a leaf hangs by: the middle of the hinged places, or of what is screwed to the wall.
std::optional<Point> held_at(const Piece& piece)
{
    Point sum{};
    double places = 0;
    const auto add = [&](const Box& b) {
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) sum[index_of(axis)] += b.middle(axis);
        ++places;
    };
    for (const Joint& joint : piece.joints) {
        if (joint.kind != JointKind::hinge) continue;
        const double reach = kTouch + (joint.hinges ? in_metres(joint.hinges->gap) : 0);
        for (const std::size_t i : piece.copies_named(joint.first))
            for (const std::size_t j : piece.copies_named(joint.second)) {
                const Box leaf = bounds_of(piece.part_of(i), piece.copies[i]),
                          post = bounds_of(piece.part_of(j), piece.copies[j]);
                if (piece.hangs(i) && near_each_other(leaf, post, reach)) add(between(leaf, post));
            }
    }
    if (places == 0)
        for (const std::string& name : piece.wall)
            for (const std::size_t i : piece.copies_named(name)) add(bounds_of(piece.part_of(i), piece.copies[i]));
    if (places == 0) return std::nullopt;
    for (double& s : sum) s /= places;
    return sum;
}

/// The leaf's copies: what hangs, or without hinges all.
std::vector<std::size_t> leaf_of(const Piece& piece)
{
    std::vector<std::size_t> leaf;
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.hung.empty() || piece.hangs(i)) leaf.push_back(i);
    return leaf;
}

/// Where a child bears on one copy, `inset` from the latch side, which lies at `edge` along an axis.
CopyLoad child_on(const Piece& piece, std::size_t copy, std::size_t axis, double edge, double inset, double force)
{
    const Lying lying(piece.part_of(copy), piece.copies[copy]);
    const Box b = bounds_of(piece.part_of(copy), piece.copies[copy]);
    Point at{(b.lo[0] + b.hi[0]) / 2, (b.lo[1] + b.hi[1]) / 2, b.hi[2]};
    at[axis] = std::clamp(edge, std::min(b.lo[axis] + inset, at[axis]), std::max(b.hi[axis] - inset, at[axis]));
    const Point drawn = lying.drawn(at);
    const double along = std::clamp(drawn[index_of(lying.grain())], lying.from(), lying.to());
    return {copy, along, along, force, drawn[index_of(lying.across())], 0};
}

/// The copy on the latch side that takes the child: the one that reaches farthest up there, of those alike the larger.
std::size_t latch_copy(const Piece& piece, const std::vector<std::size_t>& leaf, std::size_t axis, double edge)
{
    constexpr double there = 0.02; // m from the side
    std::size_t best = leaf.front();
    double most = -1e30;
    for (const std::size_t i : leaf) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        if (edge < b.lo[axis] - there || edge > b.hi[axis] + there) continue;
        const double height = b.hi[2] + 0.01 * b.size(Axis::z);
        if (height <= most + kTouch) continue;
        most = height;
        best = i;
    }
    return best;
}

} // namespace

void add_hung_cases(LoadCases& cases, const Piece& piece, const Facts& facts)
{
    if (piece.use != Use::door && piece.use != Use::gate) return;
    const auto held = held_at(piece);
    const std::vector<std::size_t> leaf = leaf_of(piece);
    if (!held || leaf.empty()) return;
    const Box b = round_about(piece, leaf);
    const std::size_t axis = b.size(Axis::x) >= b.size(Axis::y) ? 0 : 1;
    if (b.size(Axis::z) < std::min(b.size(Axis::x), b.size(Axis::y))) return; // lies level, a lid or a trapdoor
    const bool far = b.hi[axis] - (*held)[axis] > (*held)[axis] - b.lo[axis];
    const double edge = far ? b.hi[axis] : b.lo[axis];
    const Datum<double>&child = facts.number("door_load"), &inset = facts.number("door_load_inset");
    const std::size_t on = latch_copy(piece, leaf, axis, edge);
    add_case(cases, fmt::format("a child on the latch side, {} N on {}", write_number(child.value), piece.label(on, true)),
             DemandKind::service, LoadDuration::short_term, true, {child_on(piece, on, axis, edge, inset.value, child.value)},
             child.cite);
}

} // namespace jointwright
