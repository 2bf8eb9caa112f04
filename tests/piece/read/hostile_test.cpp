// Inputs that no maker writes: they must end in faults, never in a crash.

#include "catch.hpp"

#include "piece/tiny_design.hpp"

#include <boost/nowide/utf/convert.hpp>

#include <random>

using namespace jointwright;

namespace {

/// Reads a text that must be refused; the messages must be UTF-8.
Faults refused(const std::string& text)
{
    const auto result = tiny::read(text);
    REQUIRE_FALSE(result.piece);
    REQUIRE_FALSE(result.faults.empty());
    const std::string shown = write_faults(result.faults, "f", text);
    CHECK(boost::nowide::utf::convert_string<char>(shown.data(), shown.data() + shown.size()) == shown);
    return result.faults;
}

std::string repeated(std::string_view text, std::size_t times)
{
    std::string result;
    for (std::size_t i = 0; i < times; ++i) result += text;
    return result;
}

} // namespace

TEST_CASE("Random bytes", "[hostile]")
{
    std::mt19937 random(20240229);
    for (int round = 0; round < 300; ++round) {
        std::string bytes(1 + random() % 400, ' ');
        for (char& c : bytes) c = static_cast<char>(random() % 256);
        refused(bytes);
    }
}

TEST_CASE("Sound designs with random characters replaced, removed or doubled", "[hostile]")
{
    std::mt19937 random(7);
    constexpr std::string_view kMarks = "[]{}\"'=,.#-0e\n x\\";
    const std::string sound = embedded_data().at("designs/window-seat-metric.toml");
    for (int round = 0; round < 400; ++round) {
        std::string text = sound;
        for (std::size_t n = random() % 3 + 1; n > 0; --n) {
            const std::size_t at = random() % text.size();
            const std::size_t what = random() % 3;
            if (what == 0) text[at] = kMarks[random() % kMarks.size()];
            if (what == 1) text.erase(at, 1 + random() % 20);
            if (what == 2) text.insert(at, text.substr(at, 1 + random() % 20));
        }
        const auto result = tiny::read(text);
        CHECK(result.piece.has_value() == result.faults.empty());
        write_faults(result.faults, "f", text);
        if (result.piece) CHECK(tiny::read(expand_design(*result.piece, text, tiny::facts())).faults.empty());
    }
}

TEST_CASE("Deep nesting of brackets and of dotted keys", "[hostile]")
{
    constexpr std::size_t kMany = 400000;
    for (const std::string& text :
         {"x = " + repeated("[", kMany), "x = " + repeated("{a=", kMany), repeated("a.", kMany) + "a = 1",
          "[" + repeated("a.", kMany) + "a]", "[[" + repeated("\"a\" . ", kMany) + "a]]",
          "x = [\"\"\"a\"\"\"\"\", {" + repeated("a.", kMany) + "a = 1}]",
          "x = [\n" + repeated("{ a.b.c.d.e.f.g.h.i.j = [\n", 1000)}) {
        CAPTURE(text.substr(0, 40));
        const Faults faults = refused(text);
        CHECK(faults.size() == 1);
        CHECK(faults[0].id == "syntax");
    }
}

TEST_CASE("Many dots in a text or a comment are no nesting", "[hostile]")
{
    const std::string text = tiny::design({{"\"Tiny\"", "\"" + repeated(".", 1000) + "\" # " + repeated("[.", 1000)}});
    CHECK(tiny::messages(text).empty());
}

TEST_CASE("Bytes that are no text name their line", "[hostile]")
{
    const std::string nul = tiny::replaced(tiny::design(), "Tiny", std::string_view("T\0ny", 4));
    CHECK(tiny::first_line(tiny::messages(nul)) == "t.toml:2:10: error: line 2 holds a NUL byte, which no text has [syntax]");
    const std::string broken = tiny::design({{"Tiny", "T\xFFny"}});
    CHECK(tiny::first_line(tiny::messages(broken)) == "t.toml:2:10: error: line 2 holds bytes that are not UTF-8 [syntax]");
    const std::string cut = tiny::design() + "# \xE2\x82";
    CHECK(tiny::first_line(tiny::messages(cut)) == "t.toml:39:3: error: line 39 holds bytes that are not UTF-8 [syntax]");
}

TEST_CASE("A byte order mark and line ends of other systems are no fault", "[hostile]")
{
    std::string text = tiny::design();
    for (std::size_t at = text.find('\n'); at != std::string::npos; at = text.find('\n', at + 2)) text.replace(at, 1, "\r\n");
    CHECK(tiny::messages("\xEF\xBB\xBF" + text).empty());
    const std::string wrong = "\xEF\xBB\xBF" + tiny::replaced(text, "\"white oak\"", "\"whit oak\"");
    CHECK_THAT(
        tiny::messages(wrong),
        ContainsSubstring("t.toml:11:11: error: no wood is named \"whit oak\" [unknown-wood]\n   11 | species = \"whit oak\"\n"));
}

TEST_CASE("Thousands of faults: the first ones are listed, the others counted", "[hostile]")
{
    const Faults faults = refused(tiny::design() + repeated("[[load]]\nname = \"a\"\n", 900));
    CHECK(faults.size() == 201);
    CHECK(faults.back().id == "too-many");
}

TEST_CASE("A file full of keys, and one full of joints", "[hostile]")
{
    std::string keys = tiny::design() + "[limits]\n";
    for (int i = 0; i < 100000; ++i) keys += "k" + std::to_string(i) + " = 1\n";
    CHECK(refused(keys).back().id == "too-many");
    CHECK(refused(tiny::design() + repeated("[[joint]]\nbetween = [\"post\", \"board\"]\nkind = \"face\"\n", 50000)).at(0).id ==
          "too-large");
}

TEST_CASE("Values that overflow", "[hostile]")
{
    CHECK(refused(tiny::design({{"400", "99999999999999999999"}})).at(0).id == "syntax");
    CHECK(refused(tiny::design({{"400", "1e999"}})).at(0).id == "syntax");
    CHECK(refused(tiny::design({{"400", "\"" + repeated("9", 400) + "\""}})).at(0).id == "out-of-range");
    CHECK(refused(tiny::design({{"[0, 0, 0]", "[1e300, 0, 0]"}})).at(0).id == "out-of-range");
    CHECK(refused(tiny::design({{"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 1e18, along = \"y\", gap = 0 }"}})).at(0).id ==
          "out-of-range");
}
