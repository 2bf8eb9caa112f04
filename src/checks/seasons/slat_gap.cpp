// Gaps between like parts standing in a row, and beside the last of them: do they close when damp, open too far when dry, or trap fingers?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/row_gaps.hpp"
#include "judging/fits/size_today.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

struct GapThroughYear {
    double made, driest, dampest;
    double least() const { return std::min({made, driest, dampest}); }
    double most() const { return std::max({made, driest, dampest}); }
    double closes_by() const { return made - least(); }
    double opens_by() const { return most() - made; }
};

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

struct Judged {
    Verdict verdict = Verdict::pass;
    std::string why, remedy;
    double gap_today = 0; ///< the gap to make
};

Judged judge(const Prepared& prepared, const GapThroughYear& gap, const Wanted& wanted)
{
    constexpr double ease = 0.0005; // m: clear of the limit by what a rule shows
    const double from = prepared.facts->number("finger_trap_from").value, to = prepared.facts->number("finger_trap_to").value;
    const double least_today = gap.closes_by() + wanted.least;
    if (gap.least() <= -kTouch || (gap.least() <= 0 && gap.made > 0) || gap.least() < wanted.least) {
        const bool closes = gap.least() <= 0;
        return {closes ? Verdict::fail : Verdict::warn,
                closes ? "the gap closes and the parts press on each other"
                       : fmt::format("less than the {} wanted in every season", size_words(prepared, wanted.least)),
                fmt::format("make the gap at least {} today", size_words(prepared, least_today)), least_today};
    }
    if (wanted.most && gap.most() > *wanted.most) {
        const double today = *wanted.most - gap.opens_by();
        return {Verdict::warn, fmt::format("more than the {} wanted in every season", size_words(prepared, *wanted.most)),
                fmt::format("make the gap at most {} today", size_words(prepared, today)), today};
    }
    if (gap.most() < from || gap.least() > to) return {Verdict::pass, "", "", gap.made};
    const double under = std::max(0.0, from - ease - gap.opens_by()), over = to + ease + gap.closes_by();
    const std::string why =
        fmt::format("a gap of {} to {} can trap a finger", size_words(prepared, from), size_words(prepared, to));
    const bool narrower = under >= least_today && (gap.made - under <= over - gap.made || (wanted.most && over > *wanted.most));
    return {Verdict::warn, why,
            fmt::format("stay under {} or over {} in every season: {} or {} today", size_words(prepared, from),
                        size_words(prepared, to), size_words(prepared, under), size_words(prepared, over)),
            narrower ? under : over};
}

/// How much a part takes of the gap on one side: half of its growth, as it is fixed at its middle.
struct HalfGrowth {
    double dry = 0, damp = 0;
};

HalfGrowth half_growth(const Prepared& prepared, std::size_t copy, Axis along)
{
    const PartState& state = prepared.state_of(copy);
    const Part& part = prepared.piece->part_of(copy);
    const double half = prepared.piece->copies[copy].box.size(along) / 2;
    return {half * strain_along(part, state.dry, along), half * strain_along(part, state.damp, along)};
}

void add_limits(const Prepared& prepared, const GapThroughYear& season, Finding& f)
{
    const Datum<double>& trap = prepared.facts->number("finger_trap_from");
    f.working.push_back({"Gaps that trap fingers", "7 mm to 12 mm", "", trap.value, "m", trap.cite.text()});
    const Datum<double>& small = prepared.facts->number("finger_trap_child_from");
    f.working.push_back(
        {"Gaps that trap the fingers of young children", "5 mm to 12 mm", "", small.value, "m", small.cite.text()});
    if (prepared.piece->limits.gap_max) return;
    const Datum<double>& coin = prepared.facts->number("coin_gap");
    f.working.push_back({"Open gap at its widest; the design states no gap_max. Coins and keys slip through from about this",
                         "g > 2 mm", fmt::format("g = {}", small_words(prepared, season.most())), coin.value, "m",
                         coin.cite.text()});
}

