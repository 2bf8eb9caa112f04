#include "checks/held_flat.hpp"

#include "piece/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMostOfTheWidth = 0.6;

double dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// Extent of a contact's faces along a direction; faces that look that way (a board's edges) do not count.
double reach(const Contact& contact, const Point& direction)
{
    double lo = 0, hi = 0;
    bool any = false;
    for (const Patch& patch : contact.patches) {
        if (std::abs(dot(patch.normal, direction)) > 0.7) continue;
        for (const Point& p : patch.outline) {
            const double at = dot(p, direction);
            lo = any ? std::min(lo, at) : at;
            hi = any ? std::max(hi, at) : at;
            any = true;
        }
    }
    return any ? hi - lo : 0;
}

bool takes_an_end(JointKind kind)
{
    using enum JointKind;
    return kind == housing || kind == groove || kind == sliding_dovetail || kind == dovetail || kind == tenon || kind == bridle;
}

bool fastens(const Joint& joint)
{
    using enum JointKind;
    return joint.glue || takes_an_end(joint.kind) || joint.kind == screws || joint.kind == buttons || joint.kind == dowel;
}

bool holds(const Piece& piece, const Contact& contact, std::size_t board, std::size_t other)
{
    if (!contact.joint || !fastens(piece.joints[*contact.joint])) return false;
    const Part& part = piece.part_of(board);
    const PartAxes axes = axes_of(part, piece.copies[board]);
    const PartAxes others = axes_of(piece.part_of(other), piece.copies[other]);
    const bool grain_across = std::abs(dot(others.grain, axes.width)) > 0.7;
    const bool end_in_it = takes_an_end(piece.joints[*contact.joint].kind) && std::abs(dot(others.grain, axes.grain)) < 0.7;
    return (grain_across || end_in_it) && reach(contact, axes.width) > kMostOfTheWidth * in_metres(part.width);
}

bool covers_the_face(const Piece& piece, const Contact& contact, std::size_t board)
{
    const Part& part = piece.part_of(board);
    return piece.joints[*contact.joint].glue &&
           contact.patches.front().area > 0.5 * in_metres(part.width) * in_metres(part.length);
}

} // namespace

std::string Holders::words(const Piece& piece) const
{
    if (copies.empty()) return {};
    std::string words = piece.label(copies.front(), true);
    if (copies.size() > 1) words += " and " + piece.label(copies.back(), true);
    return words;
}

std::vector<Holders> holders_across(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<Holders> holders(piece.copies.size());
    for (const Contact& contact : prepared.layout->contacts)
        for (const bool of_first : {true, false}) {
            const std::size_t board = of_first ? contact.first : contact.second,
                              other = of_first ? contact.second : contact.first;
            if (!holds(piece, contact, board, other)) continue;
            holders[board].copies.push_back(other);
            holders[board].glued_over_its_face = holders[board].glued_over_its_face || covers_the_face(piece, contact, board);
        }
    return holders;
}

} // namespace jointwright
