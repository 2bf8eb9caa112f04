// Strength and stiffness of a wood at a moisture content.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "wood/state.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

WoodState state_of(const WoodRecord& wood, double moisture_pct, const OwnStrength& own = {})
{
    return wood_state(shared_facts(), &wood, own, MoistureContent::percent(moisture_pct));
}
WoodState state_of(const char* name, double moisture_pct, const OwnStrength& own = {})
{
    const WoodRecord* wood = shared_facts().find_wood(name);
    REQUIRE(wood != nullptr);
    return state_of(*wood, moisture_pct, own);
}

Datum<Stress> stress(double mpa) { return {megapascals(mpa), {"test", "table", Provenance::retrieved, ""}}; }
Datum<double> plain(double v) { return {v, {"test", "table", Provenance::retrieved, ""}}; }

} // namespace

TEST_CASE("At the moisture of the dry row the row itself comes back", "[state]")
{
    for (const char* name : {"white oak", "black cherry", "eastern white pine", "merbau"}) {
        CAPTURE(name);
        const WoodRecord* wood = shared_facts().find_wood(name);
        REQUIRE(wood != nullptr);
        const WoodState state = state_of(name, wood->dry_moisture_pct);
        REQUIRE(state.bending_strength);
        CHECK_THAT(state.bending_strength->value.value(), WithinRel(wood->dry.bending_strength->value.value(), 1e-12));
        CHECK_FALSE(state.bending_strength->estimated);
        CHECK_THAT(state.modulus_tabled->value.value(), WithinRel(wood->dry.modulus->value.value(), 1e-12));
        CHECK_THAT(state.modulus_along->value.value(), WithinRel(1.10 * wood->dry.modulus->value.value(), 1e-12));
    }
}

TEST_CASE("At and above the intersection moisture the green row comes back", "[state]")
{
    const WoodRecord* oak = shared_facts().find_wood("white oak");
    for (const double moisture : {25.0, 28.0, 60.0}) {
        const WoodState state = state_of("white oak", moisture);
        CHECK_THAT(state.bending_strength->value.value(), WithinRel(oak->green.bending_strength->value.value(), 1e-12));
        CHECK_THAT(state.compression_along->value.value(), WithinRel(oak->green.compression_along->value.value(), 1e-12));
    }
}

TEST_CASE("Drier wood is stronger and stiffer, but shear and tension across are never raised", "[state][identity]")
{
    for (const char* name : {"white oak", "sugar maple", "Sitka spruce", "black walnut"}) {
        const WoodState usual = state_of(name, 12);
        for (int m = 4; m < 24; ++m) {
            CAPTURE(name, m);
            const WoodState drier = state_of(name, m), wetter = state_of(name, m + 1);
            CHECK(drier.bending_strength->value > wetter.bending_strength->value);
            CHECK(drier.modulus_along->value > wetter.modulus_along->value);
            CHECK(drier.compression_along->value > wetter.compression_along->value);
            CHECK(drier.shear->value <= usual.shear->value);
            CHECK(drier.compression_across->value <= usual.compression_across->value);
            CHECK(drier.tension_across->value <= usual.tension_across->value);
            CHECK(drier.shear->value >= wetter.shear->value);
        }
    }
}

TEST_CASE("Above 12 % tension across is the lower of green and 12 %", "[state]")
{
    const WoodRecord* oak = shared_facts().find_wood("white oak");
    CHECK(state_of("white oak", 12).tension_across->value == oak->dry.tension_across->value);
    CHECK(state_of("white oak", 13).tension_across->value == oak->green.tension_across->value);
    // Where drying weakened the wood, the dry value stays.
    const WoodRecord* cedar = shared_facts().find_wood("western redcedar");
    REQUIRE(cedar->dry.tension_across->value < cedar->green.tension_across->value);
    CHECK(state_of("western redcedar", 18).tension_across->value == cedar->dry.tension_across->value);
}

