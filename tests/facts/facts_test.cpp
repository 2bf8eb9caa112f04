// Looking things up, and refusing tables that are broken.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include <algorithm>

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("Trade names lead to the wood they mean", "[facts]")
{
    struct Row {
        const char *written, *name;
    };
    for (const Row& row :
         {Row{"white oak", "white oak"}, Row{"Oak, White", "white oak"}, Row{"hard maple", "sugar maple"},
          Row{"yellow poplar", "yellow-poplar"}, Row{"Yellow-Poplar", "yellow-poplar"}, Row{"Oregon pine", "Douglas-fir, coast"},
          Row{"utile", "utile"}, Row{"sipo", "utile"}, Row{"American cherry", "black cherry"}, Row{"red oak", "red oak"},
          Row{"northern red oak", "northern red oak"}}) {
        CAPTURE(row.written);
        const WoodRecord* wood = shared_facts().find_wood(row.written);
        REQUIRE(wood != nullptr);
        CHECK(wood->name == row.name);
    }
}

TEST_CASE("A record is made once and stays where it is", "[facts]")
{
    const Facts facts(embedded_data());
    const WoodRecord* first = facts.find_wood("white oak");
    CHECK(facts.find_wood("teak") != nullptr);
    CHECK(facts.find_wood("oak, white") == first);
}

TEST_CASE("A wood file becomes SI quantities with their places", "[facts]")
{
    const WoodRecord* wood = shared_facts().find_wood("white ash");
    REQUIRE(wood != nullptr);
    CHECK(wood->kind == WoodKind::hardwood);
    CHECK(wood->botanical == "Fraxinus americana");
    REQUIRE(wood->dry.bending_strength);
    CHECK_THAT(wood->dry.bending_strength->value.value(), WithinRel(103e6, 1e-12));
    CHECK(wood->dry.bending_strength->cite.where == "table 5-3a");
    CHECK(wood->dry.bending_strength->cite.provenance == Provenance::retrieved);
    CHECK_THAT(wood->dry.bending_strength->cite.source, ContainsSubstring("Wood Handbook"));
    REQUIRE(wood->dry.modulus);
    CHECK_THAT(wood->dry.modulus->value.value(), WithinRel(12e9, 1e-12));
    REQUIRE(wood->intersection_moisture);
    CHECK(wood->intersection_moisture->value.percent() == 24);
    CHECK(wood->dry_moisture_pct == 12);
    const WoodRecord* merbau = shared_facts().find_wood("merbau");
    REQUIRE(merbau != nullptr);
    CHECK(merbau->dry_moisture_pct == 15);
}

TEST_CASE("Numbers of the tables come in SI", "[facts]")
{
    const Facts& facts = shared_facts();
    CHECK_THAT(facts.number("variation_bending").value, WithinRel(0.16, 1e-12));
    CHECK_THAT(facts.number("sitter_mass").value, WithinRel(127.0, 1e-12));
    CHECK_THAT(facts.number("core_movement_pass").value, WithinRel(1.0e-3, 1e-12));
    CHECK_THAT(facts.number("failure_strain_across").value, WithinRel(0.009, 1e-12));
    CHECK_THAT(facts.number("lift_tension_granted").value, WithinRel(0.4e6, 1e-12));
    CHECK_THAT(facts.number("shelf_load").value, WithinRel(25 * 4.4482216152605 / 0.3048, 1e-12));
    CHECK_THAT(facts.number("movement_along").value, WithinRel(0.00005, 1e-12));
    CHECK_THROWS_AS(facts.number("no such number"), BrokenData);
    CHECK_THROWS_AS(facts.source("no such source"), BrokenData);
}

TEST_CASE("A citation says what was recalled and what was worked out", "[facts]")
{
    CHECK(Citation{"Wood Handbook", "table 13-5", Provenance::memory, ""}.text() == "Wood Handbook, table 13-5 (from memory)");
    CHECK_THAT((Citation{"Wood Handbook", "table 13-5", Provenance::computed, ""}.text()), ContainsSubstring("(computed)"));
    CHECK_THAT((Citation{"engineering estimate", "", Provenance::estimated, ""}.text()), ContainsSubstring("(estimated)"));
    CHECK(word_of(Provenance::retrieved) == "retrieved");
    CHECK(word_of(Provenance::memory) == "memory");
    CHECK(shared_facts().cite("wood-handbook-2010", "eq. 4-5") == shared_facts().source("wood-handbook-2010") + ", eq. 4-5");
}

