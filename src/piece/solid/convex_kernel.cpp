#include "piece/solid/convex_kernel.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace jointwright::kernel {

namespace {

constexpr double kSame = 1e-9; // metres: corners nearer than this are one

Vec area_vector(const Polygon& polygon)
{
    Vec sum = Vec::Zero();
    for (std::size_t i = 1; i + 1 < polygon.corners.size(); ++i)
        sum += (polygon.corners[i] - polygon.corners[0]).cross(polygon.corners[i + 1] - polygon.corners[0]);
    return sum / 2;
}

void push_distinct(std::vector<Vec>& corners, const Vec& p)
{
    if (corners.empty() || (corners.back() - p).norm() > kSame) corners.push_back(p);
}

void close_ring(std::vector<Vec>& corners)
{
    while (corners.size() > 1 && (corners.front() - corners.back()).norm() <= kSame) corners.pop_back();
    if (corners.size() < 3) corners.clear();
}

/// The corners that a cut leaves on its plane, put in order round their middle: the face that closes a clipped body.
Polygon cap_of(const std::vector<Vec>& points, const Vec& normal)
{
    Polygon cap;
    cap.normal = normal;
    if (points.size() < 3) return cap;
    Vec middle = Vec::Zero();
    for (const Vec& p : points) middle += p;
    middle /= static_cast<double>(points.size());
    const Vec helper = std::abs(normal.x()) < 0.9 ? Vec::UnitX() : Vec::UnitY();
    const Vec u = normal.cross(helper).normalized();
    const Vec v = normal.cross(u);
    std::vector<std::pair<double, Vec>> turned;
    for (const Vec& p : points) turned.emplace_back(std::atan2((p - middle).dot(v), (p - middle).dot(u)), p);
    std::sort(turned.begin(), turned.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [angle, p] : turned) push_distinct(cap.corners, p);
    close_ring(cap.corners);
    return cap;
}

} // namespace

Polygon clip(const Polygon& polygon, const HalfSpace& keep)
{
    Polygon result;
    result.normal = polygon.normal;
    const std::size_t n = polygon.corners.size();
    result.corners.reserve(n + 1);
    for (std::size_t i = 0; i < n; ++i) {
        const Vec& a = polygon.corners[i];
        const Vec& b = polygon.corners[(i + 1) % n];
        const double da = keep.outside(a), db = keep.outside(b);
        if (da <= kSame) push_distinct(result.corners, a);
        if ((da > kSame && db < -kSame) || (da < -kSame && db > kSame))
            push_distinct(result.corners, a + (b - a) * (da / (da - db)));
    }
    close_ring(result.corners);
    return result;
}

Polygon clip(Polygon polygon, const std::vector<HalfSpace>& keep)
{
    for (const HalfSpace& side : keep) {
        if (polygon.empty()) break;
        polygon = clip(polygon, side);
    }
    return polygon;
}

/// A face that lies in a side of the body is no part of what is outside it.
static bool reaches_beyond(const std::vector<Vec>& corners, const HalfSpace& side)
{
    return std::any_of(corners.begin(), corners.end(), [&](const Vec& p) { return side.outside(p) > kSame; });
}

std::vector<Polygon> subtract(const Polygon& polygon, const std::vector<HalfSpace>& body)
{
    std::vector<Polygon> pieces;
    if (clip(polygon, body).empty()) return {polygon};
    Polygon rest = polygon;
    for (const HalfSpace& side : body) {
        if (rest.empty()) break;
        Polygon outside = clip(rest, side.opposite());
        if (!outside.empty() && reaches_beyond(rest.corners, side) && area(outside) > kSame * kSame)
            pieces.push_back(std::move(outside));
        rest = clip(rest, side);
    }
    return pieces;
}

Polygon inset_edge(const Polygon& polygon, const Vec& from, const Vec& to, double inset)
{
    const Vec along = (to - from).normalized();
    const Vec outwards = along.cross(polygon.normal).normalized();
    return clip(polygon, {outwards, outwards.dot(from) - inset});
}

Polygon overlap(const Polygon& polygon, const Polygon& other)
{
    Vec middle = Vec::Zero();
    for (const Vec& p : other.corners) middle += p;
    middle /= static_cast<double>(std::max<std::size_t>(other.corners.size(), 1));
    Polygon result = polygon;
    for (std::size_t i = 0; i < other.corners.size() && !result.empty(); ++i) {
        const Vec& a = other.corners[i];
        const Vec& b = other.corners[(i + 1) % other.corners.size()];
        Vec outwards = (b - a).cross(other.normal).normalized();
        if (outwards.dot(middle - a) > 0) outwards = -outwards;
        result = clip(result, HalfSpace{outwards, outwards.dot(a)});
    }
    return result;
}

