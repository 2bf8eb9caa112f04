#include "report/drawings/visible.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright::drawing {

namespace {

using kernel::Cell;
using kernel::HalfSpace;
using kernel::Polygon;

constexpr double kEdgeOn = 1e-4;   // cosine to the eye below which a face is a line
constexpr double kOneplane = 1e-7; // metres: faces nearer than this lie in each other
constexpr double kSliver = 1e-7;   // metres: narrower pieces are rounding
constexpr double kHair = 1e-9;     // metres: as in the clipping of polygons

struct Extent {
    Vec lo = Vec::Constant(std::numeric_limits<double>::infinity());
    Vec hi = Vec::Constant(-std::numeric_limits<double>::infinity());
    void add(const Vec& p)
    {
        lo = lo.cwiseMin(p);
        hi = hi.cwiseMax(p);
    }
    /// They overlap on the paper by more than a hair, and `other` does not lie wholly before this.
    bool may_hide(const Extent& other) const
    {
        return hi.x() > other.lo.x() + kHair && lo.x() < other.hi.x() - kHair && hi.y() > other.lo.y() + kHair &&
               lo.y() < other.hi.y() - kHair && hi.z() > other.lo.z() - kHair;
    }
};

Extent extent_of(const Polygon& polygon)
{
    Extent extent;
    for (const Vec& p : polygon.corners) extent.add(p);
    return extent;
}

/// A cell as it hides: what lies within all of these half-spaces of the view is behind it or in it.
struct Hider {
    std::size_t rank = 0; ///< order of the cells
    Extent extent;
    std::vector<HalfSpace> fronts; ///< faces that look at the eye
    std::vector<HalfSpace> rim;    ///< its outline on the paper
};

/// A face that looks at the eye, in the view's coordinates.
struct Front {
    std::size_t rank = 0;
    std::size_t body = 0;
    Vec normal, facing;
    double offset = 0;
    Polygon face;
    Extent extent;
};

void add_rim(Hider& hider, const std::vector<Vec>& corners)
{
    const std::vector<Vec> rim = outline_of(corners);
    if (rim.size() < 3) return;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const Vec& a = rim[i];
        const Vec& b = rim[(i + 1) % rim.size()];
        const Vec n = Vec(b.y() - a.y(), a.x() - b.x(), 0).normalized();
        hider.rim.push_back({n, n.dot(a)});
    }
}

void add_cell(const Cell& cell, std::size_t body, const View& view, std::vector<Front>& fronts, std::vector<Hider>& hiders)
{
    Hider hider;
    hider.rank = hiders.size();
    std::vector<Vec> corners;
    for (const Polygon& face : cell.faces) {
        Polygon placed;
        placed.corners.reserve(face.corners.size());
        for (const Vec& p : face.corners) {
            placed.corners.push_back(view.place(p));
            hider.extent.add(placed.corners.back());
            corners.push_back(placed.corners.back());
        }
        placed.normal = view.direct(face.normal);
        if (placed.normal.z() <= kEdgeOn) continue;
        hider.fronts.push_back({placed.normal, placed.normal.dot(placed.corners[0])});
        Front front{hider.rank, body, face.normal, placed.normal, face.normal.dot(face.corners[0]), std::move(placed), {}};
        front.extent = extent_of(front.face);
        fronts.push_back(std::move(front));
    }
    add_rim(hider, corners);
    // A cell seen as a line hides nothing.
    if (hider.rim.empty()) hider.extent = Extent{};
    hiders.push_back(std::move(hider));
}

bool all_outside(const Polygon& polygon, const HalfSpace& side)
{
    return std::all_of(polygon.corners.begin(), polygon.corners.end(), [&](const Vec& p) { return side.outside(p) > -kHair; });
}

/// The half-spaces that hide a face behind a cell; empty when none of it is hidden for sure. A face that lies in a front of the cell would
/// be hidden by it and hide it alike: the cell that comes first counts as before.
std::vector<HalfSpace> hiding_sides(const Front& front, const Hider& hider)
{
    std::vector<HalfSpace> sides;
    for (const HalfSpace& side : hider.fronts) {
        bool in_plane = side.normal.dot(front.facing) > 1 - 1e-9;
        for (const Vec& p : front.face.corners) in_plane = in_plane && std::abs(side.outside(p)) < kOneplane;
        if (in_plane && hider.rank > front.rank) return {};
        if (in_plane) continue;
        if (all_outside(front.face, side)) return {};
        sides.push_back(side);
    }
    for (const HalfSpace& side : hider.rim)
        if (all_outside(front.face, side)) return {};
    sides.insert(sides.end(), hider.rim.begin(), hider.rim.end());
    return sides;
}

bool is_sliver(const Polygon& polygon)
{
    double longest = 0;
    for (std::size_t i = 0; i < polygon.corners.size(); ++i)
        longest = std::max(longest, (polygon.corners[i] - polygon.corners[(i + 1) % polygon.corners.size()]).norm());
    return kernel::area(polygon) <= kSliver * longest;
}

