// `size` at the command line.

#include "app/designs.hpp"
#include "app/program.hpp"
#include "catch.hpp"
#include "places.hpp"

#include <nlohmann/json.hpp>

using nlohmann::json;
using program::run;
using program::Said;

namespace {

const std::string kBench = jointwright::testing::data_folder() + "/designs/boot-bench.toml";
const std::string kCase = jointwright::testing::data_folder() + "/designs/wide-shelf-bookcase.toml";

json sized(const std::string& design, const std::string& part, const std::string& vary)
{
    const Said said = run({"size", design, "--part", part, "--vary", vary, "--format", "json"});
    INFO(said.err);
    REQUIRE(said.status == 0);
    return json::parse(said.out);
}

} // namespace

TEST_CASE("size answers with the names of the contract", "[app][size]")
{
    const json rail = sized(kBench, "long rail", "thickness");
    CHECK(rail.at("part") == "long rail");
    CHECK(rail.at("vary") == "thickness");
    const double edge = rail.at("passes_at_m"), drawn = rail.at("as_drawn_m");
    CHECK_THAT(drawn, WithinAbs(0.875 * 0.0254, 1e-9));
    CHECK(edge < drawn);
    CHECK(rail.at("size_passing_m").get<double>() >= edge);
    CHECK(rail.at("size_failing_m").get<double>() < edge);
    CHECK(rail.at("governing_check").is_string());
    CHECK(rail.at("utilisation_passing").get<double>() <= 1);
    CHECK(!rail.at("working").empty());
    CHECK(!rail.at("sources").empty());
    CHECK(!rail.at("assumed").empty());

    const json woods = sized(kCase, "shelf", "species");
    REQUIRE(woods.at("passes").is_array());
    CHECK(!woods.at("passes").empty());
    CHECK(woods.at("governing_check").is_string());
    CHECK(woods.count("passes_at_m") == 0);
}

TEST_CASE("size reads a design from standard input and answers in text no wider than a page", "[app][size]")
{
    program::Setting setting;
    setting.input = program::text_of(kCase);
    const Said piped = run({"size", "-", "--part", "shelf", "--vary", "thickness"}, setting);
    CHECK(piped.status == 0);
    CHECK_THAT(piped.out, ContainsSubstring("How thin may shelf be?"));
    // It sags 2.007 times its limit at 18 mm: times the cube root of that is 22.7, and the shelf's own weight grows with it.
    CHECK_THAT(piped.out, ContainsSubstring("passes at: 23 mm"));
    CHECK_THAT(piped.out, ContainsSubstring("no longer at: 22.5 mm"));
    CHECK(program::widest_line(piped.out) <= 80);
    const Said inches = run({"size", kCase, "--part", "shelf", "--vary", "thickness", "--units", "in"});
    CHECK_THAT(inches.out, ContainsSubstring("passes at: 29/32 in"));
}

TEST_CASE("size tells what is wrong with its command line or its design", "[app][size]")
{
    const Said nothing = run({"size"});
    CHECK(nothing.status == 2);
    for (const char* words : {"needs a design file", "--part is needed", "--vary is needed"})
        CHECK_THAT(nothing.err, ContainsSubstring(words));
    const Said part = run({"size", kBench, "--part", "long rale", "--vary", "width"});
    CHECK(part.status == 2);
    CHECK_THAT(part.err, ContainsSubstring("no part has the id \"long rale\" [unknown-part]"));
    CHECK_THAT(part.err, ContainsSubstring("--part \"long rail\""));
    CHECK_THAT(run({"size", kBench, "--part", "slat #3", "--vary", "width"}).err, ContainsSubstring("all copies of a part"));
    const Said vary = run({"size", kBench, "--part", "slat", "--vary", "colour"});
    CHECK(vary.status == 2);
    CHECK_THAT(vary.err, ContainsSubstring("is not one of thickness, width, length, species"));
    program::Setting broken;
    broken.input = "[piece]\n";
    const Said design = run({"size", "-", "--part", "slat", "--vary", "width"}, broken);
    CHECK(design.status == 2);
    CHECK_THAT(design.err, ContainsSubstring("<stdin>"));
}

TEST_CASE("size ends with status 1 when nothing passes, and says what is in the way", "[app][size]")
{
    std::string text = program::text_of(kCase);
    text += "\n[limits]\nsag = \"0.02 mm\"\n";
    program::Setting setting;
    setting.input = text;
    const Said said = run({"size", "-", "--part", "shelf", "--vary", "width", "--format", "json"}, setting);
    CHECK(said.status == 1);
    const json answer = json::parse(said.out);
    CHECK(answer.at("passes_at_m").is_null());
    CHECK(answer.at("governing_check") == "sag");
    CHECK(!answer.at("in_the_way").empty());
}