/// One gap through the year between two copies, each fixed at its middle. `of` is the row's part, beside it another or the same.
Finding finding_for(const Prepared& prepared, std::size_t of, const RowGap& gap, Axis along)
{
    const Piece& piece = *prepared.piece;
    const std::size_t slat = piece.copies[gap.before].part == of ? gap.before : gap.after,
                      beside = slat == gap.before ? gap.after : gap.before;
    const bool alike = piece.copies[beside].part == of;
    const Part& part = piece.parts[of];
    const PartState& state = prepared.parts[of];
    const Wanted wanted = wanted_by(prepared);
    const HalfGrowth a = half_growth(prepared, slat, along), b = half_growth(prepared, beside, along);
    const double dry = a.dry + b.dry, damp = a.damp + b.damp;
    const GapThroughYear season{gap.made, gap.made - dry, gap.made - damp};
    const Judged judged = judge(prepared, season, wanted);
    const std::string next = alike ? "the next" : piece.part_of(beside).id;
    Finding f;
    f.check = "slat-gap";
    f.subject = alike ? part.id : part.id + " / " + piece.part_of(beside).id;
    f.verdict = judged.verdict;
    f.headline = fmt::format("The gap between {} and {} is {} as made, {} at the driest and {} at the dampest{}{}.", part.id,
                             next, small_words(prepared, season.made), small_words(prepared, season.driest),
                             small_words(prepared, season.dampest), judged.why.empty() ? "" : ": ", judged.why);
    const double child = prepared.facts->number("finger_trap_child_from").value;
    if (judged.verdict == Verdict::pass && season.most() >= child &&
        season.most() < prepared.facts->number("finger_trap_from").value)
        f.headline += fmt::format(" Where young children use it, stay under {}.", size_words(prepared, child));
    if (!judged.remedy.empty()) f.remedy = judged.remedy;
    f.where = fmt::format("{} and {}, {}", piece.label(gap.before), piece.label(gap.after), state.species);
    f.about.copies = {gap.before, gap.after};
    f.utilisation = season.made > 0      ? std::max(0.0, (season.made - season.least()) / season.made)
                    : season.least() < 0 ? 2.0
                                         : 1.0;
    f.values = {{"gap_made", season.made, "m"},
                {"gap_driest", season.driest, "m"},
                {"gap_dampest", season.dampest, "m"},
                {"wanted_least", wanted.least, "m"}};
    add_moistures(f, state);
    const std::string law = alike ? "g = g0 − Δw" : "g = g0 − (Δw1 + Δw2)/2";
    const auto with = [&](double growth) {
        return fmt::format("g0 = {}, {} = {}", small_words(prepared, season.made), alike ? "Δw" : "(Δw1 + Δw2)/2",
                           small_words(prepared, growth));
    };
    f.working.push_back({fmt::format("Gap at the dampest: {} and {} each fixed at its middle", part.id, next), law, with(damp),
                         season.dampest, "m", "geometry"});
    f.working.push_back({"Gap at the driest", law, with(dry), season.driest, "m", "geometry"});
    add_limits(prepared, season, f);
    const double size = piece.copies[slat].box.size(along);
    for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement),
                                              rings_along(prepared, slat, along), metres(size), state.made, state.dampest))
        f.working.push_back(std::move(step));
    add_size_today(f, state, {"gap_today", fmt::format("gap between {} and {}", part.id, next), "", "", judged.gap_today});
    add_size_today(f, state,
                   {"gap_least_today", "the least gap that stays wide enough", "wanted + what it closes by",
                    fmt::format("wanted {}", small_words(prepared, wanted.least)), season.closes_by() + wanted.least});
    if (alike)
        add_size_today(f, state,
                       {"slat_width_today", fmt::format("width of {} for that gap, the spacing kept", part.id),
                        "w + g0 − g_today", fmt::format("w = {}", size_words(prepared, size)),
                        size + season.made - judged.gap_today});
    gather_sources(f);
    return f;
}

/// A finding for a gap, or that it cannot be told.
Finding look_at(const Prepared& prepared, std::size_t of, const RowGap& gap, Axis along)
{
    const Piece& piece = *prepared.piece;
    for (const std::size_t copy : {gap.before, gap.after})
        if (!prepared.state_of(copy).moves()) {
            const std::size_t other = piece.copies[gap.before].part == of ? gap.after : gap.before;
            const std::string& id = piece.parts[of].id;
            return cannot_tell(
                "slat-gap", piece.copies[other].part == of ? id : id + " / " + piece.part_of(other).id,
                fmt::format("How the gaps of {} change cannot be told: {}.", id, prepared.state_of(copy).missing_movement()), "");
        }
    return finding_for(prepared, of, gap, along);
}

} // namespace

std::vector<Finding> check_slat_gap(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < piece.parts.size(); ++p)
        for (const Axis along : {piece.parts[p].width_axis(), piece.parts[p].face}) {
            const std::vector<RowGap> gaps = gaps_in_row(prepared, p, along);
            if (gaps.empty()) continue;
            for (const RowGap& gap : gaps) keep_worst(findings, look_at(prepared, p, gap, along));
            for (const RowGap& gap : gaps_beside_row(prepared, p, along)) keep_worst(findings, look_at(prepared, p, gap, along));
        }
    return findings;
}

} // namespace jointwright
