#include "mechanics/seasons/glued_face.hpp"

#include "mechanics/seasons/held_flat.hpp"
#include "mechanics/seasons/ties.hpp"
#include "piece/model/turn.hpp"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kLeastGlued = 0.001; // m: shorter remnants of a face are the edge of a neighbour

double dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

Point cross(const Point& a, const Point& b)
{
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

Point unit(Axis axis)
{
    Point p{};
    p[index_of(axis)] = 1;
    return p;
}

/// Strain of a part between two directions, from its strains along its own axes: u·E·v.
double strain_in(const PartAxes& axes, const BoardStrain& strain, const Point& u, const Point& v)
{
    return dot(axes.grain, u) * dot(axes.grain, v) * strain.along + dot(axes.face, u) * dot(axes.face, v) * strain.thickness +
           dot(axes.width, u) * dot(axes.width, v) * strain.width;
}

/// Two directions at right angles that lie in a face: along an axis of the piece where one does.
std::vector<Point> plain_directions(const Patch& patch)
{
    std::vector<Point> in_plane;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (std::abs(patch.normal[index_of(axis)]) < 1e-6) in_plane.push_back(unit(axis));
    if (in_plane.empty()) {
        // A face askew to all axes: a level direction in it, and the one across.
        const double level = std::hypot(patch.normal[0], patch.normal[1]);
        in_plane.push_back({-patch.normal[1] / level, patch.normal[0] / level, 0});
    }
    if (in_plane.size() == 1) in_plane.push_back(cross(patch.normal, in_plane[0]));
    return in_plane;
}

/// The two directions in which a face is looked at: its plain ones where both grains lie along or across them, else the principal
/// directions of the strain difference, in the season in which it is larger.
std::vector<Point> directions_of(const Patch& patch, const PartAxes& first, const PartState& a, const PartAxes& second,
                                 const PartState& b)
{
    const std::vector<Point> plain = plain_directions(patch);
    const auto lies_with = [&](const Point& grain) {
        const double u = std::abs(dot(grain, plain[0])), v = std::abs(dot(grain, plain[1]));
        return std::min(u, v) < 0.02;
    };
    if (lies_with(first.grain) && lies_with(second.grain)) return plain;
    Eigen::Matrix2d dry, damp;
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j) {
            const Point& u = plain[static_cast<std::size_t>(i)];
            const Point& v = plain[static_cast<std::size_t>(j)];
            dry(i, j) = strain_in(first, a.dry, u, v) - strain_in(second, b.dry, u, v);
            damp(i, j) = strain_in(first, a.damp, u, v) - strain_in(second, b.damp, u, v);
        }
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> principal(dry.norm() > damp.norm() ? dry : damp);
    std::vector<Point> directions;
    for (int k = 0; k < 2; ++k) {
        const Eigen::Vector2d e = principal.eigenvectors().col(k);
        Point p{};
        for (std::size_t i = 0; i < 3; ++i) p[i] = e(0) * plain[0][i] + e(1) * plain[1][i];
        directions.push_back(p);
    }
    return directions;
}

/// Limits of the glue along the longer side of a contact.
struct GluedSpan {
    std::size_t axis = 0;
    double from = 0, to = 0;
};

std::optional<GluedSpan> glued_span(const Contact& contact, const Joint& joint)
{
    if (!joint.glued) return std::nullopt;
    Box box = contact.patches.front().bounds;
    for (const Patch& p : contact.patches)
        for (std::size_t i = 0; i < 3; ++i) {
            box.lo[i] = std::min(box.lo[i], p.bounds.lo[i]);
            box.hi[i] = std::max(box.hi[i], p.bounds.hi[i]);
        }
    GluedSpan span;
    for (std::size_t i = 1; i < 3; ++i)
        if (box.hi[i] - box.lo[i] > box.hi[span.axis] - box.lo[span.axis]) span.axis = i;
    const double length = std::min(in_metres(joint.glued->length), box.hi[span.axis] - box.lo[span.axis]);
    const double middle = (box.lo[span.axis] + box.hi[span.axis]) / 2;
    span.from = middle - length / 2;
    switch (joint.glued->at) {
    case GluedAt::middle: break;
    case GluedAt::left:
    case GluedAt::front:
    case GluedAt::bottom: span.from = box.lo[span.axis]; break;
    case GluedAt::right:
    case GluedAt::back:
    case GluedAt::top: span.from = box.hi[span.axis] - length; break;
    }
    span.to = span.from + length;
    return span;
}

