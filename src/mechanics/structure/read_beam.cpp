#include "mechanics/structure/read_beam.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec12;
using kernel::Vec3;

/// One beam with what acts on it, in its own axes.
struct Cut12 {
    Vec12 ends = Vec12::Zero(); ///< forces of its nodes on it
    double length = 0;
    struct Load {
        double from, to;
        Vec3 force;
        double torque; ///< about the beam
    };
    std::vector<Load> loads;

    /// Of the loads before a place: force, their moment about it, and torque.
    struct Before {
        Vec3 force = Vec3::Zero(), lever = Vec3::Zero();
        double torque = 0;
    };
    Before before(double x) const
    {
        Before b;
        for (const Load& l : loads) {
            if (l.from >= x) continue;
            const double to = std::min(l.to, x), share = l.to - l.from > 1e-12 ? (to - l.from) / (l.to - l.from) : 1;
            b.force += share * l.force;
            b.lever += share * l.force * (x - (l.from + to) / 2);
            b.torque += share * l.torque;
        }
        return b;
    }
    LineForces at(double x) const
    {
        const auto [force, lever, torque] = before(x);
        LineForces f;
        f.tension = -ends(0) - force.x();
        f.shear_y = ends(1) + force.y();
        f.shear_z = ends(2) + force.z();
        f.moment_y = -ends(5) + ends(1) * x + lever.y();
        f.moment_z = ends(4) + ends(2) * x + lever.z();
        f.torsion = -ends(3) - torque;
        return f;
    }
};

} // namespace

std::vector<LineForces> line_forces(const Structure& structure, std::size_t copy, const std::vector<CopyLoad>& loads,
                                    const kernel::FrameSolution& solution)
{
    return line_forces(structure, copy, structure.element_loads(copy, loads), solution);
}

namespace {

/// Loads by the beams that they act on; those of one beam in their order.
std::vector<const ElementLoad*> by_beam(const std::vector<ElementLoad>& acting)
{
    std::vector<const ElementLoad*> sorted;
    sorted.reserve(acting.size());
    for (const ElementLoad& load : acting) sorted.push_back(&load);
    const auto before = [](const ElementLoad* a, const ElementLoad* b) { return a->element < b->element; };
    if (!std::is_sorted(sorted.begin(), sorted.end(), before)) std::stable_sort(sorted.begin(), sorted.end(), before);
    return sorted;
}

/// Places of a beam where its forces may be largest: its ends, the edges of its loads, and where the shear passes nought.
void find_places(const Cut12& cut, std::vector<double>& places)
{
    places.assign({0, cut.length});
    for (const Cut12::Load& l : cut.loads) {
        if (l.from > 0 && l.from < cut.length) places.push_back(l.from);
        if (l.to > 0 && l.to < cut.length && l.to != l.from) places.push_back(l.to);
    }
    if (places.size() > 2) {
        std::sort(places.begin(), places.end());
        places.erase(std::unique(places.begin(), places.end()), places.end());
    }
    if (cut.loads.empty()) return;
    // Between these the shear runs straight: where it passes nought the moment is largest.
    const std::size_t edges = places.size();
    for (std::size_t k = 0; k + 1 < edges; ++k) {
        const double a = places[k], b = places[k + 1];
        if (b - a < 1e-9) continue;
        const LineForces fa = cut.at(a + 1e-12), fb = cut.at(b);
        for (const auto& [va, vb] : {std::pair{fa.shear_y, fb.shear_y}, std::pair{fa.shear_z, fb.shear_z}})
            if (va * vb < 0) places.push_back(a + (b - a) * va / (va - vb));
    }
}

} // namespace

std::vector<LineForces> line_forces(const Structure& structure, std::size_t copy, const std::vector<ElementLoad>& acting,
                                    const kernel::FrameSolution& solution)
{
    std::vector<LineForces> all;
    const StructureMember& m = structure.member(copy);
    const double length = structure.lines()[copy].length;
    all.reserve(3 * m.along.size() + 4 * acting.size());
    const std::vector<const ElementLoad*> sorted = by_beam(acting);
    auto next = sorted.begin();
    Cut12 cut;
    std::vector<double> places;
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i) {
        const int e = m.first_element + static_cast<int>(i);
        const kernel::BeamElement& beam = structure.frame().beam(e);
        cut.loads.clear();
        cut.length = beam.length();
        cut.ends = beam.end_forces(structure.frame().beam_movement(e, solution.movement));
        for (; next != sorted.end() && (*next)->element == e; ++next) {
            const ElementLoad& load = **next;
            for (int k = 0; k < 4; ++k) cut.ends.segment<3>(3 * k) -= beam.axes() * load.on_ends.segment<3>(3 * k);
            // Forces laid on the ends turn the beam about itself by the torque of the load alone.
            const double torque = (beam.axes().row(0) * (load.on_ends.segment<3>(3) + load.on_ends.segment<3>(9))).value();
            cut.loads.push_back({load.from * cut.length, load.to * cut.length, beam.axes() * load.force, torque});
        }
        find_places(cut, places);
        for (const double x : places) {
            const double s = m.along[i] + x;
            if (s < -1e-9 || s > length + 1e-9) continue;
            const auto add = [&](double side) {
                LineForces f = cut.at(side);
                f.at = s;
                f.inside = std::clamp(x, 1e-5, cut.length - 1e-5) + m.along[i];
                all.push_back(f);
            };
            // A point load changes the shear in one place: both sides count, but not what is laid on the very end of a beam.
            add(std::max(x, 1e-12));
            const bool point = std::any_of(cut.loads.begin(), cut.loads.end(), [x](const Cut12::Load& l) {
                return l.to - l.from < 1e-12 && std::abs(l.from - x) < 1e-12;
            });
            if (point && x > 0 && x < cut.length) add(std::min(x + 1e-12, cut.length));
        }
    }
    return all;
}

} // namespace jointwright
