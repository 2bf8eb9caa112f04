#include "mechanics/structure/structure.hpp"
#include "mechanics/structure/wall_screws.hpp"

#include "mechanics/loads/footing.hpp"
#include "mechanics/structure/places_apart.hpp"
#include "piece/model/lying.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec3;
using kernel::Vec6;

// Thresholds stand a little off the round figures that makers draw with, so that rounding never decides.
constexpr double kSameNode = 0.00151; // m: places nearer than this are one node
constexpr int kSpanElements = 2;      // beams between two places along a part
constexpr double kShortSpan = 0.05;   // m: between nearer places one is enough
constexpr double kLongestBeam = 0.25; // m
constexpr double kFloor = 1e8;        // N/m: a floor gives nothing that wood would feel
constexpr double kSoleEdge = 0.96;    // of half a sole's size: as far out as its edge bears
constexpr double kFootSpin = 50;      // N m/rad: friction of a sole against spinning on the floor
constexpr double kFootTurn = 1e-5;    // N m/rad: a foot turns freely on its sole
constexpr double kWall = 1e7, kWallTurn = 1e5;
constexpr double kWallEdge = 0.1; // m: an edge that stands out leans on the wall between its screws as well

/// Places with further ones between, so that none is farther from the next than `step`.
std::vector<double> with_steps(const std::vector<double>& places, double step, int least)
{
    std::vector<double> all{places.front()};
    for (std::size_t i = 1; i < places.size(); ++i) {
        const double l = places[i] - places[i - 1];
        const int n = std::max(l < kShortSpan ? 1 : least, static_cast<int>(std::ceil(l / step - 1e-9)));
        for (int k = 1; k <= n; ++k) all.push_back(places[i - 1] + (places[i] - places[i - 1]) * k / n);
    }
    return all;
}

/// Index of the interval of sorted lines that holds a place.
std::size_t interval(const std::vector<double>& lines, double at)
{
    const auto after = std::upper_bound(lines.begin() + 1, lines.end() - 1, at);
    return static_cast<std::size_t>(after - lines.begin()) - 1;
}

/// Corners of a sole, a little within its outline: what is left to a piece whose feet stand in one line.
std::vector<PlanPoint> sole_corners(const Part& part, const Copy& copy, double floor)
{
    std::vector<PlanPoint> corners = line_round(sole_of(part, copy, floor));
    PlanPoint middle{};
    for (const PlanPoint& p : corners)
        for (std::size_t k = 0; k < 2; ++k) middle[k] += p[k] / static_cast<double>(corners.size());
    for (PlanPoint& p : corners)
        for (std::size_t k = 0; k < 2; ++k) p[k] = middle[k] + kSoleEdge * (p[k] - middle[k]);
    return corners;
}

} // namespace

