#include "judging/fits/glued_apart.hpp"

#include "judging/finding_tools.hpp"
#include "mechanics/seasons/carried.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

constexpr double kLeastApart = 0.080; // m: nearer places are one
constexpr double kMostOfTheWay = 0.7; // of it: a part that keeps the two places apart

/// Two glued places of a body along an axis, and what the rest of the piece, through all its joints, does between them.
struct HeldSpan {
    Axis axis = Axis::x;
    Grip low, high;
    SeasonalStrains own, rest; ///< how much farther apart the two places want to get: on the body, on the rest of the piece [m]
    std::optional<std::size_t> keeper; ///< a part of the rest that runs from one to the other along its grain
    double span() const { return high.middle() - low.middle(); }
    double dry() const { return own.dry - rest.dry; }
    double damp() const { return own.damp - rest.damp; }
    double movement() const { return std::max(std::abs(dry()), std::abs(damp())); }
    /// Of the span what is held back: all of it where the rest keeps its size, none where it swells along with the body.
    double crossed() const
    {
        const double free = std::max(std::abs(own.dry), std::abs(own.damp));
        return free > 0 ? span() * std::min(1.0, movement() / free) : 0;
    }
};

/// True when a glued joint keeps the board from going along the axis: one that captures it in any direction, a flat face only in its own plane.
/// A part glued flat to the edge of another that way follows it.
bool holds_along(const Piece& piece, const Contact& contact, Axis axis)
{
    using enum JointKind;
    const JointKind kind = piece.joints[*contact.joint].kind;
    if (kind != edge && kind != face && kind != butt && kind != screws) return true;
    const Patch& p = contact.patches.front();
    return std::abs(p.normal[index_of(axis)]) < 0.3 && !p.end_grain_first && !p.end_grain_second;
}

std::vector<Grip> glued_places(const Prepared& prepared, const Ties& ties, std::size_t copy, Axis axis)
{
    std::vector<Grip> places;
    for (const Grip& g : ties.grips(copy, axis))
        if (g.glue && holds_along(*prepared.piece, prepared.layout->contacts[g.contact], axis)) places.push_back(g);
    std::stable_sort(places.begin(), places.end(), [](const Grip& a, const Grip& b) { return a.middle() < b.middle() - 1e-9; });
    return places;
}

/// A part tied to another that runs along the axis between two places, grain and all.
std::optional<std::size_t> keeper_between(const Prepared& prepared, const Ties& ties, const CarriedParts& rest,
                                          std::size_t tied_to, Axis axis, double from, double to)
{
    const std::size_t k = index_of(axis);
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i) {
        if (!rest.tied(i, tied_to) || !runs_along(*prepared.piece, i, axis)) continue;
        const Box& box = ties.box_of(i);
        if (std::min(to, box.hi[k]) - std::max(from, box.lo[k]) >= kMostOfTheWay * (to - from)) return i;
    }
    return std::nullopt;
}

/// The two places of a body, along an axis across its grain, between which the rest of the piece holds it back most.
std::optional<HeldSpan> held_span(const Prepared& prepared, const Ties& ties, const TiedBody& body, Axis axis)
{
    const std::vector<Grip> places = glued_places(prepared, ties, body.copies.front(), axis);
    if (places.empty() || places.back().middle() - places.front().middle() < kLeastApart) return std::nullopt;
    const CarriedParts rest(prepared, ties, axis, &body);
    const SeasonalStrains strain = ties.body_strain(body.copies.front(), axis);
    std::optional<HeldSpan> most;
    for (auto low = places.begin(); low != places.end(); ++low)
        for (auto high = low + 1; high != places.end(); ++high) {
            HeldSpan held{axis, *low, *high, {}, {}, {}};
            if (held.span() < kLeastApart || high->partner == low->partner || !rest.tied(low->partner, high->partner)) continue;
            held.own = {strain.dry * held.span(), strain.damp * held.span()};
            held.rest = rest.apart(low->partner, low->middle(), high->partner, high->middle());
            if (held.crossed() >= kLeastApart && (!most || held.movement() > most->movement() + 1e-9)) most = held;
        }
    if (most)
        most->keeper = keeper_between(prepared, ties, rest, most->low.partner, axis, most->low.middle(), most->high.middle());
    return most;
}

/// Who holds what: the widest board of the body, and at either end the part that holds it, itself or glued to it as one board.
struct Names {
    std::size_t board = 0, low = 0, high = 0;
    std::string subject;
};

std::size_t other_of(const Contact& contact, std::size_t copy) { return contact.first == copy ? contact.second : contact.first; }

