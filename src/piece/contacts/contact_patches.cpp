#include "piece/contacts/contact_patches.hpp"

#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Polygon;
using kernel::Vec;

constexpr double kLeastArea = 1e-7; // m²: overlaps smaller than a third of a millimetre square are edges and corners
constexpr double kEndGrain = 0.7;   // cosine between grain and normal from which a face shows end grain: 45 degrees

Point point(const Vec& v) { return {v.x(), v.y(), v.z()}; }

Vec unit(Axis axis)
{
    Vec v = Vec::Zero();
    v[static_cast<int>(index_of(axis))] = 1;
    return v;
}

std::optional<double> angle_in_plane(const Vec& grain_a, const Vec& grain_b, const Vec& normal)
{
    const Vec a = grain_a - grain_a.dot(normal) * normal;
    const Vec b = grain_b - grain_b.dot(normal) * normal;
    if (a.norm() < 1e-6 || b.norm() < 1e-6) return std::nullopt;
    const double c = std::min(1.0, std::abs(a.normalized().dot(b.normalized())));
    return std::acos(c);
}

Patch patch_of(const Polygon& face, const Body& first, const Body& second, Patch::Role role)
{
    Patch patch;
    for (const Vec& p : face.corners) patch.outline.push_back(point(p));
    patch.normal = point(face.normal);
    patch.area = kernel::area(face);
    Vec lo, hi;
    kernel::bounds(face, lo, hi);
    patch.bounds = {point(lo), point(hi)};
    patch.end_grain_first = std::abs(first.grain.dot(face.normal)) > kEndGrain;
    patch.end_grain_second = std::abs(second.grain.dot(face.normal)) > kEndGrain;
    patch.role = role;
    if (!patch.end_grain_first && !patch.end_grain_second)
        patch.grain_angle = angle_in_plane(first.grain, second.grain, face.normal);
    return patch;
}

/// A rectangle across an axis at a place, within the other two axes' limits of a box.
Polygon rectangle(Axis normal, double place, const Box& limits, bool outwards)
{
    const int n = static_cast<int>(index_of(normal)), u = (n + 1) % 3, v = (n + 2) % 3;
    Polygon face;
    face.normal = unit(normal) * (outwards ? 1.0 : -1.0);
    for (int k = 0; k < 4; ++k) {
        Vec p;
        p[n] = place;
        p[u] = (k == 1 || k == 2) ? limits.hi[static_cast<std::size_t>(u)] : limits.lo[static_cast<std::size_t>(u)];
        p[v] = k >= 2 ? limits.hi[static_cast<std::size_t>(v)] : limits.lo[static_cast<std::size_t>(v)];
        face.corners.push_back(p);
    }
    if (!outwards) std::reverse(face.corners.begin(), face.corners.end());
    return face;
}

/// Faces of the first that lie inside the second: where a part is let into another.
std::vector<Patch> let_in_patches(const Body& first, const Body& second)
{
    std::vector<Patch> patches;
    for (const Polygon& face : first.solid.skin)
        for (const kernel::Cell& cell : second.solid.cells) {
            bool on_surface = false;
            for (const kernel::HalfSpace& side : cell.sides)
                on_surface =
                    on_surface || (side.normal.dot(face.normal) > 0.999 && std::abs(side.outside(face.corners[0])) < kTouch);
            if (on_surface) continue;
            const Polygon inside = kernel::clip(face, cell.sides);
            if (!inside.empty() && kernel::area(inside) > kLeastArea)
                patches.push_back(patch_of(inside, first, second, Patch::Role::wall));
        }
    if (patches.empty()) return patches;
    const auto largest =
        std::max_element(patches.begin(), patches.end(), [](const Patch& a, const Patch& b) { return a.area < b.area; });
    const Point normal = largest->normal;
    for (Patch& p : patches) {
        const double along = p.normal[0] * normal[0] + p.normal[1] * normal[1] + p.normal[2] * normal[2];
        if (along > 0.999) p.role = Patch::Role::bottom;
    }
    return patches;
}

