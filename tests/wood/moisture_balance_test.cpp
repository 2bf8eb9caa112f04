// The moisture content that air brings wood to.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "wood/moisture_balance.hpp"

#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("Drier air never leaves wetter wood", "[emc][identity]")
{
    for (const double t : {-1.1, 5.0, 20.0, 40.0, 93.3})
        for (int rh = 0; rh < 100; ++rh) {
            CAPTURE(t, rh);
            CHECK(equilibrium_moisture(RelativeHumidity::percent(rh), Temperature::celsius(t)) <
                  equilibrium_moisture(RelativeHumidity::percent(rh + 1), Temperature::celsius(t)));
        }
}

TEST_CASE("Warmer air of the same humidity leaves drier wood at room temperatures", "[emc][identity]")
{
    for (int rh = 20; rh <= 90; rh += 10)
        for (int t = 15; t < 40; ++t) {
            CAPTURE(t, rh);
            CHECK(equilibrium_moisture(RelativeHumidity::percent(rh), Temperature::celsius(t)) >
                  equilibrium_moisture(RelativeHumidity::percent(rh), Temperature::celsius(t + 1)));
        }
}

TEST_CASE("Air without water leaves wood without water", "[emc]")
{
    CHECK(equilibrium_moisture(RelativeHumidity::percent(0), Temperature::celsius(20)).percent() == 0);
    CHECK(std::isfinite(equilibrium_moisture(RelativeHumidity::percent(100), Temperature::celsius(20)).percent()));
}

TEST_CASE("A season is air or a moisture content", "[emc]")
{
    CHECK(moisture_in(MoistureContent::percent(7.5)).percent() == 7.5);
    const AirState air{RelativeHumidity::percent(65), Temperature::celsius(22)};
    CHECK(moisture_in(air) == equilibrium_moisture(air.humidity, air.temperature));
}

TEST_CASE("The working of a balance ends in the same number and names its source", "[emc]")
{
    const auto humidity = RelativeHumidity::percent(45);
    const auto temperature = Temperature::celsius(21);
    const Working working = equilibrium_working(shared_facts(), humidity, temperature);
    REQUIRE_FALSE(working.empty());
    CHECK(working.back().value == equilibrium_moisture(humidity, temperature).percent());
    CHECK(working.back().unit == "%");
    CHECK_THAT(working.back().source, ContainsSubstring("eq. 4-5"));
}
