// Gaps between like parts standing in a row: do they close when damp, open too far when dry, or trap fingers?

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

constexpr double kWidestRowGap = 0.1; // m: like parts farther apart are not a slat field

/// Two neighbours of a row.
struct Gap {
    std::size_t before, after;
    double made;
};

/// True when nothing stands in the gap, and parts drawn touching are free to press on each other: side by side, and not glued.
bool is_open(const Piece& piece, const std::vector<Contact>& contacts, std::size_t a, std::size_t b, Axis along, double gap)
{
    if (gap <= kTouch) {
        if (along == Axis::z || along != piece.part_of(a).width_axis()) return false;
        return std::none_of(contacts.begin(), contacts.end(), [&](const Contact& c) {
            return c.joint && ((c.first == a && c.second == b) || (c.first == b && c.second == a));
        });
    }
    Box space = piece.copies[a].box;
    space.lo[index_of(along)] = piece.copies[a].box.hi[index_of(along)];
    space.hi[index_of(along)] = piece.copies[b].box.lo[index_of(along)];
    return std::none_of(piece.copies.begin(), piece.copies.end(), [&](const Copy& other) {
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
            const std::size_t i = index_of(axis);
            const double overlap = std::min(space.hi[i], other.box.hi[i]) - std::max(space.lo[i], other.box.lo[i]);
            // A rail that crosses under a row of slats cuts into the gap's box from one side only: what counts is wood that fills it.
            if (overlap < 0.5 * space.size(axis)) return false;
        }
        return true;
    });
}

std::vector<Gap> gaps_of(const Piece& piece, const std::vector<Contact>& contacts, std::size_t part, Axis along)
{
    std::vector<std::size_t> copies;
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.copies[i].part == part) copies.push_back(i);
    const std::size_t k = index_of(along);
    std::sort(copies.begin(), copies.end(),
              [&](std::size_t a, std::size_t b) { return piece.copies[a].box.lo[k] < piece.copies[b].box.lo[k]; });
    std::vector<Gap> gaps;
    for (std::size_t i = 0; i < copies.size(); ++i)
        for (std::size_t j = i + 1; j < copies.size(); ++j) {
            if (!in_line(piece.copies[copies[i]].box, piece.copies[copies[j]].box, along)) continue;
            const double gap = piece.copies[copies[j]].box.lo[k] - piece.copies[copies[i]].box.hi[k];
            if (gap < kWidestRowGap && is_open(piece, contacts, copies[i], copies[j], along, gap))
                gaps.push_back({copies[i], copies[j], std::max(gap, 0.0)});
            break;
        }
    return gaps;
}

struct GapThroughYear {
    double made, driest, dampest;
    double least() const { return std::min({made, driest, dampest}); }
    double most() const { return std::max({made, driest, dampest}); }
};

Verdict judge(const Prepared& prepared, const GapThroughYear& gap, double wanted_min, std::optional<double> wanted_max,
              std::string& why, std::string& remedy)
{
    const double from = prepared.facts->number("finger_trap_from").value, to = prepared.facts->number("finger_trap_to").value;
    if (gap.least() <= -kTouch || (gap.least() <= 0 && gap.made > 0)) {
        why = "the gap closes and the parts press on each other";
        remedy = fmt::format("make the gap at least {} today", size_words(prepared, gap.made - gap.least() + wanted_min));
        return Verdict::fail;
    }
    if (gap.least() < wanted_min) {
        why = fmt::format("less than the {} wanted in every season", size_words(prepared, wanted_min));
        remedy = fmt::format("make the gap at least {} today", size_words(prepared, gap.made + wanted_min - gap.least()));
        return Verdict::warn;
    }
    if (wanted_max && gap.most() > *wanted_max) {
        why = fmt::format("more than the {} wanted in every season", size_words(prepared, *wanted_max));
        remedy = fmt::format("make the gap at most {} today", size_words(prepared, gap.made + *wanted_max - gap.most()));
        return Verdict::warn;
    }
    if (gap.most() >= from && gap.least() <= to) {
        why = fmt::format("a gap of {} to {} can trap a finger", size_words(prepared, from), size_words(prepared, to));
        remedy =
            fmt::format("stay under {} or over {} in every season: {} or {} today", size_words(prepared, from),
                        size_words(prepared, to), size_words(prepared, std::max(0.0, from - 0.0005 - (gap.most() - gap.made))),
                        size_words(prepared, to + 0.0005 + (gap.made - gap.least())));
        return Verdict::warn;
    }
    return Verdict::pass;
}

