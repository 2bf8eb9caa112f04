#include "mechanics/structure/section_stress.hpp"

#include "mechanics/beam/torsion.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

SectionShear ShearReader::at(const NetStretch& first, const NetStretch& second, double force_first, double force_second,
                             double torsion)
{
    if (first_ != &first || second_ != &second) {
        first_ = &first;
        second_ = &second;
        const double depth = std::min(first.depth, second.breadth), breadth = std::min(first.breadth, second.depth);
        const RectangleTorsion t = torsion_of(depth, breadth);
        // A mortise or groove counts as if it thinned the section, whose resistance goes by the square of its thickness.
        const double left = std::min(1.0, std::min(first.area, second.area) / (depth * breadth));
        beside_first_ = left * left * t.modulus_a;
        beside_second_ = left * left * t.modulus_b;
    }
    const double one = 1.5 * std::abs(force_first) / first.area, other = 1.5 * std::abs(force_second) / second.area;
    const double twist_one = std::abs(torsion) / beside_first_, twist_other = std::abs(torsion) / beside_second_;
    const SectionShear points[] = {{std::hypot(one, other), std::hypot(force_first, force_second), 0, first.area},
                                   {one + twist_one, std::abs(force_first), twist_one, first.area},
                                   {other + twist_other, std::abs(force_second), twist_other, second.area}};
    return *std::max_element(std::begin(points), std::end(points),
                             [](const SectionShear& a, const SectionShear& b) { return a.stress < b.stress; });
}

SectionShear plate_shear(const kernel::PlateForces& f, double thickness, double breadth)
{
    const double across = 1.5 * std::abs(f.q_x) / thickness, within = std::abs(f.n_xy) / thickness,
                 twist = 6 * std::abs(f.m_xy) / (thickness * thickness), area = breadth * thickness;
    const SectionShear middle{std::hypot(across, within), std::hypot(f.q_x, f.n_xy) * breadth, 0, area},
        face{within + twist, std::abs(f.n_xy) * breadth, twist, area};
    return middle.stress > face.stress ? middle : face;
}

SectionStress section_stress(const NetStretch& first, const NetStretch& second, double moment_first, double moment_second,
                             double tension)
{
    return {std::abs(moment_first) * first.outer / first.inertia + std::abs(moment_second) * second.outer / second.inertia,
            tension / std::min(first.area, second.area)};
}

} // namespace jointwright