/// Cuts what lies behind the half-spaces out of all pieces.
void hide(std::vector<Polygon>& pieces, const std::vector<HalfSpace>& sides)
{
    std::vector<Polygon> left;
    for (Polygon& piece : pieces) {
        const bool apart =
            std::any_of(sides.begin(), sides.end(), [&](const HalfSpace& side) { return all_outside(piece, side); });
        if (apart) {
            left.push_back(std::move(piece));
            continue;
        }
        for (Polygon& part : kernel::subtract(piece, sides))
            if (!is_sliver(part)) left.push_back(std::move(part));
    }
    pieces = std::move(left);
}

void add_seen(std::vector<SeenFace>& seen, const Front& front, std::vector<Polygon> pieces)
{
    if (pieces.empty()) return;
    // The faces of one body come one after the other: look back through its own alone.
    for (std::size_t i = seen.size(); i-- > 0 && seen[i].body == front.body;) {
        if (std::abs(seen[i].offset - front.offset) > kOneplane || seen[i].normal.dot(front.normal) < 1 - 1e-9) continue;
        for (Polygon& piece : pieces) seen[i].pieces.push_back(std::move(piece));
        return;
    }
    seen.push_back({front.body, front.normal, front.facing, front.offset, std::move(pieces)});
}

double turn_of_corner(const Vec& a, const Vec& b, const Vec& c)
{
    return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
}

/// Cells in strips across the paper, so that a face looks at those of its own strips only.
class Strips {
public:
    explicit Strips(const std::vector<Hider>& hiders)
    {
        Extent all;
        for (const Hider& h : hiders) {
            if (h.rim.empty()) continue;
            all.add(h.extent.lo);
            all.add(h.extent.hi);
        }
        lo_ = all.lo.x();
        const double wide = all.hi.x() - lo_;
        per_metre_ = wide > 0 ? kCount / wide : 0;
        strips_.resize(kCount);
        std::vector<const Hider*> order;
        for (const Hider& h : hiders)
            if (!h.rim.empty()) order.push_back(&h);
        // The nearest first: they hide most.
        std::stable_sort(order.begin(), order.end(),
                         [](const Hider* a, const Hider* b) { return a->extent.hi.z() > b->extent.hi.z(); });
        for (const Hider* h : order)
            for (std::size_t k = at(h->extent.lo.x()); k <= at(h->extent.hi.x()); ++k) strips_[k].push_back(h);
    }
    /// Calls `see` with every cell that may hide some of the extent, once, the nearest of each strip first, until it says false.
    template <class See>
    void each_near(const Extent& extent, const See& see) const
    {
        const std::size_t from = at(extent.lo.x()), to = at(extent.hi.x());
        for (std::size_t k = from; k <= to; ++k)
            for (const Hider* h : strips_[k])
                if (h->extent.may_hide(extent) && std::max(at(h->extent.lo.x()), from) == k && !see(*h)) return;
    }

private:
    static constexpr std::size_t kCount = 256;
    std::size_t at(double x) const
    {
        const double k = std::clamp((x - lo_) * per_metre_, 0.0, static_cast<double>(kCount - 1));
        return static_cast<std::size_t>(k);
    }
    double lo_ = 0, per_metre_ = 0;
    std::vector<std::vector<const Hider*>> strips_;
};

std::vector<Polygon> seen_of(const Front& front, const Strips& strips)
{
    std::vector<Polygon> pieces{front.face};
    strips.each_near(front.extent, [&](const Hider& hider) {
        if (hider.rank == front.rank) return true;
        const std::vector<HalfSpace> sides = hiding_sides(front, hider);
        if (!sides.empty()) hide(pieces, sides);
        return !pieces.empty();
    });
    return pieces;
}

} // namespace

std::vector<Vec> outline_of(std::vector<Vec> points)
{
    std::sort(points.begin(), points.end(),
              [](const Vec& a, const Vec& b) { return a.x() != b.x() ? a.x() < b.x() : a.y() < b.y(); });
    const auto same = [](const Vec& a, const Vec& b) {
        return std::abs(a.x() - b.x()) < kHair && std::abs(a.y() - b.y()) < kHair;
    };
    std::vector<Vec> ring;
    const auto half = [&](auto from, auto to) {
        const std::size_t start = ring.size();
        for (auto it = from; it != to; ++it) {
            while (ring.size() >= start + 2) {
                const Vec& a = ring[ring.size() - 2];
                const Vec& b = ring.back();
                // Corners within a hair of the straight line are on it.
                if (turn_of_corner(a, b, *it) > kHair * std::hypot(it->x() - a.x(), it->y() - a.y())) break;
                ring.pop_back();
            }
            if (ring.size() == start || !same(ring.back(), *it)) ring.push_back(*it);
        }
        ring.pop_back();
    };
    if (points.size() < 3) return {};
    half(points.begin(), points.end());
    half(points.rbegin(), points.rend());
    if (ring.size() < 3) ring.clear();
    return ring;
}

std::vector<SeenFace> seen_faces(const std::vector<SeenBody>& bodies, const View& view)
{
    std::vector<Front> fronts;
    std::vector<Hider> hiders;
    for (std::size_t body = 0; body < bodies.size(); ++body)
        for (const Cell& cell : bodies[body].cells)
            if (!cell.empty()) add_cell(cell, body, view, fronts, hiders);
    const Strips strips(hiders);
    std::vector<SeenFace> seen;
    for (const Front& front : fronts) add_seen(seen, front, seen_of(front, strips));
    return seen;
}

} // namespace jointwright::drawing
