#include "review/pictures/drawn_moves.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kLeastStrain = 1e-6; // movement that is none

Point middle_of_box(const Box& box) { return {box.middle(Axis::x), box.middle(Axis::y), box.middle(Axis::z)}; }

double product_of(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// Free strain of a copy along a direction of space.
double strain_in(const Prepared& prepared, std::size_t copy, const Point& direction, bool driest)
{
    const PartState& state = prepared.state_of(copy);
    const BoardStrain& s = driest ? state.dry : state.damp;
    const PartAxes axes = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    const double g = product_of(direction, axes.grain), w = product_of(direction, axes.width),
                 t = product_of(direction, axes.face);
    return s.along * g * g + s.width * w * w + s.thickness * t * t + s.shear * w * t;
}

/// A panel in a groove: its whole width against the groove's part, at the edge that sits in it.
std::vector<DrawnMove> groove_moves(const Prepared& prepared, const Contact& contact)
{
    DrawnMove move;
    const Point way = way_apart(*prepared.piece, contact);
    for (std::size_t i = 0; i < 3; ++i) {
        move.direction[i] = -way[i];
        move.length += std::abs(way[i]) *
                       (prepared.piece->copies[contact.first].box.hi[i] - prepared.piece->copies[contact.first].box.lo[i]);
    }
    const double dry = strain_in(prepared, contact.first, way, true), damp = strain_in(prepared, contact.first, way, false);
    move.driest = std::abs(dry) >= std::abs(damp);
    move.of_first = move.length * (move.driest ? dry : damp);
    move.at_edge = true;
    if (std::abs(move.of_first) < kLeastStrain * move.length) return {};
    return {move};
}

Point cross_of(const Point& a, const Point& b)
{
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

Point unit_of(const Point& p)
{
    const double length = std::sqrt(product_of(p, p));
    return {p[0] / length, p[1] / length, p[2] / length};
}

/// Two directions in a face at right angles: the axes of the piece where it lies along them, else along a grain as it runs in the face.
std::vector<Point> directions_in(const Patch& face, const Point& first_grain, const Point& second_grain)
{
    std::vector<Point> axes;
    for (std::size_t i = 0; i < 3; ++i) {
        Point axis{};
        axis[i] = 1;
        if (std::abs(face.normal[i]) < 1e-6) axes.push_back(axis);
    }
    if (axes.size() == 2) return axes;
    const Point& grain = face.end_grain_first ? second_grain : first_grain;
    const double out = product_of(grain, face.normal);
    Point in_face = grain;
    for (std::size_t i = 0; i < 3; ++i) in_face[i] -= out * face.normal[i];
    if (product_of(in_face, in_face) < 1e-6) return axes;
    in_face = unit_of(in_face);
    return {in_face, unit_of(cross_of(face.normal, in_face))};
}

double extent_along(const std::vector<Point>& outline, const Point& direction)
{
    double lo = 1e300, hi = -1e300;
    for (const Point& p : outline) {
        lo = std::min(lo, product_of(p, direction));
        hi = std::max(hi, product_of(p, direction));
    }
    return outline.empty() ? 0 : hi - lo;
}

/// Where a part of a mitre shows its whole width: off the cut, along its own grain.
DrawnAcross across_of(const Prepared& prepared, std::size_t copy, std::size_t other, const Box& contact)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartAxes axes = axes_of(part, prepared.piece->copies[copy]);
    const Point other_grain = axes_of(prepared.piece->part_of(other), prepared.piece->copies[other]).grain;
    const bool wide = std::abs(product_of(axes.width, other_grain)) >= std::abs(product_of(axes.face, other_grain));
    DrawnAcross across;
    across.direction = wide ? axes.width : axes.face;
    across.length = in_metres(wide ? part.width : part.thickness);
    const Point body = middle_of_box(bounds_of(part, prepared.piece->copies[copy])), middle = middle_of_box(contact);
    const double towards = product_of({body[0] - middle[0], body[1] - middle[1], body[2] - middle[2]}, axes.grain) < 0 ? -1 : 1;
    const double aside = (body[0] - middle[0]) * across.direction[0] + (body[1] - middle[1]) * across.direction[1] +
                         (body[2] - middle[2]) * across.direction[2];
    double reach = 0.012;
    for (std::size_t i = 0; i < 3; ++i) reach += std::abs(axes.grain[i]) * (contact.hi[i] - contact.lo[i]) / 2;
    for (std::size_t i = 0; i < 3; ++i) across.at[i] = middle[i] + towards * reach * axes.grain[i] + aside * across.direction[i];
    return across;
}

/// The parts of a mitre swell and shrink alike along the cut; it opens because each does so across its own grain alone.
void add_across(const Prepared& prepared, const Contact& contact, ExplodedJoint& joint)
{
    joint.across = {across_of(prepared, contact.first, contact.second, joint.contact),
                    across_of(prepared, contact.second, contact.first, joint.contact)};
    const std::size_t copies[] = {contact.first, contact.second};
    const auto change = [&](std::size_t k, bool driest) {
        return joint.across[k].length * strain_in(prepared, copies[k], joint.across[k].direction, driest);
    };
    joint.driest =
        std::abs(change(0, true)) + std::abs(change(1, true)) >= std::abs(change(0, false)) + std::abs(change(1, false));
    for (std::size_t k = 0; k < 2; ++k) joint.across[k].change = change(k, joint.driest);
    const double most = std::max(std::abs(joint.across[0].change), std::abs(joint.across[1].change));
    if (most < kLeastStrain * joint.across[0].length) joint.across.clear();
}

/// Movement along two directions in the joint's main face, in the season in which the two differ more.
std::vector<DrawnMove> moves_of(const Prepared& prepared, const Contact& contact)
{
    if (prepared.piece->joints[*contact.joint].kind == JointKind::groove && contact.shared)
        return groove_moves(prepared, contact);
    const auto cheek =
        std::find_if(contact.patches.begin(), contact.patches.end(), [](const Patch& p) { return p.role == Patch::Role::cheek; });
    const Patch& face = cheek != contact.patches.end() ? *cheek : contact.patches.front();
    std::vector<DrawnMove> moves;
    const Point first_grain = axes_of(prepared.piece->part_of(contact.first), prepared.piece->copies[contact.first]).grain;
    const Point second_grain = axes_of(prepared.piece->part_of(contact.second), prepared.piece->copies[contact.second]).grain;
    for (const Point& direction : directions_in(face, first_grain, second_grain)) {
        DrawnMove move;
        move.direction = direction;
        move.length = extent_along(face.outline, direction);
        const auto differ = [&](bool driest) {
            return strain_in(prepared, contact.first, move.direction, driest) -
                   strain_in(prepared, contact.second, move.direction, driest);
        };
        move.driest = std::abs(differ(true)) >= std::abs(differ(false));
        if (std::abs(differ(move.driest)) < kLeastStrain) continue;
        move.of_first = move.length * strain_in(prepared, contact.first, move.direction, move.driest);
        move.of_second = move.length * strain_in(prepared, contact.second, move.direction, move.driest);
        moves.push_back(move);
    }
    std::sort(moves.begin(), moves.end(), [](const DrawnMove& a, const DrawnMove& b) {
        return std::abs(a.of_first - a.of_second) > std::abs(b.of_first - b.of_second);
    });
    return moves;
}

/// A long groove is shown over a short stretch of it: nothing happens at its ends.
void shorten(Box& contact)
{
    constexpr double kStretch = 0.12;
    for (std::size_t i = 0; i < 3; ++i) {
        if (contact.hi[i] - contact.lo[i] <= kStretch) continue;
        const double middle = (contact.lo[i] + contact.hi[i]) / 2;
        contact.lo[i] = middle - kStretch / 2;
        contact.hi[i] = middle + kStretch / 2;
    }
}

} // namespace

void add_moves(const Prepared& prepared, const Contact& contact, ExplodedJoint& joint)
{
    if (!prepared.state_of(contact.first).moves() || !prepared.state_of(contact.second).moves()) return;
    if (prepared.piece->joints[*contact.joint].kind == JointKind::mitre)
        add_across(prepared, contact, joint);
    else
        joint.moves = moves_of(prepared, contact);
    joint.alike = joint.moves.empty() && joint.across.empty();
    if (!joint.moves.empty() && joint.moves.front().at_edge) shorten(joint.contact);
}

} // namespace jointwright