/// Gaps that a row should keep in every season.
struct Wanted {
    double least = 0;
    std::optional<double> most;
};

Wanted wanted_by(const Prepared& prepared)
{
    const Limits& limits = prepared.piece->limits;
    Wanted wanted{limits.gap_min ? in_metres(*limits.gap_min) : prepared.facts->number("gap_least").value, std::nullopt};
    if (limits.gap_max) wanted.most = in_metres(*limits.gap_max);
    return wanted;
}

/// One gap through the year: each part fixed at its middle, so that it changes by the width of one.
Finding finding_for(const Prepared& prepared, std::size_t index, const Gap& gap, Axis along)
{
    const Piece& piece = *prepared.piece;
    const Part& part = piece.parts[index];
    const PartState& state = prepared.parts[index];
    const Wanted wanted = wanted_by(prepared);
    const double size = in_metres(along == part.face ? part.thickness : part.width);
    const double dry = size * strain_along(part, state.dry, along), damp = size * strain_along(part, state.damp, along);
    const GapThroughYear season{gap.made, gap.made - dry, gap.made - damp};
    std::string why, remedy;
    Finding f;
    f.check = "slat-gap";
    f.subject = part.id;
    f.verdict = judge(prepared, season, wanted.least, wanted.most, why, remedy);
    f.headline = fmt::format("The gap between {} and the next is {} as made, {} at the driest and {} at the dampest{}{}.",
                             part.id, small_words(prepared, season.made), small_words(prepared, season.driest),
                             small_words(prepared, season.dampest), why.empty() ? "" : ": ", why);
    if (!remedy.empty()) f.remedy = remedy;
    f.where = fmt::format("{} and {}, {}", piece.label(gap.before), piece.label(gap.after), state.species);
    f.utilisation = season.made > 0      ? std::max(0.0, (season.made - season.least()) / season.made)
                    : season.least() < 0 ? 2.0
                                         : 1.0;
    f.values = {{"gap_made", season.made, "m"},
                {"gap_driest", season.driest, "m"},
                {"gap_dampest", season.dampest, "m"},
                {"wanted_least", wanted.least, "m"}};
    f.working.push_back(
        {fmt::format("Gap at the dampest: each fixed at its middle, {} swells by {}", part.id, small_words(prepared, damp)),
         "g = g0 − Δw", fmt::format("g0 = {}, Δw = {}", small_words(prepared, season.made), small_words(prepared, damp)),
         season.dampest, "m", "geometry"});
    f.working.push_back({"Gap at the driest", "g = g0 − Δw",
                         fmt::format("g0 = {}, Δw = {}", small_words(prepared, season.made), small_words(prepared, dry)),
                         season.driest, "m", "geometry"});
    const Datum<double>& trap = prepared.facts->number("finger_trap_from");
    f.working.push_back({"Gaps that trap fingers", "7 mm to 12 mm", "", trap.value, "m", trap.cite.text()});
    for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement), state.rings, metres(size),
                                              state.made, state.dampest))
        f.working.push_back(std::move(step));
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_slat_gap(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        const PartState& state = prepared.parts[p];
        for (const Axis along : {part.width_axis(), part.face}) {
            const std::vector<Gap> gaps = gaps_of(piece, prepared.layout->contacts, p, along);
            if (gaps.empty()) continue;
            if (!state.moves()) {
                keep_worst(findings, cannot_tell("slat-gap", part.id,
                                                 fmt::format("How the gaps of {} change cannot be told: {}.", part.id,
                                                             state.missing_movement()),
                                                 ""));
                continue;
            }
            for (const Gap& gap : gaps) keep_worst(findings, finding_for(prepared, p, gap, along));
        }
    }
    return findings;
}

} // namespace jointwright
