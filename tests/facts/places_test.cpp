// Places whose air is known month by month.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "facts/places.hpp"
#include "wood/moisture_balance.hpp"

#include <algorithm>
#include <set>

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("There are 65 places, each found by its name and its aliases, none claimed twice", "[facts][places]")
{
    const auto places = all_places(shared_facts());
    CHECK(places.size() == 65);
    std::set<std::string> claimed;
    for (const PlaceRecord& place : places) {
        CAPTURE(place.name);
        std::vector<std::string> names = place.aliases;
        names.push_back(place.name);
        for (const std::string& name : names) {
            CAPTURE(name);
            const auto found = find_place(shared_facts(), name);
            REQUIRE(found);
            CHECK(found->name == place.name);
            CHECK(claimed.insert(name).second);
        }
        CHECK(place.air_cite.provenance == Provenance::retrieved);
        CHECK(place.moisture_cite.provenance == Provenance::computed);
        CHECK_THAT(place.air_cite.where, ContainsSubstring(" days"));
    }
    CHECK_FALSE(find_place(shared_facts(), "the moon"));
    CHECK_THAT(suggest_places(shared_facts(), "Harbinn").front(), ContainsSubstring("Harbin"));
}

TEST_CASE("Printed months of places, to their last digit", "[facts][places][published]")
{
    // NOAA daily means, monthly: Harbin 2009-2012 and Kuala Lumpur's airport 2007-2016.
    const auto harbin = find_place(shared_facts(), "Harbin"), subang = find_place(shared_facts(), "Kuala Lumpur");
    REQUIRE((harbin && subang));
    CHECK(harbin->air[0].temperature.celsius() == -17.9);
    CHECK(harbin->air[0].humidity.percent() == 75);
    CHECK(harbin->moisture[0] == 15.1);
    CHECK(subang->air[0].temperature.celsius() == 27.3);
    CHECK(*std::max_element(subang->moisture.begin(), subang->moisture.end()) == 17.5);
}

TEST_CASE("The mean of daily equilibria lies near the equilibrium of the mean air, mostly above it", "[facts][places]")
{
    double sum = 0;
    int months = 0;
    for (const PlaceRecord& place : all_places(shared_facts()))
        for (std::size_t m = 0; m < 12; ++m) {
            CAPTURE(place.name, m);
            const double of_mean = moisture_in(Season{place.air[m]}).percent();
            CHECK(place.moisture[m] > of_mean - 0.2);
            CHECK(place.moisture[m] < of_mean + 2.0);
            sum += place.moisture[m] - of_mean;
            ++months;
        }
    CHECK(months == 780);
    CHECK_THAT(sum / months, WithinAbs(0.41, 0.02));
}

TEST_CASE("A place without twelve months is a broken table", "[facts][broken]")
{
    DataTexts texts = embedded_data();
    texts["places.toml"] = R"([[place]]
name = "cave"
temperature = { values = [1, 2, 3], unit = "C", source = "noaa-isd", where = "none", provenance = "retrieved" }
)";
    const Facts facts(texts);
    CHECK_THROWS_AS(all_places(facts), BrokenData);
}
