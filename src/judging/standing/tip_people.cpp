// Where people sit, stand and lean, and how that tips a seat or a table.

#include "judging/standing/tip_ways.hpp"

#include "mechanics/loads/back_rest.hpp"
#include "mechanics/prepared.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace jointwright {

namespace {

/// What people bear on: the box round it, and the convex line round it in plan.
struct Borne {
    Box box{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    std::vector<PlanPoint> line;
    /// Its line is that of the box.
    bool rectangular() const
    {
        double twice = 0;
        for (std::size_t i = 0; i < line.size(); ++i) {
            const PlanPoint &p = line[i], &q = line[(i + 1) % line.size()];
            twice += p[0] * q[1] - p[1] * q[0];
        }
        constexpr double nearly = 0.995;
        return twice / 2 > nearly * box.size(Axis::x) * box.size(Axis::y);
    }
};

Borne carried_of(const Prepared& prepared)
{
    Borne borne;
    std::vector<PlanPoint> corners;
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i) {
        if (!prepared.carried[i]) continue;
        const Part& part = prepared.piece->part_of(i);
        const Copy& copy = prepared.piece->copies[i];
        const Box b = bounds_of(part, copy);
        for (std::size_t k = 0; k < 3; ++k) {
            borne.box.lo[k] = std::min(borne.box.lo[k], b.lo[k]);
            borne.box.hi[k] = std::max(borne.box.hi[k], b.hi[k]);
        }
        const auto turn = turn_of(part, copy);
        for (const double x : {copy.box.lo[0], copy.box.hi[0]})
            for (const double y : {copy.box.lo[1], copy.box.hi[1]})
                for (const double z : {copy.box.lo[2], copy.box.hi[2]}) {
                    const Point p = turn ? turn->place({x, y, z}) : Point{x, y, z};
                    corners.push_back({p[0], p[1]});
                }
    }
    borne.line = line_round(corners);
    return borne;
}

/// "front left": which way a direction in plan points.
const char* side_words(double x, double y)
{
    constexpr std::array<const char*, 8> words{"right", "back right", "back",  "back left",
                                               "left",  "front left", "front", "front right"};
    const int eighth = static_cast<int>(std::lround(std::atan2(y, x) / (std::numbers::pi / 4)));
    return words[static_cast<std::size_t>((eighth + 8) % 8)];
}

/// Middle of every side and every corner of a convex line, drawn in by the inset; short sides, of a rounded seat, count by their corners.
std::vector<std::pair<PlanPoint, std::string>> places_within(const std::vector<PlanPoint>& line, double inset)
{
    constexpr double short_side = 0.05; // m
    std::vector<std::pair<PlanPoint, std::string>> places;
    struct Edge {
        PlanPoint from, way, out;
        double length, in;
    };
    std::vector<Edge> edges;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const PlanPoint &p = line[i], &q = line[(i + 1) % line.size()];
        const double dx = q[0] - p[0], dy = q[1] - p[1], l = std::hypot(dx, dy);
        if (l < 1e-6) continue;
        Edge e{p, {dx / l, dy / l}, {dy / l, -dx / l}, l, 0}; // anticlockwise: the outside lies to the right
        double deep = 0;
        for (const PlanPoint& c : line) deep = std::max(deep, (p[0] - c[0]) * e.out[0] + (p[1] - c[1]) * e.out[1]);
        e.in = std::min(inset, deep / 2);
        edges.push_back(e);
    }
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const Edge &e = edges[i], &next = edges[(i + 1) % edges.size()];
        const auto within = [&](double along) {
            return PlanPoint{e.from[0] + along * e.way[0] - e.in * e.out[0], e.from[1] + along * e.way[1] - e.in * e.out[1]};
        };
        if (e.length > short_side)
            places.emplace_back(within(e.length / 2),
                                std::string("the middle of the ") + side_words(e.out[0], e.out[1]) + " edge");
        // Where the two lines drawn in meet.
        const double across = e.way[0] * next.out[0] + e.way[1] * next.out[1];
        if (std::abs(across) < 1e-6) continue;
        const PlanPoint start = within(0);
        const double to = ((next.from[0] - start[0]) * next.out[0] + (next.from[1] - start[1]) * next.out[1] - next.in) / across;
        places.emplace_back(within(to),
                            std::string("the ") + side_words(e.out[0] + next.out[0], e.out[1] + next.out[1]) + " corner");
    }
    return places;
}

