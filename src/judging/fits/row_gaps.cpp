#include "judging/fits/row_gaps.hpp"

#include "judging/finding_tools.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

constexpr double kWidestRowGap = 0.1;   // m: like parts farther apart are not a slat field
constexpr double kWidestBeside = 0.025; // m: a wider gap neither closes nor catches a finger
constexpr double kLeastFacing = 0.002;  // m: less is an edge that passes by

/// True when nothing stands in the gap, and parts drawn touching are free to press on each other: side by side, and not glued.
bool is_open(const Piece& piece, const std::vector<Contact>& contacts, std::size_t a, std::size_t b, Axis along, double gap)
{
    if (gap <= kTouch) {
        if (along == Axis::z || along != piece.part_of(a).width_axis()) return false;
        return std::none_of(contacts.begin(), contacts.end(), [&](const Contact& c) {
            return c.joint && ((c.first == a && c.second == b) || (c.first == b && c.second == a));
        });
    }
    Box space = piece.copies[a].box;
    space.lo[index_of(along)] = piece.copies[a].box.hi[index_of(along)];
    space.hi[index_of(along)] = piece.copies[b].box.lo[index_of(along)];
    return std::none_of(piece.copies.begin(), piece.copies.end(), [&](const Copy& other) {
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
            const std::size_t i = index_of(axis);
            const double overlap = std::min(space.hi[i], other.box.hi[i]) - std::max(space.lo[i], other.box.lo[i]);
            // A rail that crosses under a row of slats cuts into the gap's box from one side only: what counts is wood that fills it.
            if (overlap < 0.5 * space.size(axis)) return false;
        }
        return true;
    });
}

bool joined(const std::vector<Contact>& contacts, std::size_t a, std::size_t b)
{
    return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& c) {
        return c.joint && ((c.first == a && c.second == b) || (c.first == b && c.second == a));
    });
}

/// The clear space from one copy to another on one side of it, when they face each other; negative where they do not.
double clear_space(const Box& from, const Box& to, Axis along, bool high)
{
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        if (axis == along) continue;
        const std::size_t i = index_of(axis);
        if (std::min(from.hi[i], to.hi[i]) - std::max(from.lo[i], to.lo[i]) < kLeastFacing) return -1;
    }
    const std::size_t k = index_of(along);
    return high ? to.lo[k] - from.hi[k] : from.lo[k] - to.hi[k];
}

} // namespace

std::vector<RowGap> gaps_in_row(const Prepared& prepared, std::size_t part, Axis along)
{
    const Piece& piece = *prepared.piece;
    const auto& contacts = prepared.layout->contacts;
    std::vector<std::size_t> copies;
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.copies[i].part == part) copies.push_back(i);
    const std::size_t k = index_of(along);
    std::sort(copies.begin(), copies.end(),
              [&](std::size_t a, std::size_t b) { return piece.copies[a].box.lo[k] < piece.copies[b].box.lo[k]; });
    std::vector<RowGap> gaps;
    for (std::size_t i = 0; i < copies.size(); ++i)
        for (std::size_t j = i + 1; j < copies.size(); ++j) {
            if (!in_line(piece.copies[copies[i]].box, piece.copies[copies[j]].box, along)) continue;
            const double gap = piece.copies[copies[j]].box.lo[k] - piece.copies[copies[i]].box.hi[k];
            if (gap < kWidestRowGap && is_open(piece, contacts, copies[i], copies[j], along, gap))
                gaps.push_back({copies[i], copies[j], std::max(gap, 0.0)});
            break;
        }
    return gaps;
}

std::vector<RowGap> gaps_beside_row(const Prepared& prepared, std::size_t part, Axis along)
{
    const Piece& piece = *prepared.piece;
    std::vector<RowGap> gaps;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (piece.copies[i].part != part || piece.parts[part].turn) continue;
        for (const bool high : {false, true}) {
            std::optional<std::size_t> nearest;
            double room = kWidestBeside;
            for (std::size_t j = 0; j < piece.copies.size(); ++j) {
                if (j == i || piece.part_of(j).turn) continue;
                const double space = clear_space(piece.copies[i].box, piece.copies[j].box, along, high);
                if (space < -kTouch || space >= room) continue;
                nearest = j;
                room = space;
            }
            // What touches is no gap, and between like parts it is one of the row's own.
            if (!nearest || room <= kTouch || piece.copies[*nearest].part == part) continue;
            if (joined(prepared.layout->contacts, i, *nearest)) continue;
            gaps.push_back(high ? RowGap{i, *nearest, room} : RowGap{*nearest, i, room});
        }
    }
    return gaps;
}

} // namespace jointwright
