#include "report/text/text.hpp"

#include "measure/write.hpp"
#include "report/text/text_page.hpp"
#include "report/words/display_width.hpp"
#include "report/words/people.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr int kDetailIndent = 6;

void write_opening(TextPage& page, const ReportContent& content)
{
    page.paragraph(fmt::format("{} {}", content.piece_name, verdict_predicate(content)), page.verdict_lead(content.verdict, "  "),
                   0);
    page.paragraph(counts_sentence(content));
    page.blank();
    page.paragraph(fmt::format("Use: {}. Weight: {}.", content.use, mass_words(content.mass_kg, content.units)));
    if (content.room_name) page.paragraph(fmt::format("Room: {}.", *content.room_name));
    page.paragraph(fmt::format("Moisture of the wood: {}.", moisture_range_words(content)));
    if (content.room_year) page.paragraph(room_year_words(*content.room_year));
    if (!nothing_to_change(content)) return;
    page.blank();
    page.paragraph(kNothingToChange);
}

/// A name padded to the column of its neighbours; one that is too long for the column runs on as part of the text.
struct NameColumn {
    int width = 0;
    static constexpr int kWidest = 22;

    void make_room_for(const std::string& safe_name)
    {
        const int columns = columns_of(std::string_view{safe_name});
        if (columns <= kWidest) width = std::max(width, columns);
    }

    void write(TextPage& page, const std::string& before, const std::string& safe_name, const std::string& words) const
    {
        const int columns = columns_of(std::string_view{safe_name});
        if (columns > width) return page.paragraph(fmt::format("{}: {}", safe_name, words), plain_lead(before));
        const std::string padding(static_cast<std::size_t>(width - columns + 2), ' ');
        page.paragraph(words, plain_lead(before + safe_name + padding));
    }
};

void write_parts(TextPage& page, const ReportContent& content)
{
    page.paragraph(fmt::format("{}.", kPartsCaption));
    NameColumn names;
    for (const PartLine& part : content.parts) names.make_room_for(safe_text(part.id));
    for (const PartLine& part : content.parts) {
        const std::string words = fmt::format("{}, {}, {}, {}", part_size_words(part, content.units), part.grain,
                                              mass_words(part.mass_kg, content.units), part.wood);
        names.write(page, fmt::format("{:>5} × ", part.copies), safe_text(part.id), words);
    }
}

void write_joints(TextPage& page, const ReportContent& content)
{
    page.blank();
    if (content.joints.empty()) return page.paragraph("No joints are stated.");
    page.paragraph("Joints.");
    NameColumn names;
    const auto name_of_joint = [](const JointLine& joint) { return safe_text(joint.first + " / " + joint.second); };
    for (const JointLine& joint : content.joints) names.make_room_for(name_of_joint(joint));
    for (const JointLine& joint : content.joints) names.write(page, "  ", name_of_joint(joint), joint_words(joint));
}

void write_loose_touches(TextPage& page, const ReportContent& content)
{
    const std::vector<std::string> touches = loose_touches(content);
    if (touches.empty()) return;
    page.blank();
    page.paragraph("Touching without a joint: dry, resting and pressing only.");
    for (const std::string& touch : touches) page.paragraph(touch, indent(2), 4);
}

void write_numbers(TextPage& page, const Finding& finding, const ReportContent& content, bool with_working)
{
    page.labelled(kDetailIndent, "numbers", values_line(finding, content.units));
    if (!with_working) return;
    if (!finding.working.empty()) page.paragraph("working:", indent(kDetailIndent));
    write_working(page, finding.working, content.units, kDetailIndent + 2);
    for (const std::string& source : finding.sources) page.labelled(kDetailIndent, "source", source);
}

/// "FAIL 1.32  top / end rail  (cross-grain)", then a sentence, the place, the remedy and the numbers.
void write_finding_to_act_on(TextPage& page, const Finding& finding, const ReportContent& content, bool with_working)
{
    page.blank();
    const std::string share = utilisation_words(finding).value_or("");
    page.paragraph(fmt::format("{} ({})", finding.subject, finding.check),
                   page.verdict_lead(finding.verdict, share.empty() ? "  " : " " + share + "  "), kDetailIndent);
    page.paragraph(finding.headline, indent(kDetailIndent));
    page.labelled(kDetailIndent, "where", finding.where.value_or(""));
    page.labelled(kDetailIndent, "remedy", finding.remedy.words());
    write_numbers(page, finding, content, with_working);
}

