// The list verbs: names one a line, entries with sources, and what is said of a name that is not there.

#include "app/program.hpp"
#include "catch.hpp"

#include <nlohmann/json.hpp>

#include <regex>

using nlohmann::json;
using program::run;
using program::Said;

namespace {

const std::vector<std::string> kLists = {"species", "rooms", "glues", "finishes", "checks", "new"};
const std::vector<std::string> kJsonLists = {"species", "rooms", "glues", "finishes", "checks"};

json answer(const std::vector<std::string>& words)
{
    const Said said = run(words);
    INFO(said.err);
    REQUIRE(said.status == 0);
    return json::parse(said.out);
}

json value_named(const json& entry, const std::string& name)
{
    for (const json& value : entry.at("values"))
        if (value.at("name") == name) return value;
    FAIL("no value " << name);
    return {};
}

} // namespace

TEST_CASE("Lists have one entry a line: a name, a gap, a few words", "[app][lists]")
{
    for (const std::string& verb : kLists) {
        CAPTURE(verb);
        const Said said = run({verb});
        CHECK(said.status == 0);
        CHECK(said.err.empty());
        CHECK(program::is_utf8(said.out));
        CHECK(program::widest_line(said.out) <= 80);
        const auto lines = program::lines_of(said.out);
        CHECK(lines.size() >= 2);
        for (const std::string& line : lines) {
            CAPTURE(line);
            CHECK(std::regex_search(line, std::regex("^\\S.*?\\S  +\\S")));
        }
    }
}

TEST_CASE("Every listed name opens its own entry", "[app][lists]")
{
    for (const std::string& verb : kJsonLists) {
        const json list = answer({verb, "--format", "json"});
        const std::size_t step = verb == "species" ? 10 : 1;
        for (std::size_t i = 0; i < list.size(); i += step) {
            const std::string name = list[i].at("name");
            CAPTURE(verb, name);
            CHECK(answer({verb, name, "--format", "json"}).at("name") == name);
            const Said text = run({verb, name});
            CHECK(text.status == 0);
            CHECK(program::widest_line(text.out) <= 80);
        }
    }
}

TEST_CASE("A wood shows every number with unit, moisture, source and provenance", "[app][lists]")
{
    const json oak = answer({"species", "white oak", "--format", "json"});
    CHECK(oak.at("name") == "white oak");
    CHECK_THAT(oak.at("botanical").get<std::string>(), ContainsSubstring("Quercus alba"));
    for (const json& value : oak.at("values")) {
        CAPTURE(value.at("name"));
        CHECK(value.at("value").is_number());
        CHECK_FALSE(value.at("unit").get<std::string>().empty());
        CHECK_FALSE(value.at("source").get<std::string>().empty());
        const std::string provenance = value.at("provenance");
        CHECK((provenance == "retrieved" || provenance == "memory" || provenance == "computed" || provenance == "estimated"));
    }
    // Wood Handbook (GTR-190): table 5-3a, white oak at 12 %, and table 13-5.
    const json shear = value_named(oak, "shear");
    CHECK_THAT(shear.at("value").get<double>(), WithinRel(13.8e6, 1e-9));
    CHECK(shear.at("unit") == "Pa");
    CHECK(shear.at("moisture_pct") == 12);
    CHECK_THAT(shear.at("source").get<std::string>(), ContainsSubstring("table 5-3a"));
    CHECK_THAT(value_named(oak, "movement_tangential").at("value").get<double>(), WithinRel(0.00365, 1e-9));
    CHECK(value_named(oak, "movement_tangential").at("moisture_pct").is_null());
    for (const char* list : {"working", "sources", "assumed"}) CHECK(oak.at(list).is_array());

    const Said text = run({"species", "oak, white"});
    CHECK_THAT(text.out, ContainsSubstring("white oak (Quercus alba"));
    CHECK_THAT(text.out, ContainsSubstring("13.8 MPa"));
    CHECK_THAT(text.out, ContainsSubstring("table 5-3a (retrieved)"));
    CHECK_THAT(text.out, ContainsSubstring("taken from red oak"));
    CHECK_THAT(text.out, ContainsSubstring("dust: sensitizer"));
}

TEST_CASE("What no table gives is said to be missing", "[app][lists]")
{
    const json apple = answer({"species", "applewood", "--format", "json"});
    CHECK(apple.at("name") == "apple");
    CHECK(std::find(apple.at("missing").begin(), apple.at("missing").end(), "shear along the grain") !=
          apple.at("missing").end());
    CHECK_THAT(run({"species", "apple"}).out, ContainsSubstring("no table we hold gives: "));
}

