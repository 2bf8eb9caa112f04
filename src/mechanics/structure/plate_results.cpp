// What plates carry and how they sag.

#include "mechanics/structure/member_reading.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec3;

constexpr double kOneSupport = 0.03; // m: supports of a plate nearer than this, or than twice its thickness, are one

/// Supports of a line, sorted, those close to each other as one in their middle: a line through two that nearly coincide, a leg and the rail
/// tenoned into it, has no direction to be drawn on in.
std::vector<std::pair<double, double>> merged(std::vector<std::pair<double, double>> supports, double same)
{
    std::sort(supports.begin(), supports.end());
    std::vector<std::pair<double, double>> kept;
    for (std::size_t first = 0; first < supports.size();) {
        std::pair<double, double> sum{0, 0};
        std::size_t last = first;
        for (; last < supports.size() && supports[last].first - supports[first].first <= same; ++last) {
            sum.first += supports[last].first;
            sum.second += supports[last].second;
        }
        const double n = static_cast<double>(last - first);
        kept.emplace_back(sum.first / n, sum.second / n);
        first = last;
    }
    return kept;
}

/// Sag at a place on a line across supports, against the straight line between the neighbouring two, drawn on beyond the outer ones; one support:
/// against it.
struct LineSag {
    double sag = 0, span = 0;
};
LineSag sag_on_line(double at, double down, const std::vector<std::pair<double, double>>& supports)
{
    std::vector<double> places;
    for (const auto& s : supports) places.push_back(s.first);
    double chord = supports.front().second;
    if (supports.size() > 1) {
        std::size_t i = 0;
        while (i + 2 < supports.size() && at > supports[i + 1].first) ++i;
        const auto &a = supports[i], &b = supports[i + 1];
        const double apart = b.first - a.first;
        chord = apart > 1e-6 ? a.second + (b.second - a.second) * (at - a.first) / apart : (a.second + b.second) / 2;
    }
    return {down - chord, span_about(places, at)};
}

/// What a plate must bear across its grain. The moment that merely keeps it straight across while it bends along its grain is none of it: a crack
/// along the grain frees that, and nothing falls.
double needed_across(const kernel::PlateForces& f)
{
    const auto [least, most] = std::minmax({f.m_y, f.m_y - f.keeps_straight});
    return least > 0 ? least : most < 0 ? -most : 0;
}

} // namespace

std::vector<PlateSupport> plate_supports(const Structure& structure, const std::vector<Bearing>& bearings, std::size_t copy)
{
    const MemberLine& line = structure.lines()[copy];
    std::vector<PlateSupport> supports;
    for (const Bearing& b : bearings) {
        PlateSupport s{1e30, -1e30, 1e30, -1e30};
        for (const Patch& p : structure.contacts()[b.contact].patches)
            for (const Point& q : p.outline) {
                const Vec3 v(q[0], q[1], q[2]);
                s.s0 = std::min(s.s0, line.along(v));
                s.s1 = std::max(s.s1, line.along(v));
                s.t0 = std::min(s.t0, line.across(v));
                s.t1 = std::max(s.t1, line.across(v));
            }
        supports.push_back(s);
    }
    return supports;
}

