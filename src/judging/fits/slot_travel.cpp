#include "judging/fits/slot_travel.hpp"

#include "judging/finding_tools.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace jointwright {

double travel_needed(double dry, double damp, double ease) { return 2 * std::max(std::abs(dry), std::abs(damp)) + ease; }

double slot_length_needed(double dry, double damp, double diameter, double ease)
{
    return travel_needed(dry, damp, ease) + diameter;
}

double least_travel(double dry, double damp) { return std::max({dry, damp, 0.0}) - std::min({dry, damp, 0.0}); }

namespace {

constexpr double kNothing = 1e-9; // m: less is rounding

struct Strains {
    double dry = 0, damp = 0;
};

/// The part of a contact that moves along an axis: the one with that axis across its grain, of two such the larger.
std::optional<std::size_t> mover_of(const Piece& piece, const Ties& ties, const Contact& contact, Axis axis)
{
    const bool first = runs_across(piece, contact.first, axis), second = runs_across(piece, contact.second, axis);
    if (!first && !second) return std::nullopt;
    if (first != second) return first ? contact.first : contact.second;
    return ties.body_of(contact.first).box.size(axis) >= ties.body_of(contact.second).box.size(axis) ? contact.first
                                                                                                     : contact.second;
}

/// Strain of the mover less that of what it is fastened to. A narrow part that lies across the way moves with the frame it belongs to,
/// and a frame keeps its distances by parts whose grain runs that way.
Strains strain_against(const Prepared& prepared, const Ties& ties, std::size_t mover, std::size_t other, Axis axis, double at,
                       double from)
{
    const Piece& piece = *prepared.piece;
    const SeasonalStrains whole = ties.body_strain(mover, axis);
    const PartState& b = prepared.state_of(other);
    const Box& box = ties.box_of(other);
    const std::size_t k = index_of(axis);
    const bool reaches = box.lo[k] <= std::min(at, from) + kTouch && box.hi[k] >= std::max(at, from) - kTouch;
    const double dry = reaches ? strain_in_space(piece, other, b.dry, axis) : b.dry.along,
                 damp = reaches ? strain_in_space(piece, other, b.damp, axis) : b.damp.along;
    return {whole.dry - dry, whole.damp - damp};
}

/// Those of a body's grips that hold it against a partner for which `wanted` is true.
template <class Wanted>
std::vector<Grip> grips_of(const std::vector<Grip>& grips, Wanted wanted)
{
    std::vector<Grip> some;
    std::copy_if(grips.begin(), grips.end(), std::back_inserter(some), [&](const Grip& g) { return wanted(g.partner); });
    return some;
}

const Grip* nearest_tight(const std::vector<Grip>& grips, double at, bool glue_only)
{
    const Grip* best = nullptr;
    for (const Grip& g : grips) {
        if (!g.tight() || (glue_only && !g.glue)) continue;
        if (!best || std::abs(g.middle() - at) < std::abs(best->middle() - at)) best = &g;
    }
    return best;
}

/// Finds the fastener that travels most, from the nearest tight place; fasteners of a row that is tight altogether as if they were slotted.
void find_travel(const Prepared& prepared, const Ties& ties, const std::vector<Grip>& grips, SlotTravel& t)
{
    const double middle = ties.body_of(t.mover).box.middle(t.axis);
    for (const Fastener& f : t.row.fasteners) {
        const bool tight = t.row.slack(f, t.axis) == 0;
        if (tight && !t.tight_row) continue;
        const double at = f.at[index_of(t.axis)];
        const Grip* hold = nearest_tight(grips, at, t.tight_row);
        const double from = hold ? hold->middle() : middle;
        const Strains strain = strain_against(prepared, ties, t.mover, t.other, t.axis, at, from);
        const double dry = strain.dry * (at - from), damp = strain.damp * (at - from);
        if (std::max(std::abs(dry), std::abs(damp)) <= std::max(std::abs(t.dry), std::abs(t.damp)) && t.distance > 0) continue;
        // Signed so that swelling is positive on whichever side the fastener stands.
        const double sign = at < from ? -1 : 1;
        t.dry = sign * dry;
        t.damp = sign * damp;
        t.distance = std::abs(at - from);
        t.from = !hold ? SlotTravel::From::middle : hold->glue ? SlotTravel::From::glue : SlotTravel::From::fastener;
    }
}

using End = SlotReckoner::End;
using Held = SlotReckoner::Held;

/// How far a place of the mover wants to go in a season, and its value as one end of a held span.
End end_of(const Prepared& prepared, const Ties& ties, std::size_t mover, const Grip& grip, Axis axis, double at, double middle,
           std::size_t season, double sign)
{
    const Strains strain = strain_against(prepared, ties, mover, grip.partner, axis, at, middle);
    return {(season == 0 ? strain.dry : strain.damp) * (at - middle) + sign * grip.slack, at, grip.partner};
}

Held held_by(const Prepared& prepared, const Ties& ties, std::vector<Grip> grips, std::size_t mover, Axis axis)
{
    Held held;
    const double middle = ties.body_of(mover).box.middle(axis);
    for (const std::size_t season : {std::size_t{0}, std::size_t{1}})
        for (const Grip& g : grips) {
            const double at = g.middle(); // what a glued stretch holds back within itself is cross-grain's matter
            const End up = end_of(prepared, ties, mover, g, axis, at, middle, season, -1),
                      low = end_of(prepared, ties, mover, g, axis, at, middle, season, 1);
            if (!held.upper[season] || up.value > held.upper[season]->value) held.upper[season] = up;
            if (!held.lower[season] || low.value < held.lower[season]->value) held.lower[season] = low;
        }
    held.grips = std::move(grips);
    return held;
}

/// The most movement held back between a fastener of this row and anything else that holds the mover.
void find_held_back(const Prepared& prepared, const Ties& ties, const Held& held, SlotTravel& t)
{
    t.held_back = t.span = 0;
    t.far_partner = t.other;
    const double middle = ties.body_of(t.mover).box.middle(t.axis);
    const auto take = [&](const End& up, const End& low, std::size_t far) {
        if (up.value - low.value <= std::max(t.held_back, kNothing)) return;
        t.held_back = up.value - low.value;
        t.span = std::abs(up.at - low.at);
        t.far_partner = far;
    };
    for (const Fastener& f : t.row.fasteners) {
        const double slack = t.row.slack(f, t.axis), at = f.at[index_of(t.axis)];
        if (f.in_glue || !std::isfinite(slack)) continue;
        const Grip own{t.contact, t.other, at, at, slack, false};
        for (const std::size_t season : {std::size_t{0}, std::size_t{1}}) {
            const End up = end_of(prepared, ties, t.mover, own, t.axis, at, middle, season, -1),
                      low = end_of(prepared, ties, t.mover, own, t.axis, at, middle, season, 1);
            if (held.lower[season]) take(up, *held.lower[season], held.lower[season]->partner);
            if (held.upper[season]) take(*held.upper[season], low, held.upper[season]->partner);
        }
    }
}

void judge(const Prepared& prepared, SlotTravel& t)
{
    const double pass = prepared.facts->number("core_movement_pass").value,
                 warn = prepared.facts->number("core_movement_warn").value;
    const double held = t.held_back / pass;
    if (t.held_back > warn)
        t.verdict = Verdict::fail;
    else if (t.held_back > pass || (t.slotted && t.held_back > 0))
        t.verdict = Verdict::warn;
    if (!t.slotted) {
        if (t.tight_row) t.utilisation = held;
        return;
    }
    if (*t.row.slot < t.travel() - kNothing && t.verdict == Verdict::pass) t.verdict = Verdict::warn;
    t.utilisation = std::max(t.travel() / *t.row.slot, held);
}

} // namespace