struct Extent {
    double lo = 0, hi = 0;
    double length() const { return hi - lo; }
};

Extent extent(const Patch& patch, const Point& u, const std::optional<GluedSpan>& glued)
{
    Extent e{dot(patch.outline.front(), u), dot(patch.outline.front(), u)};
    for (const Point& p : patch.outline) {
        e.lo = std::min(e.lo, dot(p, u));
        e.hi = std::max(e.hi, dot(p, u));
    }
    if (glued && std::abs(u[glued->axis]) > 0.999) {
        e.lo = std::max(e.lo, glued->from);
        e.hi = std::min(e.hi, glued->to);
    }
    return e;
}

/// Faces of one contact in one plane; the first, the largest, stands for them.
using PlaneOfFaces = std::vector<const Patch*>;

std::vector<PlaneOfFaces> planes_of(const Contact& contact)
{
    std::vector<PlaneOfFaces> planes;
    for (const Patch& patch : contact.patches) {
        if (patch.role == Patch::Role::shoulder || patch.role == Patch::Role::edge) continue;
        const auto same = std::find_if(planes.begin(), planes.end(), [&](const PlaneOfFaces& plane) {
            const Patch& other = *plane.front();
            return dot(other.normal, patch.normal) > 0.9999 &&
                   std::abs(dot(other.normal, other.outline.front()) - dot(other.normal, patch.outline.front())) < kTouch;
        });
        if (same == planes.end())
            planes.push_back({&patch});
        else
            same->push_back(&patch);
    }
    return planes;
}

/// Glued extent of all faces of a plane in a direction, and whether it has gaps.
Extent extent_of(const PlaneOfFaces& plane, const Point& u, const std::optional<GluedSpan>& glued, bool& gaps)
{
    Extent all{};
    double filled = 0;
    bool any = false;
    for (const Patch* patch : plane) {
        const Extent e = extent(*patch, u, glued);
        if (e.length() < kLeastGlued) continue;
        all = any ? Extent{std::min(all.lo, e.lo), std::max(all.hi, e.hi)} : e;
        filled += e.length();
        any = true;
    }
    gaps = any && plane.size() > 1 && filled < all.length() - kLeastGlued;
    return any ? all : Extent{};
}

/// Wood of a part behind a glued face, from the face to the part's far side [m]: what a lap or housing leaves of it.
double depth_behind(const Box& box, const Patch& patch, Axis normal, bool is_first)
{
    const double out = patch.normal[index_of(normal)]; // out of the first part, into the second
    if (std::abs(out) < 0.999) return box.size(normal);
    const double face = patch.bounds.middle(normal);
    const double depth = (out > 0) == is_first ? face - box.lo[index_of(normal)] : box.hi[index_of(normal)] - face;
    return depth > kTouch ? std::min(depth, box.size(normal)) : box.size(normal);
}

/// Glued dowels at an end-grain face, whose own glue counts for nothing: from the edge of the first to that of the last along the longer
/// side, and one diameter across it.
void narrow_to_dowels(const Joint& joint, const Patch& patch, const Point& u, Extent& reach)
{
    if (joint.kind != JointKind::dowel || !joint.dowels || !(patch.end_grain_first || patch.end_grain_second)) return;
    std::size_t longer = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (patch.bounds.hi[i] - patch.bounds.lo[i] > patch.bounds.hi[longer] - patch.bounds.lo[longer]) longer = i;
    const double whole = reach.length();
    double apart = 0;
    if (std::abs(u[longer]) > 0.999) {
        const int count = std::max(1, joint.dowels->count);
        apart = joint.dowels->inset && count > 1 ? std::max(0.0, whole - 2 * in_metres(*joint.dowels->inset))
                                                 : whole * (count - 1) / count;
    }
    const double middle = (reach.lo + reach.hi) / 2, length = std::min(whole, apart + in_metres(joint.dowels->diameter));
    reach = {middle - length / 2, middle + length / 2};
}

