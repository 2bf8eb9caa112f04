#include "catch.hpp"

#include "piece/text/fault.hpp"

#include <boost/nowide/utf/convert.hpp>

using namespace jointwright;

TEST_CASE("A fault is written with its place, its line, a caret, a fix and a note", "[fault]")
{
    const std::string text = "[[wood]]\nspecies = \"whit oak\"\n";
    const Fault fault{{2, 11, 10}, "unknown-wood", "no wood is named \"whit oak\"", "species = \"white oak\"", "see the list"};
    CHECK(write_faults({fault}, "bench.toml", text) == "bench.toml:2:11: error: no wood is named \"whit oak\" [unknown-wood]\n"
                                                       "    2 | species = \"whit oak\"\n"
                                                       "      |           ^~~~~~~~~~\n"
                                                       "  fix: species = \"white oak\"\n"
                                                       "  note: see the list\n");
}

TEST_CASE("A fault without a place names the file alone; faults are parted by an empty line", "[fault]")
{
    const Faults faults{{{}, "too-large", "too much", {}, {}}, {{1, 1, 1}, "syntax", "no", "a\nb", {}}};
    CHECK(write_faults(faults, "x.toml", "q\r\n") == "x.toml: error: too much [too-large]\n"
                                                     "\n"
                                                     "x.toml:1:1: error: no [syntax]\n"
                                                     "    1 | q\n"
                                                     "      | ^\n"
                                                     "  fix: a\n"
                                                     "       b\n");
}

TEST_CASE("No faults, no text", "[fault]") { CHECK(write_faults({}, "x.toml", "q").empty()); }

TEST_CASE("Columns count characters, and tabs are shown as one space", "[fault]")
{
    const std::string text = "\tn\u00e4me = \"\u00e9\" # x\n";
    CHECK(write_faults({{{1, 9, 3}, "id", "s", {}, {}}}, "f", text) == "f:1:9: error: s [id]\n"
                                                                       "    1 |  n\u00e4me = \"\u00e9\" # x\n"
                                                                       "      |         ^~~\n");
}

TEST_CASE("A long line is cut around the caret", "[fault]")
{
    const std::string text = std::string(300, 'a') + "XYZ" + std::string(300, 'b');
    const std::string shown = write_faults({{{1, 301, 3}, "id", "s", {}, {}}}, "f", text);
    const std::string expected = "f:1:301: error: s [id]\n"
                                 "    1 | \u2026" +
                                 std::string(24, 'a') + "XYZ" + std::string(43, 'b') + "\u2026\n" + "      | " +
                                 std::string(25, ' ') + "^~~\n";
    CHECK(shown == expected);
}

TEST_CASE("The caret stays within the line, wherever the place points", "[fault]")
{
    const std::string shown = write_faults({{{1, 9999, 400}, "id", "s", {}, {}}, {{77, 1, 1}, "id", "s", {}, {}}}, "f", "short");
    CHECK_THAT(shown, ContainsSubstring("    1 | short\n      |      ^\n"));
    CHECK_THAT(shown, ContainsSubstring("   77 | \n      | ^\n"));
}

TEST_CASE("Whatever is in the text, the file name or the sentence, the output is UTF-8 without control characters", "[fault]")
{
    std::string bytes;
    for (int c = 255; c > 0; --c)
        if (c != '\n') bytes.push_back(static_cast<char>(c));
    const Fault fault{{1, 3, 4}, "syntax", bytes, bytes, bytes};
    const std::string shown = write_faults({fault}, bytes, bytes);
    CHECK(boost::nowide::utf::convert_string<char>(shown.data(), shown.data() + shown.size()) == shown);
    for (const char c : shown) CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
    CHECK(shown.find('\x7F') == std::string::npos);
}
