#include "mechanics/member_results.hpp"

#include "mechanics/beam_reading.hpp"

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

/// Span about a place: the distance between its neighbouring supports, twice the overhang beyond the outer ones.
double span_about(const std::vector<double>& supports, double at)
{
    constexpr double on_support = 1e-6;
    if (supports.empty()) return 0;
    if (at < supports.front() - on_support) return 2 * (supports.front() - at);
    if (at > supports.back() + on_support) return 2 * (at - supports.back());
    if (supports.size() < 2) return 0;
    const auto after = std::lower_bound(supports.begin() + 1, supports.end() - 1, at - on_support);
    return *after - *(after - 1);
}

/// @param beyond  the place lies on an overhang, so that the span is twice that
void keep_sag(MemberResult& r, double sag, double span, bool beyond, double& worst)
{
    if (span > 0 && sag / span > worst) {
        worst = sag / span;
        r.sag = sag;
        r.sag_span = span;
        r.sag_overhangs = beyond;
    }
    if (sag > r.most_sag) {
        r.most_sag = sag;
        r.most_sag_span = span;
        r.most_sag_overhangs = beyond;
    }
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

void note_notch(MemberResult& r, const NetStretch& s, double sagging, double shear, double at,
                const std::vector<double>& supports, double& worst)
{
    const double loss = sagging > 0 ? s.bottom_loss : s.top_loss;
    if (loss <= 0) return;
    const double weight = std::abs(sagging) * 6 / (s.breadth * s.depth * s.depth) + shear * 1.5 / (s.breadth * s.depth);
    if (weight <= worst) return;
    worst = weight;
    r.notch_moment = std::abs(sagging);
    r.notch_shear = shear;
    r.notch_left = s.depth;
    r.notch_whole = s.depth + loss;
    r.notch_breadth = s.breadth;
    r.notch_at = at;
    const double span = supports.size() > 1 ? supports.back() - supports.front() : 0,
                 from = supports.empty() ? 0 : at - supports.front();
    r.notch_near_end = span <= 0 || from < r.notch_whole || span - from < r.notch_whole;
    r.notch_in_middle_third = span > 0 && from > span / 3 && from < 2 * span / 3;
}

void read_line(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<double>& supports,
               const std::vector<ElementLoad>& loads, const kernel::FrameSolution& solution)
{
    const MemberLine& line = structure.lines()[copy];
    const bool edge = line.on_edge();
    const double up = edge ? line.width.z() : line.grain.cross(line.width).z();
    // Losses are told by the far side of the drawn axis; `bottom_loss` is the lower one only where that axis points up.
    const bool axis_up = (edge ? line.width.z() : line.face.z()) > 0;
    double worst_notch = 0, most_shear = 0, most_stress = 0; // of shear their squares
    for (const LineForces& f : line_forces(structure, copy, loads, solution)) {
        const NetStretch& s = line.upright_section(f.inside);
        const NetStretch& level = edge ? line.face_section(f.inside) : line.width_section(f.inside);
        const double sagging = (edge ? f.moment_y : f.moment_z) * (up > 0 ? 1 : -1), aside = edge ? f.moment_z : f.moment_y;
        const double shear = std::abs(edge ? f.shear_y : f.shear_z), across = std::abs(edge ? f.shear_z : f.shear_y);
        const double stress = std::abs(sagging) * s.outer / s.inertia + std::abs(aside) * level.outer / level.inertia;
        if (stress > r.stress) {
            r.stress = stress;
            r.moment = sagging;
            r.side_moment = aside;
            r.stress_at = f.at;
            r.span = span_about(supports, f.at);
            r.depth = s.depth;
            r.breadth = s.breadth;
            r.tension_at_notch = ((sagging > 0) == axis_up ? s.bottom_loss : s.top_loss) > 0;
        }
        const double vs = shear / s.area, vl = across / level.area;
        most_shear = std::max(most_shear, shear * shear + across * across);
        most_stress = std::max(most_stress, vs * vs + vl * vl);
        if (!s.notched()) continue;
        NetStretch notched = s;
        if (!axis_up) std::swap(notched.top_loss, notched.bottom_loss);
        note_notch(r, notched, sagging, shear, f.at, supports, worst_notch);
    }
    r.shear = std::sqrt(most_shear);
    r.shear_stress = 1.5 * std::sqrt(most_stress);
}

/// A face on which a plate lies, in the plate's own measures.
struct Support {
    double s0, s1, t0, t1;
};

std::vector<Support> plate_supports(const Structure& structure, const std::vector<Bearing>& bearings, std::size_t copy,
                                    const std::vector<Contact>& contacts)
{
    const MemberLine& line = structure.lines()[copy];
    std::vector<Support> supports;
    for (const Bearing& b : bearings) {
        Support s{1e30, -1e30, 1e30, -1e30};
        for (const Patch& p : contacts[b.contact].patches)
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

/// Sag of a plate at each of its grid points: along the grain and across it, against the supports on that line; where no support lies on
/// either, against the nearest.
void read_plate_sag(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<Support>& supports,
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
            for (const Support& p : supports) {
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
    double worst_notch = 0;
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
                const double sagging = (up ? -f.m_x : f.m_x) * breadth, d2 = s.depth * s.depth;
                const double stress = 6 * std::abs(f.m_x) / d2;
                if (stress > r.stress) {
                    r.stress = stress;
                    r.moment = sagging;
                    r.stress_at = at;
                    r.span = span_about(places, at);
                    r.depth = s.depth;
                    r.breadth = breadth;
                    r.tension_at_notch = sagging > 0 ? s.bottom_loss > 0 : s.top_loss > 0;
                }
                if (1.5 * std::abs(f.q_x) / s.depth > r.shear_stress) {
                    r.shear_stress = 1.5 * std::abs(f.q_x) / s.depth;
                    r.shear = std::abs(f.q_x) * breadth;
                }
                NetStretch strip = s;
                strip.breadth = breadth;
                note_notch(r, strip, sagging, std::abs(f.q_x) * breadth, at, places, worst_notch);
            }
            const kernel::PlateForces middle = structure.frame().plate(e).forces_at(0, 0, u);
            const double depth = line.face_section((m.along[i] + m.along[i + 1]) / 2).depth;
            r.across_stress = std::max(r.across_stress, 6 * std::abs(middle.m_y) / (depth * depth));
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

MemberResult read_member(const Structure& structure, const Piece& piece, const Statics& statics, std::size_t copy,
                         const std::vector<ElementLoad>& loads, bool edges_count, const kernel::FrameSolution& solution)
{
    MemberResult r;
    r.copy = copy;
    const MemberLine& line = structure.lines()[copy];
    std::vector<Bearing> bearings = statics.path.bearings[copy];
    const double lo = piece.copies[copy].box.lo[index_of(piece.part_of(copy).grain)];
    if (piece.part_of(copy).turn)
        for (Bearing& b : bearings) place_along(b, line, lo, structure.contacts()[b.contact]);
    std::vector<Support> screws; // to the wall
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
            std::vector<Support> supports = plate_supports(structure, bearings, copy, structure.contacts());
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

PostResult read_post(const Structure& structure, std::size_t copy, const std::vector<ElementLoad>& loads,
                     const kernel::FrameSolution& solution)
{
    PostResult r;
    r.copy = copy;
    const MemberLine& line = structure.lines()[copy];
    double worst = -1;
    const auto keep = [&](double at, double thrust, double mw, double mf, double area, const NetStretch& w, const NetStretch& f) {
        const double bending = std::abs(mw) * w.outer / w.inertia + std::abs(mf) * f.outer / f.inertia,
                     pressed = std::abs(thrust) / area;
        if (bending + pressed <= worst) return;
        worst = bending + pressed;
        r.thrust = thrust;
        r.moment_width = std::abs(mw);
        r.moment_face = std::abs(mf);
        r.bending_stress = bending;
        r.thrust_stress = pressed;
        r.at = at;
        r.area = area;
        r.depth_width = w.depth;
        r.depth_face = f.depth;
    };
    if (!line.plate) {
        for (const LineForces& f : line_forces(structure, copy, loads, solution)) {
            const NetStretch &w = line.width_section(f.inside), &t = line.face_section(f.inside);
            keep(f.at, -f.tension, f.moment_y, f.moment_z, std::min(w.area, t.area), w, t);
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
            NetStretch strip = line.face_section(at);
            strip.breadth = breadth;
            strip.inertia = breadth * strip.depth * strip.depth * strip.depth / 12;
            strip.area = breadth * strip.depth;
            keep(at, -f.n_x * breadth, 0, f.m_x * breadth, strip.area, strip, strip);
        }
    return r;
}

} // namespace jointwright