/// Faces of the second that lie inside the first: the first is cut off along them to fit.
std::vector<Patch> cut_to_fit_patches(const Body& first, const Body& second)
{
    std::vector<Patch> patches;
    for (const Polygon& face : second.solid.skin)
        for (const kernel::Cell& cell : first.solid.cells) {
            Polygon inside = kernel::clip(face, cell.sides);
            if (inside.empty() || kernel::area(inside) <= kLeastArea) continue;
            inside.normal = -inside.normal; // out of the first into the second
            patches.push_back(patch_of(inside, first, second, Patch::Role::face));
        }
    return patches;
}

void set_cross_limits(Box& box, Axis axis, double middle, double size)
{
    box.lo[index_of(axis)] = middle - size / 2;
    box.hi[index_of(axis)] = middle + size / 2;
}

/// A part's own measures as drawn, and back into space: what a tenon is laid out in.
struct DrawnMeasures {
    std::optional<CopyTurn> turn, back;
    explicit DrawnMeasures(const Body& body) : turn(turn_of(*body.part, *body.copy)), back(turn)
    {
        if (back) back->angle = -back->angle;
    }
    Point drawn(const Point& p) const { return back ? back->place(p) : p; }
    Point direction(const Point& d) const { return back ? back->direct(d) : d; }
    Box drawn(const Box& box) const
    {
        if (!back) return box;
        Box all{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
        for (const double x : {box.lo[0], box.hi[0]})
            for (const double y : {box.lo[1], box.hi[1]})
                for (const double z : {box.lo[2], box.hi[2]}) {
                    const Point p = back->place({x, y, z});
                    for (std::size_t i = 0; i < 3; ++i) {
                        all.lo[i] = std::min(all.lo[i], p[i]);
                        all.hi[i] = std::max(all.hi[i], p[i]);
                    }
                }
        return all;
    }
    Polygon in_space(Polygon face) const
    {
        if (!turn) return face;
        const auto vec = [](const Point& p) { return Vec(p[0], p[1], p[2]); };
        for (Vec& corner : face.corners) corner = vec(turn->place(point(corner)));
        face.normal = vec(turn->direct(point(face.normal)));
        return face;
    }
};

/// Cheeks and edges of a tenon that stands on a shoulder plane and goes into the second part; axes and places as the first is drawn.
void add_tenon_faces(std::vector<Patch>& patches, const Body& first, const Body& second, const Joint::Tenon& tenon, Axis into,
                     double from, double to)
{
    const Part& part = *first.part;
    const DrawnMeasures own(first);
    Axis wide = part.width_axis(), thin = part.face;
    if (into == wide) wide = part.grain; // a tenon on a long edge: its width lies along the grain
    if (into == thin) thin = part.grain;
    Box body;
    body.lo[index_of(into)] = std::min(from, to);
    body.hi[index_of(into)] = std::max(from, to);
    set_cross_limits(body, wide, first.copy->box.middle(wide), in_metres(tenon.width));
    set_cross_limits(body, thin, first.copy->box.middle(thin), in_metres(tenon.thickness));
    const auto add = [&](Axis axis, bool far, Patch::Role role) {
        const double place = far ? body.hi[index_of(axis)] : body.lo[index_of(axis)];
        patches.push_back(patch_of(own.in_space(rectangle(axis, place, body, far)), first, second, role));
    };
    for (const bool far : {false, true}) {
        add(thin, far, Patch::Role::cheek);
        add(wide, far, Patch::Role::edge);
    }
}

Axis main_axis(const Point& normal)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(normal[i]) > std::abs(normal[best])) best = i;
    return static_cast<Axis>(best);
}