Structure::Structure(const Given& given, const LoadCases& cases, bool on_corners) : piece_(given.piece), layout_(given.layout)
{
    const Piece& piece = *given.piece;
    const std::size_t n = piece.copies.size();
    const auto& contacts = given.layout->contacts;
    const auto& path = given.layout->path;
    members_.resize(n);
    for (std::size_t i = 0; i < n; ++i) {
        lines_.push_back(member_line(*given.facts, piece.part_of(i), piece.copies[i], given.layout->cuts[i]));
        stiffness_.push_back(member_stiffness(*given.facts, given.state_of(i)));
        members_[i].built = path.reached[i];
        const Part& part = piece.part_of(i);
        const Lying lying(part, piece.copies[i]);
        const Point across = lying.direct(lying.across());
        seen_.push_back({lying.from(), lying.middle(), Vec3(across[0], across[1], across[2])});
    }
    // Where springs take hold decides where the nodes lie.
    std::vector<std::vector<JointLink>> links(contacts.size());
    std::vector<std::vector<double>> along(n), across(n);
    const auto note = [&](const LinkEnd& e) {
        along[e.copy].push_back(e.along);
        across[e.copy].push_back(e.across);
    };
    middles_.assign(contacts.size(), Vec3::Zero());
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        double area = 0;
        for (const Patch& p : contacts[c].patches) {
            Vec3 middle = Vec3::Zero();
            for (const Point& q : p.outline) middle += Vec3(q[0], q[1], q[2]) / static_cast<double>(p.outline.size());
            middles_[c] += p.area * middle;
            area += p.area;
        }
        middles_[c] /= std::max(area, 1e-12);
        if (!members_[contacts[c].first].built || !members_[contacts[c].second].built) continue;
        links[c] = joint_links(given, c, lines_, stiffness_);
        for (const JointLink& link : links[c]) {
            note(link.a);
            note(link.b);
        }
    }
    const bool in_line = on_corners || feet_in_line(piece);
    std::vector<std::pair<LinkEnd, Vec3>> feet;
    for (std::size_t i = 0; i < n; ++i)
        if (path.on_floor[i]) stand_on_floor(i, in_line, feet);
    for (const auto& foot : feet) note(foot.first);
    const auto patches = bending_patches(piece, lines_, cases);
    for (std::size_t i = 0; i < n; ++i)
        if (members_[i].built) build_member(i, std::move(along[i]), std::move(across[i]), patches[i]);

    held_.resize(contacts.size());
    lets_.resize(contacts.size());
    held_after_all_.assign(contacts.size(), false);
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        for (const JointLink& link : links[c]) {
            Held held;
            held.link = link;
            if (link.presses)
                held.press = frame_.add_press({link.at, anchor(link.a), anchor(link.b), link.direction, link.press});
            else
                held.tie = frame_.add_tie({link.at, anchor(link.a), anchor(link.b), kernel::Mat6::Zero()});
            held_[c].push_back(held);
        }
        add_mean(held_[c]);
        lets_[c].as_one = lets_[c].out = true;
        for (const Held& h : held_[c])
            if (h.tie >= 0 && h.mean <= 0) lets_[c].turn = h.link.freed;
        set_springs(c);
    }
    const bool wall = !piece.wall.empty();
    for (const auto& [end, at] : feet) {
        Foot foot{end.copy, at};
        Vec6 hold;
        if (wall)
            hold << kWall, kWall, kWall, kWallTurn, kWallTurn, kWallTurn;
        else
            hold << 0, 0, 0, kFootTurn, kFootTurn, kFootSpin;
        foot.tie = frame_.add_tie({at, anchor(end), {}, hold.asDiagonal()});
        if (!wall) {
            foot.press = frame_.add_press({at, anchor(end), {}, Vec3(0, 0, -1), kFloor});
            foot.grip = frame_.add_grip({at, anchor(end), {Vec3::UnitX(), Vec3::UnitY()}, kFloor, foot.press});
        }
        feet_.push_back(foot);
    }
    settle_joints();
    find_loose();
}

/// Springs in a row that are to act as one in a direction, where the joint is let turn, get one more for that: between the means of their places.
void Structure::add_mean(std::vector<Held>& springs)
{
    kernel::Anchor a, b;
    Vec3 at = Vec3::Zero();
    double whole = 0;
    for (const Held& h : springs) whole += h.link.couple.dot(h.link.holding * h.link.couple);
    if (whole <= 0) return;
    Held mean;
    for (const Held& h : springs) {
        const double weight = h.link.couple.dot(h.link.holding * h.link.couple) / whole;
        if (weight <= 0) continue;
        at += weight * h.link.at;
        for (const auto& [own, sum] : {std::pair{anchor(h.link.a), &a}, std::pair{anchor(h.link.b), &b}})
            for (const kernel::Anchor::Share& s : own.shares) sum->shares.push_back({s.node, weight * s.weight});
        mean.direction = h.link.couple;
    }
    mean.link.at = at;
    mean.mean = whole;
    mean.tie = frame_.add_tie({at, a, b, kernel::Mat6::Zero()});
    springs.push_back(std::move(mean));
}

/// Screws to the wall: along the part's middle; of a wide board that stands out from the wall along the edge, or over the end, that meets it.
void Structure::hang_on_wall(std::size_t copy, std::vector<std::pair<LinkEnd, Vec3>>& feet) const
{
    const MemberLine& line = lines_[copy];
    const auto screw = [&](double s, double t) { feet.push_back({{copy, s, t}, line.point(s, t)}); };
    const auto row = [&](double size, double step) { return std::max(2, static_cast<int>(std::ceil(size / step)) + 1); };
    Vec3 to_wall = Vec3::Zero();
    if (const auto side = wall_side(*piece_)) to_wall(static_cast<int>(index_of(axis_of(*side)))) = is_far(*side) ? 1 : -1;
    if (line.plate && std::abs(to_wall.dot(line.grain)) > 0.7) {
        const double s = to_wall.dot(line.grain) > 0 ? line.length : 0;
        const int n = row(line.wide, kWallEdge);
        for (int k = 0; k < n; ++k) screw(s, line.wide * (static_cast<double>(k) / (n - 1) - 0.5));
        return;
    }
    const double across = line.plate ? to_wall.dot(line.width) : 0,
                 t = std::abs(across) > 0.7 ? std::copysign(line.wide / 2, across) : 0;
    const int n = row(line.length, t == 0 ? kWallStep : kWallEdge);
    for (int k = 0; k < n; ++k) screw(line.length * k / (n - 1), t);
}

