// Pushes, leaning and lifts: load cases that try whether a piece holds together and stays on its feet.

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/footing.hpp"
#include "mechanics/loads/placing.hpp"
#include "mechanics/loads/stance.hpp"
#include "piece/model/turn.hpp"

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

/// A test that pushes the piece with something heavy on top.
struct PushTest {
    std::string what;                             ///< "the loaded seat"
    std::array<const Datum<double>*, 2> forces{}; ///< along x and along y
    double weight = 0;                            ///< on top [N]
    DemandKind kind = DemandKind::proof;
    std::string repeats = {}; ///< ", 25,000 times"
};

/// Pushes both ways along both axes. Such tests stop the feet.
void add_pushes(LoadCases& cases, const Piece& piece, const std::vector<std::size_t>& carried, const PushTest& test)
{
    const std::vector<CopyLoad> down = spread(piece, carried, joint_plan(piece, carried), test.weight);
    std::vector<CopyLoad> all = cases.lasting;
    all.insert(all.end(), down.begin(), down.end());
    const Stance stance = stance_of(piece, all);
    double height = 0;
    for (const std::size_t i : carried)
        height = std::max(height, bounds_of(piece.part_of(i), piece.copies[i]).hi[2] - stance.floor);
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            double force = test.forces[axis]->value;
            if (piece.wall.empty() && height > 0)
                force = std::min(force, kShortOfTipping * stance.weight * std::max(0.0, stance.base(axis, far)) / height);
            if (force < 1) continue;
            std::vector<CopyLoad> loads = push_on(piece, carried, axis, far ? force : -force);
            loads.insert(loads.end(), down.begin(), down.end());
            const bool lessened = force < test.forces[axis]->value * (1 - 1e-9);
            add_case(cases,
                     fmt::format("{} pushed {} with {} N{}{}", test.what, towards(axis, far), write_number(force, 3),
                                 test.repeats, lessened ? ", just short of tipping it" : ""),
                     test.kind, LoadDuration::short_term, false, std::move(loads), test.forces[axis]->cite);
            cases.cases.back().push = true;
            cases.cases.back().feet_stopped = true;
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
    const Stance stance = stance_of(piece, own);
    const double weight = stance.weight;
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
            return std::hypot(p[0] - stance.centre[0], p[1] - stance.centre[1]);
        };
        const double near_edge = lying.middle() - lying.breadth() / 2, far_edge = lying.middle() + lying.breadth() / 2,
                     edge = far_out(near_edge) > far_out(far_edge) + kTouch ? near_edge : far_edge;
        const Point hold = lying.place(middle, edge);
        double share = 0.98;
        for (const std::size_t axis : {std::size_t{0}, std::size_t{1}}) {
            const double off = hold[axis] - stance.centre[axis], base = kShortOfTipping * stance.base(axis, off <= 0);
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
        add_case(cases, fmt::format("the piece lifted by the edge of {}", piece.label(i, true)), DemandKind::proof,
                 LoadDuration::short_term, false, std::move(loads), jerk.cite);
        cases.cases.back().lift = true;
        cases.cases.back().total = 0; // a jerk up and the weights that answer it
        for (const CopyLoad& load : cases.cases.back().loads) cases.cases.back().total -= load.direction[2] * load.force;
    }
}

/// Sideways: the loads of the leg tests; the side that is longer is pushed as chairs are pushed sideways.
void add_seat_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const std::string level(name_of(piece.limits.level));
    const Datum<double>*side = &facts.number("push_" + level), *front = &facts.number("push_front_" + level);
    const bool along_x = plan.size(0) >= plan.size(1);
    PushTest test{"the loaded seat", {}, facts.number("push_seat_load").value};
    test.forces = {along_x ? side : front, along_x ? front : side};
    add_pushes(cases, piece, carried, test);
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
    const Stance stance = stance_of(piece, cases.lasting);
    const Datum<double>& lean = facts.number("case_lean");
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            const double force =
                std::min(lean.value, kShortOfTipping * stance.weight * std::max(0.0, stance.base(axis, far)) / (height - floor));
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
                     DemandKind::proof, LoadDuration::short_term, false, std::move(loads), lean.cite);
            cases.cases.back().push = true;
            cases.cases.back().feet_stopped = true;
        }
}

void add_table_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Datum<double>&push = facts.number("table_push"), &often = facts.number("durability_table_push");
    add_pushes(cases, piece, carried,
               {"the loaded top", {&push, &push}, facts.number("table_push_load").value * kStandardGravity});
    add_pushes(cases, piece, carried,
               {"the top with goods on it",
                {&often, &often},
                facts.number("table_goods").value * kStandardGravity,
                DemandKind::durability,
                ", " + repeats_words(piece, facts)});
}

} // namespace jointwright