TEST_CASE("Without a green row strength is lowered by the ratio of the density relations and never raised", "[state]")
{
    WoodRecord wood;
    wood.name = "made up";
    wood.kind = WoodKind::hardwood;
    wood.dry.specific_gravity = plain(0.65);
    wood.dry.bending_strength = stress(100);
    wood.dry.tension_across = stress(5);
    CHECK(state_of(wood, 7).bending_strength->value == megapascals(100));
    CHECK_FALSE(state_of(wood, 7).bending_strength->note.empty());
    const WoodState damp = state_of(wood, 20);
    CHECK(damp.bending_strength->value < megapascals(100));
    CHECK_THAT(damp.bending_strength->note, ContainsSubstring("estimated"));
    // Green over dry by the two relations, each with its own specific gravity.
    const double basic = 0.65 / (1 + 0.265 * 0.65 * (1 - 12.0 / 30));
    const double ratio = 118.7 * std::pow(basic, 1.16) / (171.3 * std::pow(0.65, 1.13));
    CHECK_THAT(state_of(wood, 30).bending_strength->value.value(), WithinRel(100e6 * ratio, 1e-9));
    // Tension across: lower of dry and the estimated green.
    const double tension_ratio = 10.5 * std::pow(basic, 1.37) / (10.1 * std::pow(0.65, 1.30));
    CHECK_THAT(state_of(wood, 20).tension_across->value.value(), WithinRel(5e6 * std::min(1.0, tension_ratio), 1e-9));
}

TEST_CASE("A dry row printed at 15 % is adjusted from 15 %", "[state]")
{
    WoodRecord wood;
    wood.name = "made up";
    wood.dry_moisture_pct = 15;
    wood.dry.bending_strength = stress(100);
    wood.green.bending_strength = stress(80);
    CHECK_THAT(state_of(wood, 15).bending_strength->value.value(), WithinRel(100e6, 1e-12));
    CHECK_THAT(state_of(wood, 25).bending_strength->value.value(), WithinRel(80e6, 1e-12));
    CHECK_THAT(state_of(wood, 20).bending_strength->value.value(), WithinRel(std::sqrt(100e6 * 80e6), 1e-12));
    CHECK_THAT(state_of(wood, 10).bending_strength->value.value(), WithinRel(100e6 * std::sqrt(100.0 / 80), 1e-12));
}

TEST_CASE("What the table lacks is estimated from specific gravity and marked", "[state]")
{
    WoodRecord wood;
    wood.name = "made up";
    wood.kind = WoodKind::softwood;
    wood.dry.specific_gravity = plain(0.45);
    const WoodState state = state_of(wood, 12);
    REQUIRE(state.bending_strength);
    CHECK(state.bending_strength->estimated);
    CHECK_THAT(state.bending_strength->value.value(), WithinRel(170.7e6 * std::pow(0.45, 1.01), 1e-12));
    CHECK_THAT(state.bending_strength->source, ContainsSubstring("table 5-11"));
    CHECK_THAT(state.modulus_tabled->value.value(), WithinRel(20.5e9 * std::pow(0.45, 0.84), 1e-12));
    CHECK_THAT(state.shear->value.value(), WithinRel(16.6e6 * std::pow(0.45, 0.85), 1e-12));
    CHECK_THAT(state.tension_across->value.value(), WithinRel(6.0e6 * std::pow(0.45, 1.11), 1e-12));
    CHECK((state.modulus_along->estimated && state.modulus_tangential->estimated && state.shear_modulus_rt->estimated));

    wood.dry.specific_gravity.reset();
    const WoodState nothing = state_of(wood, 12);
    CHECK_FALSE((nothing.bending_strength || nothing.modulus_along || nothing.shear || nothing.tension_across ||
                 nothing.density || nothing.modulus_tangential));
}

TEST_CASE("Elastic moduli: own ratio, else a relative's, else the median of the kind", "[state]")
{
    const WoodState oak = state_of("red oak", 12);
    const double along = oak.modulus_along->value.value();
    CHECK_THAT(along, WithinRel(13.75e9, 1e-12));
    CHECK_THAT(oak.modulus_tangential->value.value(), WithinRel(0.082 * along, 1e-12));
    CHECK_FALSE(oak.modulus_tangential->estimated);
    CHECK_THAT(oak.shear_modulus_lt->value.value(), WithinRel(0.081 * along, 1e-12));
    CHECK_THAT(oak.shear_modulus_rt->value.value(), WithinRel(0.35 * 0.082 * along, 1e-12));
    CHECK(oak.shear_modulus_rt->estimated);

    // White oak has no G_LT of its own; red oak stands in and is named.
    const WoodState white = state_of("white oak", 12);
    CHECK_THAT(white.shear_modulus_lt->value.value(), WithinRel(0.081 * white.modulus_along->value.value(), 1e-12));
    CHECK(white.shear_modulus_lt->estimated);
    CHECK_THAT(white.shear_modulus_lt->note, ContainsSubstring("red oak"));

    const WoodState spruce = state_of("Sitka spruce", 12);
    CHECK_THAT(spruce.shear_modulus_rt->value.value(), WithinRel(0.003 * spruce.modulus_along->value.value(), 1e-12));

    WoodRecord alone;
    alone.name = "made up";
    alone.kind = WoodKind::softwood;
    alone.dry.modulus = stress(10000);
    const WoodState median = state_of(alone, 12);
    CHECK_THAT(median.modulus_tangential->value.value(), WithinRel(0.055 * 11e9, 1e-12));
    CHECK_THAT(median.shear_modulus_rt->value.value(), WithinRel(0.17 * 0.055 * 11e9, 1e-12));
    CHECK((median.modulus_tangential->estimated && median.modulus_radial->estimated));
    CHECK_THAT(median.modulus_tangential->note, ContainsSubstring("median"));
}

