#include "catch.hpp"
#include "report/sample_content.hpp"

#include "report/markup/formula_html.hpp"
#include "report/markup/html_parts.hpp"
#include "report/page/html.hpp"
#include "report/words/people.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <limits>
#include <regex>

using namespace jointwright;

namespace {

std::size_t count(const std::string& text, const std::string& words)
{
    std::size_t found = 0;
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + words.size())) ++found;
    return found;
}

/// The page without its style sheet, where quotes and brackets of CSS stand.
std::string markup_of(const std::string& page)
{
    const std::size_t from = page.find("<style>"), to = page.find("</style>");
    return page.substr(0, from) + page.substr(to + std::string("</style>").size());
}

/// Names of all tags in order, "p", "/p".
std::vector<std::string> tags_of(const std::string& markup)
{
    std::vector<std::string> tags;
    for (std::size_t at = markup.find('<'); at != std::string::npos; at = markup.find('<', at + 1))
        tags.push_back(markup.substr(at + 1, markup.find_first_of(" >/", at + 2) - at - 1));
    return tags;
}

} // namespace

TEST_CASE("The page stands by itself: language, viewport, landmarks, no script, nothing loaded", "[html]")
{
    const std::string page = write_html(sample_content());
    CHECK(page.rfind("<!DOCTYPE html>\n<html lang=\"en\">", 0) == 0);
    CHECK_THAT(page, ContainsSubstring("name=\"viewport\""));
    for (const char* tag : {"<header>", "<main>", "<nav ", "<footer>", "<h1>", "</html>"}) CHECK(count(page, tag) == 1);
    CHECK_THAT(page, ContainsSubstring("@media print"));
    CHECK_THAT(page, ContainsSubstring("prefers-color-scheme:dark"));
    for (const char* never :
         {"<script", "<link", "<img", "<iframe", "http://", "https://", "src=", "url(", "@import", "onload"}) {
        CAPTURE(never);
        CHECK(page.find(never) == std::string::npos);
    }
}

TEST_CASE("Verdict and remedies come first, then the piece, the findings and what to cut", "[html]")
{
    const std::string page = markup_of(write_html(sample_content()));
    std::size_t last = 0;
    for (const char* words : {"<bdi>Porch bench</bdi> does not hold as drawn: 1 of 4 findings fails.", "Do first",
                              "Glue the middle alone", "The piece as read", "<bdi>leg</bdi>", "26 places", ">Findings</h2>",
                              "The glued top would split.", "The slat sags", "What passes", "The slat bears", ">Cut today</h2>",
                              "Slots 9/16 in", ">Assumed</h2>", ">Cautions</h2>", "jointwright 9.8.7, data abc123"}) {
        CAPTURE(words);
        const std::size_t place = page.find(words, last);
        REQUIRE(place != std::string::npos);
        last = place;
    }
    CHECK(count(page, "<details>") == 3);
    CHECK(count(page, "σ = M/W") == 3);
}

TEST_CASE("At most three remedies lead, none of a pass", "[html]")
{
    ReportContent content = sample_content();
    content.findings.insert(content.findings.begin() + 1, content.findings[0]);
    for (std::size_t i = 0; i < content.findings.size(); ++i)
        content.findings[i].remedy = Remedy::either({fmt::format("change thing {}", i), "leave it"});
    const std::string page = markup_of(write_html(content));
    const std::size_t from = page.find("<ol class=\"first\">");
    REQUIRE(from != std::string::npos);
    CHECK(count(page.substr(from, page.find("</ol>", from) - from), "<li>") == 3);
    CHECK_THAT(page.substr(from), ContainsSubstring("Change thing 0. <a"));
    for (Finding& finding : content.findings) finding.remedy = "Change it.";
    REQUIRE(first_things(content).size() == 1);
    CHECK(first_things(content)[0].more > 1);
    content.findings[0].remedy = Remedy::either({"use one of these: this; that", "leave it"});
    CHECK(first_things(content)[0].words == "Use one of these: this; that.");
    for (Finding& finding : content.findings) finding.verdict = Verdict::pass;
    CHECK(write_html(content).find("Do first") == std::string::npos);
}

TEST_CASE("Every tag that opens is closed in order, and headings skip no step", "[html]")
{
    for (const std::string& name : hostile_names()) {
        std::vector<std::string> open;
        int heading = 0;
        for (const std::string& tag : tags_of(markup_of(write_html(hostile_content(name))))) {
            static const std::vector<std::string> kAlone{"!DOCTYPE", "meta", "circle", "path", "rect", "line", "use"};
            if (std::find(kAlone.begin(), kAlone.end(), tag) != kAlone.end()) continue;
            if (tag.front() != '/') {
                open.push_back(tag);
                if (tag.size() == 2 && tag[0] == 'h' && tag[1] >= '1' && tag[1] <= '6') {
                    CHECK(tag[1] - '0' <= heading + 1);
                    heading = tag[1] - '0';
                }
                continue;
            }
            REQUIRE_FALSE(open.empty());
            REQUIRE(tag.substr(1) == open.back());
            open.pop_back();
        }
        CHECK(open.empty());
    }
}

