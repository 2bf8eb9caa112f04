#include "piece/contacts/contact_slivers.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

using Vec = Eigen::Vector3d;

constexpr double kSliver = 0.003; // m
constexpr double kOfThinnest = 0.5;

Vec vec(const Point& p) { return {p[0], p[1], p[2]}; }

bool meet(const Patch& a, const Patch& b)
{
    if (vec(a.normal).dot(vec(b.normal)) < 0.999 || std::abs(vec(a.normal).dot(vec(b.outline[0]) - vec(a.outline[0]))) > kTouch)
        return false;
    for (std::size_t i = 0; i < 3; ++i)
        if (a.bounds.lo[i] > b.bounds.hi[i] + kTouch || b.bounds.lo[i] > a.bounds.hi[i] + kTouch) return false;
    return true;
}

/// The faces that hang together with one of them in its plane, by their places in the list.
std::vector<std::size_t> together(const std::vector<Patch>& patches, std::size_t first)
{
    std::vector<std::size_t> found{first};
    for (std::size_t next = 0; next < found.size(); ++next)
        for (std::size_t i = 0; i < patches.size(); ++i)
            if (std::find(found.begin(), found.end(), i) == found.end() && meet(patches[found[next]], patches[i]))
                found.push_back(i);
    return found;
}

/// The least distance between two parallel lines that hold all corners between them, one of them along some edge.
double narrowest(const std::vector<Patch>& patches, const std::vector<std::size_t>& chosen)
{
    double least = std::numeric_limits<double>::infinity();
    const Vec normal = vec(patches[chosen.front()].normal);
    for (const std::size_t of : chosen) {
        const auto& outline = patches[of].outline;
        for (std::size_t k = 0; k < outline.size(); ++k) {
            const Vec edge = vec(outline[(k + 1) % outline.size()]) - vec(outline[k]);
            if (edge.norm() < 1e-6) continue;
            const Vec across = normal.cross(edge).normalized();
            double lo = std::numeric_limits<double>::infinity(), hi = -lo;
            for (const std::size_t i : chosen)
                for (const Point& p : patches[i].outline) {
                    lo = std::min(lo, across.dot(vec(p)));
                    hi = std::max(hi, across.dot(vec(p)));
                }
            least = std::min(least, hi - lo);
        }
    }
    return least;
}

} // namespace

void mark_slivers(Contact& contact, double thinnest)
{
    const double nothing = std::min(kSliver, kOfThinnest * thinnest);
    for (std::size_t i = 0; i < contact.patches.size(); ++i) {
        const double width = narrowest(contact.patches, together(contact.patches, i));
        // Wood is so stiff that a few hundredths of a face take much: the cube lets that come in slowly.
        const double more = std::clamp(width / nothing - 1, 0.0, 1.0);
        contact.patches[i].bears = more * more * more;
    }
}

} // namespace jointwright