bool is_core_kind(JointKind kind)
{
    return kind == JointKind::tenon || kind == JointKind::bridle || kind == JointKind::dovetail ||
           kind == JointKind::sliding_dovetail || kind == JointKind::groove;
}

std::optional<Axis> axis_along(const Point& direction)
{
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (std::abs(direction[index_of(axis)]) > 0.9999) return axis;
    return std::nullopt;
}

/// Boards glued edge to edge move as one, by the mean of their strains: their glue faces with the same other part, in one plane, reach from the first to the last.
void reach_over_bodies(const Given& given, const Ties& ties, std::vector<FaceDirection>& faces)
{
    struct Reach {
        Extent all;
        double filled = 0;
    };
    const auto& contacts = given.layout->contacts;
    const auto alike = [&](const FaceDirection& one, const FaceDirection& other) {
        const Contact& a = contacts[one.contact];
        const Contact& b = contacts[other.contact];
        return ties.same_body(a.first, b.first) && ties.same_body(a.second, b.second) && one.core == other.core &&
               dot(one.patch->normal, other.patch->normal) > 0.9999 && std::abs(dot(one.direction, other.direction)) > 0.9999 &&
               std::abs(dot(one.patch->normal, one.patch->outline.front()) -
                        dot(one.patch->normal, other.patch->outline.front())) < kTouch;
    };
    std::vector<Reach> reaches(faces.size());
    for (std::size_t i = 0; i < faces.size(); ++i) {
        const Contact& contact = contacts[faces[i].contact];
        const bool single = ties.body_of(contact.first).copies.size() + ties.body_of(contact.second).copies.size() == 2;
        reaches[i] = {{faces[i].from, faces[i].from + faces[i].length}, faces[i].length};
        if (single || ties.same_body(contact.first, contact.second)) continue;
        for (const FaceDirection& other : faces) {
            if (other.contact == faces[i].contact || !alike(faces[i], other)) continue;
            const double sign = dot(faces[i].direction, other.direction) > 0 ? 1 : -1;
            const double one = sign * other.from, two = sign * (other.from + other.length);
            reaches[i].all = {std::min({reaches[i].all.lo, one, two}), std::max({reaches[i].all.hi, one, two})};
            reaches[i].filled += other.length;
        }
    }
    for (std::size_t i = 0; i < faces.size(); ++i) {
        if (reaches[i].all.length() < faces[i].length + kLeastGlued) continue;
        if (const auto axis = axis_along(faces[i].direction)) {
            for (FaceSide* side : {&faces[i].a, &faces[i].b}) {
                const SeasonalStrains whole = ties.body_strain(side->copy, *axis);
                side->dry = whole.dry;
                side->damp = whole.damp;
            }
            faces[i].dry = faces[i].a.dry - faces[i].b.dry;
            faces[i].damp = faces[i].a.damp - faces[i].b.damp;
        }
        faces[i].in_pieces = faces[i].in_pieces || reaches[i].filled < reaches[i].all.length() - kLeastGlued;
        faces[i].from = reaches[i].all.lo;
        faces[i].length = reaches[i].all.length();
    }
}

} // namespace

bool is_cheek_of_core(const Contact& contact, const Patch& patch)
{
    constexpr double cheek = 0.6;
    double largest = 0;
    for (const Patch& p : contact.patches) largest = std::max(largest, p.area);
    return patch.area >= cheek * largest && std::any_of(contact.patches.begin(), contact.patches.end(), [&](const Patch& other) {
               return other.area >= cheek * largest && dot(other.normal, patch.normal) < -0.999;
           });
}