Cell clip(const Cell& cell, const HalfSpace& keep)
{
    bool any_outside = false;
    for (const Polygon& face : cell.faces)
        for (const Vec& p : face.corners) any_outside = any_outside || keep.outside(p) > kSame;
    if (!any_outside) return cell;

    Cell result;
    std::vector<Vec> on_plane;
    for (const Polygon& face : cell.faces) {
        Polygon left = clip(face, keep);
        if (left.empty()) continue;
        for (const Vec& p : left.corners)
            if (std::abs(keep.outside(p)) <= 2 * kSame) on_plane.push_back(p);
        result.faces.push_back(std::move(left));
    }
    Polygon cap = cap_of(on_plane, keep.normal);
    if (!cap.empty()) result.faces.push_back(std::move(cap));
    if (result.empty()) return {};
    result.sides = cell.sides;
    result.sides.push_back(keep);
    return result;
}

Cell clip(Cell cell, const std::vector<HalfSpace>& keep)
{
    for (const HalfSpace& side : keep) {
        if (cell.empty()) return {};
        cell = clip(cell, side);
    }
    return cell;
}

std::vector<Cell> subtract(const Cell& cell, const std::vector<HalfSpace>& body)
{
    if (clip(cell, body).empty()) return {cell};
    std::vector<Cell> pieces;
    Cell rest = cell;
    for (const HalfSpace& side : body) {
        if (rest.empty()) break;
        Cell outside = clip(rest, side.opposite());
        if (!outside.empty() && volume(outside) > kSame * kSame * kSame) pieces.push_back(std::move(outside));
        rest = clip(rest, side);
    }
    return pieces;
}

double area(const Polygon& polygon) { return polygon.empty() ? 0 : area_vector(polygon).norm(); }

double volume(const Cell& cell)
{
    if (cell.empty()) return 0;
    const Vec base = cell.faces[0].corners[0];
    double sum = 0;
    for (const Polygon& face : cell.faces) sum += std::abs(face.normal.dot(face.corners[0] - base)) * area(face);
    return sum / 3;
}

Vec first_moment(const Cell& cell)
{
    Vec sum = Vec::Zero();
    if (cell.empty()) return sum;
    // Tetrahedra from one corner of the body to triangles of its faces; faces through that corner make none.
    const Vec base = cell.faces[0].corners[0];
    for (const Polygon& face : cell.faces)
        for (std::size_t i = 1; i + 1 < face.corners.size(); ++i) {
            const Vec &a = face.corners[0], &b = face.corners[i], &c = face.corners[i + 1];
            const double six = std::abs((a - base).dot((b - base).cross(c - base)));
            sum += six / 6 * (base + a + b + c) / 4;
        }
    return sum;
}

void bounds(const Polygon& polygon, Vec& lo, Vec& hi)
{
    lo = hi = polygon.corners.front();
    for (const Vec& p : polygon.corners) {
        lo = lo.cwiseMin(p);
        hi = hi.cwiseMax(p);
    }
}

void bounds(const Cell& cell, Vec& lo, Vec& hi)
{
    lo = hi = cell.faces.front().corners.front();
    for (const Polygon& face : cell.faces)
        for (const Vec& p : face.corners) {
            lo = lo.cwiseMin(p);
            hi = hi.cwiseMax(p);
        }
}

std::vector<HalfSpace> box_sides(const Vec& lo, const Vec& hi)
{
    std::vector<HalfSpace> sides;
    for (int axis = 0; axis < 3; ++axis) {
        Vec n = Vec::Zero();
        n[axis] = 1;
        sides.push_back({-n, -lo[axis]});
        sides.push_back({n, hi[axis]});
    }
    return sides;
}

Cell box_cell(const Vec& lo, const Vec& hi)
{
    Cell cell;
    cell.sides = box_sides(lo, hi);
    for (int axis = 0; axis < 3; ++axis) {
        const int u = (axis + 1) % 3, v = (axis + 2) % 3;
        for (const bool far : {false, true}) {
            Polygon face;
            face.normal = Vec::Zero();
            face.normal[axis] = far ? 1 : -1;
            for (int k = 0; k < 4; ++k) {
                Vec p;
                p[axis] = far ? hi[axis] : lo[axis];
                p[u] = (k == 1 || k == 2) ? hi[u] : lo[u];
                p[v] = k >= 2 ? hi[v] : lo[v];
                face.corners.push_back(p);
            }
            if (!far) std::reverse(face.corners.begin(), face.corners.end());
            cell.faces.push_back(std::move(face));
        }
    }
    return cell;
}

Cell cell_from_faces(std::vector<Polygon> faces)
{
    Cell cell;
    Vec middle = Vec::Zero();
    double count = 0;
    for (const Polygon& face : faces)
        for (const Vec& p : face.corners) {
            middle += p;
            count += 1;
        }
    middle /= count;
    for (Polygon& face : faces) {
        face.normal = area_vector(face).normalized();
        if (face.normal.dot(face.corners[0] - middle) < 0) {
            face.normal = -face.normal;
            std::reverse(face.corners.begin(), face.corners.end());
        }
        cell.sides.push_back({face.normal, face.normal.dot(face.corners[0])});
    }
    cell.faces = std::move(faces);
    return cell;
}

} // namespace jointwright::kernel
