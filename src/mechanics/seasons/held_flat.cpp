#include "mechanics/seasons/held_flat.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMostOfTheWidth = 0.6, kMostOfTheLength = 0.6;

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

/// Middle of the extent of some faces along a direction.
double middle_along(const std::vector<Patch>& patches, const Point& direction)
{
    double lo = dot(patches.front().outline.front(), direction), hi = lo;
    for (const Patch& patch : patches)
        for (const Point& p : patch.outline) {
            lo = std::min(lo, dot(p, direction));
            hi = std::max(hi, dot(p, direction));
        }
    return (lo + hi) / 2;
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

/// True when a copy is joined to others than `partner` near both its ends along its grain.
bool joined_at_both_ends(const Given& given, std::size_t copy, std::size_t partner)
{
    const Axis grain = given.piece->part_of(copy).grain;
    const Box& box = given.piece->copies[copy].box;
    bool low = false, high = false;
    for (const Contact& c : given.layout->contacts) {
        if (!c.joint || (c.first != copy && c.second != copy) || c.first == partner || c.second == partner) continue;
        for (const Patch& p : c.patches) {
            const double at = (p.bounds.lo[index_of(grain)] + p.bounds.hi[index_of(grain)]) / 2;
            low = low || at < box.lo[index_of(grain)] + 0.15 * box.size(grain);
            high = high || at > box.hi[index_of(grain)] - 0.15 * box.size(grain);
        }
    }
    return low && high;
}

/// A layer like the partner, glued to the opposite face of a copy, balances it.
bool balanced(const Given& given, std::size_t copy, const Contact& contact, const Patch& patch)
{
    const std::size_t partner = contact.first == copy ? contact.second : contact.first;
    const Part& layer = given.piece->part_of(partner);
    const double sign = contact.first == copy ? 1 : -1;
    for (const Contact& other : given.layout->contacts) {
        if (&other == &contact || !other.joint || !given.piece->joints[*other.joint].glue ||
            (other.first != copy && other.second != copy))
            continue;
        const Part& second = given.piece->part_of(other.first == copy ? other.second : other.first);
        if (second.grain != layer.grain ||
            std::abs(in_metres(second.thickness) - in_metres(layer.thickness)) > 0.1 * in_metres(layer.thickness))
            continue;
        const double other_sign = other.first == copy ? 1 : -1;
        for (const Patch& p : other.patches)
            if (sign * other_sign * dot(p.normal, patch.normal) < -0.999 && p.area > 0.5 * patch.area) return true;
    }
    return false;
}

/// True when a part of the frame runs along the glue, mostly in it, and is joined to others at both its ends.
bool is_framed(const Given& given, std::size_t copy, std::size_t partner, const GluedStretch& glue)
{
    const Part& part = given.piece->part_of(copy);
    const bool along = std::abs(dot(glue.direction, axes_of(part, given.piece->copies[copy]).grain)) > 0.9;
    return along && glue.length > kMostOfTheLength * in_metres(part.length) && joined_at_both_ends(given, copy, partner);
}

/// True when another than the partner holds a board straight across near the glue.
bool is_held_across(const Given& given, const Ties& ties, const Holders& holders, std::size_t board, std::size_t partner,
                    const GluedStretch& glue)
{
    const PartAxes axes = axes_of(given.piece->part_of(board), given.piece->copies[board]);
    if (std::abs(dot(glue.direction, axes.width)) < 0.9) return false;
    const double own = in_metres(given.piece->part_of(board).width);
    const double width = std::max(own, ties.body_of(board).box.size(given.piece->part_of(board).width_axis()));
    if (glue.length <= kMostOfTheWidth * width) return false;
    const double place = middle_along({*glue.patch}, axes.grain);
    for (std::size_t i = 0; i < holders.copies.size(); ++i)
        if (holders.copies[i] != partner && std::abs(holders.places[i] - place) <= width) return true;
    return false;
}

} // namespace

std::string Holders::words(const Piece& piece) const
{
    if (copies.empty()) return {};
    std::string words = piece.label(copies.front(), true);
    if (copies.size() > 1) words += " and " + piece.label(copies.back(), true);
    return words;
}

std::vector<Holders> holders_across(const Given& given)
{
    const Piece& piece = *given.piece;
    std::vector<Holders> holders(piece.copies.size());
    for (const Contact& contact : given.layout->contacts)
        for (const bool of_first : {true, false}) {
            const std::size_t board = of_first ? contact.first : contact.second,
                              other = of_first ? contact.second : contact.first;
            if (!holds(piece, contact, board, other)) continue;
            holders[board].copies.push_back(other);
            holders[board].places.push_back(
                middle_along(contact.patches, axes_of(piece.part_of(board), piece.copies[board]).grain));
            holders[board].glued_over_its_face = holders[board].glued_over_its_face || covers_the_face(piece, contact, board);
        }
    return holders;
}

std::string_view words_of(FlatBy by)
{
    switch (by) {
    case FlatBy::nothing: return "";
    case FlatBy::like_layer: return "a like layer on the other face";
    case FlatBy::frame: return "the frame that the part along the glue belongs to";
    case FlatBy::other_holder: return "others fastened across the same board close by";
    }
    return "";
}

FlatBy held_flat_by(const Given& given, const Ties& ties, const std::vector<Holders>& holders, const GluedStretch& glue)
{
    const Contact& contact = *glue.contact;
    for (const std::size_t copy : {contact.first, contact.second})
        if (balanced(given, copy, contact, *glue.patch)) return FlatBy::like_layer;
    for (const bool of_first : {true, false}) {
        const std::size_t copy = of_first ? contact.first : contact.second, partner = of_first ? contact.second : contact.first;
        if (is_framed(given, copy, partner, glue)) return FlatBy::frame;
        if (is_held_across(given, ties, holders[copy], copy, partner, glue)) return FlatBy::other_holder;
    }
    return FlatBy::nothing;
}

} // namespace jointwright