void read_plate_sag(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<PlateSupport>& supports,
                    bool edges_count, const kernel::FrameSolution& solution)
{
    if (supports.empty()) return;
    const MemberLine& line = structure.lines()[copy];
    const StructureMember& m = structure.member(copy);
    const auto drop = [&](double s, double t) { return -structure.movement(copy, s, t, solution).z(); };
    const auto onto = [](double v, double lo, double hi) { return std::clamp(v, std::min(lo, hi), std::max(lo, hi)); };
    const double cell = m.across.size() > 1 ? m.across[1] - m.across[0] : line.wide;
    const double same = std::max(kOneSupport, 2 * line.thick);
    double worst = -1;
    for (const double s : m.along)
        for (const double t : m.across) {
            std::vector<std::pair<double, double>> along, across;
            double nearest = 1e30, held = 0;
            for (const PlateSupport& p : supports) {
                const double cs = onto(s, p.s0, p.s1), ct = onto(t, p.t0, p.t1), ds = std::abs(s - cs), dt = std::abs(t - ct);
                const double ms = (p.s0 + p.s1) / 2, mt = (p.t0 + p.t1) / 2;
                // A support that runs beside the place holds it there; one that lies across the line holds it at its middle.
                if (dt < cell / 2 && ds > 0) along.emplace_back(ms, drop(ms, ct));
                if (ds < cell / 2 && dt > 0) across.emplace_back(mt, drop(cs, mt));
                if (std::hypot(ds, dt) < nearest) {
                    nearest = std::hypot(ds, dt);
                    held = drop(cs, ct);
                }
            }
            if (nearest < cell / 4) continue; // it lies on a support
            const double down = drop(s, t);
            along = merged(std::move(along), same);
            across = merged(std::move(across), same);
            for (const auto& [at, on] : {std::pair{s, &along}, std::pair{t, &across}}) {
                if (on->size() < 2) continue;
                const LineSag l = sag_on_line(at, down, *on);
                const auto [first, last] = std::minmax_element(on->begin(), on->end());
                const bool beyond = at < first->first || at > last->first;
                if (!edges_count && beyond) continue;
                keep_sag(r, l.sag, l.span, beyond, worst);
            }
            if (edges_count && along.size() < 2 && across.size() < 2) keep_sag(r, down - held, 2 * nearest, true, worst);
        }
}

void read_plate(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<double>& places,
                const kernel::FrameSolution& solution)
{
    const MemberLine& line = structure.lines()[copy];
    const StructureMember& m = structure.member(copy);
    const bool up = line.grain.cross(line.width).z() > 0, axis_up = line.face.z() > 0;
    double worst_notch = 0, most = 0;
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i)
        for (std::size_t j = 0; j + 1 < m.across.size(); ++j) {
            const int e = m.first_element + static_cast<int>(i * (m.across.size() - 1) + j);
            const kernel::Vec24 u = structure.frame().plate_movement(e, solution.movement);
            const double breadth = m.across[j + 1] - m.across[j], l = m.along[i + 1] - m.along[i];
            for (const double x : {-1.0, 1.0}) {
                const kernel::PlateForces f = structure.frame().plate(e).forces_at(x, 0, u);
                const double at = m.along[i] + (x + 1) / 2 * l;
                NetStretch s = line.face_section(std::clamp(at - 1e-5 * x, 0.0, line.length));
                if (!axis_up) std::swap(s.top_loss, s.bottom_loss);
                // m_x stretches the face that +z of the plate looks to: it sags where that face looks down.
                const double sagging = (up ? -f.m_x : f.m_x) * breadth;
                const SectionStress stress{6 * std::abs(f.m_x) / (s.depth * s.depth), f.n_x / s.depth};
                if (stress.weight() > most) {
                    most = stress.weight();
                    r.stress = stress.edge();
                    r.axial_stress = stress.axial;
                    r.axial = f.n_x * breadth;
                    r.moment = sagging;
                    r.stress_at = at;
                    r.span = span_about(places, at);
                    r.depth = s.depth;
                    r.breadth = breadth;
                    r.tension_at_notch = sagging > 0 ? s.bottom_loss > 0 : s.top_loss > 0;
                }
                keep_shear(r, plate_shear(f, s.depth, breadth), f.m_xy);
                NetStretch strip = s;
                strip.breadth = breadth;
                note_notch(r, strip, sagging, std::abs(f.q_x) * breadth, at, places, worst_notch);
            }
            const double depth = line.face_section((m.along[i] + m.along[i + 1]) / 2).depth;
            for (const double y : {-1.0, 1.0}) {
                const kernel::PlateForces f = structure.frame().plate(e).forces_at(0, y, u);
                r.across_stress = std::max(r.across_stress, 6 * needed_across(f) / (depth * depth));
            }
        }
}

} // namespace jointwright
