#include "mechanics/structure/read_member.hpp"

#include "mechanics/structure/member_reading.hpp"
#include "mechanics/structure/read_beam.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec3;

constexpr double kSameStation = 0.005; // m
constexpr double kLongBearing = 0.3;   // share of the part's length from which a bearing is more than one support
constexpr int kLongBearingPoints = 5;
constexpr double kWideBearingDepths =
    3; // times a part's depth: a longer bearing holds it at both its ends, and it spans between the near ones

void add_group(std::vector<double>& places, const std::vector<double>& at, std::size_t first, std::size_t last, double same)
{
    if (at[last] - at[first] > 2 * same + kTouch) {
        places.push_back(at[first]);
        places.push_back(at[last]);
        return;
    }
    places.push_back((at[first] + at[last]) / 2);
}

/// Sag of a line against the straight lines between its neighbouring supports, drawn on beyond the outer ones.
void read_line_sag(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<double>& supports,
                   const kernel::FrameSolution& solution)
{
    if (supports.empty()) return;
    const MemberLine& line = structure.lines()[copy];
    const StructureMember& m = structure.member(copy);
    const auto drop = [&](double s) { return -structure.movement(copy, s, 0, solution).z(); };
    std::vector<double> held;
    for (const double s : supports) held.push_back(drop(s));
    std::size_t before = 0; // the support before a place, which only moves on
    const auto chord = [&](double s) {
        if (supports.size() == 1) return held[0];
        while (before + 2 < supports.size() && s > supports[before + 1]) ++before;
        return held[before] +
               (held[before + 1] - held[before]) * (s - supports[before]) / (supports[before + 1] - supports[before]);
    };
    double worst = -1;
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i) {
        const int e = m.first_element + static_cast<int>(i);
        const kernel::BeamElement& beam = structure.frame().beam(e);
        const kernel::Vec12 moved = structure.frame().beam_movement(e, solution.movement), own = beam.to_own(moved);
        const Vec3 up = beam.axes().col(2);
        for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            if (t == 1 && i + 2 < m.along.size()) continue; // the next one begins with it
            const double s = m.along[i] + t * (m.along[i + 1] - m.along[i]);
            if (s < 0 || s > line.length) continue;
            const double rise = t == 0 ? moved(2) : t == 1 ? moved(8) : beam.own_displacement_towards(t, own, up);
            const double down = -rise - chord(s), span = span_about(supports, s);
            // A free end that lifts while the span beside it sags is no sag of its own.
            const bool beyond = s < supports.front() || s > supports.back();
            keep_sag(r, beyond ? down : std::abs(down), span, beyond, worst);
        }
    }
}

void read_line(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<double>& supports,
               const std::vector<ElementLoad>& loads, const kernel::FrameSolution& solution)
{
    const MemberLine& line = structure.lines()[copy];
    const bool edge = line.on_edge();
    const double up = edge ? line.width.z() : line.grain.cross(line.width).z();
    // Losses are told by the far side of the drawn axis; `bottom_loss` is the lower one only where that axis points up.
    const bool axis_up = (edge ? line.width.z() : line.face.z()) > 0;
    double worst_notch = 0, most = 0;
    ShearReader shears;
    for (const LineForces& f : line_forces(structure, copy, loads, solution)) {
        const NetStretch& s = line.upright_section(f.inside);
        const NetStretch& level = edge ? line.face_section(f.inside) : line.width_section(f.inside);
        const double sagging = (edge ? f.moment_y : f.moment_z) * (up > 0 ? 1 : -1), aside = edge ? f.moment_z : f.moment_y;
        const double shear = edge ? f.shear_y : f.shear_z, across = edge ? f.shear_z : f.shear_y;
        const SectionStress stress = section_stress(s, level, sagging, aside, f.tension);
        if (stress.weight() > most) {
            most = stress.weight();
            r.stress = stress.edge();
            r.axial_stress = stress.axial;
            r.axial = f.tension;
            r.moment = sagging;
            r.side_moment = aside;
            r.stress_at = f.at;
            r.span = span_about(supports, f.at);
            r.depth = s.depth;
            r.breadth = s.breadth;
            r.tension_at_notch = ((sagging > 0) == axis_up ? s.bottom_loss : s.top_loss) > 0;
        }
        keep_shear(r, shears.at(s, level, shear, across, f.torsion), f.torsion);
        if (!s.notched()) continue;
        NetStretch notched = s;
        if (!axis_up) std::swap(notched.top_loss, notched.bottom_loss);
        note_notch(r, notched, sagging, std::abs(shear), f.at, supports, worst_notch);
    }
}

