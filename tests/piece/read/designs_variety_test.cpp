// The designs and starters are of many woods, rooms, units and finishes; none of one kind throughout.

#include "catch.hpp"

#include "measure/read.hpp"
#include "piece/tiny_design.hpp"

#include <map>
#include <set>
#include <string>

using namespace jointwright;

namespace {

/// How many designs have each wood, room, unit and finish; a design counts once for each.
struct Variety {
    std::map<std::string, int> woods, rooms, finishes, units;
    int designs = 0, by_place = 0;
};

Variety variety()
{
    Variety v;
    for (const auto& [path, text] : embedded_data()) {
        if (!path.ends_with(".toml") || !(path.starts_with("designs/") || path.starts_with("patterns/"))) continue;
        const Piece piece = tiny::piece(text);
        ++v.designs;
        std::set<std::string> woods, finishes;
        for (const WoodChoice& wood : piece.woods) {
            woods.insert(wood.species.begin(), wood.species.end());
            finishes.insert(wood.finish ? wood.finish->name : "bare");
        }
        for (const std::string& wood : woods) ++v.woods[wood];
        for (const std::string& finish : finishes) ++v.finishes[finish];
        ++v.rooms[piece.room.name ? *piece.room.name : "its own air"];
        ++v.units[std::string(short_name(piece.units))];
        v.by_place += text.find("\nplace ") != std::string::npos;
    }
    return v;
}

int most_of(const std::map<std::string, int>& kinds)
{
    int most = 0;
    for (const auto& [kind, count] : kinds) most = std::max(most, count);
    return most;
}

} // namespace

TEST_CASE("The designs are of woods from all over the world", "[designs][variety]")
{
    const Variety v = variety();
    CHECK(v.designs >= 34);
    CHECK(v.woods.size() >= 18);
    int elsewhere = 0;
    for (const char* wood :
         {"jarrah", "merbau", "dark red meranti", "radiata pine", "iroko", "mahogany", "teak", "sapele", "rubberwood"})
        elsewhere += static_cast<int>(v.woods.count(wood));
    CHECK(elsewhere >= 5); // neither North American nor European
    CHECK(5 * most_of(v.woods) <= 2 * v.designs);
}

TEST_CASE("The designs stand in rooms of many climates", "[designs][variety]")
{
    const Variety v = variety();
    CHECK(v.rooms.size() >= 11);
    CHECK(v.by_place >= 5);
    for (const char* room : {"tropics, cooled", "shed, hard winters", "indoors, warm damp coast", "its own air"}) {
        CAPTURE(room);
        CHECK(v.rooms.count(room) == 1);
    }
    CHECK(2 * most_of(v.rooms) <= v.designs);
}

TEST_CASE("The designs have many finishes, and some none", "[designs][variety]")
{
    const Variety v = variety();
    CHECK(v.finishes.size() >= 9);
    CHECK(v.finishes.count("bare") == 1);
    CHECK(3 * most_of(v.finishes) <= v.designs);
    CHECK(v.units.size() == 3);
}
