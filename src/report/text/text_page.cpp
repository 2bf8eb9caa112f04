#include "report/text/text_page.hpp"

#include "report/words/people.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr std::string_view kPlain = "\x1b[0m";
constexpr std::string_view kBold = "\x1b[1m";

std::string_view colour_of(Verdict verdict)
{
    switch (verdict) {
    case Verdict::pass: return "\x1b[32m";
    case Verdict::warn: return "\x1b[33m";
    case Verdict::cannot_tell: return "\x1b[35m";
    case Verdict::fail: return "\x1b[1;31m";
    }
    return {};
}

} // namespace

TextPage::TextPage(const TextOptions& options) : columns_(options.columns), colour_(options.colour)
{
    constexpr int kNarrowest = 40;
    columns_ = std::max(columns_, kNarrowest);
}

void TextPage::blank() { text_ += '\n'; }

void TextPage::heading(std::string_view words)
{
    blank();
    text_ += colour_ ? fmt::format("{}{}{}\n", kBold, words, kPlain) : fmt::format("{}\n", words);
    text_.append(words.size(), '-');
    text_ += '\n';
}

void TextPage::paragraph(std::string_view words, const Lead& lead, int hanging)
{
    text_ += wrapped(words, columns_, lead, hanging);
}

void TextPage::labelled(int set_in, std::string_view label, std::string_view words)
{
    if (words.empty()) return;
    paragraph(words, plain_lead(fmt::format("{:{}}{}: ", "", set_in, label)));
}

Lead TextPage::verdict_lead(Verdict verdict, std::string_view behind, int columns) const
{
    const std::string_view word = verdict_capitals(verdict);
    Lead lead = plain_lead(fmt::format("{}{}", word, behind));
    if (lead.columns < columns) {
        lead.text.append(static_cast<std::size_t>(columns - lead.columns), ' ');
        lead.columns = columns;
    }
    if (colour_) lead.text = fmt::format("{}{}{}{}", colour_of(verdict), word, kPlain, lead.text.substr(word.size()));
    return lead;
}

void write_working(TextPage& page, const Working& working, LengthUnit units, int set_in)
{
    int number = 0;
    for (const WorkingStep& step : working) {
        const Lead lead = plain_lead(fmt::format("{:{}}{}. ", "", set_in, ++number));
        const Lead under = indent(lead.columns);
        page.paragraph(step.says, lead);
        if (!step.formula.empty()) page.paragraph(step.formula, under, lead.columns + 2);
        page.labelled(lead.columns, "with", step.with);
        page.paragraph("= " + value_words(step.value, step.unit, units), under);
        page.labelled(lead.columns, "source", step.source);
    }
}

} // namespace jointwright