bool is_worse(const SlotTravel& a, const SlotTravel& b)
{
    if (severity(a.verdict) != severity(b.verdict)) return severity(a.verdict) > severity(b.verdict);
    if (std::abs(a.travel() - b.travel()) > kNothing) return a.travel() > b.travel();
    return a.held_back > b.held_back + kNothing;
}

const Held& SlotReckoner::held(std::size_t mover, Axis axis)
{
    const std::pair<std::size_t, Axis> key{ties_.body_of(mover).copies.front(), axis};
    const auto found = held_.find(key);
    if (found != held_.end()) return found->second;
    return held_.emplace(key, held_by(prepared_, ties_, ties_.grips(mover, axis), mover, axis)).first->second;
}

SlotTravel SlotReckoner::along_axis(const FastenerRow& row, std::size_t mover, Axis axis)
{
    const Contact& contact = prepared_.layout->contacts[row.contact];
    SlotTravel t;
    t.contact = row.contact;
    t.axis = axis;
    t.row = row;
    t.mover = mover;
    t.other = mover == contact.first ? contact.second : contact.first;
    t.ease = prepared_.facts->number("slot_margin").value;
    const auto slides = [&](const Fastener& f) { return row.slack(f, axis) > 0; };
    const bool any_slides = std::any_of(row.fasteners.begin(), row.fasteners.end(), slides);
    t.slotted = row.slot && any_slides;
    t.tight_row = !any_slides;
    const Held& all = held(mover, axis);
    find_travel(prepared_, ties_, all.grips, t);
    find_held_back(prepared_, ties_,
                   held_by(prepared_, ties_, grips_of(all.grips, [&](std::size_t p) { return p == t.other; }), mover, axis), t);
    SlotTravel with_others = t;
    find_held_back(prepared_, ties_, all, with_others);
    if (with_others.held_back > t.held_back + kNothing) { // others count only where they are tied to this partner
        const std::vector<bool> tied = ties_.tied_without(ties_.body_of(mover), t.other);
        find_held_back(prepared_, ties_,
                       held_by(prepared_, ties_, grips_of(all.grips, [&](std::size_t p) { return tied[p]; }), mover, axis), t);
    }
    judge(prepared_, t);
    return t;
}

std::optional<SlotTravel> SlotReckoner::travel_of(const FastenerRow& row)
{
    const Contact& contact = prepared_.layout->contacts[row.contact];
    std::optional<SlotTravel> worst;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        if (axis == row.through) continue;
        const auto mover = mover_of(*prepared_.piece, ties_, contact, axis);
        if (!mover) continue;
        SlotTravel t = along_axis(row, *mover, axis);
        if (!worst || is_worse(t, *worst)) worst = std::move(t);
    }
    return worst;
}

} // namespace jointwright
