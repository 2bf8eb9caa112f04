#include "judging/standing/falls_apart.hpp"

#include "judging/finding_tools.hpp"
#include "measure/write.hpp"
#include "mechanics/loads/footing.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kOnEdge = 600;      // N: a person on the edge of a seat, EN 1022 (from memory)
constexpr double kBehindEdge = 0.06; // m: where, behind the edge, EN 1022 (from memory)
constexpr double kLevelOnSeat = 20;  // N: outwards at the height of the seat, EN 1022 (from memory)

/// Copies that people bear on, directly or through what lies on them.
std::vector<bool> bear_people(const Prepared& prepared)
{
    std::vector<bool> bears = prepared.carried;
    const LoadPath& path = prepared.layout->path;
    for (const std::size_t upper : path.order) // every one before those that bear it
        if (bears[upper])
            for (const Bearing& b : path.bearings[upper]) bears[b.below] = true;
    return bears;
}

} // namespace

std::optional<Finding> falls_over(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    if (!piece.wall.empty() || (piece.use != Use::seat && piece.use != Use::table) || prepared.layout->path.on_floor.empty())
        return std::nullopt;
    const Footing footing = footing_of(prepared);
    if (!feet_in_line(piece)) return std::nullopt;
    Box top{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (!prepared.carried[i]) continue;
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        for (std::size_t k = 0; k < 3; ++k) {
            top.lo[k] = std::min(top.lo[k], b.lo[k]);
            top.hi[k] = std::max(top.hi[k], b.hi[k]);
        }
    }
    if (top.hi[0] < top.lo[0]) return std::nullopt;
    const double height = top.hi[2] - footing.floor, mx = (top.lo[0] + top.hi[0]) / 2, my = (top.lo[1] + top.hi[1]) / 2;
    double worst = 0;
    for (const PlanPoint& at : {PlanPoint{mx, top.lo[1] + kBehindEdge}, PlanPoint{mx, top.hi[1] - kBehindEdge},
                                PlanPoint{top.lo[0] + kBehindEdge, my}, PlanPoint{top.hi[0] - kBehindEdge, my}})
        for (const Leverage& l : leverages(footing, at)) {
            const double over = kOnEdge * std::max(0.0, l.outside) + kLevelOnSeat * height,
                         back = footing.weight * l.inside + kOnEdge * std::max(0.0, -l.outside);
            worst = std::max(worst, back > 1e-6 ? over / back : 1e3);
        }
    if (worst <= 1) return std::nullopt;
    Finding f;
    f.check = "stands";
    f.subject = piece.name;
    f.verdict = Verdict::fail;
    f.headline = fmt::format("The piece falls over: all its feet stand in one line, and who sits or leans on its edge tips it by "
                             "{} times what rights it.",
                             worst < 100 ? write_number(worst, 2) : "over a hundred");
    f.remedy = "give it feet on both sides of that line, at least three, or fix it to the wall or the floor";
    f.values = {{"overturning_ratio", worst, "1"}};
    return f;
}

std::vector<Finding> comes_apart(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Statics& statics = prepared.statics;
    if (statics.drawn_out.empty()) return findings;
    const Piece& piece = *prepared.piece;
    const std::vector<bool> people =
        piece.use == Use::seat ? bear_people(prepared) : std::vector<bool>(piece.copies.size(), false);
    for (const std::size_t c : statics.drawn_out) {
        const Contact& contact = prepared.layout->contacts[c];
        const auto& bearings = prepared.layout->path.bearings[contact.first];
        const bool alone =
            people[contact.first] && !bearings.empty() && std::all_of(bearings.begin(), bearings.end(), [&](const Bearing& b) {
                return std::find(statics.drawn_out.begin(), statics.drawn_out.end(), b.contact) != statics.drawn_out.end();
            });
        Finding f;
        f.check = "stands";
        f.subject = pair_subject(prepared, contact);
        f.verdict = alone ? Verdict::fail : Verdict::warn;
        f.where = pair_place(prepared, contact);
        f.about.copies = {contact.first, contact.second};
        const std::string &in = piece.part_of(contact.first).id, &bearer = piece.part_of(contact.second).id;
        f.headline =
            fmt::format("Nothing but friction keeps {} from being drawn out of {}: the parts that bear it can move apart{}.", in,
                        bearer, alone ? ", and people bear on it" : "");
        f.remedy =
            fmt::format("peg, wedge or screw {} where it is let in, glue it where long grain meets long grain, or tie the parts "
                        "that bear it together by a back, a rail or a stretcher",
                        in);
        keep_worst(findings, std::move(f));
    }
    return findings;
}

} // namespace jointwright