void Structure::stand_on_floor(std::size_t copy, bool on_corners, std::vector<std::pair<LinkEnd, Vec3>>& feet) const
{
    const MemberLine& line = lines_[copy];
    if (!piece_->wall.empty()) {
        hang_on_wall(copy, feet);
        return;
    }
    const Part& part = piece_->part_of(copy);
    const double floor = floor_level(*piece_);
    for (const PlanPoint& p : on_corners ? sole_corners(part, piece_->copies[copy], floor)
                                         : foot_places(part, piece_->copies[copy], floor, line.plate && !line.lies)) {
        const Vec3 at(p[0], p[1], floor);
        const double s = line.lies ? std::clamp(line.along(at), 0.0, line.length) : line.grain.z() > 0 ? 0 : line.length;
        feet.push_back({{copy, s, std::clamp(line.across(at), -line.wide / 2, line.wide / 2)}, at});
    }
}

void Structure::build_member(std::size_t copy, std::vector<double> places, std::vector<double> across,
                             const std::vector<PlatePatch>& patches)
{
    StructureMember& m = members_[copy];
    const MemberLine& line = lines_[copy];
    if (line.plate) {
        PlateGrid grid = plate_grid(line, std::move(places), std::move(across), patches);
        m.along = std::move(grid.along);
        m.across = std::move(grid.across);
        m.first_node = frame_.nodes();
        for (const double s : m.along)
            for (const double t : m.across) frame_.add_node(line.point(s, t));
        kernel::Mat3 axes;
        axes.row(0) = line.grain;
        axes.row(1) = line.width;
        axes.row(2) = line.grain.cross(line.width);
        for (std::size_t i = 0; i + 1 < m.along.size(); ++i)
            for (std::size_t j = 0; j + 1 < m.across.size(); ++j) {
                const int element = frame_.add_plate({m.node(i, j), m.node(i + 1, j), m.node(i + 1, j + 1), m.node(i, j + 1)},
                                                     m.along[i + 1] - m.along[i], m.across[j + 1] - m.across[j], axes,
                                                     plate_section(line, stiffness_[copy], (m.along[i] + m.along[i + 1]) / 2));
                if (i == 0 && j == 0) m.first_element = element;
            }
        return;
    }
    // A free end is part of it, however short: a load on a stub bends what lies behind.
    sort_apart(places, kSameNode);
    if (places.empty() || places.front() > kSameNode) places.insert(places.begin(), 0);
    if (places.back() < line.length - kSameNode) places.push_back(line.length);
    if (places.size() < 2) places = {0, line.length};
    m.along = with_steps(places, kLongestBeam, places.size() <= 6 ? kSpanElements : 1);
    // Where the section changes well within a beam, it is divided there.
    constexpr double within = 0.00601;
    std::vector<double> changes;
    for (const auto* stretches : {&line.by_face, &line.by_width})
        for (std::size_t k = 1; k < stretches->size(); ++k) {
            const double c = (*stretches)[k].from;
            const bool near = std::any_of(m.along.begin(), m.along.end(), [c](double s) { return std::abs(s - c) < within; });
            if (c > m.along.front() && c < m.along.back() && !near) changes.push_back(c);
        }
    sort_apart(changes, within);
    m.along.insert(m.along.end(), changes.begin(), changes.end());
    std::sort(m.along.begin(), m.along.end());
    m.first_node = frame_.nodes();
    for (const double s : m.along) frame_.add_node(line.point(s));
    for (std::size_t i = 0; i + 1 < m.along.size(); ++i) {
        const int element = frame_.add_beam(m.node(i), m.node(i + 1), line.width,
                                            beam_section(line, stiffness_[copy], (m.along[i] + m.along[i + 1]) / 2));
        if (i == 0) m.first_element = element;
    }
}

namespace {

/// Shares of lines in what lies evenly over `spread` about a place between them, straight from line to line.
std::vector<double> weights_on(const std::vector<double>& lines, double at, double spread)
{
    std::vector<double> weights(lines.size(), 0.0);
    const int n = spread > 1e-6 ? 16 : 1; // places for the sum; their middle is `at` for any number
    for (int k = 0; k < n; ++k) {
        const double place = std::clamp(at + ((k + 0.5) / n - 0.5) * spread, lines.front(), lines.back());
        const std::size_t j = interval(lines, place);
        const double y = (place - lines[j]) / (lines[j + 1] - lines[j]);
        weights[j] += (1 - y) / n;
        weights[j + 1] += y / n;
    }
    return weights;
}

} // namespace

