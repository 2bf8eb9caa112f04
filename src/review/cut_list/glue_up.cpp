// The glue-up of "Cut today": stages in their order, clamps, glue to have at hand.

#include "judging/joints/glue_stages.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "review/cut_list/cut_list.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace jointwright {

namespace {

constexpr std::size_t kMostStages = 30;

std::string time_words(double seconds)
{
    if (seconds < 90) return fmt::format("{:.0f} s", seconds);
    if (seconds < 5400) return fmt::format("{} min", write_number(seconds / 60, 2));
    return fmt::format("{} h", write_number(seconds / 3600, 2));
}

/// How one kind of joint is clamped: what stands behind its name.
std::string clamp_words(const Finding& f, LengthUnit units)
{
    const auto clamps = finding_value(f, "clamps"), each = finding_value(f, "force_per_clamp"),
               spacing = finding_value(f, "spacing"), caul = finding_value(f, "caul");
    if (!clamps || !each) return {};
    // A part alone is glued up from boards.
    const bool boards = f.subject.find(" / ") == std::string::npos;
    std::string words = fmt::format("{:.0f}{}", *clamps, boards ? " for its boards" : " at each place");
    if (*clamps > 1 && spacing && *spacing > 0) words += fmt::format(", {} apart", write_length(metres(*spacing), units));
    words += fmt::format(", about {} each", write_force(newtons(*each), units));
    if (caul) words += fmt::format(", cauls at least {} wide", write_length_up(metres(*caul), units));
    if (f.verdict != Verdict::pass) words += "; little for so wide a face";
    return words;
}

/// Joints that are clamped alike share a line.
void add_clamps(std::vector<std::string>& lines, const std::vector<Finding>& findings, LengthUnit units)
{
    std::vector<std::pair<std::string, std::string>> alike; // names, words
    for (const Finding& f : findings) {
        if (f.check != "clamping") continue;
        const std::string words = clamp_words(f, units);
        if (words.empty()) continue;
        const auto same = std::find_if(alike.begin(), alike.end(), [&](const auto& a) { return a.second == words; });
        if (same == alike.end())
            alike.emplace_back(f.subject, words);
        else
            same->first += "; " + f.subject;
    }
    for (const auto& [names, words] : alike) lines.push_back(fmt::format("clamps for {}: {}", names, words));
}

/// Clamps that a finding asks for at each place of a pair of parts, or for the boards of one; nothing when it tells none.
std::optional<double> clamps_for(const std::vector<Finding>& findings, const std::string& one, const std::string& other)
{
    for (const Finding& f : findings)
        if (f.check == "clamping" && (f.subject == one || f.subject == other)) return finding_value(f, "clamps");
    return std::nullopt;
}

/// The most clamps that any one stage takes; nothing when some number is missing.
std::optional<double> most_clamps(const Prepared& prepared, const StagePlan& plan, const std::vector<Finding>& findings)
{
    double most = 0;
    for (const GlueStage& stage : plan.stages) {
        double sum = 0;
        if (stage.part) {
            const std::string& id = prepared.piece->parts[*stage.part].id;
            const auto clamps = clamps_for(findings, id, id);
            if (!clamps) return std::nullopt;
            sum = *clamps;
        }
        for (const std::size_t c : stage.contacts) {
            const Contact& contact = prepared.layout->contacts[c];
            const std::string &a = prepared.piece->part_of(contact.first).id, &b = prepared.piece->part_of(contact.second).id;
            const auto clamps = clamps_for(findings, a + " / " + b, b + " / " + a);
            if (!clamps) return std::nullopt;
            sum += *clamps;
        }
        most = std::max(most, sum);
    }
    return most > 0 ? std::optional(most) : std::nullopt;
}

} // namespace

std::vector<std::string> glue_up_lines(const Prepared& prepared, const std::vector<Finding>& findings, LengthUnit units)
{
    const StagePlan plan = plan_stages(prepared);
    if (plan.joints == 0 || plan.too_many) return {};
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < plan.stages.size() && i < kMostStages; ++i) {
        const GlueStage& stage = plan.stages[i];
        lines.push_back(fmt::format("stage {}: {}, with {}; {} to spread and close{}", i + 1, stage.words, stage.glue,
                                    time_words(stage.time), stage.share > 1 ? ", longer than it stays open" : ""));
    }
    if (plan.stages.size() > kMostStages) lines.push_back(fmt::format("and {} stages more", plan.stages.size() - kMostStages));
    add_clamps(lines, findings, units);
    if (const auto most = most_clamps(prepared, plan, findings))
        lines.push_back(fmt::format("clamps at once: up to {:.0f}; a bar over both ends of a part serves two joints", *most));
    for (const Finding& f : findings) {
        if (f.check != "assembly-time") continue;
        const auto clamped = finding_value(f, "clamp_time"), mass = finding_value(f, "glue_mass");
        if (clamped && *clamped > 0)
            lines.push_back(fmt::format("leave each stage clamped for {} at least", time_words(*clamped)));
        if (mass && *mass > 0) lines.push_back(fmt::format("glue for it all: about {:.0f} g", std::ceil(*mass * 1000)));
    }
    return lines;
}

} // namespace jointwright
