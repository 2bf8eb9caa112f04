#include "mechanics/load_cases.hpp"

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "piece/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace jointwright {

namespace {

struct Plan {
    double x0, x1, y0, y1;
    double size(std::size_t axis) const { return axis == 0 ? x1 - x0 : y1 - y0; }
    double lo(std::size_t axis) const { return axis == 0 ? x0 : y0; }
    double hi(std::size_t axis) const { return axis == 0 ? x1 : y1; }
};

Plan plan_of(const Box& box) { return {box.lo[0], box.hi[0], box.lo[1], box.hi[1]}; }

Plan joint_plan(const Piece& piece, const std::vector<std::size_t>& copies)
{
    Plan all = plan_of(piece.copies[copies.front()].box);
    for (const std::size_t i : copies) {
        const Plan p = plan_of(piece.copies[i].box);
        all = {std::min(all.x0, p.x0), std::max(all.x1, p.x1), std::min(all.y0, p.y0), std::max(all.y1, p.y1)};
    }
    return all;
}

double overlap_area(const Plan& a, const Plan& b)
{
    return std::max(0.0, std::min(a.x1, b.x1) - std::max(a.x0, b.x0)) *
           std::max(0.0, std::min(a.y1, b.y1) - std::max(a.y0, b.y0));
}

/// A force spread over a patch, shared by area among the copies under it. Empty where none lies under it.
std::vector<CopyLoad> spread(const Piece& piece, const std::vector<std::size_t>& copies, const Plan& patch, double force)
{
    std::vector<CopyLoad> loads;
    double whole = 0;
    for (const std::size_t i : copies) whole += overlap_area(plan_of(piece.copies[i].box), patch);
    if (whole <= 0) return loads;
    for (const std::size_t i : copies) {
        const Plan p = plan_of(piece.copies[i].box);
        const double area = overlap_area(p, patch);
        if (area <= 0) continue;
        const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0;
        const std::size_t a = 1 - g;
        CopyLoad load;
        load.copy = i;
        load.from = std::max(p.lo(g), patch.lo(g));
        load.to = std::min(p.hi(g), patch.hi(g));
        load.across = (std::max(p.lo(a), patch.lo(a)) + std::min(p.hi(a), patch.hi(a))) / 2;
        load.force = force * area / whole;
        load.breadth = std::min(p.hi(a), patch.hi(a)) - std::max(p.lo(a), patch.lo(a));
        loads.push_back(load);
    }
    return loads;
}

Plan patch_at(double x, double y, double size_x, double size_y)
{
    return {x - size_x / 2, x + size_x / 2, y - size_y / 2, y + size_y / 2};
}

std::string_view level_key(ProofLevel level)
{
    switch (level) {
    case ProofLevel::home: return "home";
    case ProofLevel::contract: return "contract";
    case ProofLevel::severe: return "severe";
    }
    return "home";
}

void add_case(LoadCases& cases, std::string name, bool proof, LoadDuration duration, bool sag, std::vector<CopyLoad> loads,
              const Citation& cite)
{
    if (loads.empty()) return;
    LoadCase load_case;
    load_case.name = std::move(name);
    load_case.proof = proof;
    load_case.duration = duration;
    load_case.counts_for_sag = sag;
    load_case.source = cite.text();
    for (const CopyLoad& load : loads) load_case.total -= load.direction[2] * load.force; // down
    load_case.loads = std::move(loads);
    cases.cases.push_back(std::move(load_case));
}

/// Places for a patch of that size along an axis: both ends, quarters and the middle.
std::vector<double> places_along(double lo, double hi, double size)
{
    const double first = lo + size / 2, last = hi - size / 2;
    if (last <= first) return {(lo + hi) / 2};
    return {first, first + (last - first) / 4, (first + last) / 2, last - (last - first) / 4, last};
}

/// Places for a sitter's depth: the middle, and the front and back edge of a seat much deeper than that.
std::vector<double> places_across(double lo, double hi, double size)
{
    const double middle = (lo + hi) / 2;
    if (hi - lo < 1.2 * size) return {middle};
    return {middle, lo + size / 2, hi - size / 2};
}

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

const char* towards(std::size_t axis, bool far) { return axis == 0 ? (far ? "to the right" : "to the left") : (far ? "to the back" : "to the front"); }

/// What weighs on the floor, where, and between which lines.
struct Standing {
    double weight = 0, floor = 1e30;
    std::array<double, 2> centre{};
    Plan feet{1e30, -1e30, 1e30, -1e30};
    /// Way from the centre of the weight to the line of the feet on one side.
    double base(std::size_t axis, bool far) const { return far ? feet.hi(axis) - centre[axis] : centre[axis] - feet.lo(axis); }
};

Standing standing_of(const Piece& piece, const std::vector<CopyLoad>& loads)
{
    Standing s;
    for (const CopyLoad& load : loads) {
        const Box& box = piece.copies[load.copy].box;
        s.weight += load.force;
        s.centre[0] += load.force * box.middle(Axis::x);
        s.centre[1] += load.force * box.middle(Axis::y);
    }
    if (s.weight > 0)
        for (double& c : s.centre) c /= s.weight;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) s.floor = std::min(s.floor, bounds_of(piece.part_of(i), piece.copies[i]).lo[2]);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Box box = bounds_of(piece.part_of(i), piece.copies[i]);
        if (box.lo[2] > s.floor + kTouch) continue;
        Plan p = plan_of(box);
        // A small foot stands on its middle.
        constexpr double small = 0.0999;
        if (p.x1 - p.x0 < small) p.x0 = p.x1 = (p.x0 + p.x1) / 2;
        if (p.y1 - p.y0 < small) p.y0 = p.y1 = (p.y0 + p.y1) / 2;
        s.feet = {std::min(s.feet.x0, p.x0), std::max(s.feet.x1, p.x1), std::min(s.feet.y0, p.y0), std::max(s.feet.y1, p.y1)};
    }
    return s;
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
    for (const std::size_t i : carried) height = std::max(height, piece.copies[i].box.hi[2] - standing.floor);
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            double force = forces[axis]->value;
            if (piece.wall.empty() && height > 0)
                force = std::min(force, kShortOfTipping * standing.weight * std::max(0.0, standing.base(axis, far)) / height);
            if (force < 1) continue;
            std::vector<CopyLoad> loads = push_on(piece, carried, axis, far ? force : -force);
            loads.insert(loads.end(), down.begin(), down.end());
            const bool lessened = force < forces[axis]->value * (1 - 1e-9);
            add_case(cases, fmt::format("{} pushed {} with {} N{}", what, towards(axis, far), write_number(force, 3), lessened ? ", just short of tipping it" : ""),
                     true, LoadDuration::short_term, false, std::move(loads), forces[axis]->cite);
            cases.cases.back().push = true;
        }
}

