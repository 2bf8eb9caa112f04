// Names are forgiven their case, commas, hyphens and word order; a name that is not known gets near ones offered.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "facts/names.hpp"

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("Spellings of one name have one normal form", "[facts][names]")
{
    const std::string expected = normal_form("northern red oak");
    for (const char* spelling :
         {"Oak, northern red", "NORTHERN RED OAK", "oak - red, northern", "  northern   red-oak ", "Red Oak (northern)"}) {
        CAPTURE(spelling);
        CHECK(normal_form(spelling) == expected);
    }
    CHECK(normal_form("red oak") != expected);
    CHECK(normal_form(" ,-; ").empty());
}

TEST_CASE("Edit distance counts letters added, left out, changed and swapped", "[facts][names]")
{
    struct Row {
        const char *a, *b;
        std::size_t distance;
    };
    for (const Row& row : {Row{"", "", 0}, Row{"oak", "oak", 0}, Row{"", "oak", 3}, Row{"oak", "", 3}, Row{"whit", "white", 1},
                           Row{"aok", "oak", 1}, Row{"oaks", "oak", 1}, Row{"ash", "oak", 3}, Row{"walnut", "wlanut", 1},
                           Row{"cherry", "chery", 1}}) {
        CAPTURE(row.a, row.b);
        CHECK(edit_distance(row.a, row.b) == row.distance);
        CHECK(edit_distance(row.b, row.a) == row.distance);
    }
}

TEST_CASE("The nearest wood comes first", "[facts][names]")
{
    const Facts& facts = shared_facts();
    struct Row {
        const char *written, *first;
    };
    for (const Row& row :
         {Row{"whit oak", "white oak"}, Row{"oak, red norhern", "northern red oak"}, Row{"suger maple", "sugar maple"},
          Row{"Black Chery", "black cherry"}, Row{"hwite oak", "white oak"}, Row{"walnut, blakc", "black walnut"}}) {
        CAPTURE(row.written);
        CHECK(facts.find_wood(row.written) == nullptr);
        const auto near = facts.suggest_woods(row.written);
        REQUIRE_FALSE(near.empty());
        CHECK(near.size() <= 3);
        CHECK(near.front() == row.first);
    }
}

TEST_CASE("Every suggestion is a name that can be looked up", "[facts][names]")
{
    const Facts& facts = shared_facts();
    for (const char* written : {"whit oak", "maple", "mahogony", "pine", "b", "oak, norhern red"}) {
        CAPTURE(written);
        for (const std::string& name : facts.suggest_woods(written)) {
            CAPTURE(name);
            CHECK(facts.find_wood(name) != nullptr);
        }
    }
    for (const std::string& name : facts.suggest_glues("PVAA")) CHECK(facts.find_glue(name) != nullptr);
    for (const std::string& name : facts.suggest_rooms("heated cold winter")) CHECK(facts.find_room(name) != nullptr);
    for (const std::string& name : facts.suggest_finishes("linsed oil")) CHECK(facts.find_finish(name) != nullptr);
}

TEST_CASE("A kind of wood by itself offers woods of that kind", "[facts][names]")
{
    for (const char* kind : {"maple", "cherry", "walnut", "oak", "pine", "birch", "fir"}) {
        CAPTURE(kind);
        CHECK(shared_facts().find_wood(kind) == nullptr);
        const auto near = shared_facts().suggest_woods(kind);
        CHECK(near.size() == 3);
        for (const std::string& name : near) CHECK_THAT(name, ContainsSubstring(kind));
    }
}

TEST_CASE("A name like no other gets no suggestion", "[facts][names]")
{
    CHECK(shared_facts().suggest_woods("qqqqqqqqqqqqqqqq").empty());
    CHECK(shared_facts().suggest_woods("xyz").empty());
    CHECK(nearest_spellings("thickness", {"width", "length"}).empty());
    CHECK(nearest_spellings("lenght", {"width", "length", "thickness"}) == std::vector<std::string>{"length"});
    CHECK(nearest_spellings("length", {}).empty());
    CHECK(nearest_spellings("length", {"length"}, 0).empty());
}

TEST_CASE("Odd names are looked up without harm", "[facts][names]")
{
    const Facts& facts = shared_facts();
    const std::string very_long(100000, 'a');
    for (const std::string& name : {std::string(), std::string("   "), std::string("../sources"), std::string("\xff\xfe"),
                                    std::string("oak\0ash", 7), very_long}) {
        CHECK(facts.find_wood(name) == nullptr);
        CHECK(facts.find_glue(name) == nullptr);
        CHECK(facts.suggest_woods(name).size() <= 3);
    }
}
