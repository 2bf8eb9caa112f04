// Does the piece tip over under someone near its edge?

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "measure/write.hpp"
#include "mechanics/back_rest.hpp"
#include "mechanics/footing.hpp"
#include "piece/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace jointwright {

namespace {

/// One way of being tipped.
struct Tipping {
    std::string name, source;
    PlanPoint at{};
    double down = 0, aside = 0, height = 0; ///< N, N, m
    std::optional<PlanPoint> towards;       ///< the level force acts that way; else outwards, whichever way that is

    /// Share of the level force that acts outwards over an edge.
    double outwards(const PlanPoint& out) const
    {
        return towards ? std::max(0.0, (*towards)[0] * out[0] + (*towards)[1] * out[1]) : 1;
    }
};

struct Tipped {
    Tipping by;
    double ratio = 0, overturning = 0, restoring = 0;
    Leverage lever;
};

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
    way.at[back->axis] = back->front - side * facts.number("tip_back_place").value;
    way.at[back->along()] = (back->lo + back->hi) / 2;
    way.down = facts.number("tip_seat_load").value;
    const Datum<double>& push = facts.number("tip_back_per_height");
    constexpr double kNoPushFrom = 1.0; // metres: height of the seat in the standard's expression
    way.aside = std::max(facts.number("tip_back_least").value, push.value * (kNoPushFrom - seat_height));
    way.height = back->height - footing.floor;
    way.towards = PlanPoint{};
    (*way.towards)[back->axis] = side;
    way.source = push.cite.text();
    return way;
}

std::vector<Tipping> tippings(const Prepared& prepared, const Footing& footing)
{
    const Facts& facts = *prepared.facts;
    const Piece& piece = *prepared.piece;
    std::vector<Tipping> all;
    if (std::none_of(prepared.carried.begin(), prepared.carried.end(), [](bool c) { return c; })) return all;
    const Borne borne = carried_of(prepared);
    const Box& box = borne.box;
    const auto places = [&](const char* inset) {
        const double in = facts.number(inset).value;
        return borne.rectangular() ? edge_places(box, in) : places_within(borne.line, in);
    };
    const Datum<double>& load = facts.number("tip_seat_load");
    const double height = box.hi[2] - footing.floor;
    if (piece.use == Use::seat)
        for (const auto& [at, words] : places("tip_seat_inset"))
            all.push_back({fmt::format("a person sitting down at {}", words), load.cite.text(), at, load.value,
                           facts.number("tip_seat_push").value, height, std::nullopt});
    if (piece.use == Use::seat)
        if (auto way = leaning_back(prepared, footing, height)) all.push_back(*way);
    if (piece.use == Use::table)
        for (const auto& [at, words] : places("tip_table_inset"))
            all.push_back({fmt::format("a person leaning on {}", words), facts.number("tip_table_inset").cite.text(), at,
                           load.value, 0, height, std::nullopt});
    if (piece.use == Use::cabinet || piece.use == Use::shelf) {
        double top = -1e30;
        for (const Copy& copy : piece.copies) top = std::max(top, bounds_of(piece.parts[copy.part], copy).hi[2]);
        const Datum<double>& child = facts.number("tip_case_mass");
        if (top - footing.floor < facts.number("tip_case_height").value) return all;
        // A child pulls on the front: on a shelf's edge; on a drawer or door of a cabinet it hangs half a depth before it.
        const double before = piece.use == Use::cabinet ? (box.hi[1] - box.lo[1]) / 2 : 0;
        all.push_back({piece.use == Use::cabinet ? "a child on the front of an open drawer or door, the rest empty"
                                                 : "a child on the front edge of a shelf, the rest empty",
                       child.cite.text(),
                       {(box.lo[0] + box.hi[0]) / 2, box.lo[1] - before},
                       child.value * kStandardGravity,
                       0,
                       height,
                       std::nullopt});
    }
    return all;
}

/// Someone who pulls a tall case forwards, or climbs it and hangs back.
std::optional<Tipping> pulled_forwards(const Prepared& prepared, const Footing& footing)
{
    const Facts& facts = *prepared.facts;
    const Piece& piece = *prepared.piece;
    if (piece.use != Use::cabinet && piece.use != Use::shelf) return std::nullopt;
    double top = -1e30;
    for (const Copy& copy : piece.copies) top = std::max(top, bounds_of(piece.parts[copy.part], copy).hi[2]);
    if (top - footing.floor < facts.number("tip_case_height").value) return std::nullopt;
    const Datum<double>& pull = facts.number("tip_case_pull");
    Tipping way;
    way.name = fmt::format("a pull of {} N on its front", write_number(pull.value));
    way.source = pull.cite.text();
    way.at = footing.centre;
    way.aside = pull.value;
    way.height = std::min(top - footing.floor, facts.number("tip_case_pull_height").value);
    way.towards = PlanPoint{0, -1};
    return way;
}

