// Open time at the temperature of the shop, and the time that a joint takes.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "bond/glue/open_time.hpp"

using namespace jointwright;
using namespace jointwright::testing;

namespace {

GlueTimes times_of(const char* name, double celsius)
{
    const auto times = glue_times(*shared_facts().find_glue(name), Temperature::celsius(celsius));
    REQUIRE(times);
    return *times;
}

} // namespace

TEST_CASE("At 20 degrees a glue has the times of its table", "[open-time]")
{
    for (const Listing& listing : shared_facts().glues()) {
        CAPTURE(listing.name);
        const GlueRecord* glue = shared_facts().find_glue(listing.name);
        const GlueTimes times = times_of(listing.name.c_str(), 20);
        CHECK_THAT(in_seconds(times.open), WithinRel(glue->open_time->value, 1e-12));
        CHECK_THAT(in_seconds(times.total()), WithinRel(glue->open_time->value + glue->closed_time->value, 1e-12));
    }
}

TEST_CASE("Warmth takes time from glues that set by a reaction and gives it to hot hide glue", "[open-time]")
{
    CHECK_THAT(in_seconds(times_of("epoxy", 30).open) / in_seconds(times_of("epoxy", 20).open), WithinRel(0.5, 1e-12));
    CHECK_THAT(in_seconds(times_of("epoxy", 10).open) / in_seconds(times_of("epoxy", 20).open), WithinRel(2.0, 1e-12));
    CHECK(in_seconds(times_of("PVA", 28).open) < in_seconds(times_of("PVA", 20).open));
    CHECK(in_seconds(times_of("hide glue", 28).open) > in_seconds(times_of("hide glue", 20).open));
    // Outside 10 to 30 degrees nothing is claimed.
    CHECK(times_of("PVA", -5).open == times_of("PVA", 10).open);
    CHECK(times_of("PVA", 45).open == times_of("PVA", 30).open);
}

TEST_CASE("A glue without an open time has none at any temperature", "[open-time]")
{
    CHECK_FALSE(glue_times(GlueRecord{}, Temperature::celsius(20)));
}

TEST_CASE("A larger or a shaped joint takes longer to close", "[open-time]")
{
    const double plain = in_seconds(spreading_time(shared_facts(), square_metres(0.001), false));
    CHECK_THAT(plain, WithinRel(15 + 0.8, 1e-9));
    CHECK(in_seconds(spreading_time(shared_facts(), square_metres(0.002), false)) > plain);
    CHECK(in_seconds(spreading_time(shared_facts(), square_metres(0.001), true)) > plain);
}
