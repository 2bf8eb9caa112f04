// [room] by its place, by months of the maker's own, and names of woods that mean several.

#include "catch.hpp"

#include "facts/shared_facts.hpp"
#include "piece/tiny_design.hpp"

#include <fmt/format.h>

#include <algorithm>

using namespace jointwright;

namespace {

constexpr const char* kAir = "air = \"heated, cold winters\"";

Piece in_room(const std::string& lines) { return tiny::piece(tiny::design({{kAir, lines}})); }
std::string told(const std::string& lines) { return tiny::messages(tiny::design({{kAir, lines}})); }

bool assumes(const Piece& piece, const std::string& words)
{
    return std::any_of(piece.assumed.begin(), piece.assumed.end(),
                       [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

/// Twelve like months, but for the third.
std::string months(const std::string& third)
{
    std::string text = "months = [";
    for (int m = 0; m < 12; ++m)
        text += (m == 0 ? "" : ", ") + (m == 2 ? third : std::string("{ temperature = \"15 C\", humidity = 70 }"));
    return text + "]";
}

} // namespace

TEST_CASE("A place brings its year, its seasons and its name", "[read][room]")
{
    const Piece piece = in_room("place = \"harbin\"\nshelter = \"heated\"");
    CHECK(piece.room.name == "heated, Harbin, China");
    CHECK_FALSE(piece.room.outdoors);
    REQUIRE(piece.room.year);
    REQUIRE(std::holds_alternative<AirState>(piece.room.driest));
    CHECK(std::get<AirState>(piece.room.driest).temperature.celsius() == 20);
    CHECK(std::get<AirState>(piece.room.driest).humidity == piece.room.year->months[0].air->humidity);
    CHECK_FALSE(assumes(piece, "shelter"));

    const Piece open = in_room("place = \"Harbin\"\nshelter = \"outdoors\"");
    CHECK(open.room.outdoors);
    CHECK(std::get<MoistureContent>(open.room.driest) == MoistureContent::percent(10.7));
    CHECK(std::get<MoistureContent>(open.room.dampest) == MoistureContent::percent(16.2));
    CHECK(assumes(in_room("place = \"Stuttgart\""), "a heated room is taken"));
    CHECK_FALSE(in_room("place = \"Stuttgart\"\nshelter = \"not heated\"").room.outdoors);
}

TEST_CASE("Twelve months of the maker's own make a room, frost and all", "[read][room]")
{
    const Piece shed = in_room(months("{ temperature = \"-12 C\", humidity = 85 }") + "\nshelter = \"not heated\"");
    REQUIRE(shed.room.year);
    CHECK(assumes(shed, "ice-free air at −1 °C"));
    CHECK(std::get<MoistureContent>(shed.room.dampest) == shed.room.year->months[2].moisture);
    const Piece heated = in_room(months("{ temperature = \"23 F\", humidity = 80 }") + "\nshelter = \"heated\"");
    CHECK_FALSE(assumes(heated, "ice-free"));
    CHECK_THAT(heated.room.year->months[2].air->temperature.celsius(), WithinAbs(20, 1e-9));
    // −5 °C at 80 %: 0.80 × 3.4 = 2.7 g/m³, 2.5 gained: 5.2 of 17.27.
    CHECK_THAT(heated.room.year->months[2].air->humidity.percent(), WithinAbs(30.3, 0.6));
    // Seasons given by their air may be frosty as well.
    CHECK(assumes(
        in_room("driest = { humidity = 40, temperature = \"20 C\" }\ndampest = { humidity = 90, temperature = \"-20 C\" }"),
        "ice-free air at −1 °C"));
}

TEST_CASE("A cold shed by its place says how frost is reckoned; a place that is never cold is not heated", "[read][room]")
{
    CHECK(assumes(in_room("place = \"Harbin\"\nshelter = \"not heated\""), "ice-free air at −1 °C"));
    CHECK_FALSE(assumes(in_room("place = \"Harbin\""), "ice-free"));
    const Piece warm = in_room("place = \"Singapore\"");
    CHECK(warm.room.name == "indoors, Singapore");
    REQUIRE(warm.room.year);
    CHECK_THAT(warm.room.year->source, ContainsSubstring("never cold enough to be heated"));
    CHECK_THAT(in_room("place = \"Harbin\"").room.name.value_or(""), ContainsSubstring("heated, Harbin"));
}

TEST_CASE("A room by its place that cannot be read says why, with a line that parses", "[read][room][faults]")
{
    CHECK_THAT(told("place = \"Stutgart\""), ContainsSubstring("no place is named \"Stutgart\" [unknown-name]"));
    CHECK_THAT(told("place = \"Stutgart\""), ContainsSubstring("fix: place = \"Stuttgart"));
    CHECK_THAT(told("place = \"Harbin\"\nair = \"heated, cold winters\""),
               ContainsSubstring("gives air as well; one is enough [one-too-many]"));
    CHECK_THAT(told("place = \"Harbin\"\n" + months("{ temperature = \"1 C\", humidity = 60 }")),
               ContainsSubstring("[one-too-many]"));
    CHECK_THAT(told("shelter = \"heated\""), ContainsSubstring("shelter goes with place or months"));
    CHECK_THAT(told("place = \"Harbin\"\nshelter = \"warm\""), ContainsSubstring("shelter"));
    CHECK_THAT(told("months = [1, 2, 3]"), ContainsSubstring("twelve months, January first [wrong-type]"));
    CHECK_THAT(told(months("{ temperature = \"-80 C\", humidity = 60 }")), ContainsSubstring("must be from -60 C to 60 C"));
    CHECK_THAT(told(months("{ temperature = \"1 C\", humidity = 160 }")), ContainsSubstring("[out-of-range]"));
    CHECK_THAT(told(months("{ temperature = \"1 C\" }")), ContainsSubstring("lacks humidity"));
    CHECK_THAT(told(months("{ temperature = nan, humidity = 60 }")), ContainsSubstring("t.toml:"));
}

TEST_CASE("A name that means several woods is answered with all of them, as a list that parses", "[read][faults]")
{
    const std::string wood = "species = \"white oak\"";
    const std::string messages = tiny::messages(tiny::design({{wood, "species = \"oak\""}}));
    CHECK_THAT(messages, ContainsSubstring("\"oak\" means different woods in different places [unknown-wood]"));
    CHECK_THAT(messages, ContainsSubstring("fix: species = [\"white oak\", \"European oak\"]"));
    CHECK_THAT(messages,
               ContainsSubstring("North America: white oak or red oak; Europe: European oak; Australia: Tasmanian oak"));
    CHECK(tiny::messages(tiny::design({{wood, "species = [\"white oak\", \"European oak\"]"}})).empty());
    // In a list the names join it.
    const std::string listed = tiny::messages(tiny::design({{wood, "species = [\"ash\", \"red oak\"]"}}));
    CHECK_THAT(listed, ContainsSubstring("\"white ash\", \"European ash\""));
}

TEST_CASE("A wood of which no figures are held is taken, and its nearest relative is told", "[read]")
{
    const Piece piece = tiny::piece(tiny::design({{"species = \"white oak\"", "species = \"rain tree\""}}));
    CHECK(piece.woods[0].species == std::vector<std::string>{"suar"});
    CHECK(assumes(piece, "Of suar no figures are held; the nearest listed relative is mesquite"));
}
