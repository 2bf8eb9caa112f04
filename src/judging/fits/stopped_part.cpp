#include "judging/fits/stopped_part.hpp"

#include "judging/finding_tools.hpp"
#include "judging/fits/size_today.hpp"
#include "mechanics/seasons/carried.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWidestRoom = 0.015;   // m: a part farther from its stop does not run against it
constexpr double kLeastOverlap = 0.001; // m: less is an edge that passes by
constexpr double kMicrometre = 1e-6;    // m: less is rounding

bool opposite(const Box& part, const Box& stop, Axis axis)
{
    for (const Axis other : {Axis::x, Axis::y, Axis::z}) {
        if (other == axis) continue;
        const std::size_t i = index_of(other);
        if (std::min(part.hi[i], stop.hi[i]) - std::max(part.lo[i], stop.lo[i]) < kLeastOverlap) return false;
    }
    return true;
}

/// How far the two stops move apart, made to driest and to dampest [m], and the part that sets their distance where one does alone.
struct Opening {
    SeasonalStrains grows;
    std::optional<std::size_t> by;
};

Opening opening_of(const Prepared& prepared, const Ties& ties, const StoppedPart& part)
{
    Opening opening;
    opening.by = ties.spanning(part.low, part.high, part.axis, ties.body_of(part.copy));
    const CarriedParts carried(prepared, ties, part.axis);
    const std::size_t k = index_of(part.axis);
    opening.grows = carried.apart(part.low, ties.box_of(part.low).hi[k], part.high, ties.box_of(part.high).lo[k]);
    return opening;
}

} // namespace

std::vector<std::size_t> frames_of(const Prepared& prepared, const Ties& ties)
{
    std::vector<std::size_t> frames;
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i)
        if (ties.crowd(ties.assembly_of(i)) > 1) frames.push_back(i);
    return frames;
}

std::optional<Stop> stop_of(const Ties& ties, const std::vector<std::size_t>& frames, std::size_t part, Axis axis, bool high)
{
    const Box& box = ties.box_of(part);
    const std::size_t k = index_of(axis);
    std::optional<Stop> nearest;
    for (const std::size_t other : frames) {
        if (ties.assembly_of(other) == ties.assembly_of(part)) continue;
        const Box& stop = ties.box_of(other);
        const double room = high ? stop.lo[k] - box.hi[k] : box.lo[k] - stop.hi[k];
        if (room < -kTouch || room > kWidestRoom || !opposite(box, stop, axis)) continue;
        if (!nearest || room < nearest->room) nearest = Stop{other, std::max(room, 0.0)};
    }
    if (nearest && ties.hinged(part, nearest->copy)) nearest->room = 0;
    return nearest;
}

std::vector<StoppedPart> stopped_parts(const Prepared& prepared, const Ties& ties)
{
    const Piece& piece = *prepared.piece;
    std::vector<StoppedPart> found;
    const std::vector<std::size_t> frames = frames_of(prepared, ties);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Part& part = piece.part_of(i);
        if (part.turn || ties.crowd(ties.assembly_of(i)) == frames.size()) continue;
        const Axis axis = part.width_axis();
        const auto low = stop_of(ties, frames, i, axis, false);
        const auto high = low ? stop_of(ties, frames, i, axis, true) : std::nullopt;
        if (!high || ties.assembly_of(low->copy) != ties.assembly_of(high->copy)) continue;
        found.push_back({i, low->copy, high->copy, axis, low->room + high->room});
    }
    return found;
}

Finding judge_stopped(const Prepared& prepared, const Ties& ties, const StoppedPart& stopped)
{
    const Piece& piece = *prepared.piece;
    const Part& part = piece.part_of(stopped.copy);
    const PartState& state = prepared.state_of(stopped.copy);
    if (!state.moves())
        return cannot_tell("bind", part.id,
                           fmt::format("Whether {} binds cannot be told: {}.", part.id, state.missing_movement()), "");
    const Opening opening = opening_of(prepared, ties, stopped);
    const double size = in_metres(part.width);
    const double dry = size * state.dry.width - opening.grows.dry, damp = size * state.damp.width - opening.grows.damp;
    const double driest = stopped.gap - dry, dampest = stopped.gap - damp, least = std::min({stopped.gap, driest, dampest});
    const double squeeze = std::max(0.0, -least) / size;
    const Datum<double>& crush = prepared.facts->number("squeeze_fail");
    const Datum<double>& wanted = prepared.facts->number("wanted_clearance");
    const bool with_room = stopped.gap > 2 * kTouch;
    const std::string low = piece.label(stopped.low, true), high = piece.label(stopped.high, true);

    Finding f;
    f.check = "bind";
    f.subject = part.id;
    f.where = fmt::format("{}, across its width, {}", piece.label(stopped.copy, true), state.species);
    f.about.copies = {stopped.copy};
    f.weight = size;
    if (least < -kMicrometre) {
        f.verdict = with_room || squeeze > crush.value ? Verdict::fail : Verdict::warn;
        f.headline = fmt::format("{} swells {} more than {} and {} leave it: it sticks between them at the {}.", part.id,
                                 small_words(prepared, -least), low, high, dampest <= driest ? "dampest" : "driest");
    } else if (least < wanted.value - kMicrometre) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} keeps only {} of room between {} and {} at its tightest.", part.id,
                                 small_words(prepared, least), low, high);
    } else {
        f.headline = fmt::format("{} keeps {} of room between {} and {} at its tightest.", part.id, small_words(prepared, least),
                                 low, high);
    }
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("make {} {} wide today (at {}), so that {} of room stay when it is widest", part.id,
                               size_words(prepared, shop_size_below(prepared, size - (wanted.value - least))),
                               moisture_words(state.made), small_words(prepared, wanted.value));
    f.utilisation = squeeze > 0       ? 1 + squeeze / crush.value
                    : stopped.gap > 0 ? std::clamp((stopped.gap - least) / stopped.gap, 0.0, 1.0)
                                      : 0.0;
    f.values = {
        {"gap_made", stopped.gap, "m"}, {"gap_driest", driest, "m"}, {"gap_dampest", dampest, "m"}, {"squeeze", squeeze, "1"}};
    add_moistures(f, state);
    const std::string set_by = opening.by ? fmt::format("the opening is set by {}", piece.part_of(*opening.by).id)
                                          : "the opening is set by the joints between its sides";
    f.working.push_back({"Room at the dampest, both sides together; " + set_by, "c = c0 − (Δ of the part − Δ of its opening)",
                         fmt::format("c0 = {}, Δ = {}", small_words(prepared, stopped.gap), small_words(prepared, damp)), dampest,
                         "m", "geometry"});
    f.working.push_back({"Room at the driest", "c = c0 − (Δ of the part − Δ of its opening)",
                         fmt::format("c0 = {}, Δ = {}", small_words(prepared, stopped.gap), small_words(prepared, dry)), driest,
                         "m", "geometry"});
    f.working.push_back({"Room that should be left", "c_wanted", "", wanted.value, "m", wanted.cite.text()});
    for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement), state.rings, part.width,
                                              state.made, state.dampest))
        f.working.push_back(std::move(step));
    add_size_today(f, state,
                   {"width_today", fmt::format("{} at most this wide", part.id), "w + c at its least − c_wanted",
                    fmt::format("w = {}", size_words(prepared, size)), size + least - wanted.value});
    gather_sources(f);
    return f;
}

} // namespace jointwright