TEST_CASE("Rooms, glues and finishes are found by any of their names", "[facts]")
{
    const Facts& facts = shared_facts();
    const RoomRecord* room = facts.find_room("Heated, cold winters");
    REQUIRE(room != nullptr);
    const auto* driest = std::get_if<AirState>(&room->driest);
    REQUIRE(driest != nullptr);
    CHECK(driest->humidity.percent() == 25);
    CHECK(driest->temperature.celsius() == 20);
    const RoomRecord* zone = facts.find_room("indoors, dry southwest");
    REQUIRE(zone != nullptr);
    REQUIRE(std::holds_alternative<MoistureContent>(zone->driest));
    CHECK(std::get<MoistureContent>(zone->driest).percent() == 4);

    const GlueRecord* glue = facts.find_glue("white glue");
    REQUIRE(glue != nullptr);
    CHECK(glue->name == "PVA");
    CHECK(glue->creeps);
    REQUIRE(glue->relaxation);
    CHECK_THAT(glue->relaxation->value, WithinRel(0.35, 1e-12));
    REQUIRE(facts.find_glue("epoxy") != nullptr);
    CHECK(facts.find_glue("epoxy")->gap_filling);
    CHECK_FALSE(facts.find_glue("epoxy")->shear);

    const FinishRecord* finish = facts.find_finish("boiled linseed oil");
    REQUIRE(finish != nullptr);
    CHECK(finish->name == "linseed oil");
    REQUIRE(finish->coats.size() == 3);
    REQUIRE(finish->coats[2].day_1);
    CHECK(finish->coats[2].day_1->value == 33);
    CHECK(facts.find_room("moon") == nullptr);
    CHECK(facts.find_finish("moon dust") == nullptr);
}

TEST_CASE("Lists are complete and in order", "[facts]")
{
    const Facts& facts = shared_facts();
    const auto woods = facts.woods();
    CHECK(woods.size() == facts.paths_under("woods").size());
    for (const Listing& entry : woods) CHECK_FALSE(entry.words.empty());
    for (const auto& list : {facts.rooms(), facts.glues(), facts.finishes()}) {
        CHECK_FALSE(list.empty());
        for (const Listing& entry : list) CHECK_FALSE((entry.name.empty() || entry.words.empty()));
    }
    const auto paths = facts.paths_under("woods");
    CHECK(std::is_sorted(paths.begin(), paths.end()));
    CHECK(std::find(paths.begin(), paths.end(), "woods/white-oak.toml") != paths.end());
    CHECK(facts.paths_under("wood").empty());
    CHECK(facts.text("no/such.file") == nullptr);
    REQUIRE(facts.text("sources.toml") != nullptr);
    CHECK(*facts.text("sources.toml") == embedded_data().at("sources.toml"));
}

TEST_CASE("The fingerprint changes with the tables and only with them", "[facts]")
{
    const std::string print = shared_facts().fingerprint();
    CHECK(Facts(embedded_data()).fingerprint() == print);
    DataTexts other = embedded_data();
    other["woods/teak.toml"] += "\n# a remark\n";
    CHECK(Facts(other).fingerprint() != print);
}

TEST_CASE("Adding a wood is adding a file", "[facts]")
{
    const Facts facts(data_with("woods/test-wood.toml", R"(name = "test wood"
kind = "softwood"
aliases = ["wood of tests"]
[movement]
tangential = { printed = "0.00300", unit = "1/%", source = "wood-handbook-2010", where = "nowhere", provenance = "memory" }
)"));
    for (const char* name : {"test wood", "Wood, test", "wood of tests"}) {
        CAPTURE(name);
        const WoodRecord* wood = facts.find_wood(name);
        REQUIRE(wood != nullptr);
        REQUIRE(wood->tangential);
        CHECK(wood->tangential->value.per_point() == 0.003);
        CHECK_FALSE(wood->radial);
    }
    CHECK(shared_facts().find_wood("test wood") == nullptr);
}
