// Text, Markdown and page say the same things in the same order, for every built-in design.

#include "catch.hpp"
#include "checks/checked.hpp"

#include "report/markup/html_parts.hpp"
#include "report/page/html.hpp"
#include "report/text/markdown.hpp"
#include "report/text/text.hpp"
#include "report/words/compose.hpp"
#include "report/words/display_width.hpp"
#include "report/words/people.hpp"

#include <sstream>

using namespace jointwright;

namespace {

std::vector<std::string> built_in_names()
{
    std::vector<std::string> names;
    for (const auto& [path, text] : embedded_data())
        if (path.rfind("designs/", 0) == 0) names.push_back(std::string(path.substr(8, path.size() - 8 - 5)));
    return names;
}

/// Runs of blanks and line ends become one blank: what a wrapped line says.
std::string unwrapped(const std::string& text)
{
    std::istringstream words(text);
    std::string joined, word;
    while (words >> word) joined += word + " ";
    return joined;
}

void check_in_order(const std::string& report, const std::vector<std::string>& headings)
{
    std::size_t last = 0;
    for (const std::string& heading : headings) {
        CAPTURE(heading);
        const std::size_t place = report.find(heading, last);
        REQUIRE(place != std::string::npos);
        last = place;
    }
}

} // namespace

TEST_CASE("Every design reads alike as text, notes and page", "[report][same-words]")
{
    const std::vector<std::string> names = built_in_names();
    REQUIRE(names.size() > 10);
    for (const std::string& name : names) {
        CAPTURE(name);
        const Piece piece = checked::piece_of(checked::built_in_design(name.c_str()));
        ReportContent content = check_piece(piece, testing::shared_facts());
        add_cautions(content, piece, testing::shared_facts());
        const std::string text = write_text(content, {}), notes = write_markdown(content), page = write_html(content);
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) CHECK(columns_of(std::string_view{line}) <= 80);

        std::vector<std::string> headings;
        if (!first_things(content).empty()) headings.emplace_back(kFirstHeading);
        for (const std::string_view h :
             {kPieceHeading, kFindingsHeading, kCutTodayHeading, kAssumedHeading, kCautionsHeading, kUncertainHeading})
            headings.emplace_back(h);
        std::vector<std::string> underlined, marked, tagged;
        for (const std::string& h : headings) {
            underlined.push_back("\n" + h + "\n-");
            marked.push_back("\n## " + h + "\n");
            tagged.push_back(">" + h + "</h2>");
        }
        check_in_order(text, underlined);
        check_in_order(notes, marked);
        check_in_order(page, tagged);

        const std::string flat = unwrapped(text);
        std::vector<std::string> said = content.cut_today;
        for (const FirstThing& thing : first_things(content)) said.push_back(thing.words);
        for (const Finding& f : content.findings)
            if (!told_among_cautions(f)) said.push_back(f.headline);
        for (const std::string& words : said) {
            CHECK_THAT(flat, ContainsSubstring(unwrapped(words).substr(0, words.size())));
            CHECK_THAT(notes, ContainsSubstring(markdown_text(words)));
        }
        for (std::size_t i = content.cut_parts.size(); i < said.size(); ++i)
            CHECK_THAT(page, ContainsSubstring(html_text(said[i])));
        CHECK((text.find(kCutOfFailing.substr(0, 40)) != std::string::npos) == (content.verdict == Verdict::fail));
        CHECK((notes.find(kCutOfFailing) != std::string::npos) == (content.verdict == Verdict::fail));
        CHECK((page.find(kCutOfFailing) != std::string::npos) == (content.verdict == Verdict::fail));
    }
}

TEST_CASE("With their working, text, notes and page name every weak source and what each check leaves out",
          "[report][same-words]")
{
    const Piece piece = checked::piece_of(checked::built_in_design("boot-bench"));
    const ReportContent content = check_piece(piece, testing::shared_facts());
    TextOptions options;
    options.working = true;
    const std::string text = unwrapped(write_text(content, options)), notes = write_markdown(content, true),
                      page = write_html(content);
    const UncertainSources weak = uncertain_sources(content);
    CHECK(weak.lines.size() > 20);
    CHECK(weak.lines.size() < weak.all);
    for (const std::string& line : weak.lines) {
        CHECK_THAT(text, ContainsSubstring(line));
        CHECK_THAT(notes, ContainsSubstring(markdown_text(line)));
        CHECK_THAT(page, ContainsSubstring(html_text(line)));
    }
    REQUIRE(content.left_out.size() > 10);
    for (const LeftOut& check : content.left_out)
        for (const std::string& point : check.points) {
            CHECK_THAT(text, ContainsSubstring(unwrapped(point).substr(0, point.size())));
            CHECK_THAT(notes, ContainsSubstring(markdown_text(point)));
            CHECK_THAT(page, ContainsSubstring(html_text(point)));
        }
    // Without it, text and notes count them and leave it at that.
    CHECK_THAT(unwrapped(write_text(content, {})), ContainsSubstring(uncertain_sentence(weak)));
    CHECK(write_text(content, {}).find(kLeftOutHeading) == std::string::npos);
    CHECK(write_markdown(content).find(kLeftOutHeading) == std::string::npos);
}
