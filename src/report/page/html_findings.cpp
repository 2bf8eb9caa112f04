#include "report/page/html_findings.hpp"

#include "report/drawings/joint.hpp"
#include "report/drawings/section.hpp"
#include "report/markup/formula_html.hpp"
#include "report/words/people.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

namespace jointwright {

namespace {

bool has_share(const Finding& finding) { return finding.utilisation && std::isfinite(*finding.utilisation); }

void put_numbers(HtmlOut& out, const Finding& finding, LengthUnit units)
{
    if (finding.values.empty()) return;
    put(out, "<dl class=\"numbers\">\n");
    for (const NamedValue& value : finding.values)
        put(out, "<div><dt>{}</dt><dd>{}</dd></div>\n", html_text(label_words(value.name)),
            html_text(value_words(value.value, value.unit, units)));
    put(out, "</dl>\n");
}

/// Indices and exponents would tear at a name that has such signs of its own.
bool reads_as_formula(const ReportContent& content)
{
    return std::none_of(content.parts.begin(), content.parts.end(),
                        [](const PartLine& part) { return part.id.find_first_of("_^0123456789") != std::string::npos; });
}

void put_step(HtmlOut& out, const WorkingStep& step, const ReportContent& content)
{
    put(out, "<li>{}", html_text(step.says));
    if (!step.formula.empty()) put(out, "<code>{}</code>", formula_html(step.formula));
    if (!step.with.empty()) put(out, "<div>{}</div>", reads_as_formula(content) ? formula_html(step.with) : html_text(step.with));
    put(out, "<strong>= {}</strong>", html_text(value_words(step.value, step.unit, content.units)));
    if (!step.source.empty()) put(out, "<small>{}</small>", html_text(step.source));
    put(out, "</li>\n");
}

void put_working(HtmlOut& out, const Finding& finding, const ReportContent& content)
{
    if (!finding.working.empty()) {
        put(out, "<ol class=\"working\">\n");
        for (const WorkingStep& step : finding.working) put_step(out, step, content);
        put(out, "</ol>\n");
    }
    // Each step names its own; what is left stands for the finding as a whole.
    std::vector<std::string_view> others;
    for (const std::string& source : finding.sources)
        if (std::none_of(finding.working.begin(), finding.working.end(),
                         [&](const WorkingStep& s) { return s.source == source; }))
            others.push_back(source);
    if (others.empty()) return;
    put(out, "<p class=\"label\">{}</p>\n<ul class=\"plain\">\n", finding.working.empty() ? "Sources" : "Also");
    for (const std::string_view source : others) put(out, "<li>{}</li>\n", html_text(source));
    put(out, "</ul>\n");
}

void put_way_to_left_out(HtmlOut& out, const Finding& finding, const ReportContent& content)
{
    const auto same = [&](const LeftOut& l) { return l.check == finding.check; };
    if (std::none_of(content.left_out.begin(), content.left_out.end(), same)) return;
    put(out, "<p class=\"more\"><a href=\"#{}\">What {} leaves out</a></p>\n", left_out_anchor(finding.check),
        html_text(finding.check));
}

void put_where_and_remedy(HtmlOut& out, const Finding& finding)
{
    if (!finding.where.value_or("").empty())
        put(out, "<p><span class=\"label\">Where:</span> {}</p>\n", html_text(*finding.where));
    if (finding.remedy)
        put(out, "<p class=\"remedy\"><span class=\"label\">Remedy:</span> {}</p>\n", html_text(finding.remedy.words()));
}

void put_drawings(HtmlOut& out, const ReportContent& content, std::size_t index)
{
    put_joint_drawing(out, content, index);
    put_row_drawing(out, content, index);
    put_end_grain_drawing(out, content, index);
}

/// How the findings of one page are shown.
struct Shown {
    BarScale scale;
    std::string_view details; ///< how what unfolds begins
};

void put_finding_to_act_on(HtmlOut& out, const Finding& finding, std::size_t index, const ReportContent& content,
                           const Shown& shown)
{
    put(out,
        "<article class=\"{}\" id=\"{}\">\n<div class=\"top\"><h3>{} <span class=\"word\">{}</span> {}</h3><span "
        "class=\"soft\">{}</span>",
        css_class(finding.verdict), finding_anchor(index), sign_svg(finding.verdict), verdict_title(finding.verdict),
        html_name(finding.subject), html_text(finding.check));
    if (has_share(finding)) put(out, "<span class=\"share\">{} of the limit</span>", *utilisation_words(finding));
    put(out, "</div>\n");
    if (has_share(finding)) put(out, "{}\n", bar_svg(finding, shown.scale));
    put(out, "<p>{}</p>\n", html_text(finding.headline));
    put_where_and_remedy(out, finding);
    put_drawings(out, content, index);
    put_numbers(out, finding, content.units);
    if (!finding.working.empty() || !finding.sources.empty()) {
        put(out, "{}<summary>Working and sources</summary>\n", shown.details);
        put_working(out, finding, content);
        put_way_to_left_out(out, finding, content);
        put(out, "</details>\n");
    }
    put(out, "</article>\n");
}

void put_pass(HtmlOut& out, const Finding& finding, std::size_t index, const ReportContent& content, const Shown& shown)
{
    put(out,
        "<li class=\"pass\" id=\"{}\"><div class=\"top\"><span>{} <span class=\"word\">{}</span></span><span>{} <span "
        "class=\"soft\">{}</span></span>",
        finding_anchor(index), sign_svg(finding.verdict), verdict_title(finding.verdict), html_text(finding.headline),
        html_text(finding.check));
    if (has_share(finding)) put(out, "<span class=\"share\">{}</span>", *utilisation_words(finding));
    put(out, "</div>\n");
    if (has_share(finding)) put(out, "{}\n", bar_svg(finding, shown.scale));
    put(out, "{}<summary>Numbers, working and sources</summary>\n", shown.details);
    put_where_and_remedy(out, finding);
    put_drawings(out, content, index);
    put_numbers(out, finding, content.units);
    put_working(out, finding, content);
    put_way_to_left_out(out, finding, content);
    put(out, "</details></li>\n");
}

} // namespace

std::string left_out_anchor(std::string_view check) { return "out-" + html_text(check); }

void put_findings(HtmlOut& out, const ReportContent& content, bool unfolded)
{
    put(out, "<section aria-labelledby=\"findings\">\n<h2 id=\"findings\">{}</h2>\n", kFindingsHeading);
    put(out, "<p>{} <span class=\"soft\">{}</span></p>\n", counts_sentence(content), kUtilisationNote);
    const Shown shown{bar_scale(content.findings), unfolded ? "<details open>" : "<details>"};
    for (std::size_t i = 0; i < content.findings.size(); ++i)
        if (content.findings[i].verdict != Verdict::pass) put_finding_to_act_on(out, content.findings[i], i, content, shown);
    if (counts_for_people(content).pass > 0) {
        put(out, "<h3>What passes</h3>\n<ul class=\"passes\">\n");
        for (std::size_t i = 0; i < content.findings.size(); ++i)
            if (content.findings[i].verdict == Verdict::pass && !told_among_cautions(content.findings[i]))
                put_pass(out, content.findings[i], i, content, shown);
        put(out, "</ul>\n");
    }
    put(out, "</section>\n");
}

} // namespace jointwright
