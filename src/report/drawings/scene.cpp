#include "report/drawings/scene.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace jointwright::drawing {

namespace {

constexpr double kEndGrain = 0.7; // cosine between grain and normal from which a face shows end grain
constexpr int kArcSteps = 16;

Dot dot_of(const Vec& p) { return {p.x(), p.y()}; }

/// A number between 0 and 1 that looks random and is always the same: grain is uneven, a report is not.
double uneven(std::uint32_t a, std::uint32_t b)
{
    std::uint32_t h = a * 2654435761U ^ (b + 0x9e3779b9U) * 2246822519U;
    h = (h ^ (h >> 15U)) * 3266489917U;
    return static_cast<double>((h ^ (h >> 13U)) & 0xffffU) / 65536.0;
}

/// Extent of a face's pieces along a direction of the paper.
void span_along(const std::vector<kernel::Polygon>& pieces, double x, double y, double& lo, double& hi)
{
    lo = 1e300;
    hi = -1e300;
    for (const kernel::Polygon& piece : pieces)
        for (const Vec& p : piece.corners) {
            lo = std::min(lo, p.x() * x + p.y() * y);
            hi = std::max(hi, p.x() * x + p.y() * y);
        }
}

/// Strokes along the grain, unevenly apart.
void add_side_grain(LineSet& grain, const SeenFace& face, const Vec& along, double step, double least)
{
    const double length = std::hypot(along.x(), along.y());
    if (length < 0.15 || step <= 0) return;
    const double x = along.x() / length, y = along.y() / length;
    double lo = 0, hi = 0, from = 0, to = 0;
    span_along(face.pieces, -y, x, lo, hi);
    span_along(face.pieces, x, y, from, to);
    if (hi - lo < least || to - from < least) return;
    // Counted from the paper's own middle, so that all faces of a plane agree, whatever hides some of them.
    const double first = std::floor(lo / step), last = std::ceil(hi / step);
    for (double k = first; k <= last; ++k) {
        const auto salt = static_cast<std::uint32_t>(static_cast<std::int64_t>(k) & 0xffffffff);
        const double offset = (k + 0.7 * uneven(static_cast<std::uint32_t>(face.body), salt)) * step;
        if (offset < lo + least / 8 || offset > hi - least / 8) continue;
        const Dot a{x * from - y * offset, y * from + x * offset}, b{x * to - y * offset, y * to + x * offset};
        for (const kernel::Polygon& piece : face.pieces)
            for (const Stroke& s : line_within(piece, a, b)) grain.add(s.from, s.to);
    }
}

/// Growth rings on end grain: circles round the pith's axis as they cross the face.
void add_rings(std::vector<Stroke>& strokes, const SeenFace& face, const WoodBody& body, const View& view, double step,
               double least)
{
    if (step <= 0) return;
    double lo = 0, hi = 0;
    span_along(face.pieces, 1, 0, lo, hi);
    if (hi - lo < least) return;
    span_along(face.pieces, 0, 1, lo, hi);
    if (hi - lo < least) return;
    // The middle of the rings on the face: where the axis pierces its plane.
    const double steep = body.grain.dot(face.normal);
    const Vec middle = body.pith + body.grain * ((face.offset - body.pith.dot(face.normal)) / steep);
    const Vec helper = std::abs(body.grain.z()) < 0.9 ? Vec::UnitZ() : Vec::UnitX();
    const Vec e1 = body.grain.cross(helper).normalized(), e2 = body.grain.cross(e1);
    const Vec centre = view.place(middle);
    const Vec a = view.direct(e1), b = view.direct(e2);
    // Polar coordinates on the paper, in which the ellipses of the rings are circles again.
    const double det = a.x() * b.y() - a.y() * b.x();
    if (std::abs(det) < 1e-3) return;
    double rlo = 1e300, rhi = 0, tlo = 1e300, thi = -1e300;
    double reference = 0;
    bool first = true;
    for (const kernel::Polygon& piece : face.pieces)
        for (const Vec& p : piece.corners) {
            const double dx = p.x() - centre.x(), dy = p.y() - centre.y();
            const double s = (dx * b.y() - dy * b.x()) / det, t = (dy * a.x() - dx * a.y()) / det;
            double turn = std::atan2(t, s);
            if (first) reference = turn;
            first = false;
            turn = reference + std::remainder(turn - reference, 2 * 3.14159265358979323846);
            rlo = std::min(rlo, std::hypot(s, t));
            rhi = std::max(rhi, std::hypot(s, t));
            tlo = std::min(tlo, turn);
            thi = std::max(thi, turn);
        }
    if (thi - tlo > 3) { // the pith lies in the face
        tlo = 0;
        thi = 2 * 3.14159265358979323846;
        rlo = 0;
    } else {
        rlo = std::max(0.0, rlo - step * 2); // a ring may bulge past the corners
    }
    for (double k = std::ceil(rlo / step); k * step < rhi; ++k) {
        const double r = k * step;
        const auto point = [&](int i) {
            const double turn = tlo + (thi - tlo) * i / kArcSteps;
            const double s = r * std::cos(turn), t = r * std::sin(turn);
            return Dot{centre.x() + s * a.x() + t * b.x(), centre.y() + s * a.y() + t * b.y()};
        };
        for (int i = 0; i < kArcSteps; ++i)
            for (const kernel::Polygon& piece : face.pieces)
                for (const Stroke& s : line_within(piece, point(i), point(i + 1))) strokes.push_back(s);
    }
}

/// The edges of what is seen of a face.
std::vector<Stroke> boundary_of(const SeenFace& face)
{
    LineSet edges;
    for (const kernel::Polygon& piece : face.pieces)
        for (std::size_t i = 0; i < piece.corners.size(); ++i)
            edges.add(dot_of(piece.corners[i]), dot_of(piece.corners[(i + 1) % piece.corners.size()]));
    return edges.boundary();
}

/// One outline round all that is seen of a face; piece by piece where its edges do not close, by rounding.
std::vector<Ring> rings_of(const SeenFace& face, const std::vector<Stroke>& boundary)
{
    if (auto closed = closed_rings(boundary)) return std::move(*closed);
    std::vector<Ring> rings;
    for (const kernel::Polygon& piece : face.pieces) {
        rings.emplace_back();
        for (const Vec& corner : piece.corners) rings.back().push_back(dot_of(corner));
    }
    return rings;
}

void set_extent(Scene& scene)
{
    bool first = true;
    for (const SeenFace& face : scene.faces)
        for (const kernel::Polygon& piece : face.pieces)
            for (const Vec& p : piece.corners) {
                if (first) scene.lo = scene.hi = dot_of(p);
                first = false;
                scene.lo = {std::min(scene.lo.x, p.x()), std::min(scene.lo.y, p.y())};
                scene.hi = {std::max(scene.hi.x, p.x()), std::max(scene.hi.y, p.y())};
            }
}

} // namespace

