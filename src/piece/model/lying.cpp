#include "piece/model/lying.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

namespace jointwright {

namespace {

namespace geo = boost::geometry;
using PlanXY = geo::model::d2::point_xy<double>;
using PlanPolygon = geo::model::polygon<PlanXY, false>; // anticlockwise

constexpr double kUprightFrom = 0.7; // cosine of the grain to the vertical

/// Area, middle and spread of a polygon in two directions, summed over the triangles between its first corner and its sides.
struct PolygonMoments {
    double area = 0, u = 0, v = 0, uu = 0, vv = 0;
    void add(const std::array<std::array<double, 2>, 3>& t)
    {
        const double twice = (t[1][0] - t[0][0]) * (t[2][1] - t[0][1]) - (t[2][0] - t[0][0]) * (t[1][1] - t[0][1]);
        const double a = std::abs(twice) / 2;
        double su = 0, sv = 0, suu = 0, svv = 0;
        for (const auto& p : t) {
            su += p[0];
            sv += p[1];
            suu += p[0] * p[0];
            svv += p[1] * p[1];
        }
        area += a;
        u += a * su / 3;
        v += a * sv / 3;
        uu += a * (suu + su * su) / 12;
        vv += a * (svv + sv * sv) / 12;
    }
};

/// Half the length of an even spread about a middle with that variance.
double half_of(double variance) { return std::sqrt(3 * std::max(variance, 0.0)); }

} // namespace

Plan plan_of(const Box& box) { return {box.lo[0], box.hi[0], box.lo[1], box.hi[1]}; }

Lying::Lying(const Part& part, const Copy& copy)
    : box_(copy.box), bounds_(bounds_of(part, copy)), turn_(turn_of(part, copy)), grain_(part.grain), across_(Axis::x)
{
    across_ = grain_ == Axis::x ? Axis::y : Axis::x;
    const double up = direct(grain_)[2];
    upright_ = std::abs(up) >= kUprightFrom;
    down_ = up < 0;
    if (!turn_) return;
    double most = -1;
    for (const Axis axis : {part.width_axis(), part.face}) {
        const Point d = direct(axis);
        const double shown = box_.size(axis) * std::hypot(d[0], d[1]);
        if (shown <= most + kTouch) continue;
        most = shown;
        across_ = axis;
    }
}

Point Lying::direct(Axis axis) const
{
    Point d{};
    d[index_of(axis)] = 1;
    return turn_ ? turn_->direct(d) : d;
}

Point Lying::place(double along, double across) const
{
    Point p{box_.middle(Axis::x), box_.middle(Axis::y), box_.middle(Axis::z)};
    p[index_of(grain_)] = along;
    p[index_of(across_)] = across;
    return turn_ ? turn_->place(p) : p;
}

Point Lying::drawn(const Point& p) const
{
    if (!turn_) return p;
    CopyTurn back = *turn_;
    back.angle = -back.angle;
    return back.place(p);
}

bool Lying::holds(const Point& p) const
{
    const Point d = drawn(p);
    for (std::size_t i = 0; i < 3; ++i)
        if (d[i] < box_.lo[i] - kTouch || d[i] > box_.hi[i] + kTouch) return false;
    return true;
}

bool Lying::reversed() const
{
    const Point g = direct(grain_);
    return (std::abs(g[0]) >= std::abs(g[1]) ? g[0] : g[1]) < 0;
}

std::optional<UnderPlan> Lying::under(const Plan& plan) const
{
    if (turn_ && !upright_) return under_turned(plan);
    const Plan own = plan_of(bounds_);
    std::array<double, 2> lo{}, hi{};
    UnderPlan under;
    under.area = 1;
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        lo[i] = std::max(own.lo(i), plan.lo(i));
        hi[i] = std::min(own.hi(i), plan.hi(i));
        under.area *= std::max(0.0, hi[i] - lo[i]);
    }
    if (under.area <= 0) return std::nullopt;
    if (upright_) {
        under.from = under.to = top_end();
        under.across = middle();
        return under;
    }
    const std::size_t g = index_of(grain_), a = index_of(across_);
    under.from = lo[g];
    under.to = hi[g];
    under.across = (lo[a] + hi[a]) / 2;
    under.breadth = hi[a] - lo[a];
    return under;
}

std::optional<UnderPlan> Lying::under_turned(const Plan& plan) const
{
    const Point origin = place(0, 0), g = direct(grain_), a = direct(across_);
    const double det = g[0] * a[1] - g[1] * a[0];
    if (std::abs(det) < 1e-6) return std::nullopt;
    PlanPolygon outline;
    const double lo = box_.lo[index_of(across_)], hi = box_.hi[index_of(across_)];
    for (const auto& [s, t] : {std::pair{from(), lo}, std::pair{to(), lo}, std::pair{to(), hi}, std::pair{from(), hi}}) {
        const Point p = place(s, t);
        geo::append(outline.outer(), PlanXY(p[0], p[1]));
    }
    geo::correct(outline);
    const geo::model::box<PlanXY> window(PlanXY(plan.x0, plan.y0), PlanXY(plan.x1, plan.y1));
    std::vector<PlanPolygon> common;
    geo::intersection(window, outline, common);
    PolygonMoments m;
    for (const PlanPolygon& polygon : common) {
        std::vector<std::array<double, 2>> own; // along and across, as drawn
        for (const PlanXY& q : polygon.outer()) {
            const double x = q.x() - origin[0], y = q.y() - origin[1];
            own.push_back({(x * a[1] - y * a[0]) / det, (g[0] * y - g[1] * x) / det});
        }
        for (std::size_t i = 1; i + 2 < own.size(); ++i) m.add({own[0], own[i], own[i + 1]});
    }
    UnderPlan under;
    under.area = m.area * std::abs(det);
    if (under.area <= 1e-12) return std::nullopt;
    const double u = m.u / m.area, v = m.v / m.area;
    const double hu = std::min({half_of(m.uu / m.area - u * u), u - from(), to() - u}),
                 hv = std::min({half_of(m.vv / m.area - v * v), v - lo, hi - v});
    under.from = u - hu;
    under.to = u + hu;
    under.across = v;
    under.breadth = 2 * hv;
    return under;
}

} // namespace jointwright
