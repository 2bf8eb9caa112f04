#include "mechanics/structure/wall_screws.hpp"

#include "mechanics/loads/footing.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace jointwright {

void note_wall_screws(std::vector<WallScrew>& worst, const Piece& piece, const Structure& structure, std::size_t load_case,
                      const kernel::FrameSolution& solution)
{
    using kernel::Vec3;
    const auto side = wall_side(piece);
    if (!side) return;
    Vec3 to_wall = Vec3::Zero();
    to_wall(static_cast<int>(index_of(axis_of(*side)))) = is_far(*side) ? 1 : -1;
    const Vec3 along = to_wall.cross(Vec3::UnitZ());
    for (const Foot& foot : structure.feet()) {
        if (!foot.on_wall()) continue;
        const kernel::Vec6 f = structure.frame().tie_force(foot.tie, solution.movement);
        const Vec3 force = f.head<3>();
        const double lever = 0.9 * structure.lines()[foot.copy].size_towards(Vec3::UnitZ()) / 2;
        const double rolls = std::abs(f.tail<3>().dot(along)) / std::max(lever, 1e-3);
        const WallScrew here{foot.copy, load_case, std::max(0.0, -force.dot(to_wall)) + rolls,
                             (force - force.dot(to_wall) * to_wall).norm()};
        const auto known = std::find_if(worst.begin(), worst.end(), [&](const WallScrew& w) { return w.copy == foot.copy; });
        if (known == worst.end())
            worst.push_back(here);
        else if (here.pull + here.across > (known->pull + known->across) * (1 + 1e-9))
            *known = here;
    }
}

} // namespace jointwright