/// Middle and corners of every side, drawn in by the inset.
std::vector<std::pair<PlanPoint, std::string>> edge_places(const Box& box, double inset)
{
    const auto in = [&](std::size_t k) {
        const double d = std::min(inset, (box.hi[k] - box.lo[k]) / 2);
        return std::array<double, 3>{box.lo[k] + d, (box.lo[k] + box.hi[k]) / 2, box.hi[k] - d};
    };
    const auto x = in(0), y = in(1);
    return {{{x[1], y[0]}, "the middle of the front edge"}, {{x[1], y[2]}, "the middle of the back edge"},
            {{x[0], y[1]}, "the middle of the left edge"},  {{x[2], y[1]}, "the middle of the right edge"},
            {{x[0], y[0]}, "the front left corner"},        {{x[2], y[0]}, "the front right corner"},
            {{x[0], y[2]}, "the back left corner"},         {{x[2], y[2]}, "the back right corner"}};
}

/// Someone who leans back in a seat.
std::optional<Tipping> leaning_back(const Prepared& prepared, const Footing& footing, double seat_height)
{
    const Facts& facts = *prepared.facts;
    std::vector<std::size_t> carried;
    for (std::size_t i = 0; i < prepared.carried.size(); ++i)
        if (prepared.carried[i]) carried.push_back(i);
    const auto back = back_rest_of(*prepared.piece, facts, carried);
    if (!back) return std::nullopt;
    const double side = back->far ? 1 : -1;
    Tipping way;
    way.name = "a person leaning on the back";
    Weight sitter{facts.number("tip_seat_load").value, {}, seat_height};
    sitter.at[back->axis] = back->front - side * facts.number("tip_back_place").value;
    sitter.at[back->along()] = (back->lo + back->hi) / 2;
    way.live = {sitter};
    const Datum<double>& push = facts.number("tip_back_per_height");
    constexpr double kNoPushFrom = 1.0; // metres: height of the seat in the standard's expression
    way.aside = std::max(facts.number("tip_back_least").value, push.value * (kNoPushFrom - seat_height));
    way.height = back->height - footing.floor;
    way.towards = PlanPoint{};
    (*way.towards)[back->axis] = side;
    way.source = push.cite.text();
    return way;
}

} // namespace

std::vector<Tipping> tipped_by_people(const Prepared& prepared, const Footing& footing)
{
    const Facts& facts = *prepared.facts;
    const Use use = prepared.piece->use;
    std::vector<Tipping> all;
    if (use != Use::seat && use != Use::table) return all;
    if (std::none_of(prepared.carried.begin(), prepared.carried.end(), [](bool c) { return c; })) return all;
    const Borne borne = carried_of(prepared);
    const double height = borne.box.hi[2] - footing.floor, load = facts.number("tip_seat_load").value;
    const Datum<double>& inset = facts.number(use == Use::seat ? "tip_seat_inset" : "tip_table_inset");
    const double push = use == Use::seat ? facts.number("tip_seat_push").value : 0;
    const auto places = borne.rectangular() ? edge_places(borne.box, inset.value) : places_within(borne.line, inset.value);
    for (const auto& [at, words] : places) {
        Tipping way;
        way.name = fmt::format("a person {} {}", use == Use::seat ? "sitting down at" : "leaning on", words);
        way.source = inset.cite.text();
        way.live = {{load, at, height}};
        way.aside = push;
        way.height = height;
        all.push_back(std::move(way));
    }
    if (use != Use::seat) return all;
    if (auto way = leaning_back(prepared, footing, height)) all.push_back(*std::move(way));
    return all;
}

} // namespace jointwright
