#include "report/page/html.hpp"

#include "measure/write.hpp"
#include "report/charts/chart_months.hpp"
#include "report/charts/chart_sag.hpp"
#include "report/charts/chart_use.hpp"
#include "report/charts/chart_year.hpp"
#include "report/drawings/deflected.hpp"
#include "report/drawings/piece.hpp"
#include "report/markup/html_parts.hpp"
#include "report/page/html_cut.hpp"
#include "report/page/html_findings.hpp"
#include "report/page/html_style.hpp"
#include "report/words/people.hpp"
#include "review/pictures/drawn_piece.hpp"

namespace jointwright {

namespace {

void put_head(HtmlOut& out, const ReportContent& content)
{
    put(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
             "content=\"width=device-width, initial-scale=1\">\n");
    // Nothing is loaded and nothing runs, whatever a name in the design tries.
    put(out, "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
    put(out,
        "<meta name=\"color-scheme\" content=\"light dark\">\n<title>{}: {}</title>\n<style>{}</style>\n</head>\n<body>\n<div "
        "class=\"sheet\">\n",
        html_text(content.piece_name), verdict_title(content.verdict), kPageStyle);
}

void put_fact(HtmlOut& out, std::string_view name, const std::string& words)
{
    put(out, "<div><dt>{}</dt><dd>{}</dd></div>\n", name, words);
}

void put_header(HtmlOut& out, const ReportContent& content)
{
    put(out, "<header>\n<div class=\"rule\"></div>\n<h1>{}</h1>\n<dl class=\"facts\">\n", html_name(content.piece_name));
    put_fact(out, "Use", html_text(content.use));
    put_fact(out, "Weight", mass_words(content.mass_kg, content.units));
    if (content.room_name) put_fact(out, "Room", html_name(*content.room_name));
    put_fact(out, "Moisture when made", write_percent(content.moisture_at_glue_up_pct));
    put_fact(out, "Driest", write_percent(content.moisture_driest_pct));
    put_fact(out, "Dampest", write_percent(content.moisture_dampest_pct));
    put(out, "</dl>\n");
    if (content.room_year) put(out, "<p class=\"soft\">{}</p>\n", html_text(room_year_words(*content.room_year)));
    put(out, "</header>\n");
}

/// Up to three remedies of the worst findings, each leading to its finding.
void put_what_to_do_first(HtmlOut& out, const ReportContent& content)
{
    const std::vector<FirstThing> things = first_things(content);
    if (things.empty()) return;
    put(out, "<h2 id=\"first\">{}</h2>\n<ol class=\"first\">\n", kFirstHeading);
    for (const FirstThing& thing : things)
        put(out, "<li>{} <a href=\"#{}\">{}</a></li>\n", html_text(thing.words), finding_anchor(thing.finding),
            html_name(first_place_words(content, thing)));
    put(out, "</ol>\n");
}

/// The first screen: the verdict, what to do first, the piece.
void put_verdict(HtmlOut& out, const ReportContent& content)
{
    put(out,
        "<section class=\"lead\" aria-label=\"Verdict\">\n<div>\n<div class=\"verdict {}\">{}<p class=\"say\"><span "
        "class=\"word\">{}</span> {} {}</p></div>\n",
        css_class(content.verdict), sign_svg(content.verdict), verdict_title(content.verdict), html_name(content.piece_name),
        verdict_predicate(content));
    put_what_to_do_first(out, content);
    if (nothing_to_change(content)) put(out, "<p>{} <a href=\"#cut-today\">{}</a></p>\n", kNothingToChange, kCutTodayHeading);
    // Where someone may stop reading the most general caution stands already.
    if (!content.cautions.empty())
        put(out, "<p class=\"caution\"><span class=\"label\">Caution:</span> {} <a href=\"#cautions\">All cautions</a></p>\n",
            html_text(content.cautions.front()));
    put(out, "</div>\n");
    put_piece_drawing(out, content);
    put(out, "</section>\n");
}

void put_navigation(HtmlOut& out, const ReportContent& content)
{
    put(out,
        "<nav aria-label=\"On this page\">\n<ul>\n<li><a href=\"#piece\">{}</a></li>\n<li><a "
        "href=\"#findings\">{}</a></li>\n<li><a href=\"#cut-today\">{}</a></li>\n",
        kPieceHeading, kFindingsHeading, kCutTodayHeading);
    put(out, "<li><a href=\"#year\">{}</a></li>\n", kYearHeading);
    put(out, "<li><a href=\"#assumed\">{}</a></li>\n<li><a href=\"#cautions\">{}</a></li>\n", kAssumedHeading, kCautionsHeading);
    if (!content.left_out.empty()) put(out, "<li><a href=\"#left-out\">{}</a></li>\n", kLeftOutHeading);
    put(out, "</ul>\n</nav>\n");
}

/// The roles are said again because narrow screens lay the table out as blocks, which would take its meaning away.
void put_parts(HtmlOut& out, const ReportContent& content)
{
    put(out, "<table role=\"table\">\n<caption>Parts</caption>\n<thead role=\"rowgroup\"><tr role=\"row\">");
    for (const std::string_view head : {"part", "copies", "length × width × thickness", "grain", "weight of one", "wood"})
        put(out, "<th role=\"columnheader\" scope=\"col\">{}</th>", head);
    put(out, "</tr></thead>\n<tbody role=\"rowgroup\">\n");
    for (const PartLine& part : content.parts) {
        put(out, "<tr role=\"row\"><th role=\"rowheader\" scope=\"row\">{}</th>", html_name(part.id));
        put(out, "<td role=\"cell\" data-label=\"copies\">{}</td><td role=\"cell\" data-label=\"size\">{}</td>", part.copies,
            part_size_words(part, content.units));
        put(out, "<td role=\"cell\" data-label=\"grain\">{}</td><td role=\"cell\" data-label=\"weight of one\">{}</td>",
            html_text(part.grain), mass_words(part.mass_kg, content.units));
        put(out, "<td role=\"cell\" data-label=\"wood\">{}</td></tr>\n", html_name(part.wood));
    }
    put(out, "</tbody>\n</table>\n");
}

void put_joints(HtmlOut& out, const ReportContent& content)
{
    if (content.joints.empty()) return put(out, "<p>No joints are stated.</p>\n");
    put(out, "<h3>Joints</h3>\n<ul class=\"plain\">\n");
    for (const JointLine& joint : content.joints)
        put(out, "<li>{} / {}: {}</li>\n", html_name(joint.first), html_name(joint.second), html_text(joint_words(joint)));
    put(out, "</ul>\n");
}

void put_loose_touches(HtmlOut& out, const ReportContent& content)
{
    const std::vector<std::string> touches = loose_touches(content);
    if (touches.empty()) return;
    put(out, "<h3>Touching without a joint</h3>\n<p class=\"soft\">Dry: resting and pressing only.</p>\n<ul class=\"plain\">\n");
    for (const std::string& touch : touches) put(out, "<li>{}</li>\n", html_text(touch));
    put(out, "</ul>\n");
}

void put_piece(HtmlOut& out, const ReportContent& content)
{
    put(out, "<section aria-labelledby=\"piece\">\n<h2 id=\"piece\">{}</h2>\n", kPieceHeading);
    put_three_views(out, content);
    put_parts(out, content);
    put_joints(out, content);
    put_loose_touches(out, content);
    put(out, "</section>\n");
}

void put_list(HtmlOut& out, std::string_view id, std::string_view css, std::string_view heading,
              const std::vector<std::string>& lines, std::string_view when_empty)
{
    put(out, "<section aria-labelledby=\"{}\">\n<h2 id=\"{}\">{}</h2>\n", id, id, heading);
    if (lines.empty())
        put(out, "<p>{}</p>\n", when_empty);
    else
        put(out, "<ul class=\"{}\">\n", css);
    for (const std::string& line : lines) put(out, "<li>{}</li>\n", html_text(line));
    put(out, "{}</section>\n", lines.empty() ? "" : "</ul>\n");
}

/// What the seasons and the load do, and how near the limits are.
void put_charts(HtmlOut& out, const ReportContent& content)
{
    put(out, "<section aria-labelledby=\"year\">\n<h2 id=\"year\">{}</h2>\n", kYearHeading);
    HtmlOut charts;
    if (has_months(content)) {
        put_month_charts(charts, content);
    } else {
        put_width_chart(charts, content);
        put_gap_chart(charts, content);
    }
    put_sag_chart(charts, content);
    if (content.drawn && content.drawn->load) put_deflected_drawing(charts, content, *content.drawn->load);
    put_use_chart(charts, content);
    if (charts.size() == 0)
        put(out, "<p>No finding has figures to compare.</p>\n");
    else
        put(out, "<div class=\"charts\">\n{}</div>\n", charts);
    put(out, "</section>\n");
}

void put_uncertain(HtmlOut& out, const ReportContent& content)
{
    const UncertainSources sources = uncertain_sources(content);
    if (sources.lines.empty()) return;
    put(out,
        "<section aria-labelledby=\"uncertain\" class=\"small\">\n<h2 id=\"uncertain\">{}</h2>\n<p>{} Each stands beside its "
        "sum, too; "
        "behind the colon are the checks that use it.</p>\n<ul>\n",
        kUncertainHeading, uncertain_sentence(sources));
    for (const std::string& line : sources.lines) put(out, "<li>{}</li>\n", html_text(line));
    put(out, "</ul>\n</section>\n");
}

void put_left_out(HtmlOut& out, const ReportContent& content)
{
    if (content.left_out.empty()) return;
    put(out, "<section aria-labelledby=\"left-out\" class=\"small\">\n<h2 id=\"left-out\">{}</h2>\n<dl>\n", kLeftOutHeading);
    for (const LeftOut& check : content.left_out) {
        put(out, "<div><dt id=\"{}\">{}</dt>\n", left_out_anchor(check.check), html_text(check.check));
        for (const std::string& point : check.points) put(out, "<dd>{}</dd>\n", html_text(point));
        put(out, "</div>\n");
    }
    put(out, "</dl>\n</section>\n");
}

void put_footer(HtmlOut& out, const ReportContent& content)
{
    put(out, "</main>\n<footer><p>{}{}</p></footer>\n</div>\n</body>\n</html>\n", html_text(program_words(content)),
        content.date ? ", " + html_text(*content.date) : "");
}

} // namespace

std::string write_html(const ReportContent& content, bool unfolded)
{
    HtmlOut out;
    put_head(out, content);
    put(out, "{}", shared_shapes(bar_scale(content.findings)));
    put_header(out, content);
    put(out, "<main>\n");
    put_verdict(out, content);
    put_navigation(out, content);
    put_piece(out, content);
    put_findings(out, content, unfolded);
    put_cut_today(out, content);
    put_charts(out, content);
    put_list(out, "assumed", "plain", kAssumedHeading, content.assumed, "Nothing was assumed beyond the design.");
    put_list(out, "cautions", "plain", kCautionsHeading, content.cautions,
             "Load the piece on trial, away from people, before it is used.");
    put_uncertain(out, content);
    put_left_out(out, content);
    put_footer(out, content);
    return out;
}

} // namespace jointwright
