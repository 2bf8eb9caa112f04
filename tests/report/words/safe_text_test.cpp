#include "catch.hpp"

#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"
#include "report/words/wrap.hpp"

#include <sstream>
#include <vector>

using namespace jointwright;

namespace {

std::vector<std::string> lines_of(const std::string& text)
{
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

} // namespace

TEST_CASE("Spaces and line ends of a name become single spaces", "[safe-text]")
{
    CHECK(safe_text("  long \t\r\n rail  ") == "long rail");
    CHECK(safe_text("a\u2028b\u0085c") == "a b c");
    CHECK(safe_text("").empty());
}

TEST_CASE("Controls, turns of direction and broken bytes are made visible and harmless", "[safe-text]")
{
    CHECK(safe_text("\x1b[31m") == "\uFFFD[31m");
    CHECK(safe_text("\u009b31m") == "\uFFFD31m");
    CHECK(safe_text(std::string("a\0b\x7f", 4)) == "a\uFFFDb\uFFFD");
    for (const char* turn : {"\u061C", "\u200E", "\u200F", "\u202A", "\u202E", "\u2066", "\u2069"})
        CHECK(safe_text(turn) == "\uFFFD");
    CHECK(safe_text("\xff") == "\uFFFD");
    CHECK(safe_text("\xed\xa0\x80").find('\xa0') == std::string::npos);
    CHECK(safe_text("\uFEFFx\uFFFF") == "\uFFFDx\uFFFD");
}

TEST_CASE("Ordinary text of any script stays as it is", "[safe-text]")
{
    for (const char* text : {"17 1/8 in × ½″", "שלום", "椅子", "👨\u200D🔧", "e\u0301"}) CHECK(safe_text(text) == text);
}

TEST_CASE("Columns: wide characters two, marks none", "[display-width]")
{
    CHECK(columns_of("slat × ½″") == 9);
    CHECK(columns_of("椅子") == 4);
    CHECK(columns_of("e\u0301\u0302") == 1);
    CHECK(columns_of("🪑") == 2);
    CHECK(columns_of("\u2764") == 1);
    CHECK(columns_of("\u2764\uFE0F") == 2);
    CHECK(columns_of("🪑\uFE0F") == 2);
    CHECK(columns_of("👨\u200D🔧") == 4);
    CHECK(columns_of("שלום") == 4);
    CHECK(columns_of("ｆｕｌｌ") == 8);
    CHECK(columns_of(U'\u00AD') == 1);
}

TEST_CASE("Words fill lines and no line is wider than asked", "[wrap]")
{
    CHECK(wrapped("one two three four", 9) == "one two\nthree\nfour\n");
    CHECK(wrapped("one two three four", 9, plain_lead("* ")) == "* one two\n  three\n  four\n");
    CHECK(wrapped("one two three", 9, plain_lead("label: "), 2) == "label: \n  one two\n  three\n");
    CHECK(wrapped("", 9, plain_lead("x")) == "x\n");
}

TEST_CASE("A number stays with its fraction and its unit", "[wrap]")
{
    CHECK(wrapped("it is 17 1/8 in, wide", 12) == "it is\n17 1/8 in,\nwide\n");
    CHECK(wrapped("stress 9.1 MPa", 12) == "stress\n9.1 MPa\n");
    CHECK(wrapped("in 3 ways in all", 9) == "in 3 ways\nin all\n");
}

TEST_CASE("A word longer than a line is broken between characters", "[wrap]")
{
    CHECK(wrapped("abcdefghij", 4) == "abcd\nefgh\nij\n");
    CHECK(wrapped("xy abcdefghij", 7, plain_lead("- ")) == "- xy ab\n  cdefg\n  hij\n");
    CHECK(wrapped("椅子椅子椅", 5) == "椅子\n椅子\n椅\n");
    CHECK(wrapped("aaae\u0301\u0302bb", 4) == "aaae\u0301\u0302\nbb\n");
    CHECK(wrapped("aaa\u2764\uFE0F", 4) == "aaa\n\u2764\uFE0F\n");
}

TEST_CASE("Every width from narrow to wide is kept", "[wrap]")
{
    const std::string text = "The slat 椅子椅子椅子椅子椅子 moves 0.021 in \U0001FA91\U0001FA91\U0001FA91\U0001FA91 and e\u0301" +
                             std::string(300, 'W') + " end 17 1/8 in";
    for (int columns = 8; columns <= 120; ++columns) {
        std::string all;
        for (const std::string& line : lines_of(wrapped(text, columns, indent(5)))) {
            CAPTURE(columns, line);
            CHECK(columns_of(std::string_view{line}) <= columns);
            all += line;
        }
        std::string squeezed, wanted;
        for (const char c : all)
            if (c != ' ') squeezed += c;
        for (const char c : text)
            if (c != ' ') wanted += c;
        CHECK(squeezed == wanted);
    }
}