/// The force with which the piece is just not taken off the floor by one place of it, and the weights that jerk with it: they pull at the place.
void add_lifts(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    if (!piece.wall.empty()) return;
    const Datum<double>& jerk = facts.number("lift_factor");
    const Standing standing = standing_of(piece, cases.lasting);
    const double weight = standing.weight;
    if (weight <= 0) return;
    std::set<std::size_t> handles;
    for (std::size_t k = 0; k < carried.size(); ++k)
        if (k == 0 || k + 1 == carried.size() || k == carried.size() / 2) handles.insert(carried[k]);
    for (const std::size_t i : handles) {
        const Plan p = plan_of(piece.copies[i].box);
        const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0, a = 1 - g;
        if (piece.part_of(i).grain == Axis::z) continue;
        // Taken hold of in the middle of its length, at the edge farther from the middle of the piece.
        std::array<double, 2> hold{};
        hold[g] = (p.lo(g) + p.hi(g)) / 2;
        hold[a] = (p.lo(a) + p.hi(a)) / 2 < standing.centre[a] ? p.lo(a) : p.hi(a);
        double share = 0.98;
        for (const std::size_t axis : {std::size_t{0}, std::size_t{1}}) {
            const double off = hold[axis] - standing.centre[axis], base = kShortOfTipping * standing.base(axis, off <= 0);
            if (std::abs(off) + base > 1e-6) share = std::min(share, std::max(0.0, base / (std::abs(off) + base)));
        }
        std::vector<CopyLoad> loads;
        for (CopyLoad load : cases.lasting) {
            load.force *= jerk.value - 1;
            loads.push_back(load);
        }
        const double half = std::min(facts.number("table_patch").value, p.size(g)) / 2;
        loads.push_back({i, hold[g] - half, hold[g] + half, jerk.value * share * weight, hold[a], 0, {0, 0, 1}});
        add_case(cases, fmt::format("the piece lifted by the edge of {}", piece.label(i, true)), true, LoadDuration::short_term, false,
                 std::move(loads), jerk.cite);
        cases.cases.back().lift = true;
        cases.cases.back().total = 0; // a jerk up and the weights that answer it
        for (const CopyLoad& load : cases.cases.back().loads) cases.cases.back().total -= load.direction[2] * load.force;
    }
}

