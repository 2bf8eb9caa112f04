#include "catch.hpp"
#include "measure/read.hpp"

#include <cmath>
#include <string>
#include <utility>
#include <vector>

using namespace jointwright;

namespace {

constexpr double kExact = 1e-12; // metres: what is left of rounding in a double

double read_metres(std::string_view text, std::optional<LengthUnit> bare = std::nullopt)
{
    const Outcome<Length> length = read_length(text, bare);
    if (!length) FAIL(std::string(text) + ": " + length.why().says);
    return in_metres(*length);
}

Misreading refused(std::string_view text, std::optional<LengthUnit> bare = std::nullopt)
{
    const Outcome<Length> length = read_length(text, bare);
    if (length) FAIL(std::string(text) + " was read as " + std::to_string(in_metres(*length)) + " m");
    return length.why();
}

} // namespace

TEST_CASE("Inches are read as makers write them", "[measure][read]")
{
    const std::vector<std::pair<const char*, double>> rows{
        {"12in", 12},
        {"12 in", 12},
        {"12 IN", 12},
        {"12 inches", 12},
        {"1 inch", 1},
        {"12 in.", 12},
        {"12\"", 12},
        {"12''", 12},
        {"12″", 12},
        {"12”", 12},
        {"12′′", 12},
        {"12 1/2 in", 12.5},
        {"12-1/2\"", 12.5},
        {"12-1/2 in", 12.5},
        {"12½ in", 12.5},
        {"12 ½ in", 12.5},
        {"12-½\"", 12.5},
        {"½\"", 0.5},
        {"½ in", 0.5},
        {"1/2in", 0.5},
        {"5/4 in", 1.25},
        {"0.5\"", 0.5},
        {".5 in", 0.5},
        {"-0.25 in", -0.25},
        {"-12 1/2 in", -12.5},
        {"−1/8 in", -0.125},
        {"+3 in", 3},
        {"0 in", 0},
        {"-0 in", 0},
        {"1 5/8 in", 1.625},
        {"17\u00A01/8\u00A0in", 17.125},
        {"17 1⁄8 in", 17.125},
        {"17¹⁄₈ in", 17.125},
        {"¹⁵⁄₁₆ in", 0.9375},
        {"1e1 in", 10},
        {"12‑1/2 in", 12.5},
        {"\t 12 in ", 12},
        {"12.in", 12},
        {"7/64 in", 7.0 / 64},
    };
    for (const auto& [text, inches_meant] : rows) {
        CAPTURE(text);
        CHECK_THAT(read_metres(text), WithinAbs(inches_meant * 0.0254, kExact));
    }
}

TEST_CASE("Every single-sign fraction is read", "[measure][read]")
{
    const std::vector<std::pair<const char*, double>> rows{
        {"¼", 1 / 4.0}, {"½", 1 / 2.0}, {"¾", 3 / 4.0}, {"⅐", 1 / 7.0}, {"⅑", 1 / 9.0}, {"⅒", 1 / 10.0},
        {"⅓", 1 / 3.0}, {"⅔", 2 / 3.0}, {"⅕", 1 / 5.0}, {"⅖", 2 / 5.0}, {"⅗", 3 / 5.0}, {"⅘", 4 / 5.0},
        {"⅙", 1 / 6.0}, {"⅚", 5 / 6.0}, {"⅛", 1 / 8.0}, {"⅜", 3 / 8.0}, {"⅝", 5 / 8.0}, {"⅞", 7 / 8.0},
    };
    for (const auto& [sign, value] : rows) {
        CAPTURE(sign);
        CHECK_THAT(read_metres(std::string(sign) + " in"), WithinAbs(value * 0.0254, kExact));
        CHECK_THAT(read_metres("3" + std::string(sign) + "\""), WithinAbs((3 + value) * 0.0254, kExact));
    }
}

TEST_CASE("Feet and inches are read together", "[measure][read]")
{
    const std::vector<std::pair<const char*, double>> rows{
        {"3'", 36},           {"3 ft", 36},         {"3 feet", 36},       {"1 foot", 12},   {"2.5 ft", 30},
        {"1/2 ft", 6},        {"3' 6\"", 42},       {"3' 6-1/2\"", 42.5}, {"3′ 6½″", 42.5}, {"3’ 6½”", 42.5},
        {"3'-6 1/2\"", 42.5}, {"3' - 6\"", 42},     {"3'6\"", 42},        {"3ft6in", 42},   {"3 ft 6 1/2 in", 42.5},
        {"3 ft 6 in", 42},    {"3 ft. 6 in.", 42},  {"0' 7/8\"", 0.875},  {"-3' 6\"", -42}, {"-0' 6\"", -6},
        {"3' ½\"", 36.5},     {"3' 6.25\"", 42.25},
    };
    for (const auto& [text, inches_meant] : rows) {
        CAPTURE(text);
        CHECK_THAT(read_metres(text), WithinAbs(inches_meant * 0.0254, kExact));
    }
    CHECK_THAT(read_metres("3' 6", LengthUnit::inch), WithinAbs(42 * 0.0254, kExact));
}

