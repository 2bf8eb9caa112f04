#include "mechanics/given/floor.hpp"

#include "piece/model/turn.hpp"
#include "piece/solid/solid.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

namespace geo = boost::geometry;
using GeoPoint = geo::model::d2::point_xy<double>;

// The foot of a turned leg is cut level where it meets the floor: corners a little above it stand too.
constexpr double kCutLevel = 0.008;
constexpr double kWideFoot = 0.0999; // m: from here a foot stands on its two ends
constexpr double kFootShare = 0.48;  // of its size from the middle

double lowest_of(const Part& part, const Copy& copy) { return bounds_of(part, copy).lo[2]; }

} // namespace

double floor_level(const Piece& piece)
{
    double lowest = 1e30, straight = 1e30;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (piece.hangs(i)) continue;
        const Copy& copy = piece.copies[i];
        const Part& part = piece.part_of(i);
        lowest = std::min(lowest, lowest_of(part, copy));
        if (!part.turn) straight = std::min(straight, copy.box.lo[2]);
    }
    return straight < lowest + kCutLevel ? straight : lowest;
}

bool meets_floor(const Piece& piece, std::size_t copy, double floor)
{
    const Part& part = piece.part_of(copy);
    return !piece.hangs(copy) && lowest_of(part, piece.copies[copy]) < floor + (part.turn ? kCutLevel : kTouch);
}

std::vector<PlanPoint> sole_of(const Part& part, const Copy& copy, double floor)
{
    std::vector<PlanPoint> points;
    const double level = floor + (part.turn ? kCutLevel : kTouch);
    for (const kernel::Polygon& face : solid_of(part, copy).skin)
        for (const kernel::Vec& corner : face.corners)
            if (corner.z() < level) points.push_back({corner.x(), corner.y()});
    return points;
}

std::vector<PlanPoint> foot_places(const Part& part, const Copy& copy, double floor, bool edge)
{
    const std::vector<PlanPoint> sole = sole_of(part, copy, floor);
    if (sole.empty()) return {};
    // Its own two directions that lie most level, the broader first.
    const PartAxes axes = axes_of(part, copy);
    const bool upright = std::abs(axes.grain[2]) > 0.7;
    const Point& first = upright ? axes.width : axes.grain;
    PlanPoint u{first[0], first[1]};
    const double length = std::hypot(u[0], u[1]);
    u = length > 1e-6 ? PlanPoint{u[0] / length, u[1] / length} : PlanPoint{1, 0};
    const PlanPoint v{-u[1], u[0]};
    const auto spread_of = [&](const PlanPoint& d) {
        double lo = 1e30, hi = -1e30;
        for (const PlanPoint& p : sole) {
            lo = std::min(lo, p[0] * d[0] + p[1] * d[1]);
            hi = std::max(hi, p[0] * d[0] + p[1] * d[1]);
        }
        const double middle = (lo + hi) / 2, size = hi - lo;
        if (size < kWideFoot) return std::vector<double>{middle};
        return std::vector<double>{middle - kFootShare * size, middle + kFootShare * size};
    };
    std::vector<double> along = spread_of(u), across = spread_of(v);
    if (edge && along.size() == 2) along.insert(along.begin() + 1, (along[0] + along[1]) / 2);
    if (edge) across = {(across.front() + across.back()) / 2};
    std::vector<PlanPoint> places;
    for (const double s : along)
        for (const double t : across) places.push_back({s * u[0] + t * v[0], s * u[1] + t * v[1]});
    return places;
}

std::optional<Side> wall_side(const Piece& piece)
{
    Box all{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    std::vector<Box> bounds;
    for (const Copy& copy : piece.copies) {
        bounds.push_back(bounds_of(piece.parts[copy.part], copy));
        for (std::size_t k = 0; k < 3; ++k) {
            all.lo[k] = std::min(all.lo[k], bounds.back().lo[k]);
            all.hi[k] = std::max(all.hi[k], bounds.back().hi[k]);
        }
    }
    for (const Side side : {Side::back, Side::left, Side::right, Side::front}) {
        const std::size_t k = index_of(axis_of(side));
        bool shared = true;
        for (const std::string& name : piece.wall)
            for (const std::size_t i : piece.copies_named(name))
                shared = shared && std::abs(is_far(side) ? all.hi[k] - bounds[i].hi[k] : bounds[i].lo[k] - all.lo[k]) < kTouch;
        if (shared) return side;
    }
    return std::nullopt;
}

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

bool feet_in_line(const Piece& piece)
{
    constexpr double narrow = 0.01; // m
    if (!piece.wall.empty()) return false;
    const double floor = floor_level(piece);
    std::vector<PlanPoint> all;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (!meets_floor(piece, i, floor)) continue;
        const auto places = foot_places(piece.part_of(i), piece.copies[i], floor, false);
        all.insert(all.end(), places.begin(), places.end());
    }
    if (all.empty()) return false;
    const std::vector<PlanPoint> line = line_round(all);
    double area = 0, longest = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const PlanPoint &a = line[i], &b = line[(i + 1) % line.size()];
        area += (a[0] * b[1] - b[0] * a[1]) / 2;
        longest = std::max(longest, std::hypot(b[0] - a[0], b[1] - a[1]));
    }
    return area <= narrow * longest;
}

} // namespace jointwright
