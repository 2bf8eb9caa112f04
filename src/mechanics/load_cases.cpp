#include "mechanics/load_cases.hpp"

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/load_placing.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace jointwright {

namespace {

Plan patch_at(double x, double y, double size_x, double size_y)
{
    return {x - size_x / 2, x + size_x / 2, y - size_y / 2, y + size_y / 2};
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
        cases.assumed.push_back(fmt::format("of the {} copies of {} a person stands on {} in turn, from end to end",
                                            copies.size(), piece.parts[part].id, kStoodOn));
    }
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

/// Which end of a part is meant, as it lies.
std::string end_words(const Lying& lying, bool far)
{
    const Point g = lying.direct(lying.grain());
    const bool high = far != lying.reversed();
    if (lying.upright()) return far == (g[2] > 0) ? "at its upper end" : "at its lower end";
    if (std::abs(g[1]) > std::abs(g[0])) return high ? "at its back end" : "at its front end";
    return high ? "at its right end" : "at its left end";
}

void add_seat_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const std::size_t along = plan.size(0) >= plan.size(1) ? 0 : 1;
    const int seats = seats_of(piece, facts);
    const double mass = piece.limits.sitter ? piece.limits.sitter->value() : facts.number("sitter_mass").value;
    const double weight = mass * kStandardGravity;
    const bool outdoors = piece.room.outdoors;
    const Datum<double>& proof =
        facts.number((outdoors ? "proof_seat_outdoors_" : "proof_seat_") + std::string(level_key(piece.limits.level)));
    Citation sitter = facts.number("sitter_mass").cite;
    if (piece.limits.sitter) sitter = {"the design's [limits] sitter", "", Provenance::retrieved, ""};

    add_case(cases, people(seats), false, LoadDuration::sitting, true, spread(piece, carried, plan, seats * weight), sitter);
    add_case(cases, fmt::format("proof load on {} place{} side by side", seats, seats == 1 ? "" : "s"), true,
             LoadDuration::short_term, false, spread(piece, carried, plan, seats * proof.value), proof.cite);
    if (outdoors) {
        const Datum<double>& stays = facts.number("proof_outdoors_minutes");
        add_case(
            cases,
            fmt::format("proof load on {} place{} for {} minutes", seats, seats == 1 ? "" : "s", write_number(stays.value, 3)),
            true, LoadDuration::short_term, false, spread(piece, carried, plan, seats * proof.value), stays.cite);
        cases.cases.back().strength_share = facts.number("proof_outdoors_share").value;
        cases.assumed.push_back("outdoors the seat loads of EN 581-2 are met by those of EN 16139, levels 1 and 2 (from memory)");
    }

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
        const Lying lying(piece.part_of(i), piece.copies[i]);
        const Plan plan_here = plan_of(bounds_of(piece.part_of(i), piece.copies[i]));
        const std::string label = piece.label(i, true);
        add_case(cases, fmt::format("proof load on a pad over {}", label), true, LoadDuration::short_term, false,
                 spread(piece, carried, patch_at((plan_here.x0 + plan_here.x1) / 2, (plan_here.y0 + plan_here.y1) / 2, pad, pad),
                        proof.value),
                 proof.cite);
        const double lo = lying.from(), hi = lying.to(), half = std::min(foot, hi - lo) / 2;
        for (const auto& [at, words] :
             {std::pair{(lo + hi) / 2, std::string("at its middle")}, std::pair{lo + half, end_words(lying, false)},
              std::pair{hi - half, end_words(lying, true)}})
            add_case(cases, fmt::format("one person standing on {}, {}", label, words), true, LoadDuration::short_term, false,
                     {load_at(lying, i, at, 2 * half, foot, proof.value)}, proof.cite);
    }
}

void add_table_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const double patch = facts.number("table_patch").value;
    const Datum<double>& lean = facts.number("table_lean");
    const Datum<double>& proof = facts.number("table_proof");
    const Datum<double>& goods = facts.number("table_goods");
    if (piece.room.outdoors)
        cases.assumed.push_back("outdoors the table loads are those of EN 1730; the levels of EN 581-3 are not known here");
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
        const Lying lying(piece.part_of(i), piece.copies[i]);
        all.push_back(load_on_all(lying, i, per_length * (lying.to() - lying.from())));
    }
    add_case(cases, piece.use == Use::shelf ? "every shelf loaded" : "everything that carries loaded", false,
             LoadDuration::lasting, true, std::move(all), cite);
}

