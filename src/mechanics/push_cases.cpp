// Pushes, leaning and lifts: load cases that try whether a piece holds together and stays on its feet.

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/back_rest.hpp"
#include "mechanics/footing.hpp"
#include "mechanics/load_placing.hpp"
#include "piece/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

/// A level force on everything that carries, shared by area.
std::vector<CopyLoad> push_on(const Piece& piece, const std::vector<std::size_t>& carried, std::size_t axis, double force)
{
    std::vector<CopyLoad> loads = spread(piece, carried, joint_plan(piece, carried), std::abs(force));
    for (CopyLoad& load : loads) {
        load.direction = {0, 0, 0};
        load.direction[axis] = force > 0 ? 1 : -1;
    }
    return loads;
}

const char* towards(std::size_t axis, bool far)
{
    return axis == 0 ? (far ? "to the right" : "to the left") : (far ? "to the back" : "to the front");
}

/// What weighs on the floor, where, and between which lines.
struct Standing {
    double weight = 0, floor = 1e30;
    std::array<double, 2> centre{};
    std::vector<PlanPoint> line; ///< round the feet
    /// Way from the centre of the weight to the line round the feet on one side, as far as a push that way is concerned: over a slanting
    /// edge of that line, as between three feet, it tips sooner than straight ahead.
    double base(std::size_t axis, bool far) const;
};

double Standing::base(std::size_t axis, bool far) const
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

Standing standing_of(const Piece& piece, const std::vector<CopyLoad>& loads)
{
    Standing s;
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

/// A sitter's place on a seat, kept within it where it is large enough.
/// @param along   the axis of `at`; `across` lies on the other
Plan place_on(const Plan& seat, std::size_t along, double at, double across, double wide, double deep)
{
    const auto within = [&](std::size_t axis, double middle, double size) {
        const double least = seat.lo(axis) + size / 2, most = seat.hi(axis) - size / 2;
        return least < most ? std::clamp(middle, least, most) : (least + most) / 2;
    };
    const double a = within(along, at, wide), b = within(1 - along, across, deep);
    if (along == 0) return {a - wide / 2, a + wide / 2, b - deep / 2, b + deep / 2};
    return {b - deep / 2, b + deep / 2, a - wide / 2, a + wide / 2};
}

constexpr double kShortOfTipping = 0.9; // a push that would tip the piece is lessened to this share, as testers do

/// Pushes both ways along both axes, with something heavy on top.
/// @param forces  along x and along y
void add_pushes(LoadCases& cases, const Piece& piece, const std::vector<std::size_t>& carried, const std::string& what,
                const std::array<const Datum<double>*, 2>& forces, double weight)
{
    const std::vector<CopyLoad> down = spread(piece, carried, joint_plan(piece, carried), weight);
    std::vector<CopyLoad> all = cases.lasting;
    all.insert(all.end(), down.begin(), down.end());
    const Standing standing = standing_of(piece, all);
    double height = 0;
    for (const std::size_t i : carried)
        height = std::max(height, bounds_of(piece.part_of(i), piece.copies[i]).hi[2] - standing.floor);
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            double force = forces[axis]->value;
            if (piece.wall.empty() && height > 0)
                force = std::min(force, kShortOfTipping * standing.weight * std::max(0.0, standing.base(axis, far)) / height);
            if (force < 1) continue;
            std::vector<CopyLoad> loads = push_on(piece, carried, axis, far ? force : -force);
            loads.insert(loads.end(), down.begin(), down.end());
            const bool lessened = force < forces[axis]->value * (1 - 1e-9);
            add_case(cases,
                     fmt::format("{} pushed {} with {} N{}", what, towards(axis, far), write_number(force, 3),
                                 lessened ? ", just short of tipping it" : ""),
                     true, LoadDuration::short_term, false, std::move(loads), forces[axis]->cite);
            cases.cases.back().push = true;
        }
}

} // namespace