kernel::Anchor Structure::anchor(const LinkEnd& end) const
{
    const StructureMember& m = members_[end.copy];
    if (m.across.empty()) {
        const auto nearest = std::min_element(m.along.begin(), m.along.end(), [&](double a, double b) {
            return std::abs(a - end.along) < std::abs(b - end.along);
        });
        return {{{m.node(static_cast<std::size_t>(nearest - m.along.begin())), 1.0}}};
    }
    const std::size_t i = interval(m.along, end.along);
    const double x = std::clamp((end.along - m.along[i]) / (m.along[i + 1] - m.along[i]), 0.0, 1.0);
    const std::vector<double> on = weights_on(m.across, end.across, end.spread);
    kernel::Anchor anchor;
    for (std::size_t j = 0; j < on.size(); ++j)
        for (const auto& [node, weight] : {std::pair{m.node(i, j), (1 - x) * on[j]}, std::pair{m.node(i + 1, j), x * on[j]}})
            if (weight > 1e-9) anchor.shares.push_back({node, weight});
    return anchor;
}

std::vector<ElementLoad> Structure::element_loads(std::size_t copy, const std::vector<CopyLoad>& loads) const
{
    std::vector<ElementLoad> all;
    const StructureMember& m = members_[copy];
    const MemberLine& line = lines_[copy];
    const SeenFromAbove& seen = seen_[copy];
    const double lo = seen.low;
    for (const CopyLoad& load : loads) {
        const Vec3 force = load.force * Vec3(load.direction[0], load.direction[1], load.direction[2]);
        // Beside the middle it twists the part.
        const Vec3 arm = line.lies ? Vec3((load.across - seen.middle) * seen.across) : Vec3(Vec3::Zero());
        const double torque = arm.cross(force).dot(line.grain);
        const double from = std::clamp(load.from - lo, m.along.front(), m.along.back()),
                     to = std::clamp(load.to - lo, m.along.front(), m.along.back());
        const auto put = [&](std::size_t i, double a, double b, double share) {
            const double s = m.along[i], l = m.along[i + 1] - s;
            ElementLoad e;
            e.element = m.first_element + static_cast<int>(i);
            e.from = std::clamp((a - s) / l, 0.0, 1.0);
            e.to = std::clamp((b - s) / l, 0.0, 1.0);
            e.force = share * force;
            e.on_ends = frame_.beam(e.element).spread(e.from, e.to, e.force, share * torque);
            all.push_back(e);
        };
        // What is drawn beyond the first and last node is laid on them.
        const double whole = load.to - load.from;
        if (whole < 1e-6 || to - from < 1e-6) {
            put(interval(m.along, from), from, from, 1);
            continue;
        }
        const double before = (from - (load.from - lo)) / whole, after = ((load.to - lo) - to) / whole;
        if (before > 1e-9) put(0, from, from, before);
        if (after > 1e-9) put(m.along.size() - 2, to, to, after);
        for (std::size_t i = interval(m.along, from); i + 1 < m.along.size() && m.along[i] < to; ++i) {
            const double a = std::max(from, m.along[i]), b = std::min(to, m.along[i + 1]);
            if (b - a > 1e-9) put(i, a, b, (b - a) / whole);
        }
    }
    return all;
}

void Structure::spread_on_plate(std::size_t copy, const CopyLoad& load, Eigen::Ref<Eigen::VectorXd> nodal) const
{
    const StructureMember& m = members_[copy];
    const Vec3 force = load.force * Vec3(load.direction[0], load.direction[1], load.direction[2]);
    const auto [s0, s1, t0, t1] = plate_patch(*piece_, lines_[copy], load);
    const double area = (s1 - s0) * (t1 - t0);
    for (std::size_t i = interval(m.along, s0); i + 1 < m.along.size() && m.along[i] < s1; ++i)
        for (std::size_t j = interval(m.across, t0); j + 1 < m.across.size() && m.across[j] < t1; ++j) {
            const double a = std::max(s0, m.along[i]), b = std::min(s1, m.along[i + 1]), c = std::max(t0, m.across[j]),
                         d = std::min(t1, m.across[j + 1]);
            if (b <= a || d <= c) continue;
            const auto x = [&](double s) { return 2 * (s - m.along[i]) / (m.along[i + 1] - m.along[i]) - 1; };
            const auto y = [&](double t) { return 2 * (t - m.across[j]) / (m.across[j + 1] - m.across[j]) - 1; };
            const int element = m.first_element + static_cast<int>(i * (m.across.size() - 1) + j);
            const kernel::Vec24 f = frame_.plate(element).spread({x(a), y(c)}, {x(b), y(d)}, force * ((b - a) * (d - c) / area));
            for (std::size_t k = 0; k < 4; ++k)
                nodal.segment<6>(6 * frame_.plate_nodes(element)[k]) += f.segment<6>(6 * static_cast<int>(k));
        }
}

