#include "mechanics/glued_face.hpp"

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

/// Strain of a part in a direction of the piece, from its strains along its own axes.
double strain_in(const Part& part, const BoardStrain& strain, const Point& u)
{
    const double g = u[index_of(part.grain)], f = u[index_of(part.face)], w = u[index_of(part.width_axis())];
    return g * g * strain.along + f * f * strain.thickness + w * w * strain.width;
}

/// Two directions of a face: those of the piece's axes that lie in it, else the level one and the one across it.
std::vector<Point> directions_of(const Patch& patch)
{
    std::vector<Point> in_plane;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (std::abs(patch.normal[index_of(axis)]) < 1e-6) in_plane.push_back(unit(axis));
    if (in_plane.size() == 1) in_plane.push_back(cross(patch.normal, in_plane[0]));
    return in_plane;
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

double extent(const Patch& patch, const Point& u, const std::optional<GluedSpan>& glued)
{
    double lo = dot(patch.outline.front(), u), hi = lo;
    for (const Point& p : patch.outline) {
        lo = std::min(lo, dot(p, u));
        hi = std::max(hi, dot(p, u));
    }
    if (glued && std::abs(u[glued->axis]) > 0.999) {
        lo = std::max(lo, glued->from);
        hi = std::min(hi, glued->to);
    }
    return hi - lo;
}

bool is_core_kind(JointKind kind)
{
    return kind == JointKind::tenon || kind == JointKind::bridle || kind == JointKind::dovetail || kind == JointKind::sliding_dovetail || kind == JointKind::groove;
}

} // namespace

double FaceDirection::movement() const
{
    return std::max(std::abs(dry), std::abs(damp)) * length;
}

std::vector<FaceDirection> glued_directions(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<FaceDirection> all;
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!contact.joint || !piece.joints[*contact.joint].glue) continue;
        const Joint& joint = piece.joints[*contact.joint];
        const auto glued = glued_span(contact, joint);
        const Part& first = piece.part_of(contact.first);
        const Part& second = piece.part_of(contact.second);
        const PartState& sa = prepared.state_of(contact.first);
        const PartState& sb = prepared.state_of(contact.second);
        for (const Patch& patch : contact.patches) {
            if (patch.role == Patch::Role::shoulder || patch.role == Patch::Role::edge) continue;
            const std::vector<Point> directions = directions_of(patch);
            bool dry_face = false;
            for (const Point& u : directions) dry_face = dry_face || extent(patch, u, glued) < kLeastGlued;
            if (dry_face) continue;
            for (const Point& u : directions) {
                FaceDirection face;
                face.contact = c;
                face.patch = &patch;
                face.direction = u;
                face.length = extent(patch, u, glued);
                face.a = {contact.first, std::abs(u[index_of(first.grain)]), strain_in(first, sa.dry, u), strain_in(first, sa.damp, u)};
                face.b = {contact.second, std::abs(u[index_of(second.grain)]), strain_in(second, sb.dry, u), strain_in(second, sb.damp, u)};
                face.dry = face.a.dry - face.b.dry;
                face.damp = face.a.damp - face.b.damp;
                face.core = is_core_kind(joint.kind) || patch.end_grain_first || patch.end_grain_second;
                all.push_back(face);
            }
        }
    }
    return all;
}

std::optional<DirectionalModulus> modulus_in(const Prepared& prepared, std::size_t copy, const Point& direction, const Point& normal)
{
    const Part& part = prepared.piece->part_of(copy);
    const PartState& state = prepared.state_of(copy);
    const WoodState& wood = state.usual;
    if (!wood.modulus_along || !wood.modulus_tangential || !wood.modulus_radial || !wood.shear_modulus_lr || !wood.shear_modulus_lt || !wood.shear_modulus_rt) return std::nullopt;
    const double along = std::abs(direction[index_of(part.grain)]);
    // Share of the tangential direction across the width and through the thickness, by the angle of the rings.
    const double c = std::cos(state.rings.value()), s = std::sin(state.rings.value());
    const double tangential_in_width = c * c, tangential_in_thickness = s * s;
    const double el = wood.modulus_along->value.value(), et = wood.modulus_tangential->value.value(), er = wood.modulus_radial->value.value();
    const auto across = [&](double tangential) { return et * er / (er * tangential + et * (1 - tangential)); };

    DirectionalModulus result;
    if (along > 0.7) {
        const double f = normal[index_of(part.face)], w = normal[index_of(part.width_axis())];
        const double tangential = f * f * tangential_in_thickness + w * w * tangential_in_width;
        result.shear_modulus = pascals(tangential * wood.shear_modulus_lt->value.value() + (1 - tangential) * wood.shear_modulus_lr->value.value());
        result.source = wood.modulus_along->source;
        result.estimated = wood.modulus_along->estimated;
    } else {
        result.shear_modulus = wood.shear_modulus_rt->value;
        const double f = direction[index_of(part.face)], w = direction[index_of(part.width_axis())];
        result.source = f * f > w * w ? wood.modulus_radial->source : wood.modulus_tangential->source;
        result.estimated = wood.modulus_tangential->estimated || wood.shear_modulus_rt->estimated;
    }
    const double f = direction[index_of(part.face)], w = direction[index_of(part.width_axis())];
    const double cross_part = f * f + w * w;
    const double tangential = cross_part > 1e-9 ? (f * f * tangential_in_thickness + w * w * tangential_in_width) / cross_part : 0.5;
    const double ea = across(tangential);
    // Hankinson between along and across the grain, exponent 2.
    result.modulus = pascals(el * ea / (el * cross_part + ea * along * along));
    return result;
}

std::optional<Restraint> restraint_at(const Prepared& prepared, const FaceDirection& face, std::string* missing)
{
    const auto a = modulus_in(prepared, face.a.copy, face.direction, face.patch->normal);
    const auto b = modulus_in(prepared, face.b.copy, face.direction, face.patch->normal);
    if (!a || !b) {
        if (missing) *missing = "the modulus of elasticity of " + prepared.state_of(a ? face.b.copy : face.a.copy).species;
        return std::nullopt;
    }
    Axis normal = Axis::x;
    for (const Axis axis : {Axis::y, Axis::z})
        if (std::abs(face.patch->normal[index_of(axis)]) > std::abs(face.patch->normal[index_of(normal)])) normal = axis;
    Restraint restraint;
    restraint.a = {a->modulus, a->shear_modulus, metres(prepared.piece->copies[face.a.copy].box.size(normal))};
    restraint.b = {b->modulus, b->shear_modulus, metres(prepared.piece->copies[face.b.copy].box.size(normal))};
    restraint.length = metres(face.length);
    return restraint;
}

double relaxed_strain(double share_kept, double first, double other)
{
    return share_kept * (std::abs(first) + (1 - share_kept) * std::abs(other));
}

} // namespace jointwright