TEST_CASE("Metric lengths are read", "[measure][read]")
{
    const std::vector<std::pair<const char*, double>> rows{
        {"305mm", 0.305}, {"305 mm", 0.305},       {"305 MM", 0.305},  {"30.5 cm", 0.305},        {"1.2 m", 1.2},
        {"1.2 M", 1.2},   {"-3 mm", -0.003},       {"12½ mm", 0.0125}, {"18 millimetres", 0.018}, {"18 millimeters", 0.018},
        {"2 metres", 2},  {"5 centimeters", 0.05}, {"1e3 mm", 1},      {"434.9 mm", 0.4349},      {"305\u202Fmm", 0.305},
    };
    for (const auto& [text, metres_meant] : rows) {
        CAPTURE(text);
        CHECK_THAT(read_metres(text), WithinAbs(metres_meant, kExact));
    }
}

TEST_CASE("A bare number takes the caller's unit and no other", "[measure][read]")
{
    CHECK_THAT(read_metres("17 1/8", LengthUnit::inch), WithinAbs(17.125 * 0.0254, kExact));
    CHECK_THAT(read_metres("38", LengthUnit::millimetre), WithinAbs(0.038, kExact));
    CHECK_THAT(read_metres("3.8", LengthUnit::centimetre), WithinAbs(0.038, kExact));
    CHECK_THAT(read_metres("1 in", LengthUnit::millimetre), WithinAbs(0.0254, kExact));

    const Misreading none = refused("17 1/8");
    CHECK(none.id == "wrong-unit");
    CHECK_THAT(none.says, ContainsSubstring("\"17 1/8\" has no unit"));
    CHECK(none.fix == "17 1/8 in");
    CHECK(refused("38").fix == "38 mm");
    CHECK(refused("3' 6").id == "wrong-unit");
    CHECK(refused("3' 6", LengthUnit::millimetre).id == "wrong-unit");
}

TEST_CASE("A comma in a number is refused and the decimal point named", "[measure][read]")
{
    const std::vector<std::pair<const char*, const char*>> rows{
        {"12,5 mm", "12.5 mm"},   {"12,5mm", "12.5mm"},        {",5 mm", "0.5 mm"},         {"-1,25 m", "-1.25 m"},
        {"0,125 in", "0.125 in"}, {"1,234.5 mm", "1234.5 mm"}, {"1.234,5 mm", "1234.5 mm"}, {"1,234,567 mm", "1234567 mm"},
    };
    for (const auto& [text, fix] : rows) {
        CAPTURE(text);
        const Misreading why = refused(text);
        CHECK(why.id == "wrong-type");
        CHECK_THAT(why.says, ContainsSubstring("decimal point"));
        CHECK(why.fix == fix);
        CHECK(read_length(why.fix));
    }
    const Misreading unclear = refused("1,200 mm");
    CHECK(unclear.id == "wrong-type");
    CHECK_THAT(unclear.says, ContainsSubstring("\"1.200 mm\" with a decimal point") && ContainsSubstring("\"1200 mm\""));
    CHECK(unclear.fix.empty());
}

TEST_CASE("A unit that measures something else is named", "[measure][read]")
{
    const std::vector<std::pair<const char*, const char*>> rows{
        {"12 kg", "\"12 kg\" is a mass"},
        {"12 N", "a force"},
        {"680 kg/m3", "a density"},
        {"680 kg/m³", "a density"},
        {"1500 N/m", "a force per length"},
        {"20 C", "a temperature"},
        {"20 °C", "a temperature"},
        {"8 %", "a percentage"},
        {"45°", "an angle"},
        {"9 MPa", "a stress"},
        {"5 mm²", "an area"},
        {"5 in^2", "no unit is named \"in^2\""},
        {"5 furlongs", "no unit is named \"furlongs\""},
    };
    for (const auto& [text, words] : rows) {
        CAPTURE(text);
        const Misreading why = refused(text, LengthUnit::inch);
        CHECK(why.id == "wrong-unit");
        CHECK_THAT(why.says, ContainsSubstring(words));
        CHECK_THAT(why.says, ContainsSubstring("a length"));
        CHECK_THAT(why.says, ContainsSubstring("305 mm"));
    }
    const Misreading mega = refused("5 Mm");
    CHECK(mega.id == "wrong-unit");
    CHECK(mega.fix == "5 mm");
}

TEST_CASE("Units of one length are not mixed, feet and inches aside", "[measure][read]")
{
    const Misreading metric = refused("1 m 20 cm");
    CHECK(metric.id == "wrong-unit");
    CHECK(metric.fix == "1200 mm");
    CHECK(refused("3 ft 20 mm").id == "wrong-unit");
    CHECK(refused("6 in 3 ft").id == "wrong-unit");
}