/// The axis along which the first enters the second; all as the first is drawn.
Axis entry_axis(const Body& first, const Body& second, const Box& shared)
{
    const Axis grain = first.part->grain;
    const std::size_t g = index_of(grain);
    const bool grains_cross = std::abs(first.grain.dot(second.grain)) < 0.999;
    const bool pokes_out = first.copy->box.lo[g] < shared.lo[g] - kTouch || first.copy->box.hi[g] > shared.hi[g] + kTouch;
    if (pokes_out && grains_cross) return grain;
    Axis best = grain;
    double longest = -1;
    for (const Axis a : {Axis::x, Axis::y, Axis::z}) {
        const double out = std::max(shared.lo[index_of(a)] - first.copy->box.lo[index_of(a)],
                                    first.copy->box.hi[index_of(a)] - shared.hi[index_of(a)]);
        if (out > longest) {
            longest = out;
            best = a;
        }
    }
    return best;
}

std::vector<Patch> tenon_patches(const Body& first, const Body& second, const Joint& joint,
                                 const std::optional<SharedSpace>& shared)
{
    std::vector<Patch> patches;
    const DrawnMeasures own(first);
    if (shared) {
        const Box bounds = own.drawn(shared->bounds);
        const Axis into = entry_axis(first, second, bounds);
        const std::size_t i = index_of(into);
        const bool upwards = first.copy->box.middle(into) < bounds.middle(into);
        const double from = upwards ? bounds.lo[i] : bounds.hi[i];
        double to = upwards ? bounds.hi[i] : bounds.lo[i];
        // A tilted end shares a wedge with what it only meets: that is not how deep its tenon goes.
        if (joint.tenon && (first.part->turn || second.part->turn))
            to = from + (upwards ? 1 : -1) * in_metres(joint.tenon->length);
        patches.push_back(patch_of(own.in_space(rectangle(into, from, bounds, upwards)), first, second, Patch::Role::shoulder));
        if (joint.tenon) add_tenon_faces(patches, first, second, *joint.tenon, into, from, to);
    } else {
        patches = touching_patches(first, second);
        if (patches.empty()) return patches;
        for (Patch& p : patches) p.role = Patch::Role::shoulder;
        const auto largest =
            std::max_element(patches.begin(), patches.end(), [](const Patch& a, const Patch& b) { return a.area < b.area; });
        const Point normal = own.direction(largest->normal);
        const Axis into = main_axis(normal);
        const double from = own.drawn(largest->outline.front())[index_of(into)];
        const double sign = normal[index_of(into)] > 0 ? 1 : -1;
        if (joint.tenon)
            add_tenon_faces(patches, first, second, *joint.tenon, into, from, from + sign * in_metres(joint.tenon->length));
    }
    if (joint.tenon)
        for (Patch& p : patches)
            if (p.role == Patch::Role::shoulder) {
                p.area = std::max(kLeastArea, p.area - in_metres(joint.tenon->width) * in_metres(joint.tenon->thickness));
                break;
            }
    return patches;
}

std::vector<Patch> bridle_patches(const Body& first, const Body& second, const Joint& joint, const SharedSpace& shared)
{
    const Axis thin = first.part->face;
    const double whole = shared.bounds.size(thin);
    const double thickness = joint.bridle_thickness ? std::min(in_metres(*joint.bridle_thickness), whole) : whole / 3;
    std::vector<Patch> patches;
    for (const bool far : {false, true})
        patches.push_back(
            patch_of(rectangle(thin, shared.bounds.middle(thin) + (far ? thickness : -thickness) / 2, shared.bounds, far), first,
                     second, Patch::Role::cheek));
    return patches;
}