TEST_CASE("Density is wood and water over the volume at that moisture", "[state]")
{
    // White oak: basic specific gravity 0.60; G_12 = 0.60/(1 − 0.265 · 0.60 · (1 − 12/30)).
    const double g12 = 0.60 / (1 - 0.265 * 0.60 * 0.6);
    const WoodState oak = state_of("white oak", 12);
    CHECK_THAT(oak.specific_gravity->value, WithinRel(g12, 1e-12));
    CHECK_THAT(oak.density->value.value(), WithinRel(g12 * 1.12 * 1000, 1e-12));
    const WoodState green = state_of("white oak", 40);
    CHECK_THAT(green.specific_gravity->value, WithinRel(0.60, 1e-12));
    CHECK_THAT(green.density->value.value(), WithinRel(0.60 * 1.40 * 1000, 1e-12));
    for (int m = 0; m < 40; ++m) CHECK(state_of("white oak", m).density->value < state_of("white oak", m + 1).density->value);
}

TEST_CASE("Own test values replace the table's one by one, at any moisture", "[state]")
{
    OwnStrength own;
    own.modulus = gigapascals(12.5);
    own.shear_modulus = gigapascals(0.78);
    own.density = kilograms_per_cubic_metre(680);
    own.bending_strength = megapascals(95);
    own.shear_strength = megapascals(12);
    own.tension_across = megapascals(5);
    for (const double moisture : {6.0, 12.0, 18.0}) {
        const WoodState state = state_of("white oak", moisture, own);
        CHECK(state.modulus_along->value == gigapascals(12.5));
        CHECK_THAT(state.modulus_tabled->value.value(), WithinRel(12.5e9 / 1.10, 1e-12));
        CHECK(state.shear_modulus_lr->value == gigapascals(0.78));
        CHECK(state.shear_modulus_lt->value == gigapascals(0.78));
        CHECK(state.density->value == kilograms_per_cubic_metre(680));
        CHECK(state.bending_strength->value == megapascals(95));
        CHECK(state.shear->value == megapascals(12));
        CHECK(state.tension_across->value == megapascals(5));
        CHECK_FALSE(state.bending_strength->estimated);
        CHECK_THAT(state.modulus_tangential->value.value(), WithinRel(0.072 * 12.5e9, 1e-12));
    }
    OwnStrength one;
    one.bending_strength = megapascals(95);
    CHECK(state_of("white oak", 12, one).shear->value == state_of("white oak", 12).shear->value);
}

TEST_CASE("Own values alone describe a wood; what they leave open stays open", "[state]")
{
    OwnStrength own;
    own.modulus = gigapascals(11);
    const WoodState state = wood_state(shared_facts(), nullptr, own, MoistureContent::percent(10));
    CHECK(state.modulus_along->value == gigapascals(11));
    CHECK(state.modulus_tangential->estimated);
    CHECK_FALSE((state.bending_strength || state.shear || state.tension_across || state.density));
    CHECK_FALSE(wood_state(shared_facts(), nullptr, {}, MoistureContent::percent(10)).modulus_along);
}

TEST_CASE("The note of an adjusted value names both rows' moisture and the equation", "[state]")
{
    const WoodState state = state_of("white ash", 8);
    CHECK_THAT(state.bending_strength->note, ContainsSubstring("5-3"));
    CHECK_THAT(state.bending_strength->note, ContainsSubstring("24"));
    CHECK_THAT(state.bending_strength->source, ContainsSubstring("table 5-3a"));
}

TEST_CASE("The strength of a trade name says whose row it is", "[state]")
{
    for (const double moisture : {8.0, 12.0}) {
        CAPTURE(moisture);
        CHECK_THAT(state_of("white oak", moisture).bending_strength->note, ContainsSubstring("Quercus alba"));
        CHECK_THAT(state_of("red oak", moisture).bending_strength->note, ContainsSubstring("northern red oak"));
    }
}
