#include "mechanics/structure/joint_hold.hpp"

#include "piece/let_ins/joined_solid.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

bool is_let_in(JointKind kind)
{
    switch (kind) {
    case JointKind::tenon:
    case JointKind::housing:
    case JointKind::groove:
    case JointKind::sliding_dovetail:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::lap: return true;
    default: return false;
    }
}

bool has_side_grain(const Contact& contact)
{
    return std::any_of(contact.patches.begin(), contact.patches.end(),
                       [](const Patch& p) { return p.role != Patch::Role::edge && !p.end_grain_first && !p.end_grain_second; });
}

std::optional<std::size_t> lying_copy(const Given& given, std::size_t index, bool holds)
{
    if (holds) return std::nullopt;
    const Contact& contact = given.layout->contacts[index];
    const auto angle = contact.grain_angle();
    if (angle && *angle < kAlike) return std::nullopt; // one piece of wood
    for (const std::size_t upper : {contact.first, contact.second}) {
        const auto& bearings = given.layout->path.bearings[upper];
        if (bearings.size() > 1 &&
            std::any_of(bearings.begin(), bearings.end(), [&](const Bearing& b) { return b.contact == index; }))
            return upper;
    }
    return std::nullopt;
}

bool is_drawn_freely(const Joint* joint, JointHold hold)
{
    if (!joint || hold != JointHold::let_in_dry || joint->pegs) return false;
    switch (joint->kind) {
    case JointKind::tenon:
    case JointKind::housing:
    case JointKind::groove: return true;
    default: return false;
    }
}

JointHold hold_of(const Piece& piece, const Contact& contact)
{
    if (!contact.joint) return JointHold::dry;
    const Joint& joint = piece.joints[*contact.joint];
    switch (joint.kind) {
    case JointKind::dowel: return JointHold::dowelled;
    case JointKind::buttons: return JointHold::buttoned;
    default: break;
    }
    if (joint.glue && has_side_grain(contact)) return JointHold::glued;
    if (joint.kind == JointKind::screws) return JointHold::screwed;
    // A mitre's faces are half way between: its own strength counts.
    if (joint.glue && joint.kind == JointKind::mitre) return JointHold::glued;
    return is_let_in(joint.kind) ? JointHold::let_in_dry : JointHold::dry;
}

bool holds_turning(const Piece& piece, const Contact& contact)
{
    using enum JointKind;
    const JointHold hold = hold_of(piece, contact);
    if (hold == JointHold::dowelled) return true;
    if (hold != JointHold::glued) return false;
    switch (piece.joints[*contact.joint].kind) {
    case tenon:
    case bridle:
    case dovetail:
    case sliding_dovetail:
    case lap:
    case mitre: return true;
    default: return false;
    }
}

double play_of(const Piece& piece, const Contact& contact)
{
    if (hold_of(piece, contact) != JointHold::let_in_dry) return 0;
    const Joint& joint = piece.joints[*contact.joint];
    const double clearance = in_metres(joint.clearance);
    if (clearance <= 0) return 0;
    double deep = joint.tenon ? in_metres(joint.tenon->length) : 0;
    if (deep <= 0 && contact.shared) {
        const Point way = way_apart(piece, contact);
        for (std::size_t k = 0; k < 3; ++k) deep += std::abs(way[k]) * (contact.shared->hi[k] - contact.shared->lo[k]);
    }
    return deep > 0 ? 2 * clearance / deep : 0;
}

} // namespace jointwright