std::string people(int n) { return n == 1 ? "one person sitting" : fmt::format("{} people side by side", n); }

constexpr std::size_t kStoodOn = 24; // copies of one part that a person stands on in turn

/// Copies that are stood on: all, or of a long row both ends, the middle and others between.
std::vector<std::size_t> stood_on(LoadCases& cases, const Piece& piece, const std::vector<std::size_t>& carried)
{
    std::map<std::size_t, std::vector<std::size_t>> by_part;
    for (const std::size_t i : carried) by_part[piece.copies[i].part].push_back(i);
    std::vector<std::size_t> chosen;
    for (const auto& [part, copies] : by_part) {
        if (copies.size() <= kStoodOn) {
            chosen.insert(chosen.end(), copies.begin(), copies.end());
            continue;
        }
        for (std::size_t k = 0; k < kStoodOn; ++k) chosen.push_back(copies[k * (copies.size() - 1) / (kStoodOn - 1)]);
        cases.assumed.push_back(fmt::format("of the {} copies of {} a person stands on {} in turn, from end to end", copies.size(),
                                            piece.parts[part].id, kStoodOn));
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

void add_seat_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const std::size_t along = plan.size(0) >= plan.size(1) ? 0 : 1;
    const int seats = seats_of(piece, facts);
    const double mass = piece.limits.sitter ? piece.limits.sitter->value() : facts.number("sitter_mass").value;
    const double weight = mass * kStandardGravity;
    const Datum<double>& proof = facts.number(fmt::format("proof_seat_{}", level_key(piece.limits.level)));
    Citation sitter = facts.number("sitter_mass").cite;
    if (piece.limits.sitter) sitter = {"the design's [limits] sitter", "", Provenance::retrieved, ""};

    add_case(cases, people(seats), false, LoadDuration::sitting, true, spread(piece, carried, plan, seats * weight), sitter);
    add_case(cases, fmt::format("proof load on {} place{} side by side", seats, seats == 1 ? "" : "s"), true,
             LoadDuration::short_term, false, spread(piece, carried, plan, seats * proof.value), proof.cite);

    const double wide = facts.number("sitter_width").value, deep = facts.number("sitter_depth").value;
    // A seat as deep as it is long is sat on either way.
    const bool square = std::abs(plan.size(0) - plan.size(1)) < 0.05 * plan.size(along);
    for (const std::size_t axis : {along, 1 - along}) {
        if (axis != along && !square) continue;
        for (const double across : places_across(plan.lo(1 - axis), plan.hi(1 - axis), deep))
            for (const double at : places_along(plan.lo(axis), plan.hi(axis), wide)) {
                const Plan patch = axis == 0 ? patch_at(at, across, wide, deep) : patch_at(across, at, deep, wide);
                const std::string where = write_length(metres(at - plan.lo(axis)), piece.units);
                add_case(cases, fmt::format("one person sitting {} from the {} end", where, axis == 0 ? "left" : "front"), false,
                         LoadDuration::sitting, true, spread(piece, carried, patch, weight), sitter);
            }
    }
    const double pad = facts.number("proof_pad").value, foot = facts.number("foot").value;
    for (const std::size_t i : stood_on(cases, piece, carried)) {
        const Box& box = piece.copies[i].box;
        const std::string label = piece.label(i, true);
        add_case(cases, fmt::format("proof load on a pad over {}", label), true, LoadDuration::short_term, false,
                 spread(piece, carried, patch_at(box.middle(Axis::x), box.middle(Axis::y), pad, pad), proof.value), proof.cite);
        const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0;
        const double lo = box.lo[g], hi = box.hi[g], half = std::min(foot, hi - lo) / 2;
        const double side = piece.part_of(i).grain == Axis::y ? box.middle(Axis::x) : box.middle(Axis::y);
        const std::pair<double, const char*> places[] = {{(lo + hi) / 2, "at its middle"},
                                                         {lo + half, g == 1 ? "at its front end" : "at its left end"},
                                                         {hi - half, g == 1 ? "at its back end" : "at its right end"}};
        for (const auto& [at, words] : places) {
            CopyLoad load{i, at - half, at + half, proof.value, side, std::min(foot, box.size(g == 1 ? Axis::x : Axis::y))};
            add_case(cases, fmt::format("one person standing on {}, {}", label, words), true, LoadDuration::short_term, false,
                     {load}, proof.cite);
        }
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
    double floor = 1e30, top = -1e30;
    for (const Copy& copy : piece.copies) {
        floor = std::min(floor, copy.box.lo[2]);
        top = std::max(top, copy.box.hi[2]);
    }
    const double height = std::min(top, floor + facts.number("lean_height").value);
    std::vector<std::size_t> at; // what reaches that height
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.copies[i].box.hi[2] > height - kTouch && piece.copies[i].box.lo[2] < height + kTouch) at.push_back(i);
    if (at.empty() || height - floor < 0.01) return;
    const Standing standing = standing_of(piece, cases.lasting);
    const Datum<double>& lean = facts.number("case_lean");
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
        for (const bool far : {true, false}) {
            const double force = std::min(lean.value, kShortOfTipping * standing.weight * std::max(0.0, standing.base(axis, far)) / (height - floor));
            if (force < 1) continue;
            std::vector<CopyLoad> loads;
            for (const std::size_t i : at) {
                const Box& box = piece.copies[i].box;
                const std::size_t g = index_of(piece.part_of(i).grain);
                CopyLoad load{i, box.lo[g], box.hi[g], force / static_cast<double>(at.size())};
                if (g == 2) load.from = load.to = height;
                load.across = box.middle(g == 0 ? Axis::y : Axis::x);
                load.direction = {0, 0, 0};
                load.direction[axis] = far ? 1 : -1;
                loads.push_back(load);
            }
            add_case(cases, fmt::format("a person leaning on it, {}, with {} N", towards(axis, far), write_number(force, 3)), true,
                     LoadDuration::short_term, false, std::move(loads), lean.cite);
            cases.cases.back().push = true;
        }
}

void add_table_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const double patch = facts.number("table_patch").value;
    const Datum<double>& lean = facts.number("table_lean");
    const Datum<double>& proof = facts.number("table_proof");
    const Datum<double>& goods = facts.number("table_goods");
    add_case(cases, "goods spread over the top", false, LoadDuration::lasting, true,
             spread(piece, carried, plan, goods.value * kStandardGravity), goods.cite);
    const double mx = (plan.x0 + plan.x1) / 2, my = (plan.y0 + plan.y1) / 2, e = patch / 2;
    const std::tuple<double, double, const char*> places[] = {{mx, plan.y0 + e, "the middle of the front edge"},
                                                              {mx, plan.y1 - e, "the middle of the back edge"},
                                                              {plan.x0 + e, my, "the middle of the left edge"},
                                                              {plan.x1 - e, my, "the middle of the right edge"},
                                                              {mx, my, "the middle of the top"},
                                                              {plan.x0 + e, plan.y0 + e, "the front left corner"},
                                                              {plan.x1 - e, plan.y0 + e, "the front right corner"},
                                                              {plan.x0 + e, plan.y1 - e, "the back left corner"},
                                                              {plan.x1 - e, plan.y1 - e, "the back right corner"}};
    for (const auto& [x, y, words] : places) {
        const Plan at = patch_at(x, y, patch, patch);
        add_case(cases, fmt::format("a person leaning on {}", words), false, LoadDuration::short_term, true,
                 spread(piece, carried, at, lean.value), lean.cite);
        add_case(cases, fmt::format("proof load on {}", words), true, LoadDuration::short_term, false,
                 spread(piece, carried, at, proof.value), proof.cite);
    }
}