std::optional<Tipped> worst_of(const Footing& footing, const std::vector<Tipping>& ways)
{
    std::optional<Tipped> worst;
    for (const Tipping& way : ways)
        for (const Leverage& lever : leverages(footing, way.at)) {
            const double over = way.down * std::max(lever.outside, 0.0) + way.aside * way.outwards(lever.out) * way.height;
            const double back = footing.weight * std::max(lever.inside, 0.0) + way.down * std::max(-lever.outside, 0.0);
            const double ratio = back > 0 ? over / back : 1e6;
            if (!worst || ratio > worst->ratio * (1 + 1e-9)) worst = Tipped{way, ratio, over, back, lever};
        }
    return worst;
}

/// The pull stands beside the rule for cases: it warns, since what light cases need is an anchor and not another shape.
void add_pull(Finding& f, const Tipped& pulled, double passes_to)
{
    f.values.push_back({"pull_ratio", pulled.ratio, "1"});
    f.working.push_back({"Pulled forwards: overturning over restoring moment", "H h/(W a)",
                         fmt::format("H = {} N, h = {} m", write_number(pulled.by.aside, 3), write_number(pulled.by.height, 3)),
                         pulled.ratio, "1", pulled.by.source});
    if (pulled.ratio <= passes_to || f.verdict != Verdict::pass) return;
    f.verdict = Verdict::warn;
    f.where = pulled.by.name;
    f.headline = fmt::format("The piece {} with {}: {:.0f} % of what it takes to tip it.",
                             pulled.ratio <= 1 ? "is near to tipping" : "tips over", pulled.by.name, pulled.ratio * 100);
    f.remedy = "anchor it to the wall; children die under cases that tip";
}

} // namespace

std::vector<Finding> check_tip(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    if (!piece.wall.empty() || prepared.whole_mass() <= 0) return {};
    const Footing footing = footing_of(prepared);
    const auto worst = worst_of(footing, tippings(prepared, footing));
    if (!worst) return {};
    const Facts& facts = *prepared.facts;
    const Datum<double>& pass = facts.number("tip_pass");
    Finding f;
    f.check = "tip";
    f.subject = piece.name;
    f.utilisation = worst->ratio;
    f.fails_from = 1;
    f.verdict = worst->ratio <= pass.value ? Verdict::pass : worst->ratio <= 1 ? Verdict::warn : Verdict::fail;
    f.where = worst->by.name;
    const char* words = f.verdict == Verdict::pass ? "stands firm" : worst->ratio <= 1 ? "is near to tipping" : "tips over";
    f.headline =
        fmt::format("The piece {} with {}: {:.0f} % of what it takes to tip it.", words, worst->by.name, worst->ratio * 100);
    const bool tall = piece.use == Use::cabinet || piece.use == Use::shelf;
    if (f.verdict != Verdict::pass)
        f.remedy = tall ? "anchor it to the wall; children die under cases that tip"
                        : "set the feet farther out, or let the top stand over less";
    else if (tall)
        f.headline.replace(f.headline.size() - 1, 1,
                           "; anchor it to the wall all the same: children climb, and drawers are full.");
    f.values = {{"overturning_ratio", worst->ratio, "1"},
                {"overturning", worst->overturning, "N m"},
                {"restoring", worst->restoring, "N m"},
                {"outside", worst->lever.outside, "m"},
                {"inside", worst->lever.inside, "m"}};
    f.working.push_back({"The piece's own weight, nothing on it", "W", "", footing.weight, "N", "mass of the parts"});
    f.working.push_back({"How far inside the line of its feet the weight acts", "a", "", worst->lever.inside, "m", "geometry"});
    f.working.push_back({"How far outside that line the load acts; inside it helps", "e", worst->by.name, worst->lever.outside,
                         "m", worst->by.source});
    f.working.push_back({"Overturning moment", "F max(e, 0) + H h",
                         fmt::format("F = {} N, H = {} N, h = {}", write_number(worst->by.down, 3),
                                     write_number(worst->by.aside, 3), size_words(prepared, worst->by.height)),
                         worst->overturning, "N m", worst->by.source});
    f.working.push_back({"Restoring moment", "W a + F max(−e, 0)", "", worst->restoring, "N m",
                         facts.cite("mechanics", "balance about the foot line")});
    f.working.push_back({"Passes to this share, since floors are uneven", "", "", pass.value, "1", pass.cite.text()});
    if (const auto way = pulled_forwards(prepared, footing)) add_pull(f, *worst_of(footing, {*way}), pass.value);
    gather_sources(f);
    return {f};
}

} // namespace jointwright