/// A stated load on the copies under it.
std::vector<CopyLoad> stated_loads(const Piece& piece, const StatedLoad& load)
{
    std::vector<CopyLoad> loads;
    for (std::size_t k = 0; k < load.copies.size(); ++k) {
        const std::size_t i = load.copies[k];
        const Lying lying(piece.part_of(i), piece.copies[i]);
        CopyLoad on{i, 0, 0, load.force.value() * load.shares[k], 0, 0, load.direction};
        if (load.patch) { // what of the patch lies on this copy
            const auto under = lying.under(patch_at(load.at[0], load.at[1], (*load.patch)[0], (*load.patch)[1]));
            if (!under) continue;
            on.from = under->from;
            on.to = under->to;
            on.across = under->across;
            on.breadth = under->breadth;
        } else {
            const Point drawn = lying.drawn(load.at);
            on.from = on.to = drawn[index_of(lying.grain())];
            on.across = drawn[index_of(lying.across())];
        }
        loads.push_back(on);
    }
    return loads;
}

/// Stated loads that stay act in every case.
void add_stated_lasting(LoadCases& cases, const Piece& piece)
{
    for (const StatedLoad& load : piece.loads) {
        if (!load.lasting) continue;
        const std::vector<CopyLoad> loads = stated_loads(piece, load);
        cases.lasting.insert(cases.lasting.end(), loads.begin(), loads.end());
        cases.cases.front().name = "its own weight and what stays on it";
        cases.cases.front().source = "mass of the parts; the design's [[load]]";
    }
}

void add_stated_cases(LoadCases& cases, const Piece& piece)
{
    std::vector<CopyLoad> together; // loads that come and go may all be there at once
    int passing = 0;
    for (const StatedLoad& load : piece.loads) {
        if (load.lasting) continue;
        std::vector<CopyLoad> loads = stated_loads(piece, load);
        together.insert(together.end(), loads.begin(), loads.end());
        ++passing;
        add_case(cases, load.name, false, LoadDuration::sitting, true, std::move(loads),
                 {"the design's [[load]]", load.name, Provenance::retrieved, ""});
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
        const Lying lying(piece.part_of(i), piece.copies[i]);
        cases.lasting.push_back(load_on_all(lying, i, masses[i] * kStandardGravity));
    }
    LoadCase own;
    own.name = "its own weight";
    own.duration = LoadDuration::lasting;
    own.source = "mass of the parts";
    cases.cases.push_back(own);
    add_stated_lasting(cases, piece);
    const auto carried = carried_copies(piece);
    if (!carried.empty()) {
        if (piece.use == Use::seat) {
            add_seat_cases(cases, piece, facts, carried);
            add_seat_pushes(cases, piece, facts, carried);
            add_back_loads(cases, piece, facts, carried);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::table) {
            add_table_cases(cases, piece, facts, carried);
            add_table_pushes(cases, piece, facts, carried);
            add_lifts(cases, piece, facts, carried);
        }
        if (piece.use == Use::shelf || piece.use == Use::cabinet) {
            add_shelf_cases(cases, piece, facts, carried);
            add_case_pushes(cases, piece, facts);
        }
    }
    if (piece.use == Use::seat)
        cases.assumed.push_back(
            "people sit and stand on what `carries` names and lean on a back: nobody stands on a stretcher or "
            "leans on an arm; name such parts in `carries`, or state a [[load]] on them");
    if (piece.use == Use::seat && !piece.limits.seats) {
        const int n = seats_of(piece, facts);
        cases.assumed.push_back(
            fmt::format("{} sitting place{}: the carried length over 600 mm, rounded down, at least one", n, n == 1 ? "" : "s"));
    }
    add_stated_cases(cases, piece);
    return cases;
}

} // namespace jointwright
