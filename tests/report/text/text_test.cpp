#include "catch.hpp"
#include "report/sample_content.hpp"

#include "measure/text.hpp"
#include "report/text/text.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"

#include <algorithm>
#include <sstream>

using namespace jointwright;

namespace {

constexpr int kColumns = 80;

bool is_harmful(char32_t c)
{
    return c < 0x20 || (c >= 0x7F && c < 0xA0) || (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

void check_harmless(const std::string& text, int columns)
{
    std::istringstream in(text);
    int widest = 0;
    for (std::string line; std::getline(in, line);) {
        widest = std::max(widest, columns_of(std::string_view{line}));
        const std::u32string characters = characters_of(line);
        CHECK(std::none_of(characters.begin(), characters.end(), is_harmful));
        CHECK(to_utf8(characters) == line); // valid UTF-8: decoding and encoding again changes nothing
    }
    CHECK(widest <= columns);
}

std::size_t place_of(const std::string& text, const std::string& words)
{
    CAPTURE(words);
    const std::size_t place = text.find(words);
    CHECK(place != std::string::npos);
    return place;
}

} // namespace

TEST_CASE("The text opens with the verdict and keeps its order", "[text]")
{
    const std::string text = write_text(sample_content(), {});
    CHECK(text.rfind("FAIL  Porch bench does not hold as drawn: 1 of 4 findings fails.\n1 fail, 1 cannot tell, 1 warn, 1 pass.\n",
                     0) == 0);
    std::size_t last = 0;
    for (const char* words : {"Weight: 12.5 kg (28 lb)",
                              "made at 8 %, driest 5.4 %, dampest 11.9 %",
                              "Do first\n",
                              "1. Glue the middle",
                              "The piece as read\n",
                              "4 × leg",
                              "17 in × 1 3/4 in × 1 3/4 in, upright",
                              "13 × slat",
                              "housing, glued with PVA, 26 places",
                              "tenon, no glue, 1 place\n",
                              "slat #1 touches leg #2",
                              "Findings\n",
                              "FAIL 2.10  top / end rail (cross-grain)",
                              "remedy: Glue the middle",
                              "stress 9.1 MPa; deflection 0.091 in",
                              "CANNOT TELL  top / end rail (glue-suits)",
                              "WARN 1.21  slat (sag)",
                              "PASS 0.24  The slat bears",
                              "Cut today\n",
                              "Assumed\n",
                              "Cautions\n",
                              "jointwright 9.8.7, data abc123."}) {
        const std::size_t place = place_of(text, words);
        CHECK(place > last);
        last = place;
    }
}

TEST_CASE("Each verdict of a piece has its own sentence", "[text]")
{
    ReportContent content = sample_content();
    content.findings.erase(content.findings.begin());
    content.verdict = overall_verdict(content.findings);
    CHECK_THAT(write_text(content, {}),
               ContainsSubstring("WARN  Porch bench shows no failure, but 2 of 3 findings need a closer look."));
    content.findings.erase(content.findings.begin(), content.findings.end() - 1);
    content.verdict = overall_verdict(content.findings);
    CHECK_THAT(write_text(content, {}), ContainsSubstring("PASS  Porch bench passes its one check."));
    content.findings.clear();
    CHECK_THAT(write_text(content, {}), ContainsSubstring("no check had anything to judge"));
}

TEST_CASE("Sums are shown when they are asked for, passes included", "[text]")
{
    CHECK(write_text(sample_content(), {}).find("σ = M/W") == std::string::npos);
    const std::string text = write_text(sample_content(), {false, true, kColumns});
    std::size_t shown = 0;
    for (std::size_t at = text.find("σ = M/W"); at != std::string::npos; at = text.find("σ = M/W", at + 1)) ++shown;
    CHECK(shown == 3);
    CHECK_THAT(text, ContainsSubstring("with: M = 146 N m"));
    CHECK_THAT(text, ContainsSubstring("= 9.1 MPa"));
    CHECK_THAT(text, ContainsSubstring("source: a book of beams, table 1"));
}

TEST_CASE("Colour comes only when asked for and always beside its word", "[text]")
{
    CHECK(write_text(sample_content(), {}).find('\x1b') == std::string::npos);
    std::string coloured = write_text(sample_content(), {true, false, kColumns});
    CHECK_THAT(coloured, ContainsSubstring("\x1b[1;31mFAIL\x1b[0m"));
    for (std::size_t at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b'))
        coloured.erase(at, coloured.find('m', at) - at + 1);
    CHECK(coloured == write_text(sample_content(), {false, false, kColumns}));
}

TEST_CASE("Cut today is left out when there is nothing to cut; lengths follow the units", "[text]")
{
    ReportContent content = sample_content();
    content.cut_today.clear();
    content.units = LengthUnit::millimetre;
    const std::string text = write_text(content, {});
    CHECK(text.find("Cut today") == std::string::npos);
    CHECK_THAT(text, ContainsSubstring("304.8 mm × 44.5 mm × 15.9 mm"));
    CHECK_THAT(text, ContainsSubstring("deflection 2.3 mm"));
}

TEST_CASE("No hostile name makes a line too wide or drives the terminal", "[text][hostile]")
{
    for (const std::string& name : hostile_names())
        for (const bool working : {false, true}) {
            CAPTURE(name.substr(0, 40));
            check_harmless(write_text(hostile_content(name), {false, working, kColumns}), kColumns);
            check_harmless(write_text(hostile_content(name), {false, working, 10}), 40);
        }
}

TEST_CASE("The same content gives the same text", "[text]")
{
    CHECK(write_text(sample_content(), {true, true, 100}) == write_text(sample_content(), {true, true, 100}));
}