/// The force with which the piece is just not taken off the floor by one place of it, and the weights that jerk with it: they pull at the place.
void add_lifts(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    if (!piece.wall.empty()) return;
    const Datum<double>& jerk = facts.number("lift_factor");
    // Emptied before it is lifted: what the design says lies on it is taken off.
    std::vector<CopyLoad> own(cases.lasting.begin(), cases.lasting.begin() + static_cast<std::ptrdiff_t>(piece.copies.size())),
        laid_on;
    laid_on.assign(cases.lasting.begin() + static_cast<std::ptrdiff_t>(piece.copies.size()), cases.lasting.end());
    const Standing standing = standing_of(piece, own);
    const double weight = standing.weight;
    if (weight <= 0) return;
    std::set<std::size_t> handles;
    for (std::size_t k = 0; k < carried.size(); ++k)
        if (k == 0 || k + 1 == carried.size() || k == carried.size() / 2) handles.insert(carried[k]);
    for (const std::size_t i : handles) {
        const Lying lying(piece.part_of(i), piece.copies[i]);
        if (lying.upright()) continue;
        // Taken hold of in the middle of its length, at the edge farther from the middle of the piece.
        const double middle = (lying.from() + lying.to()) / 2;
        const auto far_out = [&](double across) {
            const Point p = lying.place(middle, across);
            return std::hypot(p[0] - standing.centre[0], p[1] - standing.centre[1]);
        };
        const double near_edge = lying.middle() - lying.breadth() / 2, far_edge = lying.middle() + lying.breadth() / 2,
                     edge = far_out(near_edge) > far_out(far_edge) + kTouch ? near_edge : far_edge;
        const Point hold = lying.place(middle, edge);
        double share = 0.98;
        for (const std::size_t axis : {std::size_t{0}, std::size_t{1}}) {
            const double off = hold[axis] - standing.centre[axis], base = kShortOfTipping * standing.base(axis, off <= 0);
            if (std::abs(off) + base > 1e-6) share = std::min(share, std::max(0.0, base / (std::abs(off) + base)));
        }
        std::vector<CopyLoad> loads;
        for (CopyLoad load : own) {
            load.force *= jerk.value - 1;
            loads.push_back(load);
        }
        for (CopyLoad load : laid_on) {
            load.force = -load.force;
            loads.push_back(load);
        }
        const double half = std::min(facts.number("table_patch").value, lying.to() - lying.from()) / 2;
        const double lifted =
            std::min(share * weight, facts.number("lift_most").value); // heavier pieces are lifted by two, at their frame
        loads.push_back({i, middle - half, middle + half, jerk.value * lifted, edge, 0, {0, 0, 1}});
        add_case(cases, fmt::format("the piece lifted by the edge of {}", piece.label(i, true)), true, LoadDuration::short_term,
                 false, std::move(loads), jerk.cite);
        cases.cases.back().lift = true;
        cases.cases.back().total = 0; // a jerk up and the weights that answer it
        for (const CopyLoad& load : cases.cases.back().loads) cases.cases.back().total -= load.direction[2] * load.force;
    }
}

/// Sideways: the loads of the leg tests; the side that is longer is pushed as chairs are pushed sideways.
void add_seat_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const std::string level(level_key(piece.limits.level));
    const Datum<double>*side = &facts.number("push_" + level), *front = &facts.number("push_front_" + level);
    const bool along_x = plan.size(0) >= plan.size(1);
    add_pushes(cases, piece, carried, "the loaded seat", {along_x ? side : front, along_x ? front : side},
               facts.number("push_seat_load").value);
}