std::vector<Stroke> line_within(const kernel::Polygon& polygon, const Dot& from, const Dot& to)
{
    double start = 0, end = 1;
    const double dx = to.x - from.x, dy = to.y - from.y;
    for (std::size_t i = 0; i < polygon.corners.size(); ++i) {
        const Vec& a = polygon.corners[i];
        const Vec& b = polygon.corners[(i + 1) % polygon.corners.size()];
        // Corners run anticlockwise on the paper: inside is to the left of every edge.
        const double nx = b.y() - a.y(), ny = a.x() - b.x();
        const double at = nx * (from.x - a.x()) + ny * (from.y - a.y()), by = nx * dx + ny * dy;
        if (std::abs(by) < 1e-15) {
            if (at > 0) return {};
            continue;
        }
        const double cross = -at / by;
        if (by > 0)
            end = std::min(end, cross);
        else
            start = std::max(start, cross);
    }
    if (!(end > start)) return {};
    return {{{from.x + start * dx, from.y + start * dy}, {from.x + end * dx, from.y + end * dy}, 1}};
}

Scene look_at(const std::vector<WoodBody>& bodies, const View& view, const GrainSteps& steps)
{
    Scene scene;
    std::vector<SeenBody> seen;
    seen.reserve(bodies.size());
    for (const WoodBody& body : bodies) seen.push_back({body.cells});
    scene.faces = seen_faces(seen, view);
    LineSet lines, grain;
    for (const SeenFace& face : scene.faces) {
        const WoodBody& body = bodies[face.body];
        scene.end_grain.push_back(std::abs(body.grain.dot(face.normal)) > kEndGrain);
        const std::vector<Stroke> boundary = boundary_of(face);
        for (const Stroke& s : boundary) lines.add(s.from, s.to);
        scene.rings.push_back(rings_of(face, boundary));
        if (scene.end_grain.back())
            add_rings(scene.grain, face, body, view, steps.rings, steps.least);
        else
            add_side_grain(grain, face, view.direct(body.grain), steps.side, steps.least);
    }
    for (const Stroke& s : lines.cover()) (s.times == 1 ? scene.outlines : scene.edges).push_back(s);
    for (const Stroke& s : grain.cover()) scene.grain.push_back(s);
    set_extent(scene);
    return scene;
}

} // namespace jointwright::drawing