double FaceDirection::movement() const { return std::max(std::abs(dry), std::abs(damp)) * length; }

std::vector<FaceDirection> glued_directions(const Given& given)
{
    const Piece& piece = *given.piece;
    std::vector<FaceDirection> all;
    const auto& contacts = given.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!contact.joint || !piece.joints[*contact.joint].glue) continue;
        const Joint& joint = piece.joints[*contact.joint];
        const auto glued = glued_span(contact, joint);
        const Part& first = piece.part_of(contact.first);
        const Part& second = piece.part_of(contact.second);
        const PartState& sa = given.state_of(contact.first);
        const PartState& sb = given.state_of(contact.second);
        const PartAxes ax = axes_of(first, piece.copies[contact.first]), bx = axes_of(second, piece.copies[contact.second]);
        for (const PlaneOfFaces& plane : planes_of(contact)) {
            const Patch& patch = *plane.front();
            const std::vector<Point> directions = directions_of(patch, ax, sa, bx, sb);
            bool dry_face = false, gaps = false;
            for (const Point& u : directions) dry_face = dry_face || extent_of(plane, u, glued, gaps).length() < kLeastGlued;
            if (dry_face) continue;
            for (const Point& u : directions) {
                FaceDirection face;
                face.contact = c;
                face.patch = &patch;
                face.direction = u;
                Extent reach = extent_of(plane, u, glued, face.in_pieces);
                if (!glued) narrow_to_dowels(joint, patch, u, reach);
                face.from = reach.lo;
                face.length = reach.length();
                face.a = {contact.first, std::abs(dot(ax.grain, u)), strain_in(ax, sa.dry, u, u), strain_in(ax, sa.damp, u, u)};
                face.b = {contact.second, std::abs(dot(bx.grain, u)), strain_in(bx, sb.dry, u, u), strain_in(bx, sb.damp, u, u)};
                face.dry = face.a.dry - face.b.dry;
                face.damp = face.a.damp - face.b.damp;
                face.core = is_core_kind(joint.kind) || patch.end_grain_first || patch.end_grain_second ||
                            is_cheek_of_core(contact, patch);
                all.push_back(face);
            }
        }
    }
    const Ties ties(given);
    const std::vector<Holders> holders = holders_across(given);
    reach_over_bodies(given, ties, all);
    for (FaceDirection& face : all) {
        const FlatBy by = held_flat_by(given, ties, holders, {&contacts[face.contact], face.patch, face.direction, face.length});
        face.held_flat = by != FlatBy::nothing;
        face.held_by = words_of(by);
    }
    return all;
}

std::optional<DirectionalModulus> modulus_in(const Given& given, std::size_t copy, const Point& direction, const Point& normal)
{
    const Part& part = given.piece->part_of(copy);
    const PartState& state = given.state_of(copy);
    const WoodState& wood = state.usual;
    if (!wood.modulus_along || !wood.modulus_tangential || !wood.modulus_radial || !wood.shear_modulus_lr ||
        !wood.shear_modulus_lt || !wood.shear_modulus_rt)
        return std::nullopt;
    const PartAxes axes = axes_of(part, given.piece->copies[copy]);
    const double along = std::abs(dot(direction, axes.grain));
    // Share of the tangential direction across the width and through the thickness, by the angle of the rings.
    const double c = std::cos(state.rings.value()), s = std::sin(state.rings.value());
    const double tangential_in_width = c * c, tangential_in_thickness = s * s;
    const double el = wood.modulus_along->value.value(), et = wood.modulus_tangential->value.value(),
                 er = wood.modulus_radial->value.value();
    const auto across = [&](double tangential) { return et * er / (er * tangential + et * (1 - tangential)); };

    DirectionalModulus result;
    if (along > 0.7) {
        const double f = dot(normal, axes.face), w = dot(normal, axes.width);
        const double tangential = f * f * tangential_in_thickness + w * w * tangential_in_width;
        result.shear_modulus =
            pascals(tangential * wood.shear_modulus_lt->value.value() + (1 - tangential) * wood.shear_modulus_lr->value.value());
        result.source = wood.modulus_along->source;
        result.estimated = wood.modulus_along->estimated;
    } else {
        result.shear_modulus = wood.shear_modulus_rt->value;
        const double f = dot(direction, axes.face), w = dot(direction, axes.width);
        result.source = f * f > w * w ? wood.modulus_radial->source : wood.modulus_tangential->source;
        result.estimated = wood.modulus_tangential->estimated || wood.shear_modulus_rt->estimated;
    }
    const double f = dot(direction, axes.face), w = dot(direction, axes.width);
    const double cross_part = f * f + w * w;
    const double tangential =
        cross_part > 1e-9 ? (f * f * tangential_in_thickness + w * w * tangential_in_width) / cross_part : 0.5;
    const double ea = across(tangential);
    // Hankinson between along and across the grain, exponent 2.
    const auto hankinson = [&](double square) { return pascals(el * square / (el * cross_part + square * along * along)); };
    result.modulus = hankinson(ea);
    result.if_tangential = hankinson(et);
    result.over_tangential = ea / et;
    return result;
}

