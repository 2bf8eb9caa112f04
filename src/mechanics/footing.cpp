#include "mechanics/footing.hpp"

#include "piece/solid.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

namespace geo = boost::geometry;
using GeoPoint = geo::model::d2::point_xy<double>;

/// Corners of a copy's body that touch a level.
void add_feet(std::vector<PlanPoint>& points, const Solid& solid, double level)
{
    for (const kernel::Polygon& face : solid.skin)
        for (const kernel::Vec& corner : face.corners)
            if (corner.z() < level + kTouch) points.push_back({corner.x(), corner.y()});
}

} // namespace

std::vector<PlanPoint> line_round(const std::vector<PlanPoint>& places)
{
    geo::model::multi_point<GeoPoint> points;
    for (const PlanPoint& p : places) points.push_back({p[0], p[1]});
    geo::model::polygon<GeoPoint, false> hull; // anticlockwise
    geo::convex_hull(points, hull);
    std::vector<PlanPoint> line;
    for (const GeoPoint& p : hull.outer()) line.push_back({p.x(), p.y()});
    if (line.size() > 1) line.pop_back(); // the first again
    return line;
}

Footing footing_of(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    Footing footing;
    std::vector<Solid> solids;
    footing.floor = 1e30;
    PlanPoint lever{};
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        solids.push_back(solid_of(piece.part_of(i), piece.copies[i]));
        const double weight = prepared.masses[i] * kStandardGravity;
        kernel::Vec middle = kernel::Vec::Zero();
        std::size_t corners = 0;
        for (const kernel::Polygon& face : solids.back().skin)
            for (const kernel::Vec& corner : face.corners) {
                footing.floor = std::min(footing.floor, corner.z());
                middle += corner;
                ++corners;
            }
        if (corners == 0) continue;
        middle /= static_cast<double>(corners);
        footing.weight += weight;
        lever[0] += weight * middle.x();
        lever[1] += weight * middle.y();
    }
    if (footing.weight > 0) footing.centre = {lever[0] / footing.weight, lever[1] / footing.weight};
    std::vector<PlanPoint> feet;
    // The foot of a turned leg is cut level where it meets the floor: corners a little above it stand too.
    constexpr double cut_level = 0.008;
    for (std::size_t i = 0; i < solids.size(); ++i)
        add_feet(feet, solids[i], footing.floor + (piece.part_of(i).turn ? cut_level : 0));
    footing.line = line_round(feet);
    return footing;
}

std::vector<Leverage> leverages(const Footing& footing, const PlanPoint& load)
{
    std::vector<Leverage> all;
    const std::size_t n = footing.line.size();
    for (std::size_t i = 0; i < n; ++i) {
        const PlanPoint &a = footing.line[i], &b = footing.line[(i + 1) % n];
        const double dx = b[0] - a[0], dy = b[1] - a[1], length = std::hypot(dx, dy);
        if (length < 1e-6) continue;
        // Anticlockwise, the outside lies to the right of an edge.
        const double nx = dy / length, ny = -dx / length;
        all.push_back({(load[0] - a[0]) * nx + (load[1] - a[1]) * ny,
                       -((footing.centre[0] - a[0]) * nx + (footing.centre[1] - a[1]) * ny),
                       {nx, ny}});
    }
    return all;
}

} // namespace jointwright