/// Where a turned part is borne, along its own line as it stands.
void place_along(Bearing& bearing, const MemberLine& line, double lower_end, const Contact& contact)
{
    bearing.from = 1e30;
    bearing.to = -1e30;
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue; // within the other part
        for (const Point& q : p.outline) {
            const double s = lower_end + std::clamp(line.along(Vec3(q[0], q[1], q[2])), 0.0, line.length);
            bearing.from = std::min(bearing.from, s);
            bearing.to = std::max(bearing.to, s);
        }
    }
    if (bearing.from > bearing.to) bearing.from = bearing.to = lower_end;
}

} // namespace

std::vector<double> support_places(const std::vector<Bearing>& bearings, double lower_end, double length, double depth)
{
    std::vector<double> at;
    const double same = std::max(kSameStation, depth);
    for (const Bearing& b : bearings) {
        if (b.to - b.from < kLongBearing * length - kTouch) {
            if (b.to - b.from < kWideBearingDepths * depth + kTouch) {
                at.push_back((b.from + b.to) / 2 - lower_end);
                continue;
            }
            at.push_back(b.from - lower_end);
            at.push_back(b.to - lower_end);
            continue;
        }
        const int points = std::clamp(static_cast<int>((b.to - b.from + kTouch) / same) + 1, 2, kLongBearingPoints);
        for (int k = 0; k < points; ++k) at.push_back(b.from + (b.to - b.from) * k / (points - 1) - lower_end);
    }
    std::sort(at.begin(), at.end());
    for (double& s : at) s = std::clamp(s, 0.0, length);
    std::vector<double> places;
    for (std::size_t first = 0; first < at.size();) {
        std::size_t last = first;
        while (last + 1 < at.size() && at[last + 1] - at[last] < same + kTouch) ++last;
        add_group(places, at, first, last, same);
        first = last + 1;
    }
    return places;
}

MemberResult read_member(const Structure& structure, const Given& given, std::size_t copy, const std::vector<ElementLoad>& loads,
                         bool edges_count, const kernel::FrameSolution& solution)
{
    MemberResult r;
    r.copy = copy;
    const MemberLine& line = structure.lines()[copy];
    const Piece& piece = *given.piece;
    std::vector<Bearing> bearings = given.layout->path.bearings[copy];
    const double lo = piece.copies[copy].box.lo[index_of(piece.part_of(copy).grain)];
    if (piece.part_of(copy).turn)
        for (Bearing& b : bearings) place_along(b, line, lo, structure.contacts()[b.contact]);
    std::vector<PlateSupport> screws; // to the wall
    for (const Foot& foot : structure.feet()) {
        if (!foot.on_wall()) break; // a piece stands on the floor or hangs on the wall
        if (foot.copy != copy) continue;
        const double s = std::clamp(line.along(foot.at), 0.0, line.length), t = line.across(foot.at);
        screws.push_back({s, s, t, t});
        bearings.push_back({0, copy, lo + s, lo + s, 0});
    }
    const std::vector<double> places = support_places(bearings, lo, line.length, line.size_towards(Vec3::UnitZ()));
    bearings.resize(bearings.size() - screws.size());
    if (line.plate) {
        if (std::abs(line.face.z()) > 0.7) {
            std::vector<PlateSupport> supports = plate_supports(structure, bearings, copy);
            supports.insert(supports.end(), screws.begin(), screws.end());
            read_plate_sag(r, structure, copy, supports, edges_count, solution);
        }
        read_plate(r, structure, copy, places, solution);
    } else {
        read_line_sag(r, structure, copy, places, solution);
        read_line(r, structure, copy, places, loads, solution);
    }
    return r;
}

} // namespace jointwright
