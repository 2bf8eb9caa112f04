#pragma once
// Bodies and rays for the tests of the drawing engine.

#include "report/drawings/visible.hpp"

#include <Eigen/Geometry>

#include <cmath>
#include <limits>
#include <optional>
#include <vector>

namespace drawn {

using namespace jointwright;
using drawing::SeenFace;
using drawing::View;
using kernel::Vec;

/// A body that owns its cells.
struct SeenBody {
    std::vector<kernel::Cell> cells;
};

inline std::vector<SeenFace> seen_faces(const std::vector<SeenBody>& bodies, const View& view)
{
    std::vector<drawing::SeenBody> seen;
    for (const SeenBody& body : bodies) seen.push_back({body.cells});
    return drawing::seen_faces(seen, view);
}

inline kernel::Cell box(const Vec& lo, const Vec& hi) { return kernel::box_cell(lo, hi); }

/// A box turned about an axis through its middle.
inline kernel::Cell turned_box(const Vec& lo, const Vec& hi, const Vec& axis, double angle)
{
    const Vec middle = (lo + hi) / 2;
    const Eigen::Matrix3d turn = Eigen::AngleAxisd(angle, axis.normalized()).toRotationMatrix();
    std::vector<kernel::Polygon> faces = kernel::box_cell(lo, hi).faces;
    for (kernel::Polygon& face : faces)
        for (Vec& p : face.corners) p = middle + turn * (p - middle);
    return kernel::cell_from_faces(std::move(faces));
}

/// What the ray from a point of the paper meets first.
struct Met {
    std::size_t body = 0;
    Vec normal{0, 0, 0};
    double depth = -std::numeric_limits<double>::infinity();
    bool clear = true; ///< no other face comes near enough to doubt it
};

/// Follows one ray through all cells, half-space by half-space: shares nothing with the engine but the cells.
inline std::optional<Met> met_at(const std::vector<SeenBody>& bodies, const View& view, double x, double y)
{
    constexpr double kDoubt = 1e-6;
    const Vec base = view.right * x + view.up * y;
    std::optional<Met> best;
    for (std::size_t b = 0; b < bodies.size(); ++b)
        for (const kernel::Cell& cell : bodies[b].cells) {
            double from = -1e9, to = 1e9, second = 1e9;
            Vec normal{0, 0, 0};
            for (const kernel::HalfSpace& side : cell.sides) {
                const double rise = side.normal.dot(view.towards), gap = side.offset - side.normal.dot(base);
                if (std::abs(rise) < 1e-12) {
                    if (gap < 0) from = 1e9;
                    continue;
                }
                const double t = gap / rise;
                if (rise < 0) {
                    from = std::max(from, t);
                } else if (t < to) {
                    second = to;
                    to = t;
                    normal = side.normal;
                } else {
                    second = std::min(second, t);
                }
            }
            if (to - from <= 0) continue;
            Met met{b, normal, to, second - to > kDoubt && to - from > kDoubt};
            if (best && std::abs(best->depth - met.depth) < kDoubt) {
                best->clear = false;
                continue;
            }
            if (!best || met.depth > best->depth) best = met;
        }
    return best;
}

/// How far inside a convex polygon a point of the paper lies; negative outside.
inline double depth_inside(const kernel::Polygon& polygon, double x, double y)
{
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < polygon.corners.size(); ++i) {
        const Vec& a = polygon.corners[i];
        const Vec& b = polygon.corners[(i + 1) % polygon.corners.size()];
        const double length = std::hypot(b.x() - a.x(), b.y() - a.y());
        if (length < 1e-12) continue;
        least = std::min(least, ((b.x() - a.x()) * (y - a.y()) - (b.y() - a.y()) * (x - a.x())) / length);
    }
    return least;
}

/// Area that pieces take on the paper.
inline double paper_area(const SeenFace& face)
{
    double sum = 0;
    for (const kernel::Polygon& piece : face.pieces) sum += kernel::area(piece) * face.facing.z();
    return sum;
}

inline double paper_area(const std::vector<SeenFace>& faces, std::size_t body)
{
    double sum = 0;
    for (const SeenFace& face : faces)
        if (face.body == body) sum += paper_area(face);
    return sum;
}

inline const SeenFace* face_of(const std::vector<SeenFace>& faces, std::size_t body, const Vec& normal)
{
    for (const SeenFace& face : faces)
        if (face.body == body && face.normal.dot(normal) > 0.999) return &face;
    return nullptr;
}

} // namespace drawn