void add_case_pushes(LoadCases& cases, const Piece& piece, const Facts& facts)
{
    if (!piece.wall.empty()) return;
    // Leaned on at the top, or at the height of a shoulder on a taller case.
    const double floor = floor_level(piece);
    double top = -1e30;
    std::vector<Box> bounds;
    for (const Copy& copy : piece.copies) {
        bounds.push_back(bounds_of(piece.parts[copy.part], copy));
        top = std::max(top, bounds.back().hi[2]);
    }
    const double height = std::min(top, floor + facts.number("lean_height").value);
    std::vector<std::size_t> at; // what reaches that height
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (bounds[i].hi[2] > height - kTouch && bounds[i].lo[2] < height + kTouch) at.push_back(i);
    if (at.empty() || height - floor < 0.01) return;
    const Standing standing = standing_of(piece, cases.lasting);
    const Datum<double>& lean = facts.number("case_lean");
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            const double force = std::min(lean.value, kShortOfTipping * standing.weight *
                                                          std::max(0.0, standing.base(axis, far)) / (height - floor));
            if (force < 1) continue;
            std::vector<CopyLoad> loads;
            for (const std::size_t i : at) {
                const Lying lying(piece.part_of(i), piece.copies[i]);
                CopyLoad load = load_on_all(lying, i, force / static_cast<double>(at.size()));
                if (lying.upright()) {
                    const Point middle = lying.place((lying.from() + lying.to()) / 2, lying.middle());
                    load.from = load.to = std::clamp(lying.drawn({middle[0], middle[1], height})[index_of(lying.grain())],
                                                     lying.from(), lying.to());
                    load.breadth = 0;
                }
                load.direction = {0, 0, 0};
                load.direction[axis] = far ? 1 : -1;
                loads.push_back(load);
            }
            add_case(cases, fmt::format("a person leaning on it, {}, with {} N", towards(axis, far), write_number(force, 3)),
                     true, LoadDuration::short_term, false, std::move(loads), lean.cite);
            cases.cases.back().push = true;
        }
}

void add_back_loads(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const auto back = back_rest_of(piece, facts, carried);
    if (!back) return;
    const std::string level(level_key(piece.limits.level));
    const Datum<double>&push = facts.number("proof_back_" + level), &down = facts.number("proof_seat_" + level);
    const double wide = facts.number("sitter_width").value, deep = facts.number("sitter_depth").value;
    const Plan seat = joint_plan(piece, carried);
    // Sitting as far back as one can.
    const double middle = back->far ? back->front - deep / 2 : back->front + deep / 2;
    const auto add = [&](const std::vector<double>& places, const std::string& who) {
        std::vector<CopyLoad> loads;
        for (const double at : places) {
            const auto on = spread(piece, carried, place_on(seat, back->along(), at, middle, wide, deep), down.value);
            loads.insert(loads.end(), on.begin(), on.end());
        }
        std::vector<CopyLoad> all = cases.lasting;
        all.insert(all.end(), loads.begin(), loads.end());
        const Standing standing = standing_of(piece, all);
        const double n = static_cast<double>(places.size());
        double force = n * push.value;
        if (piece.wall.empty())
            force = std::min(force, kShortOfTipping * standing.weight * std::max(0.0, standing.base(back->axis, back->far)) /
                                        (back->height - standing.floor));
        if (force < 1) return;
        for (const double at : places) {
            const auto on = lean_back(piece, facts, *back, at, force / n);
            loads.insert(loads.end(), on.begin(), on.end());
        }
        const bool lessened = force < n * push.value * (1 - 1e-9);
        add_case(cases,
                 fmt::format("{} leaning on the back with {} N{}", who, write_number(force, 3),
                             lessened ? ", just short of tipping it" : ""),
                 true, LoadDuration::short_term, false, std::move(loads), push.cite);
    };
    const double first = std::min(back->lo + wide / 2, (back->lo + back->hi) / 2), last = back->lo + back->hi - first;
    const char* ends[2][2] = {{"at the left end", "at the right end"}, {"at the front end", "at the back end"}};
    add({(first + last) / 2}, "one person in the middle");
    if (last - first > wide / 4) {
        add({first}, fmt::format("one person {}", ends[back->along()][0]));
        add({last}, fmt::format("one person {}", ends[back->along()][1]));
    }
    const int seats = seats_of(piece, facts);
    if (seats < 2) return;
    std::vector<double> places;
    for (int k = 0; k < seats; ++k) places.push_back(back->lo + (back->hi - back->lo) * (k + 0.5) / seats);
    add(places, fmt::format("{} people side by side", seats));
}

void add_table_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Datum<double>& push = facts.number("table_push");
    add_pushes(cases, piece, carried, "the loaded top", {&push, &push}, facts.number("table_push_load").value * kStandardGravity);
}

} // namespace jointwright
