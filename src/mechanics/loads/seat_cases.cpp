// People on a seat: side by side as one block wherever it asks most, one sitting down hard, one standing, and the tests that stand for years of it.

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/footing.hpp"
#include "mechanics/loads/placing.hpp"
#include "mechanics/loads/row_places.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace jointwright {

namespace {

constexpr std::size_t kStoodOn = 24; // copies of one part that a person stands on in turn
constexpr int kEachNumber = 8;       // people side by side: every number up to it is looked at, and all places together
constexpr double kShortAlong = 0.25; // of the seat: what is longer is no support at one place but runs along

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

/// The seat along one axis. What stands under it: copies short along it that reach the floor, or that touch what carries from below.
SeatRow row_of(const Piece& piece, const std::vector<std::size_t>& carried, const Plan& plan, std::size_t axis)
{
    SeatRow row{plan.lo(axis), plan.hi(axis), {}, {}};
    double low = 1e30, high = -1e30;
    for (const std::size_t i : carried) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        row.parts.emplace_back(b.lo[axis], b.hi[axis]);
        low = std::min(low, b.lo[2]);
        high = std::max(high, b.hi[2]);
    }
    const double floor = floor_level(piece);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (std::find(carried.begin(), carried.end(), i) != carried.end()) continue;
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        if (b.hi[axis] - b.lo[axis] > kShortAlong * (row.hi - row.lo)) continue;
        const bool touches = b.hi[2] > low - kTouch && b.lo[2] < low - kTouch;
        const double middle = (b.lo[axis] + b.hi[axis]) / 2;
        if ((touches || meets_floor(piece, i, floor)) && middle > row.lo - kTouch && middle < row.hi + kTouch)
            row.supports.push_back(middle);
    }
    return row;
}

/// One way of sitting on a seat: people beside each other along an axis.
struct Sitting {
    std::size_t axis = 0;
    double wide = 0, deep = 0; ///< of a person
    SeatRow along, across;
    Plan plan{};

    Plan patch(double at, double off, double length) const
    {
        return axis == 0 ? patch_at(at, off, length, deep) : patch_at(off, at, deep, length);
    }
    /// "520 mm from the left end, at its front edge", after a comma or a blank of its own; nothing where there is no choice.
    std::string where(const Piece& piece, double at, double off, double length) const
    {
        std::string words;
        if (along.hi - along.lo > length + 1e-9)
            words = fmt::format(" {} from the {} end", write_length(metres(at - along.lo), piece.units),
                                axis == 0 ? "left" : "front");
        const double front = off - across.lo, back = across.hi - off;
        if (std::abs(front - back) < 1e-9) return words;
        const char* edges[2][2] = {{"front", "back"}, {"left", "right"}};
        return words + fmt::format(", nearer the {} edge", edges[axis][front < back ? 0 : 1]);
    }
};

Sitting sitting_along(const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried, std::size_t axis)
{
    Sitting s;
    s.axis = axis;
    s.plan = joint_plan(piece, carried);
    s.wide = facts.number("sitter_width").value;
    s.deep = facts.number("sitter_depth").value;
    s.along = row_of(piece, carried, s.plan, axis);
    s.across = row_of(piece, carried, s.plan, 1 - axis);
    s.across.supports.clear(); // its edges, its middle and the boards that run along it
    return s;
}

/// ", their middle 520 mm from the left end": where a load on several places lies, or on one.
std::string after_comma(const std::string& where, int places)
{
    if (where.empty() || where[0] != ' ') return where;
    return (places > 1 ? ", their middle" : ",") + where;
}

/// People side by side; one alone also sits down hard.
void add_people(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried,
                const Sitting& s, int people)
{
    const Datum<double> each = weight_of_each(piece, facts, people);
    const Datum<double>& hard = facts.number("hard_sitting_factor");
    const double length = people * s.wide;
    for (const double off : row_places(s.across, s.deep, true))
        for (const double at : row_places(s.along, length, people == 1)) {
            const std::string where = s.where(piece, at, off, length);
            const Plan patch = s.patch(at, off, length);
            add_case(cases,
                     people == 1 ? "one person sitting" + where
                                 : fmt::format("{} people side by side{}", people, after_comma(where, people)),
                     DemandKind::service, LoadDuration::sitting, true, spread(piece, carried, patch, people * each.value),
                     each.cite);
            if (people > 1) continue;
            add_case(cases, "one person sitting down hard" + where, DemandKind::hard_sitting, LoadDuration::short_term, false,
                     spread(piece, carried, patch, hard.value * each.value), hard.cite);
        }
}

