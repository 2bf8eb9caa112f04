// Which way one part can leave another, by the kind of joint between them.

#include "mechanics/assembly/take_apart.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kAlong = 0.99; // cosine from which two directions are one
constexpr double kOff = 0.3;    // a glued face must part, not slide
constexpr double kLevel = 0.02; // sine below which a move slides in a face

double dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// No face is pressed by the move.
bool presses_nothing(const Contact& contact, const Point& d)
{
    return std::all_of(contact.patches.begin(), contact.patches.end(),
                       [&](const Patch& p) { return dot(d, p.normal) <= kLevel; });
}

/// Some face parts, rather than slides.
bool parts_a_face(const Contact& contact, const Point& d)
{
    return std::any_of(contact.patches.begin(), contact.patches.end(), [&](const Patch& p) { return dot(d, p.normal) < -kOff; });
}

/// The direction out of a body towards the space it shares with another, along its own grain.
Point outward_along_grain(const Piece& piece, std::size_t copy, const Contact& contact)
{
    const Point grain = axes_of(piece.part_of(copy), piece.copies[copy]).grain;
    const Box body = bounds_of(piece.part_of(copy), piece.copies[copy]);
    const Box joint = contact.shared ? *contact.shared : contact.patches.front().bounds;
    Point to{};
    for (const Axis a : {Axis::x, Axis::y, Axis::z}) to[index_of(a)] = joint.middle(a) - body.middle(a);
    const double sign = dot(grain, to) >= 0 ? 1 : -1;
    return {sign * grain[0], sign * grain[1], sign * grain[2]};
}

/// Out of the hole: against the normal of the shoulder, or of the largest face where no shoulder is known.
bool leaves_a_hole(const Contact& contact, const Point& d)
{
    const Patch* shoulder = &contact.patches.front();
    for (const Patch& p : contact.patches)
        if (p.role == Patch::Role::shoulder && (shoulder->role != Patch::Role::shoulder || p.area > shoulder->area))
            shoulder = &p;
    return dot(d, shoulder->normal) < -kAlong;
}

/// Along the longest side of the joint, either way that is open.
bool leaves_lengthwise(const Contact& contact, const Point& d)
{
    const Box box = contact.shared ? *contact.shared : contact.patches.front().bounds;
    Axis longest = Axis::x;
    for (const Axis a : {Axis::y, Axis::z})
        if (box.size(a) > box.size(longest)) longest = a;
    return std::abs(d[index_of(longest)]) > kAlong && presses_nothing(contact, d);
}

} // namespace

bool can_leave(const Piece& piece, const Contact& contact, const Point& d)
{
    if (contact.patches.empty()) return true;
    if (!contact.joint) return presses_nothing(contact, d);
    const Joint& joint = piece.joints[*contact.joint];
    const bool glued = joint.glue.has_value();
    switch (joint.kind) {
    case JointKind::tenon:
    case JointKind::dowel: return leaves_a_hole(contact, d);
    case JointKind::housing:
    case JointKind::groove: return presses_nothing(contact, d) && (!glued || parts_a_face(contact, d));
    case JointKind::sliding_dovetail: return leaves_lengthwise(contact, d);
    case JointKind::bridle: {
        // Out of the mouth of the fork; or, where the first part ends in it, drawn back along its own grain.
        return dot(d, outward_along_grain(piece, contact.second, contact)) > kAlong ||
               dot(d, outward_along_grain(piece, contact.first, contact)) < -kAlong;
    }
    case JointKind::dovetail: {
        // A comb joint has no slopes: it is drawn apart along either board.
        const bool comb = joint.dovetail && joint.dovetail->slope == 0;
        return dot(d, outward_along_grain(piece, contact.second, contact)) > kAlong ||
               (comb && dot(d, outward_along_grain(piece, contact.first, contact)) < -kAlong);
    }
    case JointKind::lap: return dot(d, contact.patches.front().normal) < -kAlong;
    case JointKind::mitre: return dot(d, contact.patches.front().normal) < -kOff;
    case JointKind::edge:
    case JointKind::face:
    case JointKind::butt:
    case JointKind::screws:
    case JointKind::buttons:
    case JointKind::hinge: break;
    }
    if (!glued) return presses_nothing(contact, d);
    return presses_nothing(contact, d) && dot(d, contact.patches.front().normal) < -kOff;
}

} // namespace jointwright
