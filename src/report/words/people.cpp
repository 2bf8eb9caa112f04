#include "report/words/people.hpp"

#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <map>

namespace jointwright {

namespace {

std::string counted(int count, std::string_view one, std::string_view more)
{
    return fmt::format("{} {}", count, count == 1 ? one : more);
}

/// An angle with enough digits to see a corner that is out of square by a few tenths of a degree.
std::string angle_words(double radians_value) { return write_number(in_degrees(radians(radians_value))) + "°"; }

/// The first way of a remedy, with a capital and a full stop.
std::string first_advice(const Remedy& remedy)
{
    std::string words = remedy.ways().front();
    if (words.front() >= 'a' && words.front() <= 'z') words.front() = static_cast<char>(words.front() - 'a' + 'A');
    if (words.back() != '.') words += '.';
    return words;
}

} // namespace

std::string_view verdict_title(Verdict verdict)
{
    switch (verdict) {
    case Verdict::pass: return "Pass";
    case Verdict::warn: return "Warn";
    case Verdict::cannot_tell: return "Cannot tell";
    case Verdict::fail: return "Fail";
    }
    return {};
}

std::string_view verdict_capitals(Verdict verdict)
{
    switch (verdict) {
    case Verdict::pass: return "PASS";
    case Verdict::warn: return "WARN";
    case Verdict::cannot_tell: return "CANNOT TELL";
    case Verdict::fail: return "FAIL";
    }
    return {};
}

bool told_among_cautions(const Finding& finding) { return finding.check == "dust"; }

VerdictCounts counts_for_people(const ReportContent& content)
{
    std::vector<Finding> told;
    std::remove_copy_if(content.findings.begin(), content.findings.end(), std::back_inserter(told), told_among_cautions);
    return count_verdicts(told);
}

std::string verdict_predicate(const ReportContent& content)
{
    const VerdictCounts counts = counts_for_people(content);
    const int all = counts.fail + counts.cannot_tell + counts.warn + counts.pass;
    if (all == 0) return "was read, but no check had anything to judge.";
    const std::string of_all = fmt::format("of {} {}", all, all == 1 ? "finding" : "findings");
    switch (content.verdict) {
    case Verdict::fail:
        return fmt::format("does not hold as drawn: {} {} {}.", counts.fail, of_all, counts.fail == 1 ? "fails" : "fail");
    case Verdict::warn:
    case Verdict::cannot_tell: {
        const int open = counts.warn + counts.cannot_tell;
        return fmt::format("shows no failure, but {} {} {} a closer look.", open, of_all, open == 1 ? "needs" : "need");
    }
    case Verdict::pass:
        return all == 1 ? "passes its one check." : fmt::format("passes: all {} findings are within their limits.", all);
    }
    return {};
}

std::string counts_sentence(const ReportContent& content)
{
    const VerdictCounts counts = counts_for_people(content);
    return fmt::format("{} fail, {} cannot tell, {} warn, {} pass.", counts.fail, counts.cannot_tell, counts.warn, counts.pass);
}

std::string room_year_words(const RoomYear& year)
{
    static constexpr std::array kMonths = {"January", "February", "March",     "April",   "May",      "June",
                                           "July",    "August",   "September", "October", "November", "December"};
    std::string text = "Month by month:";
    for (std::size_t m = 0; m < kMonths.size(); ++m) {
        const RoomMonth& month = year.months[m];
        text += fmt::format("{} {} ", m == 0 ? "" : ";", kMonths[m]);
        if (month.air)
            text += fmt::format("{:.0f} % at {:.0f} °C, ", month.air->humidity.percent(), month.air->temperature.celsius());
        text += fmt::format("wood {:.1f} %", month.moisture.percent());
    }
    return text + fmt::format(" ({}).", year.source);
}

std::string moisture_range_words(const ReportContent& content)
{
    return fmt::format("made at {}, driest {}, dampest {}", write_percent(content.moisture_at_glue_up_pct),
                       write_percent(content.moisture_driest_pct), write_percent(content.moisture_dampest_pct));
}

std::vector<FirstThing> first_things(const ReportContent& content)
{
    constexpr std::size_t kMost = 3;
    std::vector<FirstThing> things;
    for (std::size_t i = 0; i < content.findings.size(); ++i) {
        const Finding& finding = content.findings[i];
        if (finding.verdict == Verdict::pass || !finding.remedy) continue;
        std::string words = first_advice(finding.remedy);
        const auto told = std::find_if(things.begin(), things.end(), [&](const FirstThing& t) { return t.words == words; });
        if (told != things.end())
            ++told->more;
        else if (things.size() < kMost)
            things.push_back({std::move(words), i, 0});
    }
    return things;
}

std::string first_place_words(const ReportContent& content, const FirstThing& thing)
{
    const Finding& finding = content.findings[thing.finding];
    const std::string place = fmt::format("{}, {}", finding.subject, finding.check);
    return thing.more > 0 ? fmt::format("{}, and {} more", place, thing.more) : place;
}

bool nothing_to_change(const ReportContent& content)
{
    return content.verdict == Verdict::pass && !content.findings.empty() && !content.cut_today.empty();
}

std::optional<std::string> cut_heading_at(const ReportContent& content, std::size_t line)
{
    for (const CutGroup& group : content.cut_groups)
        if (group.first == line) return group.heading;
    return std::nullopt;
}

std::string mass_words(const std::optional<double>& kilograms, LengthUnit units)
{
    return kilograms ? write_mass(jointwright::kilograms(*kilograms), units) : "not known";
}

std::string part_size_words(const PartLine& part, LengthUnit units)
{
    return fmt::format("{} × {} × {}", write_length(metres(part.length_m), units), write_length(metres(part.width_m), units),
                       write_length(metres(part.thickness_m), units));
}

std::string joint_words(const JointLine& joint)
{
    return fmt::format("{}, {}, {}", joint.kind, joint.glue ? "glued with " + *joint.glue : "no glue",
                       counted(joint.places, "place", "places"));
}

std::vector<std::string> loose_touches(const ReportContent& content)
{
    constexpr std::size_t kShown = 8;
    std::vector<std::string> lines;
    std::size_t more = 0;
    for (const ContactLine& contact : content.contacts) {
        if (contact.joint) continue;
        if (lines.size() == kShown) {
            ++more;
            continue;
        }
        lines.push_back(fmt::format("{} touches {}, {}", contact.first, contact.second,
                                    write_area(square_metres(contact.area_m2), content.units)));
    }
    if (more > 0) lines.push_back(fmt::format("and {} more", more));
    return lines;
}

std::string label_words(std::string_view name)
{
    std::string words(name);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

std::string value_words(double value, std::string_view unit, LengthUnit units)
{
    if (!std::isfinite(value)) return "unknown";
    if (unit == "m") return write_small_length(metres(value), units);
    if (unit == "m2") return write_area(square_metres(value), units);
    if (unit == "N") return write_force(newtons(value), units);
    if (unit == "Pa") return write_stress(pascals(value));
    if (unit == "kg") return write_mass(kilograms(value), units);
    if (unit == "rad") return angle_words(value);
    if (unit == "1" || unit.empty()) return write_number(value);
    if (unit == "kg/m3") return write_number(value) + " kg/m³";
    return fmt::format("{} {}", write_number(value), unit);
}

std::optional<std::string> utilisation_words(const Finding& finding)
{
    if (!finding.utilisation || !std::isfinite(*finding.utilisation)) return std::nullopt;
    constexpr double kPlainUpTo = 1000;
    if (std::abs(*finding.utilisation) >= kPlainUpTo) return write_number(*finding.utilisation);
    return fmt::format("{:.2f}", *finding.utilisation + 0.0);
}

std::string values_line(const Finding& finding, LengthUnit units)
{
    std::string line;
    for (const NamedValue& value : finding.values) {
        if (!line.empty()) line += "; ";
        line += label_words(value.name) + ' ' + value_words(value.value, value.unit, units);
    }
    return line;
}

UncertainSources uncertain_sources(const ReportContent& content)
{
    std::map<std::string, std::vector<std::string>> checks_by_source;
    const auto take = [&](const std::string& source, const std::string& check) {
        if (source.empty()) return;
        std::vector<std::string>& checks = checks_by_source[source];
        if (std::find(checks.begin(), checks.end(), check) == checks.end()) checks.push_back(check);
    };
    for (const Finding& f : content.findings) {
        for (const std::string& source : f.sources) take(source, f.check);
        for (const WorkingStep& step : f.working) take(step.source, f.check);
    }
    UncertainSources found;
    found.all = checks_by_source.size();
    for (auto& [source, checks] : checks_by_source) {
        const auto says = [&, &text = source](std::string_view words) { return text.find(words) != std::string::npos; };
        if (!says("from memory") && !says("estimate") && !says("common practice")) continue;
        std::sort(checks.begin(), checks.end());
        found.lines.push_back(fmt::format("{}: {}", source, fmt::join(checks, ", ")));
    }
    return found;
}

std::string uncertain_sentence(const UncertainSources& sources)
{
    return fmt::format("{} of the {} sources behind these findings are from memory, estimated, or practice without a source.",
                       sources.lines.size(), sources.all);
}

std::string program_words(const ReportContent& content)
{
    return fmt::format("jointwright {}, data {}", content.program_version, content.data_version);
}

} // namespace jointwright
