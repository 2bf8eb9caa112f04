#include "mechanics/structure/member_line.hpp"

#include "mechanics/beam/torsion.hpp"
#include "mechanics/given/given.hpp"
#include "piece/model/turn.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec3;

constexpr double kPlateWidth = 0.15;     // m: narrower parts bend as beams
constexpr double kPlateSlenderness = 5;  // width over thickness from which a part is a plate
constexpr double kPlateSquatness = 0.12; // width over length below which even a wide board is a beam
constexpr double kStandIn = 10e9;        // Pa: hands loads on where a wood's modulus is not known
constexpr double kPoisson = 0.37;        // ν_LR, hardwood average of Wood Handbook table 5-2 (from memory); hardly matters

Vec3 vec3(const Point& p) { return {p[0], p[1], p[2]}; }

const NetStretch& stretch_holding(const std::vector<NetStretch>& stretches, double at)
{
    if (stretches.size() == 1) return stretches.front();
    const auto holding =
        std::lower_bound(stretches.begin(), stretches.end(), at, [](const NetStretch& s, double p) { return s.to < p; });
    return holding == stretches.end() ? stretches.back() : *holding;
}

/// The same for the middle of an element: on the line between two stretches the weaker counts, so that rounding does not decide.
const NetStretch& stretch_about(const std::vector<NetStretch>& stretches, double at)
{
    constexpr double hair = 1e-6; // m
    const NetStretch &before = stretch_holding(stretches, at - hair), &behind = stretch_holding(stretches, at + hair);
    return before.inertia < behind.inertia ? before : behind;
}

std::vector<NetStretch> from_nought(std::vector<NetStretch> stretches, double lo)
{
    for (NetStretch& s : stretches) {
        s.from -= lo;
        s.to -= lo;
    }
    return stretches;
}

} // namespace

MemberStiffness member_stiffness(const Facts& facts, const PartState& state)
{
    MemberStiffness m;
    const WoodState& wood = state.loaded;
    m.known = wood.modulus_along.has_value();
    m.along = m.known ? wood.modulus_along->value.value() : kStandIn;
    const double by_ratio = m.along / facts.number("e_over_g").value;
    const double lr = wood.shear_modulus_lr ? wood.shear_modulus_lr->value.value() : by_ratio;
    const double lt = wood.shear_modulus_lt ? wood.shear_modulus_lt->value.value() : by_ratio;
    // Flat-sawn, the thickness runs radially and the width tangentially; quarter-sawn the other way round.
    const double quarter = in_degrees(state.rings) / 90;
    m.shear_face = (1 - quarter) * lr + quarter * lt;
    m.shear_width = (1 - quarter) * lt + quarter * lr;
    const double tangential = wood.modulus_tangential ? wood.modulus_tangential->value.value() : 0.06 * m.along;
    const double radial = wood.modulus_radial ? wood.modulus_radial->value.value() : 0.1 * m.along;
    m.across = (1 - quarter) * tangential + quarter * radial;
    m.rolling = wood.shear_modulus_rt ? wood.shear_modulus_rt->value.value() : 0.35 * tangential;
    return m;
}

double MemberLine::size_towards(const Vec3& d) const
{
    return std::abs(d.dot(grain)) * length + std::abs(d.dot(width)) * wide + std::abs(d.dot(face)) * thick;
}

const NetStretch& MemberLine::face_section(double at) const { return stretch_holding(by_face, at); }
const NetStretch& MemberLine::width_section(double at) const { return stretch_holding(by_width, at); }

MemberLine member_line(const Facts& facts, const Part& part, const Copy& copy, const std::vector<Cut>& cuts)
{
    MemberLine line;
    const PartAxes axes = axes_of(part, copy);
    line.grain = vec3(axes.grain);
    line.width = vec3(axes.width);
    line.face = vec3(axes.face);
    const std::size_t g = index_of(part.grain);
    Point end{copy.box.middle(Axis::x), copy.box.middle(Axis::y), copy.box.middle(Axis::z)};
    end[g] = copy.box.lo[g];
    if (const auto turn = turn_of(part, copy)) end = turn->place(end);
    line.start = vec3(end);
    line.length = copy.box.size(part.grain);
    line.wide = in_metres(part.width);
    line.thick = in_metres(part.thickness);
    line.lies = std::abs(line.grain.z()) < 0.7;
    const double narrow = std::min(line.wide, line.thick), broad = std::max(line.wide, line.thick);
    line.plate = narrow == line.thick && broad > kPlateWidth - 1e-6 && broad > kPlateSlenderness * narrow - 1e-6 &&
                 broad > kPlateSquatness * line.length - 1e-6;
    line.by_face = from_nought(net_stretches(facts, part, copy, cuts, part.face), copy.box.lo[g]);
    line.by_width = from_nought(net_stretches(facts, part, copy, cuts, part.width_axis()), copy.box.lo[g]);
    return line;
}

kernel::BeamSection beam_section(const MemberLine& line, const MemberStiffness& m, double at)
{
    const NetStretch &f = stretch_about(line.by_face, at), &w = stretch_about(line.by_width, at);
    kernel::BeamSection s;
    const double area = std::min(f.area, w.area);
    s.axial = m.along * area;
    s.bending_y = m.along * w.inertia;
    s.bending_z = m.along * f.inertia;
    s.shear_y = m.shear_width * 5.0 / 6 * area;
    s.shear_z = m.shear_face * 5.0 / 6 * area;
    // G of wood in twist: the geometric mean of the two (Wood Handbook chapter 9, from memory).
    s.twisting = std::sqrt(m.shear_width * m.shear_face) * torsion_of(w.depth, f.depth).constant;
    return s;
}

kernel::PlateSection plate_section(const MemberLine& line, const MemberStiffness& m, double at)
{
    const NetStretch& f = stretch_about(line.by_face, at);
    kernel::PlateSection s;
    s.thickness = std::cbrt(12 * f.inertia / line.wide);
    s.modulus_x = m.along;
    s.modulus_y = m.across;
    s.shear_xy = m.shear_width;
    s.shear_xz = m.shear_face;
    s.shear_yz = m.rolling;
    s.poisson_xy = kPoisson;
    return s;
}

double modulus_towards(const MemberLine& line, const MemberStiffness& m, const Vec3& direction)
{
    const double c = direction.dot(line.grain), c2 = c * c;
    return m.along * m.across / (m.along * (1 - c2) + m.across * c2);
}

} // namespace jointwright