TEST_CASE("A hostile name adds no tag and no attribute", "[html][hostile]")
{
    const auto plain = tags_of(markup_of(write_html(hostile_content("plain"))));
    for (const std::string& name : hostile_names()) {
        CAPTURE(name.substr(0, 40));
        const std::string page = markup_of(write_html(hostile_content(name)));
        CHECK(tags_of(page) == plain);
        for (const char* never : {"<script", "<img", "<b>", "\x1b", "\xff", "\u202E", "\u2067", "\u009b"})
            CHECK(page.find(never) == std::string::npos);
        CHECK(page.find('\0') == std::string::npos);
    }
}

TEST_CASE("Text is escaped for element and attribute alike", "[html]")
{
    CHECK(html_text("<a & 'b' \"c\">") == "&lt;a &amp; &#39;b&#39; &quot;c&quot;&gt;");
    CHECK(html_name("שלום\u202E") == "<bdi>שלום\uFFFD</bdi>");
}

TEST_CASE("Every drawing has a title or is decoration", "[html]")
{
    const std::string page = write_html(sample_content());
    const std::regex drawing("<svg class[^>]*>(<title>[^<]+</title>)?");
    std::size_t drawings = 0;
    for (auto it = std::sregex_iterator(page.begin(), page.end(), drawing); it != std::sregex_iterator(); ++it, ++drawings)
        CHECK((it->str().find("aria-hidden=\"true\"") != std::string::npos || (*it)[1].matched));
    CHECK(drawings == 11); // shapes to refer to, five signs, three bars, a box to tick, the chart of shares
}

TEST_CASE("A bar shows the utilisation against the limit", "[html]")
{
    const Finding half = sample_finding("sag", "slat", Verdict::pass, 0.5, "");
    const Finding far = sample_finding("sag", "slat", Verdict::fail, 40, "");
    CHECK(bar_scale({half}).full == 1.25);
    CHECK(bar_scale({half, far}).full == 2.5);
    CHECK_THAT(bar_svg(half, {1.25}), ContainsSubstring("class=\"used\" y=\"4\" width=\"40.0%\""));
    CHECK_THAT(shared_shapes({1.25}), ContainsSubstring("id=\"limit\" x1=\"80.00%\""));
    CHECK(bar_svg(half, {1.25}).find("class=\"off\"") == std::string::npos);
    CHECK_THAT(bar_svg(far, {2.5}), ContainsSubstring("width=\"100.0%\""));
    CHECK_THAT(bar_svg(far, {2.5}), ContainsSubstring("class=\"off\""));
}

TEST_CASE("Numbers that are not finite are called unknown and draw no bar", "[html]")
{
    ReportContent content = sample_content();
    content.findings[0].utilisation = std::numeric_limits<double>::quiet_NaN();
    content.findings[0].values[0].value = std::numeric_limits<double>::infinity();
    const std::string page = markup_of(write_html(content));
    CHECK(page.find("nan") == std::string::npos);
    CHECK_THAT(page, ContainsSubstring("<dd>unknown</dd>"));
}

TEST_CASE("No date unless asked for; the same content gives the same page", "[html]")
{
    ReportContent content = sample_content();
    CHECK(write_html(content) == write_html(content));
    content.date = "2031-05-06";
    CHECK_THAT(write_html(content), ContainsSubstring("data abc123, 2031-05-06"));
}

TEST_CASE("The section for cutting stands even when it is empty", "[html]")
{
    ReportContent content = sample_content();
    content.cut_today.clear();
    CHECK_THAT(write_html(content), ContainsSubstring(">Cut today</h2>"));
}

TEST_CASE("What a page refers to within itself is there", "[html]")
{
    const std::string page = write_html(sample_content());
    const std::regex reference("href=\"#([^\"]+)\"");
    std::size_t references = 0;
    for (auto it = std::sregex_iterator(page.begin(), page.end(), reference); it != std::sregex_iterator(); ++it, ++references)
        CHECK_THAT(page, ContainsSubstring("id=\"" + (*it)[1].str() + "\""));
    CHECK(references > 10);
}

TEST_CASE("A page can begin with every sum unfolded", "[html]")
{
    CHECK(write_html(sample_content()).find("<details open>") == std::string::npos);
    const std::string page = write_html(sample_content(), true);
    CHECK(page.find("<details>") == std::string::npos);
    CHECK_THAT(page, ContainsSubstring("<details open>"));
}

TEST_CASE("Indices of a formula stand below the line, exponents above it", "[html]")
{
    CHECK(formula_html("C = C_T cos²φ") == "C = C<sub>T</sub> cos²φ");
    CHECK(formula_html("f = f05 k_dur/k") == "f = f<sub>05</sub> k<sub>dur</sub>/k");
    CHECK(formula_html("ΔD = D C (M1 − M0)") == "ΔD = D C (M<sub>1</sub> − M<sub>0</sub>)");
    CHECK(formula_html("L^0.8 S") == "L<sup>0.8</sup> S");
    CHECK(formula_html("t20 f^((T − 20)/10)") == "t<sub>20</sub> f<sup>(T − 20)/10</sup>");
    CHECK(formula_html("2 max(|Δ_dry|, |Δ_damp|)") == "2 max(|Δ<sub>dry</sub>|, |Δ<sub>damp</sub>|)");
    CHECK(formula_html("f < f_t,90,k & 12 mm") == "f &lt; f<sub>t,90,k</sub> &amp; 12 mm");
    CHECK(formula_html("a^( b_ c") == "a^( b_ c");
}
