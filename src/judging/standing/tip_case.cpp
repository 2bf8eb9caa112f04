// What tips a shelf or a cabinet: a child on its front, drawers and doors open, a pull at its top.

#include "judging/standing/tip_ways.hpp"

#include "measure/write.hpp"
#include "mechanics/loads/what_stands.hpp"
#include "mechanics/prepared.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr std::size_t kDrawerParts = 3; // a front, two sides: of fewer no box is made

/// A drawer or door, shut and open.
struct Front {
    std::string name;  ///< of its first part
    Weight shut, open; ///< its own wood
    Weight goods;      ///< in an open drawer; of a door none
    PlanPoint child{}; ///< where a child on it bears
    double height = 0; ///< of that place above the floor
    bool borne = true; ///< else it hangs on nothing
};

bool overlap_along(const Box& a, const Box& b, Axis axis)
{
    const std::size_t k = index_of(axis);
    return a.lo[k] < b.hi[k] - kTouch && b.lo[k] < a.hi[k] - kTouch;
}

/// Nothing of the rest stands before it.
bool way_is_free(const Prepared& prepared, const HeldGroup& group)
{
    const Piece& piece = *prepared.piece;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (group.contains(i) || piece.hangs(i)) continue; // a door before it is opened first
        const Box other = bounds_of(piece.part_of(i), piece.copies[i]);
        if (other.lo[1] < group.bounds.lo[1] - kTouch && overlap_along(other, group.bounds, Axis::x) &&
            overlap_along(other, group.bounds, Axis::z))
            return false;
    }
    return true;
}

/// A box of its own that can come out to the front.
std::optional<Front> drawer_of(const Prepared& prepared, const HeldGroup& group, double floor)
{
    using How = HeldGroup::How;
    if (group.how != How::lies && group.how != How::nothing) return std::nullopt;
    if (group.copies.size() < kDrawerParts || !way_is_free(prepared, group)) return std::nullopt;
    const Facts& facts = *prepared.facts;
    const Box& b = group.bounds;
    const double depth = b.size(Axis::y), out = facts.number("tip_case_open").value * depth;
    Front front;
    front.name = prepared.piece->part_of(group.copies.front()).id;
    front.borne = group.how == How::lies;
    front.shut = front.open = weight_of(prepared, group.copies, floor);
    front.open.at[1] -= out;
    double wood = 0;
    for (const std::size_t i : group.copies) wood += prepared.layout->volumes[i];
    const double room = std::max(0.0, b.size(Axis::x) * depth * b.size(Axis::z) - wood);
    front.goods = {room * facts.number("tip_case_fill").value * kStandardGravity,
                   {b.middle(Axis::x), b.middle(Axis::y) - out},
                   b.middle(Axis::z) - floor};
    front.child = {b.middle(Axis::x), b.lo[1] - out};
    front.height = b.hi[2] - floor;
    return front;
}

/// Middle of the faces on which a leaf hangs.
std::optional<Point> hinge_of(const Prepared& prepared, const HeldGroup& group)
{
    for (const Contact& c : prepared.layout->contacts) {
        if (!c.joint || prepared.piece->joints[*c.joint].kind != JointKind::hinge || !group.contains(c.first)) continue;
        const Box& face = c.patches.front().bounds;
        return Point{face.middle(Axis::x), face.middle(Axis::y), face.middle(Axis::z)};
    }
    return std::nullopt;
}

/// A leaf on the front of the case, swung out square to it: about its upright side, or down as a flap.
std::optional<Front> door_of(const Prepared& prepared, const HeldGroup& group, double floor)
{
    if (group.how != HeldGroup::How::hinged) return std::nullopt;
    const auto hinge = hinge_of(prepared, group);
    const Box& b = group.bounds;
    if (!hinge || b.size(Axis::y) > std::min(b.size(Axis::x), b.size(Axis::z))) return std::nullopt;
    const auto off = [&](Axis axis) { return std::abs((*hinge)[index_of(axis)] - b.middle(axis)) / b.size(axis); };
    const bool upright = off(Axis::x) >= off(Axis::z);
    const Axis along = upright ? Axis::x : Axis::z;
    const std::size_t k = index_of(along);
    if (!upright && (*hinge)[2] > b.middle(Axis::z)) return std::nullopt; // a lid or flap that opens upwards
    const double reach = std::max(b.hi[k] - (*hinge)[k], (*hinge)[k] - b.lo[k]);
    Front front;
    front.name = prepared.piece->part_of(group.copies.front()).id;
    front.shut = front.open = weight_of(prepared, group.copies, floor);
    const double own = upright ? std::abs(front.shut.at[0] - (*hinge)[0]) : std::abs(front.shut.height + floor - (*hinge)[2]);
    front.open.at[1] = b.lo[1] - own;
    front.child = {upright ? (*hinge)[0] : b.middle(Axis::x), b.lo[1] - reach};
    front.height = (upright ? b.hi[2] : (*hinge)[2]) - floor;
    if (upright)
        front.open.at[0] = (*hinge)[0];
    else
        front.open.height = (*hinge)[2] - floor;
    return front;
}

