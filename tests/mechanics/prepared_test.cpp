// A piece made ready for its checks: combinations of woods and rings, moisture, masses.

#include "catch.hpp"
#include "checks/checked.hpp"

#include <set>

using namespace checked;

namespace {

constexpr const char* kBoards = R"(
[[wood]]
id = "frame"
species = $frame
rings = $rings
[[wood]]
id = "top"
species = "black cherry"
moisture = 7
[[part]]
id = "rail"
wood = "frame"
length = 600
width = 80
thickness = 20
grain = "x"
face = "y"
at = [0, 0, 0]
$rail
[[part]]
id = "board"
wood = "top"
length = 600
width = 150
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 80]
$board
)";

std::string boards(const std::string& frame, const std::string& rings = "\"flat\"", const std::string& rail = "",
                   const std::string& board = "")
{
    return still_head(true) + fill(kBoards, {{"frame", frame}, {"rings", rings}, {"rail", rail}, {"board", board}});
}

} // namespace

TEST_CASE("A piece whose woods are known has one combination without words", "[prepared]")
{
    const auto all = combinations_of(piece_of(boards("\"white oak\"")));
    REQUIRE(all.size() == 1);
    CHECK(all[0].words.empty());
}

TEST_CASE("Every open choice is combined with every other", "[prepared]")
{
    const auto all = combinations_of(piece_of(
        boards("[\"sugar maple\", \"red maple\"]", "[\"flat\", \"rift\", \"quarter\"]", "", "rings = [\"flat\", \"quarter\"]")));
    CHECK(all.size() == 2 * 3 * 2);
    std::set<std::string> words;
    for (const Combination& c : all) words.insert(c.words);
    CHECK(words.size() == all.size());
    CHECK(words.count("red maple, frame rift, board quarter-sawn") == 1);
}

TEST_CASE("A combination sets species and rings of its parts", "[prepared]")
{
    const LaidOut laid = lay_out(piece_of(boards("[\"sugar maple\", \"red maple\"]", "[\"flat\", \"quarter\"]")));
    const Piece& piece = *laid.piece;
    for (const Combination& c : combinations_of(piece)) {
        CAPTURE(c.words);
        const Prepared prepared = prepare(laid, testing::shared_facts(), c, piece.units);
        CHECK(prepared.parts[0].species == (c.words.find("red maple") != std::string::npos ? "red maple" : "sugar maple"));
        CHECK_THAT(in_degrees(prepared.parts[0].rings), WithinAbs(c.words.find("quarter") != std::string::npos ? 90 : 0, 1e-9));
        CHECK(prepared.parts[1].species == "black cherry");
    }
}

TEST_CASE("Moisture of a part: its own, else the wood's, else the room's", "[prepared]")
{
    const auto bench = bench_of(boards("\"white oak\"", "\"flat\"", "moisture = 10"));
    CHECK(bench->prepared.parts[0].made.percent() == 10);
    CHECK(bench->prepared.parts[1].made.percent() == 7);
    CHECK(bench_of(boards("\"white oak\""))->prepared.parts[0].made.percent() == 9);
    for (const PartState& state : bench->prepared.parts) {
        CHECK(state.driest.percent() == 5.4);
        CHECK(state.dampest.percent() == 11.9);
        CHECK(state.loaded.moisture.percent() == 11.9); // loads are met at the dampest
        CHECK(state.usual.moisture.percent() == 12);
    }
}

TEST_CASE("Strains run from made to either season", "[prepared]")
{
    const auto bench = bench_of(boards("\"white oak\""));
    const PartState& rail = bench->prepared.parts[0];
    CHECK_THAT(rail.damp.width, WithinRel(0.00365 * 2.9, 1e-9)); // white oak, table 13-5
    CHECK(rail.dry.width < 0);
    CHECK_THAT(rail.damp.thickness, WithinRel(0.00180 * 2.9, 1e-9));
}

TEST_CASE("Mass is volume times density with its water", "[prepared]")
{
    const auto bench = bench_of(boards("\"white oak\""));
    const double density = bench->prepared.parts[0].loaded.density->value.value();
    CHECK(density > 700);
    CHECK(density < 800);
    CHECK_THAT(bench->prepared.masses[0], WithinRel(0.600 * 0.080 * 0.020 * density, 1e-9));
    CHECK_THAT(bench->prepared.whole_mass(), WithinRel(bench->prepared.masses[0] + bench->prepared.masses[1], 1e-12));
}

TEST_CASE("A wood by its own test values alone is known by them", "[prepared]")
{
    std::string text = boards("\"white oak\"");
    text.replace(text.find("species = \"white oak\"\n"), 22,
                 "properties = { modulus = \"11 GPa\", density = \"650 kg/m3\", tangential = 0.003, radial = 0.0015 }\n");
    const auto bench = bench_of(text);
    const PartState& rail = bench->prepared.parts[0];
    CHECK(rail.record == nullptr);
    CHECK(rail.moves());
    CHECK_THAT(rail.damp.width, WithinRel(0.003 * 2.9, 1e-9));
    CHECK_THAT(rail.loaded.modulus_along->value.value(), WithinRel(11e9, 1e-12));
    CHECK_FALSE(rail.loaded.bending_strength);
    CHECK_THAT(bench->prepared.masses[0], WithinRel(0.600 * 0.080 * 0.020 * 650, 1e-9));
}

TEST_CASE("What cannot move says what is missing", "[prepared]")
{
    std::string text = boards("\"white oak\"");
    text.replace(text.find("species = \"white oak\"\n"), 22, "properties = { modulus = \"11 GPa\" }\n");
    const auto bench = bench_of(text);
    CHECK_FALSE(bench->prepared.parts[0].moves());
    CHECK_THAT(bench->prepared.parts[0].missing_movement(), ContainsSubstring("movement"));
    CHECK(bench->prepared.parts[0].dry.width == 0);
}