void Structure::add_loads(Eigen::Ref<Eigen::VectorXd> nodal, const std::vector<CopyLoad>& loads) const
{
    for (const CopyLoad& load : loads) {
        if (!members_[load.copy].built) continue;
        if (lines_[load.copy].plate) {
            spread_on_plate(load.copy, load, nodal);
            continue;
        }
        for (const ElementLoad& e : element_loads(load.copy, {load})) {
            const auto& nodes = frame_.beam_nodes(e.element);
            nodal.segment<6>(6 * nodes[0]) += e.on_ends.head<6>();
            nodal.segment<6>(6 * nodes[1]) += e.on_ends.tail<6>();
        }
    }
}

std::vector<kernel::FrameSolution> Structure::solve(const std::vector<std::vector<CopyLoad>>& cases,
                                                    const std::vector<kernel::FloorState>& floors) const
{
    // What acts in every case, own weight above all, stands first in each: it is laid on once.
    std::size_t shared = cases.empty() ? 0 : cases.front().size();
    for (const auto& loads : cases) {
        std::size_t same = 0;
        while (same < std::min(shared, loads.size()) && loads[same] == cases.front()[same]) ++same;
        shared = same;
    }
    const auto part = [](const std::vector<CopyLoad>& loads, std::size_t from, std::size_t to) {
        return std::vector<CopyLoad>(loads.begin() + static_cast<std::ptrdiff_t>(from),
                                     loads.begin() + static_cast<std::ptrdiff_t>(to));
    };
    Eigen::VectorXd in_all = Eigen::VectorXd::Zero(frame_.unknowns());
    if (shared > 0) add_loads(in_all, part(cases.front(), 0, shared));
    Eigen::MatrixXd nodal(frame_.unknowns(), static_cast<Eigen::Index>(cases.size()));
    for (std::size_t k = 0; k < cases.size(); ++k) {
        const auto column = static_cast<Eigen::Index>(k);
        nodal.col(column) = in_all;
        add_loads(nodal.col(column), part(cases[k], shared, cases[k].size()));
    }
    return frame_.solve_all(nodal, floors);
}

ContactForce Structure::contact_force(std::size_t contact, const kernel::FrameSolution& solution) const
{
    ContactForce sum;
    for (const Held& h : held_[contact]) {
        const Vec6 f = h.tie >= 0 ? frame_.tie_force(h.tie, solution.movement) : frame_.press_force(h.press, solution.movement);
        sum.force += f.head<3>();
        sum.moment += f.tail<3>() + (h.link.at - middles_[contact]).cross(f.head<3>());
    }
    return sum;
}

Vec3 Structure::foot_force(const Foot& foot, const kernel::FrameSolution& solution, bool held_down) const
{
    if (foot.on_wall()) return frame_.tie_force(foot.tie, solution.movement).head<3>();
    Vec3 force = frame_.press_force(foot.press, solution.movement).head<3>();
    if (held_down) force.z() = kFloor * frame_.gap(foot.press, solution.movement);
    return force;
}

Vec3 Structure::movement(std::size_t copy, double along, double across, const kernel::FrameSolution& solution) const
{
    Vec3 sum = Vec3::Zero();
    const StructureMember& m = members_[copy];
    if (m.across.empty()) {
        const double s = std::clamp(along, m.along.front(), m.along.back());
        const std::size_t i = interval(m.along, s);
        const int e = m.first_element + static_cast<int>(i);
        const Vec3 own = frame_.beam(e).displacement_at((s - m.along[i]) / (m.along[i + 1] - m.along[i]),
                                                        frame_.beam_movement(e, solution.movement));
        return frame_.beam(e).axes().transpose() * own;
    }
    for (const kernel::Anchor::Share& s : anchor({copy, along, across}).shares)
        sum += s.weight * solution.movement.segment<3>(6 * s.node);
    return sum;
}

} // namespace jointwright