void add_shelf_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Datum<double>& books = facts.number("shelf_load");
    const double per_length = piece.limits.shelf_load ? piece.limits.shelf_load->value() : books.value;
    Citation cite = books.cite;
    if (piece.limits.shelf_load) cite = {"the design's [limits] shelf_load", "", Provenance::retrieved, ""};
    std::vector<CopyLoad> all;
    for (const std::size_t i : carried) {
        const Box& box = piece.copies[i].box;
        const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0;
        const Axis side = g == 0 ? Axis::y : Axis::x;
        all.push_back({i, box.lo[g], box.hi[g], per_length * (box.hi[g] - box.lo[g]), box.middle(side), box.size(side)});
    }
    add_case(cases, piece.use == Use::shelf ? "every shelf loaded" : "everything that carries loaded", false,
             LoadDuration::lasting, true, std::move(all), cite);
}

void add_stated_cases(LoadCases& cases, const Piece& piece)
{
    std::vector<CopyLoad> together; // loads that come and go may all be there at once
    int passing = 0;
    for (const StatedLoad& load : piece.loads) {
        std::vector<CopyLoad> loads;
        for (std::size_t k = 0; k < load.copies.size(); ++k) {
            const std::size_t i = load.copies[k];
            const std::size_t g = piece.part_of(i).grain == Axis::y ? 1 : 0;
            const double half = load.patch ? (*load.patch)[g] / 2 : 0;
            const Box& box = piece.copies[i].box;
            CopyLoad on{i, std::max(box.lo[g], load.at[g] - half), std::min(box.hi[g], load.at[g] + half),
                        load.force.value() * load.shares[k], load.at[1 - g], load.patch ? (*load.patch)[1 - g] : 0, load.direction};
            if (piece.part_of(i).grain == Axis::z) on.from = on.to = load.patch ? box.hi[2] : load.at[2]; // on its end, or at its side
            loads.push_back(on);
        }
        if (load.lasting) {
            cases.lasting.insert(cases.lasting.end(), loads.begin(), loads.end());
            cases.cases.front().name = "its own weight and what stays on it";
            cases.cases.front().source = "mass of the parts; the design's [[load]]";
        } else {
            together.insert(together.end(), loads.begin(), loads.end());
            ++passing;
            add_case(cases, load.name, false, LoadDuration::sitting, true, std::move(loads),
                     {"the design's [[load]]", load.name, Provenance::retrieved, ""});
        }
    }
    if (passing > 1)
        add_case(cases, "all stated loads together", false, LoadDuration::sitting, true, std::move(together),
                 {"the design's [[load]]", "all of them", Provenance::retrieved, ""});
}

} // namespace

