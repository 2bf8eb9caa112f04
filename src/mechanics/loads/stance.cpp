#include "mechanics/loads/stance.hpp"

#include "piece/model/lying.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

double Stance::base(std::size_t axis, bool far) const
{
    double least = -1e30; // the farthest foot that way; feet on one line have no edge but that
    for (const PlanPoint& p : line) least = std::max(least, far ? p[axis] - centre[axis] : centre[axis] - p[axis]);
    for (std::size_t i = 0; i < line.size(); ++i) {
        const PlanPoint &a = line[i], &b = line[(i + 1) % line.size()];
        const PlanPoint out{b[1] - a[1], a[0] - b[0]}; // anticlockwise, the outside lies to the right of an edge
        const double towards = far ? out[axis] : -out[axis];
        if (towards < 1e-6 * std::hypot(out[0], out[1])) continue;
        least = std::min(least, ((a[0] - centre[0]) * out[0] + (a[1] - centre[1]) * out[1]) / towards);
    }
    return line.empty() ? 0 : least;
}

Stance stance_of(const Piece& piece, const std::vector<CopyLoad>& loads)
{
    Stance s;
    for (const CopyLoad& load : loads) {
        const Point at = Lying(piece.part_of(load.copy), piece.copies[load.copy]).place((load.from + load.to) / 2, load.across);
        s.weight += load.force;
        s.centre[0] += load.force * at[0];
        s.centre[1] += load.force * at[1];
    }
    if (s.weight > 0)
        for (double& c : s.centre) c /= s.weight;
    s.floor = floor_level(piece);
    std::vector<PlanPoint> feet;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (!meets_floor(piece, i, s.floor)) continue;
        const std::vector<PlanPoint> places = foot_places(piece.part_of(i), piece.copies[i], s.floor, false);
        feet.insert(feet.end(), places.begin(), places.end());
    }
    s.line = line_round(feet);
    return s;
}

} // namespace jointwright