/// Depth of a part behind a face. Along the axes: from the face to the part's far side, so that a let-in or a lap counts what is left;
/// askew: its size in the direction of its own that lies nearest to the normal.
static Length depth_behind(const Given& given, std::size_t copy, const Patch& patch, bool is_first)
{
    const Part& part = given.piece->part_of(copy);
    const Copy& placed = given.piece->copies[copy];
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (!part.turn && std::abs(patch.normal[index_of(axis)]) > 0.999)
            return metres(depth_behind(placed.box, patch, axis, is_first));
    const PartAxes axes = axes_of(part, placed);
    const double g = std::abs(dot(patch.normal, axes.grain)), w = std::abs(dot(patch.normal, axes.width)),
                 f = std::abs(dot(patch.normal, axes.face));
    if (g >= w && g >= f) return part.length;
    return w > f ? part.width : part.thickness;
}

std::optional<Restraint> restraint_at(const Given& given, const FaceDirection& face, std::string* missing)
{
    const auto a = modulus_in(given, face.a.copy, face.direction, face.patch->normal);
    const auto b = modulus_in(given, face.b.copy, face.direction, face.patch->normal);
    if (!a || !b) {
        if (missing) *missing = "the modulus of elasticity of " + given.state_of(a ? face.b.copy : face.a.copy).species;
        return std::nullopt;
    }
    Restraint restraint;
    restraint.a = {a->modulus, a->shear_modulus, depth_behind(given, face.a.copy, *face.patch, true)};
    restraint.b = {b->modulus, b->shear_modulus, depth_behind(given, face.b.copy, *face.patch, false)};
    restraint.length = metres(face.length);
    restraint.held_flat = face.held_flat;
    return restraint;
}

FaceSide tangential_twin(const Given& given, const FaceDirection& face, const FaceSide& side)
{
    const PartState& state = given.state_of(side.copy);
    if (!state.moves()) return side;
    const PartAxes axes = axes_of(given.piece->part_of(side.copy), given.piece->copies[side.copy]);
    const double square = 1 - side.along * side.along;
    FaceSide twin = side;
    const auto sawn_flat = [&](const BoardStrain& as_sawn, double strain) {
        const double own = strain_in(axes, as_sawn, face.direction, face.direction);
        const double flat = side.along * side.along * as_sawn.along + square * as_sawn.tangential;
        // Boards glued edge to edge move by their mean: changed in the same proportion.
        return own == 0 ? strain : strain * flat / own;
    };
    twin.dry = sawn_flat(state.dry, side.dry);
    twin.damp = sawn_flat(state.damp, side.damp);
    return twin;
}

double relaxed_strain(double kept_now, double now, double kept_other, double other)
{
    return kept_now * (std::abs(now) + (1 - kept_other) * std::abs(other));
}

} // namespace jointwright
