// What upright parts carry.

#include "mechanics/structure/member_reading.hpp"
#include "mechanics/structure/read_beam.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// Keeps the places of an upright part that use most.
class PostReader {
public:
    explicit PostReader(PostResult& result) : r_(result) {}

    void keep(double at, double tension, double moment_width, double moment_face, const NetStretch& w, const NetStretch& f)
    {
        const SectionStress stress = section_stress(w, f, moment_width, moment_face, tension);
        if (stress.weight() <= worst_) return;
        worst_ = stress.weight();
        r_.thrust = -tension;
        r_.moment_width = std::abs(moment_width);
        r_.moment_face = std::abs(moment_face);
        r_.bending_stress = stress.bending;
        r_.thrust_stress = std::abs(stress.axial);
        r_.at = at;
        r_.area = std::min(w.area, f.area);
        r_.depth_width = w.depth;
        r_.depth_face = f.depth;
    }
    void keep(double at, const SectionShear& shear, double torsion)
    {
        if (shear.stress > r_.shear_stress) r_.shear_at = at;
        keep_shear(r_, shear, torsion);
    }

private:
    PostResult& r_;
    double worst_ = -1;
};

/// What is left of a section over a strip of a plate.
NetStretch strip_of(const NetStretch& section, double breadth)
{
    NetStretch strip = section;
    strip.breadth = breadth;
    strip.inertia = breadth * strip.depth * strip.depth * strip.depth / 12;
    strip.area = breadth * strip.depth;
    return strip;
}

} // namespace

PostResult read_post(const Structure& structure, std::size_t copy, const std::vector<ElementLoad>& loads,
                     const kernel::FrameSolution& solution)
{
    PostResult r;
    r.copy = copy;
    const MemberLine& line = structure.lines()[copy];
    PostReader reader(r);
    if (!line.plate) {
        ShearReader shears;
        for (const LineForces& f : line_forces(structure, copy, loads, solution)) {
            const NetStretch &w = line.width_section(f.inside), &t = line.face_section(f.inside);
            reader.keep(f.at, f.tension, f.moment_y, f.moment_z, w, t);
            reader.keep(f.at, shears.at(w, t, f.shear_y, f.shear_z, f.torsion), f.torsion);
        }
        return r;
    }
    const StructureMember& m = structure.member(copy);
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i)
        for (std::size_t j = 0; j + 1 < m.across.size(); ++j) {
            const int e = m.first_element + static_cast<int>(i * (m.across.size() - 1) + j);
            const kernel::PlateForces f =
                structure.frame().plate(e).forces_at(0, 0, structure.frame().plate_movement(e, solution.movement));
            const double at = (m.along[i] + m.along[i + 1]) / 2, breadth = m.across[j + 1] - m.across[j];
            const NetStretch strip = strip_of(line.face_section(at), breadth);
            reader.keep(at, f.n_x * breadth, 0, f.m_x * breadth, strip, strip);
            reader.keep(at, plate_shear(f, strip.depth, breadth), f.m_xy);
        }
    return r;
}

} // namespace jointwright
