#include "judging/fits/stopped_assembly.hpp"

#include "judging/finding_tools.hpp"
#include "judging/fits/size_today.hpp"
#include "judging/fits/stopped_part.hpp"
#include "mechanics/seasons/carried.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMicrometre = 1e-6; // m: less is rounding

/// Two members of an assembly and what stops them, on the lower and on the upper side.
struct Between {
    Axis axis = Axis::x;
    std::size_t low = 0, high = 0; ///< members
    Stop low_stop, high_stop;
    double size = 0;                ///< from the lower member's outer face to the upper one's
    SeasonalStrains grows, opening; ///< of that size, and of the opening
    double gap() const { return low_stop.room + high_stop.room; }
    double driest() const { return gap() - grows.dry + opening.dry; }
    double dampest() const { return gap() - grows.damp + opening.damp; }
    double least() const { return std::min({gap(), driest(), dampest()}); }
};

/// A member at the edge of its assembly with its stop.
struct EdgeMember {
    std::size_t copy = 0;
    Stop stop;
};

std::vector<EdgeMember> edge_members(const Prepared& prepared, const Ties& ties, const std::vector<std::size_t>& frames,
                                     Axis axis, bool high)
{
    std::vector<EdgeMember> members;
    for (const std::size_t i : frames) {
        if (prepared.piece->part_of(i).turn || ties.crowd(ties.assembly_of(i)) == frames.size()) continue;
        if (const auto stop = stop_of(ties, frames, i, axis, high)) members.push_back({i, *stop});
    }
    return members;
}

/// Of every assembly along an axis the two members between which least room is left.
std::vector<Between> tightest(const Prepared& prepared, const Ties& ties, const std::vector<std::size_t>& frames, Axis axis)
{
    const std::vector<EdgeMember> lows = edge_members(prepared, ties, frames, axis, false),
                                  highs = edge_members(prepared, ties, frames, axis, true);
    std::vector<Between> found;
    if (lows.empty() || highs.empty()) return found;
    const CarriedParts carried(prepared, ties, axis);
    const std::size_t k = index_of(axis);
    for (const EdgeMember& low : lows)
        for (const EdgeMember& high : highs) {
            const bool one_assembly = ties.assembly_of(low.copy) == ties.assembly_of(high.copy) &&
                                      ties.assembly_of(low.stop.copy) == ties.assembly_of(high.stop.copy);
            if (low.copy == high.copy || !one_assembly || !carried.tied(low.copy, high.copy) ||
                !carried.tied(low.stop.copy, high.stop.copy))
                continue;
            Between b{axis, low.copy, high.copy, low.stop, high.stop, 0, {}, {}};
            const double from = ties.box_of(low.copy).lo[k], to = ties.box_of(high.copy).hi[k];
            b.size = to - from;
            if (b.size <= 0) continue; // it stands about the other, not within
            b.grows = carried.apart(low.copy, from, high.copy, to);
            b.opening =
                carried.apart(low.stop.copy, ties.box_of(low.stop.copy).hi[k], high.stop.copy, ties.box_of(high.stop.copy).lo[k]);
            const auto same = std::find_if(found.begin(), found.end(), [&](const Between& other) {
                return ties.assembly_of(other.low) == ties.assembly_of(b.low);
            });
            if (same == found.end())
                found.push_back(b);
            else if (b.least() < same->least() - kMicrometre)
                *same = b;
        }
    return found;
}

/// The member that moves more: the finding is told of its part.
std::size_t mover_of(const Prepared& prepared, const Ties& ties, const Between& b)
{
    const auto moves = [&](std::size_t copy) {
        const SeasonalStrains strain = ties.body_strain(copy, b.axis);
        return ties.box_of(copy).size(b.axis) * std::max(std::abs(strain.dry), std::abs(strain.damp));
    };
    (void)prepared;
    return moves(b.high) > moves(b.low) + 1e-9 ? b.high : b.low;
}

std::string assembly_words(const Prepared& prepared, const Between& b)
{
    const std::string& low = prepared.piece->part_of(b.low).id;
    const std::string& high = prepared.piece->part_of(b.high).id;
    return low == high ? fmt::format("the frame of {}", low) : fmt::format("the frame of {} and {}", low, high);
}

