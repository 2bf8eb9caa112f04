// Readers of measures meet whatever a file or a command line may hold: no crash, no hang, one of the known ids, valid UTF-8.

#include "catch.hpp"
#include "measure/read.hpp"
#include "measure/text.hpp"

#include <chrono>
#include <cmath>
#include <random>
#include <string>
#include <vector>

using namespace jointwright;

namespace {

bool is_valid_utf8(const std::string& text)
{
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t length = lead < 0x80                   ? 1
                                   : lead >= 0xC2 && lead < 0xE0 ? 2
                                   : lead >= 0xE0 && lead < 0xF0 ? 3
                                   : lead >= 0xF0 && lead < 0xF5 ? 4
                                                                 : 0;
        if (length == 0 || i + length > text.size()) return false;
        for (std::size_t k = 1; k < length; ++k)
            if ((static_cast<unsigned char>(text[i + k]) & 0xC0) != 0x80) return false;
        i += length;
    }
    return true;
}

bool is_sound(const Misreading& why)
{
    const bool known = why.id == "wrong-type" || why.id == "wrong-unit" || why.id == "out-of-range";
    return known && !why.says.empty() && is_valid_utf8(why.says) && is_valid_utf8(why.fix);
}

template <class Quantity>
bool is_sound(const Outcome<Quantity>& outcome)
{
    return outcome ? std::isfinite(outcome->value()) : is_sound(outcome.why());
}

bool is_sound(const Outcome<double>& outcome) { return outcome ? std::isfinite(*outcome) : is_sound(outcome.why()); }

bool is_sound(const Outcome<Temperature>& outcome)
{
    return outcome ? std::isfinite(outcome->celsius()) : is_sound(outcome.why());
}

bool is_sound(const Outcome<std::vector<Length>>& outcome)
{
    if (!outcome) return is_sound(outcome.why());
    for (const Length& length : *outcome)
        if (!std::isfinite(length.value())) return false;
    return !outcome->empty();
}

bool all_readers_are_sound(const std::string& text)
{
    return is_sound(read_length(text)) && is_sound(read_length(text, LengthUnit::inch)) &&
           is_sound(read_lengths(text, LengthUnit::millimetre)) && is_sound(read_force(text)) && is_sound(read_line_load(text)) &&
           is_sound(read_mass(text)) && is_sound(read_density(text)) && is_sound(read_stress(text)) &&
           is_sound(read_temperature(text)) && is_sound(read_percent(text)) && is_sound(read_angle(text)) &&
           is_sound(read_number(text));
}

std::string shown_as_bytes(const std::string& text)
{
    std::string bytes;
    for (const char c : text) bytes += std::to_string(static_cast<unsigned char>(c)) + ' ';
    return bytes;
}

} // namespace

TEST_CASE("Random bytes are refused or read, never worse", "[measure][bytes]")
{
    std::mt19937 random(20250101);
    std::uniform_int_distribution<int> byte(0, 255), length(0, 40);
    for (int round = 0; round < 3000; ++round) {
        std::string text;
        for (int i = length(random); i > 0; --i) text.push_back(static_cast<char>(byte(random)));
        if (!all_readers_are_sound(text)) FAIL_CHECK(shown_as_bytes(text));
    }
}

TEST_CASE("Random rows of what measures are made of are refused or read", "[measure][bytes]")
{
    const std::vector<std::string> pieces{"0",
                                          "1",
                                          "12",
                                          "999999999999999999999",
                                          ".",
                                          ",",
                                          "-",
                                          "−",
                                          "+",
                                          "/",
                                          "⁄",
                                          "½",
                                          "⅞",
                                          "¹",
                                          "₈",
                                          " ",
                                          "\u00A0",
                                          "'",
                                          "\"",
                                          "″",
                                          "in",
                                          "ft",
                                          "mm",
                                          "m",
                                          "cm",
                                          "kg",
                                          "lb",
                                          "N",
                                          "MPa",
                                          "mPa",
                                          "%",
                                          "°",
                                          "C",
                                          "x",
                                          "×",
                                          "e",
                                          "e9",
                                          "e400",
                                          "nan",
                                          "inf",
                                          "∞",
                                          "\xE2\x85",
                                          "\xC3",
                                          "^",
                                          "²",
                                          "m3",
                                          std::string(1, '\0')};
    std::mt19937 random(7);
    std::uniform_int_distribution<std::size_t> piece(0, pieces.size() - 1);
    std::uniform_int_distribution<int> count(1, 8);
    int read = 0;
    for (int round = 0; round < 10000; ++round) {
        std::string text;
        for (int i = count(random); i > 0; --i) text += pieces[piece(random)];
        if (!all_readers_are_sound(text)) FAIL_CHECK(shown_as_bytes(text));
        read += read_length(text, LengthUnit::inch) ? 1 : 0;
    }
    CHECK(read > 100); // else the pieces would never make a measure
}

TEST_CASE("A text of a megabyte is refused at once", "[measure][bytes]")
{
    constexpr std::size_t kMegabyte = 1 << 20;
    const auto start = std::chrono::steady_clock::now();
    for (const std::string& piece :
         std::vector<std::string>{"9", " ", "½", "1/2 x ", "'", "-", "\xE2", "¹", "1 in ", "x", std::string(1, '\0')}) {
        std::string text;
        while (text.size() < kMegabyte) text += piece;
        const auto why = read_lengths(text, LengthUnit::inch);
        REQUIRE_FALSE(why);
        CHECK(why.why().id == "wrong-type");
        CHECK(why.why().says.size() < 500);
        CHECK(all_readers_are_sound(text));
    }
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(5));
}

TEST_CASE("The longest text that is looked at is read quickly", "[measure][bytes]")
{
    const auto start = std::chrono::steady_clock::now();
    for (const std::string& piece : std::vector<std::string>{"9", "½", "1/2 x ", "'", "¹", "1,", "1 in "}) {
        std::string text;
        while (text.size() + piece.size() <= kLongestMeasure) text += piece;
        CHECK(all_readers_are_sound(text));
    }
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(5));
}

TEST_CASE("Quoted texts are valid UTF-8 and short", "[measure][bytes]")
{
    CHECK(in_quotes("12 kg") == "\"12 kg\"");
    CHECK(in_quotes("a\nb") == "\"a\uFFFDb\"");
    CHECK(in_quotes("\xFF") == "\"\uFFFD\"");
    CHECK(in_quotes(std::string(100, 'a')) == "\"" + std::string(39, 'a') + "…\"");
    CHECK(is_valid_utf8(in_quotes(std::string(163, '\xE2'))));
}
