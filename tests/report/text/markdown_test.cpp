#include "catch.hpp"
#include "report/sample_content.hpp"

#include "report/text/markdown.hpp"

#include <algorithm>

using namespace jointwright;

TEST_CASE("Markdown has the order and the words of the text", "[markdown]")
{
    const std::string notes = write_markdown(sample_content());
    CHECK(notes.rfind("# Porch bench\n\n**FAIL** Porch bench does not hold as drawn: 1 of 4 findings fails.", 0) == 0);
    std::size_t last = 0;
    for (const char* words : {"## Do first\n\n1. Glue", "## The piece as read", "| 4 | leg | 17 in × 1 3/4 in × 1 3/4 in |",
                              "26 places", "## Findings", "- **FAIL** 2.10 top / end rail (cross-grain)", "  - remedy: Glue",
                              "**CANNOT TELL**", "**WARN** 1.21", "**PASS** 0.24", "## Cut today", "## Assumed", "## Cautions"}) {
        CAPTURE(words);
        const std::size_t place = notes.find(words, last);
        REQUIRE(place != std::string::npos);
        last = place;
    }
    CHECK(notes == write_markdown(sample_content()));
}

TEST_CASE("Markup in a text reads as itself", "[markdown]")
{
    CHECK(markdown_text("*a* _b_ [c](d) `e` | <f> #g") == "\\*a\\* \\_b\\_ \\[c\\](d) \\`e\\` \\| \\<f\\> \\#g");
    CHECK(markdown_text("https://x.org www.x.org") == "https\\://x.org www\\.x.org");
    CHECK(markdown_text("- item") == "\\- item");
    CHECK(markdown_text("1. item") == "1\\. item");
    CHECK(markdown_text("12) item") == "12\\) item");
    CHECK(markdown_text("1.75 in wide") == "1\\.75 in wide");
    CHECK(markdown_text("side: 3.5 mm, well-made") == "side: 3.5 mm, well-made");
    CHECK(markdown_text("").empty());
}

TEST_CASE("A hostile name stays on its line and opens nothing", "[markdown][hostile]")
{
    const auto lines = [](const std::string& text) { return std::count(text.begin(), text.end(), '\n'); };
    const auto wanted = lines(write_markdown(hostile_content("plain")));
    for (const std::string& name : hostile_names()) {
        CAPTURE(name.substr(0, 40));
        const std::string notes = write_markdown(hostile_content(name));
        CHECK(lines(notes) == wanted);
        for (std::size_t at = notes.find_first_of("<`["); at != std::string::npos; at = notes.find_first_of("<`[", at + 1))
            CHECK(notes[at - 1] == '\\');
        for (const char* never : {"\x1b", "\xff", "\u202E"}) CHECK(notes.find(never) == std::string::npos);
    }
}
