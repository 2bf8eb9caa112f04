// Rooms by their place: the air inside from the air outside.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "wood/moisture_balance.hpp"
#include "wood/room_year.hpp"

#include <algorithm>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

AirState air(double humidity, double celsius) { return {RelativeHumidity::percent(humidity), Temperature::celsius(celsius)}; }
MoistureGain gain(double g_m3, double full_below)
{
    return {g_m3 / 1e3, Temperature::celsius(full_below), Temperature::celsius(20), Temperature::celsius(20)};
}

struct Row {
    const char* place;
    double humidity[5]; ///< percent, with 0, 1, 2, 3 and 4 g/m³ gained
};

constexpr Row kRows[] = {
#include "published/data/indoor_humidity.inc"
};

} // namespace

TEST_CASE("Saturated air holds what tables of water vapour say", "[room]")
{
    // Tables of saturated vapour, from memory: 4.85 g/m³ at 0 °C, 9.40 at 10, 17.3 at 20, 30.4 at 30, 2.36 over water at −10.
    for (const auto& [celsius, grams] : {std::pair{0.0, 4.85}, {10.0, 9.40}, {20.0, 17.3}, {30.0, 30.4}, {-10.0, 2.36}}) {
        CAPTURE(celsius);
        CHECK_THAT(saturated_vapour(Temperature::celsius(celsius)) * 1e3, WithinRel(grams, 0.01));
    }
}

TEST_CASE("Cold air that is heated is dry air, and people moisten it", "[room]")
{
    const MoistureGain usual = usual_gain(shared_facts());
    CHECK_THAT(usual.full_kg_m3, WithinRel(2.5e-3, 1e-12));
    // −10 °C at 80 %: 0.80 × 2.36 = 1.89 g/m³; with 2.5 gained 4.39 of 17.27 at 20 °C: 25 %.
    CHECK_THAT(heated_air(air(80, -10), usual).humidity.percent(), WithinAbs(25.4, 0.2));
    CHECK(heated_air(air(80, -10), usual).temperature.celsius() == 20);
    // Half way between 5 and 20 °C half of it: 12.5 °C at 70 % holds 0.70 × 10.98 = 7.69, with 1.25 8.94 of 17.27: 52 %.
    CHECK_THAT(heated_air(air(70, 12.5), usual).humidity.percent(), WithinAbs(51.7, 0.3));
    // From 20 °C on the room is as it is outside, never cooler and never past saturation.
    CHECK_THAT(heated_air(air(83, 29), usual).humidity.percent(), WithinAbs(83, 1e-9));
    CHECK(heated_air(air(83, 29), usual).temperature.celsius() == 29);
    CHECK(heated_air(air(100, 19.9), gain(50, 19)).humidity.percent() <= 100);
}

TEST_CASE("Humidity indoors by months stays near that worked out day by day", "[room][published]")
{
    // The mean month has less vapour than the mean of the days, by up to two points of humidity in the driest month; never more by two.
    CHECK(std::size(kRows) == 65);
    for (const Row& row : kRows) {
        const auto place = find_place(shared_facts(), row.place);
        CAPTURE(row.place);
        REQUIRE(place);
        for (int grams = 0; grams <= 4; ++grams) {
            CAPTURE(grams);
            double driest = 100;
            for (const AirState& month : place->air)
                driest = std::min(driest, heated_air(month, gain(grams, 0)).humidity.percent());
            CHECK(driest > row.humidity[grams] - 4);
            CHECK(driest < row.humidity[grams] + 2.5);
        }
    }
}

TEST_CASE("A heated room at a place has the driest month of its winter, the open air that of its dry season", "[room]")
{
    const auto harbin = find_place(shared_facts(), "Harbin");
    REQUIRE(harbin);
    const RoomYear inside = year_at(shared_facts(), *harbin, Shelter::heated),
                   open = year_at(shared_facts(), *harbin, Shelter::outdoors);
    CHECK(&inside.driest() == &inside.months[0]);
    REQUIRE(inside.driest().air);
    // January −17.9 °C, 75 %: 0.75 × 1.25 = 0.94 g/m³ and 2.5 gained: 3.44 of 17.27, 20 %.
    CHECK_THAT(inside.driest().air->humidity.percent(), WithinAbs(20, 0.5));
    CHECK_THAT(inside.driest().moisture.percent(), WithinAbs(4.5, 0.3));
    CHECK(open.driest().moisture.percent() == 10.7);
    CHECK(open.dampest().moisture.percent() == 16.2);
    CHECK_THAT(inside.source, ContainsSubstring("station Harbin"));
    CHECK_THAT(inside.source, ContainsSubstring("worked out"));
    CHECK_THAT(open.source, ContainsSubstring("(computed)"));
}

TEST_CASE("Frost is taken as ice-free air at −1 °C", "[room]")
{
    CHECK(ice_free(air(80, -25)).temperature.celsius() == -1);
    CHECK(ice_free(air(80, -25)).humidity.percent() == 80);
    CHECK(ice_free(air(80, 3)).temperature.celsius() == 3);
    CHECK(moisture_in(Season{air(80, -25)}) == equilibrium_moisture(RelativeHumidity::percent(80), Temperature::celsius(-1)));
    MonthlyAir months;
    months.fill(air(60, 12));
    CHECK_FALSE(year_of(shared_facts(), months, Shelter::not_heated, "own").in_frost);
    months[1] = air(85, -14);
    const RoomYear shed = year_of(shared_facts(), months, Shelter::not_heated, "own");
    CHECK(shed.in_frost);
    CHECK(&shed.dampest() == &shed.months[1]);
    CHECK_FALSE(year_of(shared_facts(), months, Shelter::heated, "own").in_frost);
}
