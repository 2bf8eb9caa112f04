// People who lean on the back of a seat: in the tests of its strength, by the ten thousand, and tilting it onto its rear feet.

#include "measure/quantity.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/back_rest.hpp"
#include "mechanics/loads/placing.hpp"
#include "mechanics/loads/stance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

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

/// A seat with its back, and what people there weigh and press.
struct Leaning {
    LoadCases& cases;
    const Piece& piece;
    const Facts& facts;
    const std::vector<std::size_t>& carried;
    BackRest back;
    Plan seat{};
    double wide = 0, deep = 0; ///< of a sitter

    /// People sitting as far back as they can, at places along the back, each with that weight.
    std::vector<CopyLoad> seated(const std::vector<double>& places, double each) const
    {
        const double middle = back.far ? back.front - deep / 2 : back.front + deep / 2;
        std::vector<CopyLoad> loads;
        for (const double at : places) {
            const auto on = spread(piece, carried, place_on(seat, back.along(), at, middle, wide, deep), each);
            loads.insert(loads.end(), on.begin(), on.end());
        }
        return loads;
    }
    /// The level push on the back that just tilts the piece with those loads on it: H = W a/h.
    double tilting(const std::vector<CopyLoad>& loads) const
    {
        std::vector<CopyLoad> all = cases.lasting;
        all.insert(all.end(), loads.begin(), loads.end());
        const Stance stance = stance_of(piece, all);
        return stance.weight * std::max(0.0, stance.base(back.axis, back.far)) / (back.height - stance.floor);
    }
    void press(std::vector<CopyLoad>& loads, const std::vector<double>& places, double each) const
    {
        for (const double at : places) {
            const auto on = lean_back(piece, facts, back, at, each);
            loads.insert(loads.end(), on.begin(), on.end());
        }
    }
};

/// A test of seat and back.
struct BackTest {
    DemandKind kind = DemandKind::proof;
    const Datum<double>*push = nullptr, *down = nullptr; ///< on the back, and on the seat, of each place
    std::string repeats = {};                            ///< ", 25,000 times"
};

/// Pushes that would tip the piece are lessened; the test stops its feet.
void add_test(const Leaning& l, const BackTest& test, const std::vector<double>& places, const std::string& who)
{
    std::vector<CopyLoad> loads = l.seated(places, test.down->value);
    const double n = static_cast<double>(places.size()), whole = n * test.push->value;
    const double force = l.piece.wall.empty() ? std::min(whole, kShortOfTipping * l.tilting(loads)) : whole;
    if (force < 1) return;
    l.press(loads, places, force / n);
    add_case(l.cases,
             fmt::format("{} leaning on the back with {} N{}{}", who, write_number(force, 3), test.repeats,
                         force < whole * (1 - 1e-9) ? ", just short of tipping it" : ""),
             test.kind, LoadDuration::short_term, false, std::move(loads), test.push->cite);
    l.cases.cases.back().feet_stopped = true;
}

/// One sitter leans back until the front feet leave the floor and the push on the back just balances all weights: as people do on a chair every
/// day, their rear feet against the floor. On a longer seat only where one can do it with no more than the test of the back asks.
void add_tilted(const Leaning& l, double place, bool single, double most)
{
    if (!l.piece.wall.empty()) return;
    const Datum<double> sitter = weight_of_each(l.piece, l.facts, 1);
    std::vector<CopyLoad> loads = l.seated({place}, sitter.value);
    const double force = l.tilting(loads);
    if (force < 1 || (!single && force > most)) return;
    l.press(loads, {place}, force);
    add_case(l.cases, fmt::format("one person leaning back on its rear feet, {} N on the back", write_number(force, 3)),
             DemandKind::service, LoadDuration::short_term, false, std::move(loads), sitter.cite);
    LoadCase& tilted = l.cases.cases.back();
    tilted.proof = true; // whether it stands is no question: it is held in balance
    tilted.feet_stopped = true;
    tilted.feet_free = l.back.axis == 1 ? (l.back.far ? Side::front : Side::back) : (l.back.far ? Side::left : Side::right);
}

} // namespace

void add_back_loads(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    const auto back = back_rest_of(piece, facts, carried);
    if (!back) return;
    const Leaning l{cases,
                    piece,
                    facts,
                    carried,
                    *back,
                    joint_plan(piece, carried),
                    facts.number("sitter_width").value,
                    facts.number("sitter_depth").value};
    const std::string level(name_of(piece.limits.level));
    const BackTest proof{DemandKind::proof, &facts.number("proof_back_" + level), &facts.number("proof_seat_" + level), ""};
    const BackTest often{DemandKind::durability, &facts.number("durability_back"), &facts.number("durability_seat"),
                         " " + repeats_words(piece, facts)};
    const double first = std::min(back->lo + l.wide / 2, (back->lo + back->hi) / 2), last = back->lo + back->hi - first,
                 middle = (first + last) / 2;
    const char* ends[2][2] = {{"at the left end", "at the right end"}, {"at the front end", "at the back end"}};
    for (const BackTest& test : {proof, often}) {
        add_test(l, test, {middle}, "one person in the middle");
        if (last - first > l.wide / 4) {
            add_test(l, test, {first}, fmt::format("one person {}", ends[back->along()][0]));
            add_test(l, test, {last}, fmt::format("one person {}", ends[back->along()][1]));
        }
    }
    const int seats = seats_of(piece, facts);
    add_tilted(l, middle, seats == 1, proof.push->value);
    if (seats < 2) return;
    std::vector<double> places;
    for (int k = 0; k < seats; ++k) places.push_back(back->lo + (back->hi - back->lo) * (k + 0.5) / seats);
    add_test(l, proof, places, fmt::format("{} people side by side", seats));
}

} // namespace jointwright