Names names_of(const Prepared& prepared, const Ties& ties, const TiedBody& body, const HeldSpan& held)
{
    const auto& contacts = prepared.layout->contacts;
    Names names;
    names.board = *std::max_element(body.copies.begin(), body.copies.end(), [&](std::size_t a, std::size_t b) {
        return ties.box_of(a).size(held.axis) < ties.box_of(b).size(held.axis) - 1e-9;
    });
    const auto holder = [&](const Grip& g) {
        const std::size_t member = other_of(contacts[g.contact], g.partner);
        return member == names.board ? g.partner : member;
    };
    names.low = holder(held.low);
    names.high = holder(held.high);
    names.subject = pair_subject(prepared, contacts[held.low.contact]);
    for (const std::size_t c : ties.contacts_of(names.board))
        if (other_of(contacts[c], names.board) == names.low && contacts[c].joint)
            names.subject = pair_subject(prepared, contacts[c]);
    return names;
}

Finding finding_of(const Prepared& prepared, const Ties& ties, const TiedBody& body, const HeldSpan& held)
{
    const Piece& piece = *prepared.piece;
    const Names names = names_of(prepared, ties, body, held);
    const std::string& id = piece.part_of(names.board).id;
    const double movement = held.movement();
    const Datum<double>& pass = prepared.facts->number("core_movement_pass");
    const Datum<double>& warn = prepared.facts->number("core_movement_warn");
    const std::string low = piece.label(names.low, true), high = piece.label(names.high, true);

    Finding f;
    f.check = "cross-grain";
    f.subject = names.subject;
    f.utilisation = movement / pass.value;
    if (movement > warn.value)
        f.verdict = Verdict::fail;
    else if (movement > pass.value || held.crossed() > prepared.facts->number("wide_crossed_side").value)
        f.verdict = Verdict::warn;
    const char* lead = f.verdict == Verdict::fail   ? "The wood splits or the glue shears"
                       : f.verdict == Verdict::warn ? "On the edge"
                                                    : "Holds";
    f.headline = fmt::format("{}: {} is glued to {} and to {}, which {} keeps {} apart, and across its grain it wants to move {} "
                             "between them.",
                             lead, id, low, high, held.keeper ? "a frame" : "the rest of the piece",
                             size_words(prepared, held.span()), small_words(prepared, movement));
    Point way{};
    way[index_of(held.axis)] = 1;
    f.where = fmt::format("{} between {} and {}, {}, {}", piece.label(names.board, true), low, high, way_words(way),
                          prepared.state_of(names.board).species);
    f.about.copies = {names.board};
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("glue {} to one of the two only, and hold it elsewhere by buttons or by screws in slots", id);
    f.values = {{"differential_movement", movement, "m"},
                {"governing_movement", movement, "m"},
                {"glued_length", held.span(), "m"},
                {"limit", pass.value, "m"}};
    const std::string keeps =
        held.keeper ? fmt::format("; {} runs from one to the other", piece.part_of(*held.keeper).id) : std::string();
    const auto both = [&](double of_body, double of_rest) {
        return fmt::format("Δ_body = {}, Δ_rest = {}", small_words(prepared, of_body), small_words(prepared, of_rest));
    };
    f.working.push_back(
        {fmt::format("How much farther apart the two glued places want to get on {} than on the rest of the piece, through all "
                     "its joints, made to driest{}",
                     id, keeps),
         "Δ = Δ_body − Δ_rest", both(held.own.dry, held.rest.dry), held.dry(), "m", "geometry"});
    f.working.push_back(
        {"The same, made to dampest", "Δ = Δ_body − Δ_rest", both(held.own.damp, held.rest.damp), held.damp(), "m", "geometry"});
    f.working.push_back({"Movement held back between the middles of the two glued places", "|Δ|",
                         fmt::format("s = {}", size_words(prepared, held.span())), movement, "m", "geometry"});
    f.working.push_back({"Movement held back that wood and glue bear", "Δ ≤ limit",
                         fmt::format("warns to {}", small_words(prepared, warn.value)), pass.value, "m", pass.cite.text()});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> judge_glued_apart(const Prepared& prepared, const Ties& ties)
{
    const Piece& piece = *prepared.piece;
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const TiedBody& body = ties.body_of(i);
        if (body.copies.front() != i) continue;
        const bool moves = std::all_of(body.copies.begin(), body.copies.end(),
                                       [&](std::size_t copy) { return prepared.state_of(copy).moves(); });
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
            if (!moves || !runs_across(piece, i, axis)) continue;
            const auto held = held_span(prepared, ties, body, axis);
            if (held) findings.push_back(finding_of(prepared, ties, body, *held));
        }
    }
    return findings;
}

} // namespace jointwright
