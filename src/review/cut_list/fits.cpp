// Gaps, room and slots of "Cut today", from what the checks found.

#include "measure/write.hpp"
#include "review/cut_list/cut_list.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kFineBelow = 3e-3;   // m: from here up a spacer is set by the rule, below it by a feeler
constexpr double kSeasonsFrom = 0.25; // utilisation below which the seasons say nothing that a maker must know

/// Sentences about the gaps, grooves and slots of the findings.
class FitWriter {
public:
    explicit FitWriter(LengthUnit units) : units_(units) {}

    /// Empty for findings that ask for no size today.
    std::string line(const Finding& f) const
    {
        if (f.check == "slat-gap") return gap(f);
        if (f.check == "groove-room") return room(f);
        if (f.check == "slot-length") return slot(f);
        if (const auto width = finding_value(f, "width_today"); f.check == "bind" && width)
            return fmt::format("{}: at most {} wide today to run free between its stops", f.subject,
                               write_length(metres(*width), units_));
        return {};
    }

private:
    std::string small(double v) const { return write_small_length(metres(v), units_); }
    std::string season(double v) const { return v < 0 ? fmt::format("pressed by {}", small(-v)) : small(v); }
    std::string today(double v) const { return std::abs(v) < kFineBelow ? small(v) : write_length(metres(v), units_); }

    /// " (0.59 in at the driest, 0.561 in at the dampest)"
    std::string seasons(const Finding& f) const
    {
        if (f.verdict == Verdict::pass && f.utilisation.value_or(0) < kSeasonsFrom) return {};
        const auto dry = finding_value(f, "gap_driest"), damp = finding_value(f, "gap_dampest");
        return dry && damp ? fmt::format(" ({} at the driest, {} at the dampest)", season(*dry), season(*damp)) : std::string{};
    }

    static std::string better(const Finding& f)
    {
        return f.verdict != Verdict::pass && f.remedy ? fmt::format("; better: {}", f.remedy.words()) : std::string{};
    }

    std::string gap(const Finding& f) const
    {
        const auto made = finding_value(f, "gap_made");
        if (!made) return {};
        const std::size_t pair = f.subject.find(" / ");
        const std::string between = pair == std::string::npos ? f.subject + " and the next"
                                                              : f.subject.substr(0, pair) + " and " + f.subject.substr(pair + 3);
        return fmt::format("gap between {}: {} today{}{}", between, today(*made), seasons(f), better(f));
    }

    std::string room(const Finding& f) const
    {
        const auto made = finding_value(f, "gap_made"), dry = finding_value(f, "gap_driest"),
                   damp = finding_value(f, "gap_dampest");
        if (!made || !dry || !damp) return {};
        // Along its grain a panel keeps its room; the groove's line says how far it goes in.
        const bool moves = std::abs(*dry - *damp) > 1e-5;
        if (f.verdict == Verdict::pass && (!moves || *made <= 0)) return {};
        return fmt::format("room of {} in its groove, at each edge: {} today{}{}", f.subject, small(*made), seasons(f),
                           better(f));
    }

    std::string slot(const Finding& f) const
    {
        const auto mill = finding_value(f, "slot_to_mill"), travel = finding_value(f, "travel");
        if (!mill || !(*mill > 0)) return {};
        if (f.verdict == Verdict::pass && travel) return {}; // as drawn: the joint's line has it
        return fmt::format("slots of {}: mill {} long across the grain", f.subject, write_length_up(metres(*mill), units_));
    }

    LengthUnit units_;
};

} // namespace

std::vector<std::string> cut_fit_lines(const std::vector<Finding>& findings, LengthUnit units)
{
    const FitWriter writer(units);
    std::vector<std::string> lines;
    for (const Finding& f : findings)
        if (std::string line = writer.line(f); !line.empty()) lines.push_back(std::move(line));
    return lines;
}

} // namespace jointwright