TEST_CASE("Numbers that are not finite are out of range", "[measure][read]")
{
    for (const char* const text :
         {"nan", "NaN mm", "inf", "inf in", "-inf mm", "Infinity mm", "∞ mm", "1e400 mm", "-1e400 in", "1e-400 mm", "1e400"}) {
        CAPTURE(text);
        CHECK(refused(text).id == "out-of-range");
    }
    CHECK(refused("1e400/2 in").id == "out-of-range");
    CHECK(refused("3' nan in").id == "out-of-range");
    CHECK(refused("1/" + std::string(400, '9') + " in").id == "out-of-range");
    CHECK(refused(std::string(400, '9') + " mm").id == "out-of-range");
    CHECK(refused("3' 14\"").id == "out-of-range");
    CHECK(refused("3' 14\"").fix == "50 in");
}

TEST_CASE("Nothing is left over and nothing is guessed", "[measure][read]")
{
    for (const char* const text :
         {"",          "   ",        "in",          "banana",      "12 in thick", "12 mm mm",  "12 5 mm",
          "1 200 mm",  "1/0 in",     "12 1/0 in",   "1/ in",       "/2 in",       "1//2 in",   "1/2/3 in",
          "1.5/2 in",  "1/1.5 in",   "12.5 1/2 in", "12 - 1/2 in", "12 -1/2 in",  "12 3/2 in", "½½ in",
          "½5 in",     "5½5 in",     "1½/2 in",     "--5 in",      "- in",        "+ in",      "+-5 in",
          "1.2.3 mm",  ". mm",       "1_000 mm",    "0x10 mm",     "3' -6\"",     "3' - -6\"", "3'' 6'",
          "3.5' 6\"",  "3' 6\" 2\"", "3' in",       "12 \"in",     "12 mm\n",     "12\nmm",    "(12 mm)",
          "12mm;",     "~12 mm",     "1e mm",       "é",           "\xC3",        "\xFF\xFE",  "12 \xFF mm",
          "3 ft thick"}) {
        CAPTURE(text);
        const Misreading why = refused(text);
        CHECK((why.id == "wrong-type" || why.id == "wrong-unit"));
        CHECK_FALSE(why.says.empty());
    }
    CHECK(refused("banana").id == "wrong-type");
    CHECK(refused("").id == "wrong-type");
    CHECK(refused("12 in thick").id == "wrong-type");
    CHECK_THAT(refused("12 in thick").says, ContainsSubstring("\"thick\" is left over"));
    CHECK(refused("1/0 in").id == "wrong-type");
    CHECK_THAT(refused("1/0 in").says, ContainsSubstring("divided by zero"));
    CHECK(refused("12 3/2 in").id == "wrong-type");
    CHECK(refused("12 3/2 in").fix == "13.5 in");
}

TEST_CASE("Rows of sizes are read, the last unit serving those before it", "[measure][read]")
{
    const auto in_mm = [](std::string_view text, std::optional<LengthUnit> bare = std::nullopt) {
        const auto lengths = read_lengths(text, bare);
        if (!lengths) FAIL(std::string(text) + ": " + lengths.why().says);
        std::vector<double> result;
        for (const Length& length : *lengths) result.push_back(std::round(in_millimetres(length) * 1e6) / 1e6);
        return result;
    };
    CHECK(in_mm("1/2in x 2in x 38mm") == std::vector{12.7, 50.8, 38.0});
    CHECK(in_mm("1/2in×2in×38mm") == std::vector{12.7, 50.8, 38.0});
    CHECK(in_mm("20x60mm") == std::vector{20.0, 60.0});
    CHECK(in_mm("20 X 60 X 2 cm") == std::vector{200.0, 600.0, 20.0});
    CHECK(in_mm("1/2 x 2 x 38mm", LengthUnit::inch) == std::vector{0.5, 2.0, 38.0});
    CHECK(in_mm("1/2 x 2", LengthUnit::inch) == std::vector{12.7, 50.8});
    CHECK(in_mm("12mm") == std::vector{12.0});

    const auto id_of = [](std::string_view text) {
        const auto lengths = read_lengths(text);
        return lengths ? std::string("read") : lengths.why().id;
    };
    CHECK(id_of("2in x 3") == "wrong-unit");
    CHECK(id_of("4 x 3' 6\"") == "wrong-unit");
    CHECK(id_of("2in x x 3in") == "wrong-type");
    CHECK(id_of("x") == "wrong-type");
    CHECK(id_of("") == "wrong-type");
    CHECK(id_of("2in x 3kg") == "wrong-unit");
    CHECK(id_of("12,5 x 3,2 mm") == "wrong-type");
    CHECK(read_lengths("12,5 x 3,2 mm").why().fix == "12.5 x 3.2 mm");
    CHECK(split_sizes("3/8in x 2in×3") == std::vector<std::string_view>{"3/8in ", " 2in", "3"});
}

TEST_CASE("Units of a design file have short names", "[measure]")
{
    for (const LengthUnit unit : {LengthUnit::inch, LengthUnit::millimetre, LengthUnit::centimetre}) {
        CHECK(length_unit_named(short_name(unit)) == unit);
        CHECK_THAT(number_in(length_in(12.5, unit), unit), WithinAbs(12.5, 1e-12));
    }
    CHECK_FALSE(length_unit_named("m"));
    CHECK_FALSE(length_unit_named("IN"));
}