std::vector<std::size_t> carried_copies(const Piece& piece)
{
    std::set<std::size_t> carried;
    for (const std::string& name : piece.carries)
        for (const std::size_t i : piece.copies_named(name)) carried.insert(i);
    return {carried.begin(), carried.end()};
}

int seats_of(const Piece& piece, const Facts& facts)
{
    if (piece.limits.seats) return *piece.limits.seats;
    const auto carried = carried_copies(piece);
    if (carried.empty()) return 1;
    const Plan plan = joint_plan(piece, carried);
    const double length = std::max(plan.size(0), plan.size(1));
    return std::max(1, static_cast<int>(std::floor(length / facts.number("place_width").value + 1e-9)));
}

LoadCases load_cases_of(const Piece& piece, const Facts& facts, const std::vector<double>& masses)
{
    LoadCases cases;
    if (piece.use == Use::none && piece.loads.empty()) return cases;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Box& box = piece.copies[i].box;
        const std::size_t g = index_of(piece.part_of(i).grain);
        const Axis across = piece.part_of(i).grain == Axis::x ? Axis::y : Axis::x;
        cases.lasting.push_back({i, box.lo[g], box.hi[g], masses[i] * kStandardGravity, box.middle(across), box.size(across)});
    }
    LoadCase own;
    own.name = "its own weight";
    own.duration = LoadDuration::lasting;
    own.source = "mass of the parts";
    cases.cases.push_back(own);
    const auto carried = carried_copies(piece);
    if (!carried.empty()) {
        if (piece.use == Use::seat) {
            add_seat_cases(cases, piece, facts, carried);
            add_seat_pushes(cases, piece, facts, carried);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::table) {
            add_table_cases(cases, piece, facts, carried);
            const Datum<double>& push = facts.number("table_push");
            add_pushes(cases, piece, carried, "the loaded top", {&push, &push}, facts.number("table_push_load").value * kStandardGravity);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::shelf || piece.use == Use::cabinet) {
            add_shelf_cases(cases, piece, facts, carried);
            add_case_pushes(cases, piece, facts);
        }
    }
    if (piece.use == Use::seat && !piece.limits.seats) {
        const int n = seats_of(piece, facts);
        cases.assumed.push_back(
            fmt::format("{} sitting place{}: the carried length over 600 mm, rounded down, at least one", n, n == 1 ? "" : "s"));
    }
    add_stated_cases(cases, piece);
    return cases;
}

} // namespace jointwright
