// Names that mean different woods in different places.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "facts/meanings.hpp"

#include <algorithm>
#include <set>

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("A name that means different woods leads to none of them by itself", "[facts][names]")
{
    std::set<std::string> told;
    for (const NameMeanings& meanings : all_meanings(shared_facts())) {
        CAPTURE(meanings.name);
        CHECK(shared_facts().find_wood(meanings.name) == nullptr);
        CHECK(meanings.places.size() >= 2);
        const auto likeliest = likeliest_woods(shared_facts(), meanings);
        CHECK(likeliest.size() >= 2);
        for (const std::string& wood : likeliest) CHECK(shared_facts().find_wood(wood)->has_figures());
        told.insert(meanings.name);
    }
    for (const char* name : {"oak", "ash", "pine", "spruce", "poplar", "redwood", "cedar", "walnut"}) CHECK(told.contains(name));
}

TEST_CASE("The likely woods of each place are named, not the first of the alphabet", "[facts][names]")
{
    const auto oak = meanings_of(shared_facts(), "Oak");
    REQUIRE(oak);
    CHECK(oak->words() == "North America: white oak or red oak; Europe: European oak; Australia: Tasmanian oak (a eucalypt)");
    CHECK(likeliest_woods(shared_facts(), *oak) == std::vector<std::string>{"white oak", "European oak"});
    const auto poplar = meanings_of(shared_facts(), "poplar");
    REQUIRE(poplar);
    CHECK_THAT(poplar->words(), ContainsSubstring("yellow-poplar (the tulip tree, no true poplar)"));
    CHECK_FALSE(meanings_of(shared_facts(), "white oak"));
    CHECK_FALSE(meanings_of(shared_facts(), ""));
}

TEST_CASE("A meaning that names no wood of the tables is a broken table", "[facts][broken]")
{
    DataTexts texts = embedded_data();
    texts["names.toml"] = R"([[name]]
name = "oak"
places = [ { place = "here", woods = ["white oak"] }, { place = "there", woods = ["moon oak"] } ]
)";
    const Facts facts(texts);
    CHECK_THROWS_AS(meanings_of(facts, "oak"), BrokenData);
}
