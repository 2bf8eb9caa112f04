#include "report/page/html_cut.hpp"

#include "measure/write.hpp"
#include "report/words/people.hpp"

#include <algorithm>

namespace jointwright {

namespace {

constexpr std::string_view kBox = R"(<svg class="box" aria-hidden="true"><use href="#box"/></svg>)";

std::string notes_of(const CutPart& part, LengthUnit units)
{
    std::string notes;
    const auto add = [&](const std::string& words) { notes += (notes.empty() ? "" : "; ") + words; };
    if (part.tenons_m > 0) add(fmt::format("{} between shoulders", write_length(metres(part.shoulders_m), units)));
    if (part.boards > 1)
        add(fmt::format("glued up from {} boards of {}", part.boards, write_length(metres(part.width_m / part.boards), units)));
    if (part.tapered) add("then tapered");
    if (part.rounded_m > 0) add(fmt::format("long edges rounded {}", write_length(metres(part.rounded_m), units)));
    return notes;
}

void put_cell(HtmlOut& out, std::string_view label, const std::string& words)
{
    put(out, "<td role=\"cell\" data-label=\"{}\">{}</td>", label, words);
}

void put_blanks(HtmlOut& out, const ReportContent& content)
{
    put(out,
        "<table role=\"table\" class=\"blanks\">\n<caption>Blanks, at {} moisture; lengths with their tenons</caption>\n<thead "
        "role=\"rowgroup\"><tr role=\"row\">",
        write_percent(content.moisture_at_glue_up_pct));
    const bool noted = std::any_of(content.cut_parts.begin(), content.cut_parts.end(),
                                   [&](const CutPart& part) { return !notes_of(part, content.units).empty(); });
    std::vector<std::string_view> heads{"part", "pieces", "length", "width", "thickness"};
    if (noted) heads.push_back("also");
    for (const std::string_view head : heads) put(out, "<th role=\"columnheader\" scope=\"col\">{}</th>", head);
    put(out, "</tr></thead>\n<tbody role=\"rowgroup\">\n");
    for (const CutPart& part : content.cut_parts) {
        put(out, "<tr role=\"row\"><th role=\"rowheader\" scope=\"row\">{}{}</th>", kBox, html_name(part.id));
        put_cell(out, "pieces", std::to_string(part.copies));
        put_cell(out, "length", write_length(metres(part.length_m), content.units));
        put_cell(out, "width", write_length(metres(part.width_m), content.units));
        put_cell(out, "thickness", write_length(metres(part.thickness_m), content.units));
        const std::string notes = notes_of(part, content.units);
        if (noted) notes.empty() ? put(out, "<td role=\"cell\"></td>") : put_cell(out, "also", notes);
        put(out, "</tr>\n");
    }
    put(out, "</tbody>\n</table>\n");
}

} // namespace

void put_cut_today(HtmlOut& out, const ReportContent& content)
{
    put(out, "<section aria-labelledby=\"cut-today\" class=\"cut\">\n<h2 id=\"cut-today\">{}</h2>\n", kCutTodayHeading);
    if (content.verdict == Verdict::fail)
        put(out, "<p class=\"caution stop\"><span class=\"word\">Not yet:</span> {}</p>\n", kCutOfFailing);
    if (!content.cut_parts.empty()) put_blanks(out, content);
    // The table says what the first lines say.
    const std::size_t first = content.cut_parts.size();
    if (content.cut_today.size() > first) {
        bool open = false;
        for (std::size_t i = first; i < content.cut_today.size(); ++i) {
            const auto heading = cut_heading_at(content, i);
            if (heading) put(out, "{}<h3>{}</h3>\n", open ? "</ul>\n" : "", html_text(*heading));
            if (heading || !open) put(out, "<ul class=\"ticks\">\n");
            open = true;
            put(out, "<li>{}<span>{}</span></li>\n", kBox, html_text(content.cut_today[i]));
        }
        put(out, "</ul>\n");
    } else if (content.cut_parts.empty()) {
        put(out, "<p>These checks call for no size to cut or set today.</p>\n");
    }
    put(out,
        "<p class=\"caution\"><span class=\"label\">Caution:</span> Measure the wood's moisture before the first cut; sizes hold "
        "for {}. "
        "Cut one joint in scrap first. Guards on, push blocks for narrow strips, eyes, ears and lungs protected; <a "
        "href=\"#cautions\">all cautions</a>.</p>\n</section>\n",
        write_percent(content.moisture_at_glue_up_pct));
}

} // namespace jointwright