/// One line where it fits: the headline names the part itself.
void write_pass(TextPage& page, const Finding& finding, const ReportContent& content, bool with_working)
{
    constexpr int kLeadColumns = 11; // "PASS 0.24  "
    const std::string share = utilisation_words(finding).value_or("");
    page.paragraph(fmt::format("{} ({})", finding.headline, finding.check),
                   page.verdict_lead(finding.verdict, " " + share + "  ", kLeadColumns));
    if (!with_working) return;
    page.labelled(kDetailIndent, "where", finding.where.value_or(""));
    page.labelled(kDetailIndent, "remedy", finding.remedy.words());
    write_numbers(page, finding, content, with_working);
    page.blank();
}

void write_findings(TextPage& page, const ReportContent& content, bool with_working)
{
    page.heading(kFindingsHeading);
    if (content.findings.empty()) return page.paragraph("None.");
    page.paragraph(kUtilisationNote);
    bool first_pass = true;
    for (const Finding& finding : content.findings) {
        if (told_among_cautions(finding)) continue;
        if (finding.verdict != Verdict::pass) {
            write_finding_to_act_on(page, finding, content, with_working);
            continue;
        }
        if (first_pass) page.blank();
        first_pass = false;
        write_pass(page, finding, content, with_working);
    }
}

void write_first(TextPage& page, const ReportContent& content)
{
    const std::vector<FirstThing> things = first_things(content);
    if (things.empty()) return;
    page.heading(kFirstHeading);
    int number = 0;
    for (const FirstThing& thing : things)
        page.paragraph(fmt::format("{} ({})", thing.words, first_place_words(content, thing)),
                       plain_lead(fmt::format("{}. ", ++number)));
}

void write_cut_today(TextPage& page, const ReportContent& content)
{
    if (content.cut_today.empty()) return;
    page.heading(kCutTodayHeading);
    if (content.verdict == Verdict::fail) {
        page.paragraph(kCutOfFailing);
        page.blank();
    }
    for (std::size_t i = 0; i < content.cut_today.size(); ++i) {
        if (const auto heading = cut_heading_at(content, i)) {
            if (i > 0) page.blank();
            page.paragraph(*heading + ".");
        }
        page.paragraph(content.cut_today[i], plain_lead("* "));
    }
}

void write_list(TextPage& page, std::string_view heading, const std::vector<std::string>& lines)
{
    if (lines.empty()) return;
    page.heading(heading);
    for (const std::string& line : lines) page.paragraph(line, plain_lead("* "));
}

void write_uncertain(TextPage& page, const ReportContent& content, bool with_working)
{
    const UncertainSources sources = uncertain_sources(content);
    if (sources.lines.empty()) return;
    page.heading(kUncertainHeading);
    page.paragraph(uncertain_sentence(sources) +
                   (with_working ? "" : " --working names them all, and what each check leaves out."));
    if (!with_working) return;
    for (const std::string& line : sources.lines) page.paragraph(line, plain_lead("* "));
}

void write_left_out(TextPage& page, const ReportContent& content)
{
    if (content.left_out.empty()) return;
    page.heading(kLeftOutHeading);
    for (const LeftOut& check : content.left_out) {
        page.paragraph(check.check + ".");
        for (const std::string& point : check.points) page.paragraph(point, plain_lead("* "));
    }
}

} // namespace

std::string write_text(const ReportContent& content, const TextOptions& options)
{
    TextPage page(options);
    write_opening(page, content);
    write_first(page, content);
    page.heading(kPieceHeading);
    write_parts(page, content);
    write_joints(page, content);
    write_loose_touches(page, content);
    write_findings(page, content, options.working);
    write_cut_today(page, content);
    write_list(page, kAssumedHeading, content.assumed);
    write_list(page, kCautionsHeading, content.cautions);
    write_uncertain(page, content, options.working);
    if (options.working) write_left_out(page, content);
    page.blank();
    page.paragraph(program_words(content) + (content.date ? ", " + *content.date : "") + ".");
    return page.take();
}

} // namespace jointwright