std::vector<Front> fronts_of(const Prepared& prepared, double floor)
{
    std::vector<Front> fronts;
    for (const HeldGroup& group : held_groups(prepared))
        for (auto front : {drawer_of(prepared, group, floor), door_of(prepared, group, floor)})
            if (front) fronts.push_back(*std::move(front));
    return fronts;
}

Weight together(const Weight& a, const Weight& b)
{
    Weight sum{a.down + b.down, {}, 0};
    if (sum.down <= 0) return {};
    for (std::size_t k = 0; k < 2; ++k) sum.at[k] = (a.down * a.at[k] + b.down * b.at[k]) / sum.down;
    sum.height = (a.down * a.height + b.down * b.height) / sum.down;
    return sum;
}

/// Everything that opens, open.
Tipping opened(const std::vector<Front>& fronts, bool filled)
{
    Tipping way;
    for (const Front& front : fronts) {
        if (front.borne) {
            way.taken = together(way.taken, front.shut);
            way.moved.push_back(front.open);
        } else {
            way.against.push_back(front.open);
        }
        if (filled && front.goods.down > 0) (front.borne ? way.moved : way.against).push_back(front.goods);
    }
    return way;
}

/// How far the piece leans to the front where its rear feet stand on carpet.
double carpet_lean(const Facts& facts, const Footing& footing)
{
    double lo = 1e30, hi = -1e30;
    for (const PlanPoint& p : footing.line) {
        lo = std::min(lo, p[1]);
        hi = std::max(hi, p[1]);
    }
    constexpr double shallowest = 0.01; // m: no feet behind each other
    return hi - lo > shallowest ? facts.number("tip_case_carpet").value / (hi - lo) : 0;
}

void add_child(std::vector<Tipping>& ways, const Prepared& prepared, Tipping way, const PlanPoint& at, double height, double lean,
               std::string name)
{
    const Datum<double>& child = prepared.facts->number("tip_case_mass");
    way.live = {{child.value * kStandardGravity, at, height}};
    way.lean = lean;
    way.source = child.cite.text();
    way.name = std::move(name);
    ways.push_back(std::move(way));
}

void add_pull(std::vector<Tipping>& ways, const Prepared& prepared, Tipping way, double top, std::string name)
{
    const Datum<double>& pull = prepared.facts->number("tip_case_pull");
    way.source = pull.cite.text();
    way.aside = pull.value;
    way.height = std::min(top, prepared.facts->number("tip_case_pull_height").value);
    way.towards = PlanPoint{0, -1};
    way.name = std::move(name);
    ways.push_back(std::move(way));
}

} // namespace

CaseTipping tipped_as_case(const Prepared& prepared, const Footing& footing)
{
    const Piece& piece = *prepared.piece;
    const Facts& facts = *prepared.facts;
    CaseTipping all;
    if (piece.use != Use::cabinet && piece.use != Use::shelf) return all;
    Box carried{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    double top = -1e30;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        top = std::max(top, b.hi[2] - footing.floor);
        for (std::size_t k = 0; prepared.carried[i] && k < 3; ++k) {
            carried.lo[k] = std::min(carried.lo[k], b.lo[k]);
            carried.hi[k] = std::max(carried.hi[k], b.hi[k]);
        }
    }
    if (top < facts.number("tip_case_height").value || carried.lo[0] > carried.hi[0]) return all;
    const std::vector<Front> fronts = fronts_of(prepared, footing.floor);
    all.opens = piece.use == Use::cabinet || !fronts.empty();
    const double lean = carpet_lean(facts, footing), height = carried.hi[2] - footing.floor;
    const std::string pull = fmt::format("a pull of {} N on its front", write_number(facts.number("tip_case_pull").value));
    for (const Front& front : fronts)
        for (const bool filled : {false, true})
            add_child(all.ways, prepared, opened(fronts, filled), front.child, front.height, lean,
                      fmt::format("a child on {}, everything open and {}", front.name, filled ? "filled" : "empty"));
    if (fronts.empty()) {
        // A shelf is climbed at its front edge; a drawer that is not drawn comes out by as much of the depth as any.
        const double before = piece.use == Use::cabinet ? facts.number("tip_case_open").value * carried.size(Axis::y) : 0;
        add_child(all.ways, prepared, {}, {carried.middle(Axis::x), carried.lo[1] - before}, height, lean,
                  piece.use == Use::cabinet ? "a child on the front of an open drawer or door, the rest empty"
                                            : "a child on the front edge of a shelf, the rest empty");
    }
    add_pull(all.ways, prepared, {}, top, pull);
    if (!fronts.empty()) add_pull(all.ways, prepared, opened(fronts, true), top, pull + ", everything open and filled");
    return all;
}

} // namespace jointwright
