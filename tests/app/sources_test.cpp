// sources: what the figures rest on; and what README says of it.

#include "app/program.hpp"
#include "catch.hpp"
#include "facts/shared_facts.hpp"
#include "places.hpp"

#include "facts/source_uses.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <regex>

using namespace jointwright;
using nlohmann::json;
using program::run;
using program::Said;

namespace {

json answer(const std::vector<std::string>& words)
{
    const Said said = run(words);
    INFO(said.err);
    REQUIRE(said.status == 0);
    return json::parse(said.out);
}

/// A row of README's table, "| woods | 4,800 | 61 % | 39 % | 1 % | 0 % |", against the counts: rounded to hundreds and percents.
void check_row(const std::string& readme, const std::string& name, const ProvenanceCounts& counts)
{
    CAPTURE(name, counts.all(), counts.retrieved, counts.memory, counts.computed, counts.estimated);
    const std::size_t from = readme.find("| " + name + " |");
    REQUIRE(from != std::string::npos);
    std::string row = readme.substr(from, readme.find('\n', from) - from);
    row.erase(std::remove(row.begin(), row.end(), ','), row.end());
    std::vector<double> numbers;
    const std::regex number("[0-9]+");
    for (auto it = std::sregex_iterator(row.begin(), row.end(), number); it != std::sregex_iterator(); ++it)
        numbers.push_back(std::stod(it->str()));
    REQUIRE(numbers.size() == 5);
    CHECK_THAT(numbers[0], WithinAbs(counts.all(), std::max(50.0, 0.03 * counts.all())));
    const int parts[] = {counts.retrieved, counts.memory, counts.computed, counts.estimated};
    for (std::size_t i = 0; i < std::size(parts); ++i)
        CHECK_THAT(numbers[i + 1], WithinAbs(100.0 * parts[i] / counts.all(), 1.0));
}

} // namespace

TEST_CASE("Every source counts what hangs on it, and the counts add up", "[app][sources]")
{
    const json list = answer({"sources", "--format", "json"});
    int values = 0, retrieved = 0;
    for (const json& source : list.at("sources")) {
        CAPTURE(source.at("key"));
        CHECK_FALSE(source.at("title").get<std::string>().empty());
        CHECK(source.at("values") == source.at("retrieved").get<int>() + source.at("memory").get<int>() +
                                         source.at("computed").get<int>() + source.at("estimated").get<int>());
        values += source.at("values").get<int>();
        retrieved += source.at("retrieved").get<int>();
    }
    CHECK(list.at("totals").at("values") == values);
    CHECK(list.at("totals").at("retrieved") == retrieved);
    int in_tables = 0;
    for (const json& table : list.at("tables")) in_tables += table.at("values").get<int>();
    CHECK(in_tables == values);
    CHECK(values > 5000);
    for (const json& source : list.at("sources")) CHECK(source.at("uses").size() == source.at("values").get<std::size_t>());
}

TEST_CASE("A source that no figure hangs on says which formula the program has from it", "[app][sources]")
{
    int formulas = 0;
    for (const SourceEntry& source : source_entries(testing::shared_facts())) {
        CAPTURE(source.key);
        CHECK((!source.uses.empty() || !source.formula.empty()));
        CHECK_THAT(source.note, !ContainsSubstring("Edition not recorded"));
        formulas += !source.formula.empty();
    }
    CHECK(formulas >= 6);
    CHECK_THAT(run({"sources"}).out, ContainsSubstring("a formula: torsion of a rectangular bar"));
}

TEST_CASE("What no source was read for can be listed by itself", "[app][sources]")
{
    const json weak = answer({"sources", "--weak", "--format", "json"}), all = answer({"sources", "--format", "json"});
    std::size_t uses = 0;
    for (const json& source : weak.at("sources"))
        for (const json& use : source.at("uses")) {
            CHECK((use.at("provenance") == "memory" || use.at("provenance") == "estimated"));
            ++uses;
        }
    CHECK(uses == all.at("totals").at("memory").get<std::size_t>() + all.at("totals").at("estimated").get<std::size_t>());
    const Said text = run({"sources", "--weak"});
    CHECK_THAT(text.out, ContainsSubstring("bearing_pass_divisor"));
    CHECK_THAT(text.out, ContainsSubstring("estimated: the judgement of this project"));
    CHECK(program::widest_line(text.out) <= 80);
    CHECK(run({"sources", "fpl-462", "--weak"}).status == 2);
}

TEST_CASE("One source lists all that hangs on it, the weak values by name", "[app][sources]")
{
    const json trade = answer({"sources", "timber-trade-din-68100", "--format", "json"});
    CHECK(trade.at("values") == 52);
    CHECK(trade.at("retrieved") == 52);
    CHECK(trade.at("uses").size() == 52);
    const auto teak = std::find_if(trade.at("uses").begin(), trade.at("uses").end(), [](const json& use) {
        return use.at("file") == "woods/teak.toml" && use.at("key") == "movement.tangential.2";
    });
    REQUIRE(teak != trade.at("uses").end());
    const Said text = run({"sources", "madison-curve"});
    CHECK(text.status == 0);
    CHECK_THAT(text.out, ContainsSubstring("Lyman W. Wood"));
    CHECK_THAT(text.out, ContainsSubstring("loads.toml: proof_outdoors_share"));
    CHECK(program::widest_line(text.out) <= 80);
    CHECK(program::widest_line(run({"sources"}).out) <= 80);
    const Said wrong = run({"sources", "madison-curv"});
    CHECK(wrong.status == 2);
    CHECK_THAT(wrong.err, ContainsSubstring("jointwright sources madison-curve"));
}

TEST_CASE("No source stands for several unlike things, and every key that is cited is there", "[app][sources]")
{
    for (const SourceEntry& source : source_entries(testing::shared_facts())) {
        CAPTURE(source.key);
        CHECK(source.key != "us-practice");
        CHECK_FALSE(source.title.empty());
    }
    // The notches of sawn lumber and the furniture that tips once were one source.
    for (const char* key : {"sawn-lumber-notches", "astm-f2057-23"}) {
        const json source = answer({"sources", key, "--format", "json"});
        CHECK(source.at("values").get<int>() >= 2);
    }
}

TEST_CASE("README's account of what was read is the program's own", "[app][sources]")
{
    std::ifstream file(testing::data_folder() + "/../README.md");
    REQUIRE(file);
    const std::string readme{std::istreambuf_iterator<char>(file), {}};
    const std::vector<SourceEntry> sources = source_entries(testing::shared_facts());
    ProvenanceCounts all;
    for (const SourceEntry& source : sources)
        for (const SourceUse& use : source.uses) all.count(use.provenance);
    check_row(readme, "all tables", all);
    check_row(readme, "woods", counts_of_table(sources, "woods"));
    check_row(readme, "places", counts_of_table(sources, "places.toml"));
    CHECK_THAT(readme, ContainsSubstring(std::to_string(testing::shared_facts().woods().size()) + " woods"));
    // "Of the strengths and densities of woods at 12 % moisture more than nine in ten are retrieved."
    CHECK_THAT(readme, ContainsSubstring("more than nine in ten"));
    ProvenanceCounts dry;
    for (const SourceEntry& source : sources)
        for (const SourceUse& use : source.uses)
            if (use.file.starts_with("woods/") && use.key.starts_with("dry.")) dry.count(use.provenance);
    CHECK(dry.all() > 1000);
    CHECK(dry.retrieved > 0.9 * dry.all());
    CHECK(dry.retrieved < 0.96 * dry.all()); // or the sentence undersells it
}