std::vector<Patch> lap_patches(const Body& first, const Body& second, const Joint& joint, const SharedSpace& shared)
{
    const Axis a = first.part->grain, b = second.part->grain;
    const Axis depth = a == b ? first.part->face : third_axis(a, b);
    const double whole = shared.bounds.size(depth);
    const double taken = joint.lap_first ? std::min(in_metres(*joint.lap_first), whole) : whole / 2;
    const bool second_on_top = second.copy->box.middle(depth) >= first.copy->box.middle(depth);
    const double plane = second_on_top ? shared.bounds.hi[index_of(depth)] - taken : shared.bounds.lo[index_of(depth)] + taken;
    std::vector<Patch> patches{patch_of(rectangle(depth, plane, shared.bounds, second_on_top), first, second, Patch::Role::face)};
    // The shoulders: each part's recess ends against the side of the other.
    for (const Axis grain : {a, b}) {
        Box limits = shared.bounds;
        const bool of_first = grain == a;
        const bool upper = of_first == second_on_top;
        (upper ? limits.lo : limits.hi)[index_of(depth)] = plane;
        const Body& body = of_first ? first : second;
        for (const bool far : {false, true}) {
            const double place = far ? shared.bounds.hi[index_of(grain)] : shared.bounds.lo[index_of(grain)];
            const double end = far ? body.copy->box.hi[index_of(grain)] : body.copy->box.lo[index_of(grain)];
            if (std::abs(place - end) > kTouch)
                patches.push_back(patch_of(rectangle(grain, place, limits, far), first, second, Patch::Role::shoulder));
        }
        if (a == b) break;
    }
    return patches;
}

std::vector<Patch> mitre_patches(const Body& first, const Body& second, const SharedSpace& shared)
{
    Axis u = first.part->grain, v = second.part->grain;
    if (u == v) {
        u = first.part->width_axis() == second.part->face ? first.part->face : first.part->width_axis();
        v = third_axis(first.part->grain, u);
    }
    const std::size_t i = index_of(u), j = index_of(v);
    // The outer corner of the mitre lies away from both parts; the cut runs from there to the inner corner.
    const bool first_below = first.copy->box.middle(u) < shared.bounds.middle(u),
               second_below = second.copy->box.middle(v) < shared.bounds.middle(v);
    const Axis h = third_axis(u, v);
    const double outer_u = first_below ? shared.bounds.hi[i] : shared.bounds.lo[i],
                 inner_u = first_below ? shared.bounds.lo[i] : shared.bounds.hi[i];
    const double outer_v = second_below ? shared.bounds.hi[j] : shared.bounds.lo[j],
                 inner_v = second_below ? shared.bounds.lo[j] : shared.bounds.hi[j];
    Polygon face;
    const auto corner = [&](double at_u, double at_v, double at_h) {
        Vec p;
        p[static_cast<int>(i)] = at_u;
        p[static_cast<int>(j)] = at_v;
        p[static_cast<int>(index_of(h))] = at_h;
        face.corners.push_back(p);
    };
    corner(outer_u, outer_v, shared.bounds.lo[index_of(h)]);
    corner(inner_u, inner_v, shared.bounds.lo[index_of(h)]);
    corner(inner_u, inner_v, shared.bounds.hi[index_of(h)]);
    corner(outer_u, outer_v, shared.bounds.hi[index_of(h)]);
    face.normal = Vec::Zero();
    face.normal[static_cast<int>(i)] = std::abs(outer_v - inner_v) * (first_below ? 1 : -1);
    face.normal[static_cast<int>(j)] = std::abs(outer_u - inner_u) * (second_below ? -1 : 1);
    face.normal.normalize();
    Patch patch = patch_of(face, first, second, Patch::Role::face);
    patch.end_grain_first = patch.end_grain_second = false; // half way between side and end grain: judged as a mitre
    patch.grain_angle = angle_in_plane(first.grain, second.grain, face.normal);
    return {patch};
}

std::vector<Patch> dovetail_patches(const Body& first, const Body& second, const Joint& joint, const SharedSpace& shared)
{
    std::vector<Patch> patches;
    if (first.part->grain == second.part->grain) return let_in_patches(first, second);
    const Axis across = third_axis(first.part->grain, second.part->grain);
    const int tails = joint.dovetail ? joint.dovetail->tails : 1;
    const double pitch = shared.bounds.size(across) / tails;
    for (int i = 0; i < tails; ++i)
        for (const bool far : {false, true})
            patches.push_back(patch_of(
                rectangle(across, shared.bounds.lo[index_of(across)] + (i + (far ? 0.75 : 0.25)) * pitch, shared.bounds, far),
                first, second, Patch::Role::cheek));
    return patches;
}

} // namespace

