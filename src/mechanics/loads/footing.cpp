#include "mechanics/loads/footing.hpp"

#include "mechanics/loads/what_stands.hpp"

#include <cmath>

namespace jointwright {

Weight weight_of(const Given& given, const std::vector<std::size_t>& copies, double floor)
{
    Weight sum;
    for (const std::size_t i : copies) {
        const double weight = given.masses[i] * kStandardGravity;
        const Point& centre = given.layout->centres[i];
        sum.down += weight;
        sum.at[0] += weight * centre[0];
        sum.at[1] += weight * centre[1];
        sum.height += weight * (centre[2] - floor);
    }
    if (sum.down <= 0) return {};
    for (double* part : {&sum.at[0], &sum.at[1], &sum.height}) *part /= sum.down;
    return sum;
}

Footing footing_of(const Given& given)
{
    const Piece& piece = *given.piece;
    Footing footing;
    footing.floor = floor_level(piece);
    std::vector<PlanPoint> feet;
    std::vector<std::size_t> borne, unborne;
    const std::vector<bool> on_edge = stood_on_edge(given);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        (given.layout->path.reached[i] && !on_edge[i] ? borne : unborne).push_back(i);
        if (on_edge[i] || !meets_floor(piece, i, footing.floor)) continue;
        const std::vector<PlanPoint> sole = sole_of(piece.part_of(i), piece.copies[i], footing.floor);
        feet.insert(feet.end(), sole.begin(), sole.end());
    }
    const Weight whole = weight_of(given, borne, footing.floor);
    footing.weight = whole.down;
    footing.centre = whole.at;
    footing.height = whole.height;
    footing.unborne = weight_of(given, unborne, footing.floor);
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
                       {nx, ny},
                       a});
    }
    return all;
}

} // namespace jointwright