void judge(const Prepared& prepared, const Between& b, double across, Finding& f)
{
    const Piece& piece = *prepared.piece;
    const Datum<double>& crush = prepared.facts->number("squeeze_fail");
    const Datum<double>& wanted = prepared.facts->number("wanted_clearance");
    const double least = b.least(), squeeze = across > 0 ? std::max(0.0, -least) / across : 0;
    const bool with_room = b.gap() > 2 * kTouch;
    const std::string low = piece.label(b.low_stop.copy, true), high = piece.label(b.high_stop.copy, true);
    Point way{};
    way[index_of(b.axis)] = 1;
    std::string what = assembly_words(prepared, b);
    what.front() = 'T';
    if (least < -kMicrometre) {
        f.verdict = with_room || squeeze > crush.value ? Verdict::fail : Verdict::warn;
        f.headline =
            fmt::format("{} grows {} more, {}, than {} and {} leave it: it jams at the {}.", what, small_words(prepared, -least),
                        way_words(way), low, high, b.dampest() <= b.driest() ? "dampest" : "driest");
    } else if (least < wanted.value - kMicrometre) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("{} keeps only {} of room, {}, between {} and {} at its tightest.", what,
                                 small_words(prepared, least), way_words(way), low, high);
    } else {
        f.headline = fmt::format("{} keeps {} of room, {}, between {} and {} at its tightest.", what,
                                 small_words(prepared, least), way_words(way), low, high);
    }
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("make it {} from {} to {} today, so that {} of room stay when it is largest",
                               size_words(prepared, shop_size_below(prepared, b.size - (wanted.value - least))),
                               piece.label(b.low, true), piece.label(b.high, true), small_words(prepared, wanted.value));
    f.utilisation = squeeze > 0   ? 1 + squeeze / crush.value
                    : b.gap() > 0 ? std::clamp((b.gap() - least) / b.gap(), 0.0, 1.0)
                                  : 0.0;
    f.values = {{"gap_made", b.gap(), "m"},
                {"gap_driest", b.driest(), "m"},
                {"gap_dampest", b.dampest(), "m"},
                {"squeeze", squeeze, "1"}};
}

Finding finding_of(const Prepared& prepared, const Ties& ties, const Between& b)
{
    const std::size_t mover = mover_of(prepared, ties, b);
    const PartState& state = prepared.state_of(mover);
    for (const std::size_t member : {b.low, b.high})
        if (!prepared.state_of(member).moves())
            return cannot_tell("bind", prepared.piece->part_of(member).id,
                               fmt::format("Whether {} jams in its opening cannot be told: {}.", assembly_words(prepared, b),
                                           prepared.state_of(member).missing_movement()),
                               "");
    const double across = ties.box_of(b.low).size(b.axis) + ties.box_of(b.high).size(b.axis);
    const Datum<double>& wanted = prepared.facts->number("wanted_clearance");
    Finding f;
    f.check = "bind";
    f.subject = prepared.piece->part_of(mover).id;
    Point way{};
    way[index_of(b.axis)] = 1;
    f.where = fmt::format("{} to {}, {}, {}", prepared.piece->label(b.low, true), prepared.piece->label(b.high, true),
                          way_words(way), state.species);
    f.about.copies = {b.low, b.high};
    f.weight = b.size;
    judge(prepared, b, across, f);
    add_moistures(f, state);
    const auto with = [&](double grows, double opening) {
        return fmt::format("c0 = {}, Δ = {}, Δ_opening = {}", small_words(prepared, b.gap()), small_words(prepared, grows),
                           small_words(prepared, opening));
    };
    f.working.push_back({"Room at the dampest, both sides together; all members and joints from one side to the other add up",
                         "c = c0 − (Δ of the assembly − Δ of its opening)", with(b.grows.damp, b.opening.damp), b.dampest(), "m",
                         "geometry"});
    f.working.push_back({"Room at the driest", "c = c0 − (Δ of the assembly − Δ of its opening)",
                         with(b.grows.dry, b.opening.dry), b.driest(), "m", "geometry"});
    f.working.push_back({"Room that should be left", "c_wanted", "", wanted.value, "m", wanted.cite.text()});
    add_size_today(f, state,
                   {"assembly_today", assembly_words(prepared, b) + " at most this long", "s + c at its least − c_wanted",
                    fmt::format("s = {}", size_words(prepared, b.size)), b.size + b.least() - wanted.value});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> judge_stopped_assemblies(const Prepared& prepared, const Ties& ties)
{
    const std::vector<std::size_t> frames = frames_of(prepared, ties);
    std::vector<Finding> findings;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        for (const Between& b : tightest(prepared, ties, frames, axis)) findings.push_back(finding_of(prepared, ties, b));
    return findings;
}

} // namespace jointwright