Body body_of(const Part& part, const Copy& copy)
{
    Body body;
    body.part = &part;
    body.copy = &copy;
    body.solid = solid_of(part, copy);
    const Box bounds = bounds_of(part, copy);
    body.lo = Vec(bounds.lo[0], bounds.lo[1], bounds.lo[2]);
    body.hi = Vec(bounds.hi[0], bounds.hi[1], bounds.hi[2]);
    const Point grain = axes_of(part, copy).grain;
    body.grain = Vec(grain[0], grain[1], grain[2]);
    return body;
}

std::optional<SharedSpace> shared_space(const Body& a, const Body& b)
{
    if (((a.hi - b.lo).array() < kTouch).any() || ((b.hi - a.lo).array() < kTouch).any()) return std::nullopt;
    std::optional<SharedSpace> found;
    for (const kernel::Cell& one : a.solid.cells)
        for (const kernel::Cell& other : b.solid.cells) {
            const kernel::Cell both = kernel::clip(one, other.sides);
            if (both.empty()) continue;
            Vec lo, hi;
            kernel::bounds(both, lo, hi);
            if (((hi - lo).array() < kTouch).any()) continue;
            if (!found) found = SharedSpace{{point(lo), point(hi)}, 0};
            for (std::size_t i = 0; i < 3; ++i) {
                found->bounds.lo[i] = std::min(found->bounds.lo[i], lo[static_cast<int>(i)]);
                found->bounds.hi[i] = std::max(found->bounds.hi[i], hi[static_cast<int>(i)]);
            }
            found->volume += kernel::volume(both);
        }
    return found;
}

std::vector<Patch> touching_patches(const Body& first, const Body& second, double apart)
{
    std::vector<Patch> patches;
    for (const Polygon& f : first.solid.skin)
        for (const Polygon& g : second.solid.skin) {
            if (f.normal.dot(g.normal) > -0.9999) continue;
            const double room = f.normal.dot(g.corners[0] - f.corners[0]);
            if (room <= -kTouch || room >= apart) continue;
            const Polygon both = kernel::overlap(f, g);
            if (!both.empty() && kernel::area(both) > kLeastArea)
                patches.push_back(patch_of(both, first, second, Patch::Role::face));
        }
    return patches;
}

bool may_share(JointKind kind, bool turned)
{
    switch (kind) {
    case JointKind::edge:
    case JointKind::face:
    case JointKind::butt: return turned; // parts that meet at an angle are drawn sharing space and cut to fit
    case JointKind::screws:
    case JointKind::buttons:
    case JointKind::hinge:
    case JointKind::dowel: return false;
    default: return true;
    }
}

std::vector<Patch> joint_patches(const Body& first, const Body& second, const Joint& joint,
                                 const std::optional<SharedSpace>& shared)
{
    std::vector<Patch> patches;
    if (joint.kind == JointKind::tenon) {
        patches = tenon_patches(first, second, joint, shared);
    } else if (joint.kind == JointKind::hinge) {
        patches = touching_patches(first, second, kTouch + (joint.hinges ? in_metres(joint.hinges->gap) : 0));
    } else if (!shared) {
        patches = touching_patches(first, second);
    } else if (joint.kind == JointKind::edge || joint.kind == JointKind::face || joint.kind == JointKind::butt) {
        patches = cut_to_fit_patches(first, second);
    } else {
        switch (joint.kind) {
        case JointKind::bridle: patches = bridle_patches(first, second, joint, *shared); break;
        case JointKind::lap: patches = lap_patches(first, second, joint, *shared); break;
        case JointKind::mitre: patches = mitre_patches(first, second, *shared); break;
        case JointKind::dovetail: patches = dovetail_patches(first, second, joint, *shared); break;
        default: {
            patches = let_in_patches(first, second);
            for (Patch& p : touching_patches(first, second)) patches.push_back(std::move(p));
        }
        }
    }
    std::stable_sort(patches.begin(), patches.end(), [](const Patch& a, const Patch& b) { return a.area > b.area + 1e-12; });
    return patches;
}

} // namespace jointwright