/// The seat test on all places side by side, and outdoors once more for half an hour.
void add_seat_proofs(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried,
                     const Sitting& s, int seats, const Datum<double>& proof)
{
    const bool outdoors = piece.room.outdoors;
    const Datum<double>& stays = facts.number("proof_outdoors_minutes");
    const double length = std::min(seats * s.wide, s.along.hi - s.along.lo), middle = (s.across.lo + s.across.hi) / 2;
    const std::string places = seats == 1 ? "1 place" : fmt::format("{} places side by side", seats);
    for (const double at : row_places(s.along, length, false)) {
        const std::string where = after_comma(s.where(piece, at, middle, length), seats);
        const auto loads = spread(piece, carried, s.patch(at, middle, length), seats * proof.value);
        add_case(cases, fmt::format("proof load on {}{}", places, where), DemandKind::proof, LoadDuration::short_term, false,
                 loads, proof.cite);
        if (!outdoors) continue;
        add_case(cases, fmt::format("proof load on {} for {} minutes{}", places, write_number(stays.value, 3), where),
                 DemandKind::proof, LoadDuration::short_term, false, loads, stays.cite);
        cases.cases.back().strength_share = facts.number("proof_outdoors_share").value;
    }
    if (outdoors)
        cases.assumed.push_back("outdoors the seat loads of EN 581-2 are met by those of EN 16139, levels 1 and 2 (from memory)");
}

void add_standing(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried,
                  const Datum<double>& proof)
{
    const double foot = facts.number("foot").value;
    for (const std::size_t i : stood_on(cases, piece, carried)) {
        const Lying lying(piece.part_of(i), piece.copies[i]);
        const std::string label = piece.label(i, true);
        const double lo = lying.from(), hi = lying.to(), half = std::min(foot, hi - lo) / 2;
        for (const auto& [at, words] :
             {std::pair{(lo + hi) / 2, std::string("at its middle")}, std::pair{lo + half, end_words(lying, false)},
              std::pair{hi - half, end_words(lying, true)}})
            add_case(cases, fmt::format("one person standing on {}, {}", label, words), DemandKind::proof,
                     LoadDuration::short_term, false, {load_at(lying, i, at, 2 * half, foot, proof.value)}, proof.cite);
    }
}

/// One place at a time by the ten thousand; a seat with a back is leaned on as well (add_back_loads).
void add_seat_durability(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried,
                         const Sitting& s)
{
    const Datum<double>& load = facts.number("durability_seat");
    const double middle = (s.across.lo + s.across.hi) / 2;
    for (const double at : row_places(s.along, s.wide, true))
        add_case(cases,
                 fmt::format("one place loaded with {} N {}{}", write_number(load.value, 4), repeats_words(piece, facts),
                             after_comma(s.where(piece, at, middle, s.wide), 1)),
                 DemandKind::durability, LoadDuration::short_term, false,
                 spread(piece, carried, s.patch(at, middle, s.wide), load.value), load.cite);
}

} // namespace

void add_seat_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const Plan plan = joint_plan(piece, carried);
    const std::size_t axis = plan.size(0) >= plan.size(1) ? 0 : 1;
    const int seats = seats_of(piece, facts);
    const Sitting along = sitting_along(piece, facts, carried, axis);
    for (int people = 1; people <= std::min(seats, kEachNumber); ++people)
        add_people(cases, piece, facts, carried, along, people);
    if (seats > kEachNumber) {
        add_people(cases, piece, facts, carried, along, seats);
        cases.assumed.push_back(
            fmt::format("people side by side are looked at in every number up to {}, and {} together", kEachNumber, seats));
    }
    // A seat as deep as it is long is sat on either way.
    if (std::abs(plan.size(0) - plan.size(1)) < 0.05 * plan.size(axis))
        add_people(cases, piece, facts, carried, sitting_along(piece, facts, carried, 1 - axis), 1);

    const std::string level(name_of(piece.limits.level));
    const Datum<double>& proof = facts.number((piece.room.outdoors ? "proof_seat_outdoors_" : "proof_seat_") + level);
    add_seat_proofs(cases, piece, facts, carried, along, seats, proof);
    add_standing(cases, piece, facts, carried, proof);
    add_seat_durability(cases, piece, facts, carried, along);
}

} // namespace jointwright