TEST_CASE("Of every wood it is said that dust causes cancer, and what is listed for it, or that nothing is", "[app][lists][dust]")
{
    for (const char* wood : {"white oak", "hinoki", "sheesham", "agba"}) {
        CAPTURE(wood);
        const std::string out = run({"species", wood}).out;
        CHECK_THAT(out, ContainsSubstring("carcinogenic to humans (group 1; IARC"));
        CHECK_THAT(out, !ContainsSubstring("; ;"));
        CHECK_THAT(out, !ContainsSubstring("potency ["));
    }
    CHECK_THAT(run({"species", "hinoki"}).out, ContainsSubstring("nothing is listed for this wood"));
    CHECK_THAT(run({"species", "sheesham"}).out, ContainsSubstring("potency 4 of 4"));
}

TEST_CASE("A name of many meanings is answered with one wood of each place that a shell takes as it stands", "[app][lists]")
{
    const Said oak = run({"species", "oak"});
    CHECK(oak.status == 2);
    CHECK_THAT(oak.err, ContainsSubstring("fix: jointwright species \"white oak\"   # or \"European oak\""));
    CHECK_THAT(run({"species", "rosewood"}).err, ContainsSubstring("\"Indian rosewood\"   # or \"Brazilian rosewood\""));
}

TEST_CASE("A name of several words needs no quotes", "[app][lists]")
{
    CHECK(run({"species", "white", "oak"}).out == run({"species", "white oak"}).out);
}

TEST_CASE("A name that is not there gets the nearest one and the way to the list", "[app][lists]")
{
    struct Row {
        const char* verb;
        const char* typed;
        const char* message;
        const char* fix;
    };
    const Row rows[] = {
        {"species", "whit oak", "no wood is named \"whit oak\" [unknown-wood]", "fix: jointwright species \"white oak\""},
        {"rooms", "garage or shet", "no room is named \"garage or shet\" [unknown-name]",
         "fix: jointwright rooms \"garage or shed\""},
        {"glues", "epxy", "no glue is named \"epxy\" [unknown-name]", "fix: jointwright glues epoxy"},
        {"finishes", "linsed oil", "no finish is named \"linsed oil\" [unknown-name]",
         "fix: jointwright finishes \"linseed oil\""},
        {"checks", "cross-grian", "no check is named \"cross-grian\" [unknown-name]", "fix: jointwright checks cross-grain"},
        {"new", "slated-bench", "no starter design is named \"slated-bench\" [unknown-name]",
         "fix: jointwright new slatted-bench"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.verb);
        const Said said = run({row.verb, row.typed});
        CHECK(said.status == 2);
        CHECK(said.out.empty());
        CHECK_THAT(said.err, ContainsSubstring(std::string("jointwright: error: ") + row.message));
        CHECK_THAT(said.err, ContainsSubstring(row.fix));
        CHECK_THAT(said.err, ContainsSubstring(std::string("\"jointwright ") + row.verb + "\" lists the "));
    }
}

TEST_CASE("Names with broken bytes and control characters stay harmless", "[app][lists]")
{
    const Said said = run({"species", "oak\xff\x1b[31m"});
    CHECK(said.status == 2);
    CHECK(program::is_utf8(said.err));
    CHECK(said.err.find('\x1b') == std::string::npos);
}

TEST_CASE("A starter design reads without error", "[app][lists]")
{
    for (const std::string& line : program::lines_of(run({"new"}).out)) {
        const std::string name = line.substr(0, line.find("  "));
        CAPTURE(name);
        const Said starter = run({"new", name});
        CHECK(starter.status == 0);
        program::Setting setting;
        setting.input = starter.out;
        const Said said = run({"check", "-", "--format", "json"}, setting);
        INFO(said.err);
        CHECK(said.status <= 1);
        CHECK(said.err.empty());
    }
}

TEST_CASE("The help of new tells what each pattern takes", "[lists]")
{
    const std::string help = run({"new", "--help"}).out;
    CHECK_THAT(help, ContainsSubstring("slatted-bench") && ContainsSubstring("length 16 to 72, depth 10 to 24"));
    for (const std::string& line : program::lines_of(run({"new"}).out))
        CHECK_THAT(help, ContainsSubstring(line.substr(0, line.find(' '))));
}
