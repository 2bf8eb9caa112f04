#include "report/text/markdown.hpp"

#include "measure/write.hpp"
#include "report/words/people.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace jointwright {

namespace {

using Out = fmt::memory_buffer;

template <class... Args>
void put(Out& out, fmt::format_string<Args...> words, Args&&... args)
{
    fmt::format_to(std::back_inserter(out), words, std::forward<Args>(args)...);
}

bool is_markup(char c) { return std::string_view{"\\`*_[]<>#|~&@$^="}.find(c) != std::string_view::npos; }

/// A list mark at the start of a text would open a list: "- ", "+ ", "1. ", "1) ".
std::size_t opening_mark(std::string_view text)
{
    std::size_t digits = 0;
    while (digits < text.size() && text[digits] >= '0' && text[digits] <= '9') ++digits;
    if (digits == 0) return !text.empty() && (text[0] == '-' || text[0] == '+') ? 0 : std::string_view::npos;
    return digits < text.size() && (text[digits] == '.' || text[digits] == ')') ? digits : std::string_view::npos;
}

/// Readers of notes turn bare addresses into links: "https://", "www.".
bool opens_address(std::string_view text, std::size_t i)
{
    if (text.compare(i, 3, "://") == 0) return true;
    return text[i] == '.' && i >= 3 && (text[i - 1] == 'w' || text[i - 1] == 'W');
}

void put_opening(Out& out, const ReportContent& content)
{
    put(out, "# {}\n\n", markdown_text(content.piece_name));
    put(out, "**{}** {} {}\n{}\n\n", verdict_capitals(content.verdict), markdown_text(content.piece_name),
        verdict_predicate(content), counts_sentence(content));
    put(out, "- Use: {}. Weight: {}.\n", markdown_text(content.use), mass_words(content.mass_kg, content.units));
    if (content.room_name) put(out, "- Room: {}.\n", markdown_text(*content.room_name));
    put(out, "- Moisture of the wood: {}.\n", moisture_range_words(content));
    if (content.room_year) put(out, "- {}\n", markdown_text(room_year_words(*content.room_year)));
    if (nothing_to_change(content)) put(out, "\n{}\n", kNothingToChange);
}

void put_first(Out& out, const ReportContent& content)
{
    const std::vector<FirstThing> things = first_things(content);
    if (things.empty()) return;
    put(out, "\n## {}\n\n", kFirstHeading);
    int number = 0;
    for (const FirstThing& thing : things)
        put(out, "{}. {} ({})\n", ++number, markdown_text(thing.words), markdown_text(first_place_words(content, thing)));
}

void put_piece(Out& out, const ReportContent& content)
{
    put(out, "\n## {}\n\n", kPieceHeading);
    if (!content.parts.empty())
        put(out, "| copies | part | length × width × thickness | grain | weight of one | wood |\n|---:|---|---|---|---|---|\n");
    for (const PartLine& part : content.parts)
        put(out, "| {} | {} | {} | {} | {} | {} |\n", part.copies, markdown_text(part.id), part_size_words(part, content.units),
            markdown_text(part.grain), mass_words(part.mass_kg, content.units), markdown_text(part.wood));
    put(out, "\n{}\n\n", content.joints.empty() ? "No joints are stated." : "Joints.");
    for (const JointLine& joint : content.joints)
        put(out, "- {}: {}\n", markdown_text(joint.first + " / " + joint.second), markdown_text(joint_words(joint)));
    const std::vector<std::string> touches = loose_touches(content);
    if (touches.empty()) return;
    put(out, "\nTouching without a joint: dry, resting and pressing only.\n\n");
    for (const std::string& touch : touches) put(out, "- {}\n", markdown_text(touch));
}

void put_labelled(Out& out, std::string_view label, std::string_view words)
{
    if (!words.empty()) put(out, "  - {}: {}\n", label, markdown_text(words));
}

void put_working(Out& out, const Working& working, LengthUnit units)
{
    for (const WorkingStep& step : working) {
        put(out, "  - working: {}", markdown_text(step.says));
        for (const std::string* more : {&step.formula, &step.with})
            if (!more->empty()) put(out, "; {}", markdown_text(*more));
        put(out, "; \\= {}", markdown_text(value_words(step.value, step.unit, units)));
        if (!step.source.empty()) put(out, " ({})", markdown_text(step.source));
        put(out, "\n");
    }
}

void put_finding(Out& out, const Finding& finding, const ReportContent& content, bool with_working)
{
    const std::optional<std::string> share = utilisation_words(finding);
    put(out, "- **{}**{} {} ({}): {}\n", verdict_capitals(finding.verdict), share ? " " + *share : "",
        markdown_text(finding.subject), markdown_text(finding.check), markdown_text(finding.headline));
    if (finding.verdict == Verdict::pass && !with_working) return;
    put_labelled(out, "where", finding.where.value_or(""));
    put_labelled(out, "remedy", finding.remedy.words());
    put_labelled(out, "numbers", values_line(finding, content.units));
    put_working(out, finding.working, content.units);
}

void put_list(Out& out, std::string_view heading, const std::vector<std::string>& lines)
{
    if (lines.empty()) return;
    put(out, "\n## {}\n\n", heading);
    for (const std::string& line : lines) put(out, "- {}\n", markdown_text(line));
}

void put_cut_list(Out& out, const ReportContent& content)
{
    if (content.cut_today.empty()) return;
    put(out, "\n## {}\n\n", kCutTodayHeading);
    if (content.verdict == Verdict::fail) put(out, "**{}**\n\n", kCutOfFailing);
    for (std::size_t i = 0; i < content.cut_today.size(); ++i) {
        if (const auto heading = cut_heading_at(content, i)) put(out, "{}### {}\n\n", i ? "\n" : "", markdown_text(*heading));
        put(out, "- {}\n", markdown_text(content.cut_today[i]));
    }
}

void put_uncertain(Out& out, const ReportContent& content, bool with_working)
{
    const UncertainSources sources = uncertain_sources(content);
    if (sources.lines.empty()) return;
    put(out, "\n## {}\n\n{}\n", kUncertainHeading, uncertain_sentence(sources));
    if (!with_working) return;
    put(out, "\n");
    for (const std::string& line : sources.lines) put(out, "- {}\n", markdown_text(line));
}

void put_left_out(Out& out, const ReportContent& content)
{
    if (content.left_out.empty()) return;
    put(out, "\n## {}\n", kLeftOutHeading);
    for (const LeftOut& check : content.left_out) {
        put(out, "\n### {}\n\n", markdown_text(check.check));
        for (const std::string& point : check.points) put(out, "- {}\n", markdown_text(point));
    }
}

} // namespace

std::string markdown_text(std::string_view text)
{
    const std::string safe = safe_text(text);
    const std::size_t mark = opening_mark(safe);
    std::string escaped;
    for (std::size_t i = 0; i < safe.size(); ++i) {
        if (is_markup(safe[i]) || i == mark || opens_address(safe, i)) escaped += '\\';
        escaped += safe[i];
    }
    return escaped;
}

std::string write_markdown(const ReportContent& content, bool with_working)
{
    Out out;
    put_opening(out, content);
    put_first(out, content);
    put_piece(out, content);
    put(out, "\n## {}\n\n{}\n\n", kFindingsHeading, content.findings.empty() ? "None." : kUtilisationNote);
    for (const Finding& finding : content.findings)
        if (!told_among_cautions(finding)) put_finding(out, finding, content, with_working);
    put_cut_list(out, content);
    put_list(out, kAssumedHeading, content.assumed);
    put_list(out, kCautionsHeading, content.cautions);
    put_uncertain(out, content, with_working);
    if (with_working) put_left_out(out, content);
    put(out, "\n{}{}.\n", markdown_text(program_words(content)), content.date ? ", " + markdown_text(*content.date) : "");
    return fmt::to_string(out);
}

} // namespace jointwright
