// The quick verbs: numbers worked out by hand, defaults named, text and JSON alike.

#include "app/program.hpp"
#include "catch.hpp"

#include <nlohmann/json.hpp>

using nlohmann::json;
using program::run;
using program::Said;

namespace {

json answer(std::vector<std::string> words)
{
    words.insert(words.end(), {"--format", "json"});
    const Said said = run(words);
    INFO(said.err);
    REQUIRE(said.status == 0);
    CHECK(said.err.empty());
    json object = json::parse(said.out);
    for (const char* list : {"working", "sources", "assumed"}) CHECK(object.at(list).is_array());
    CHECK_FALSE(object.at("working").empty());
    CHECK_FALSE(object.at("sources").empty());
    return object;
}

bool assumes(const json& object, const std::string& words)
{
    for (const json& line : object.at("assumed"))
        if (line.get<std::string>().find(words) != std::string::npos) return true;
    return false;
}

const std::vector<std::string> kShelf = {"beam",    "--span", "900mm",     "--width",  "250 mm",
                                         "--depth", "19mm",   "--modulus", "13.75 GPa"};

std::vector<std::string> shelf_with(const std::vector<std::string>& more)
{
    std::vector<std::string> words = kShelf;
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

} // namespace

TEST_CASE("emc gives the moisture that the handbook's table prints", "[app][emc]")
{
    // Wood Handbook (GTR-190) table 4-2, 70 F and 50 %: 9.2; one decimal is printed.
    CHECK_THAT(answer({"emc", "--temperature", "70F", "--humidity", "50"}).at("emc_pct").get<double>(), WithinAbs(9.2, 0.05));
    CHECK_THAT(answer({"emc", "--temperature", "21.1 C", "--humidity", "65%"}).at("emc_pct").get<double>(),
               WithinAbs(12.0, 0.05));

    const Said text = run({"emc", "--temperature", "70F", "--humidity", "50"});
    CHECK_THAT(text.out, ContainsSubstring("9.2 %"));
    CHECK(program::widest_line(text.out) <= 80);
}

TEST_CASE("emc keeps to the range of its equation, both ends included", "[app][emc]")
{
    for (const char* temperature : {"-1.1 C", "30F", "100C", "212F"}) {
        CAPTURE(temperature);
        CHECK(run({"emc", "--temperature", temperature, "--humidity", "50"}).status == 0);
    }
    CHECK(run({"emc", "--temperature", "20C", "--humidity", "0"}).status == 0);
    CHECK(run({"emc", "--temperature", "20C", "--humidity", "100"}).status == 0);
    for (const char* temperature : {"-5C", "101C", "20", "300 K"}) {
        CAPTURE(temperature);
        const Said said = run({"emc", "--temperature", temperature, "--humidity", "50"});
        CHECK(said.status == 2);
        CHECK_THAT(said.err, ContainsSubstring("jointwright: error: --temperature: "));
    }
    CHECK(run({"emc", "--temperature", "20C", "--humidity", "101"}).status == 2);
    CHECK(run({"emc", "--temperature", "20C", "--humidity", "-1"}).status == 2);
}

TEST_CASE("movement inside 6 to 14 % is width times coefficient times points", "[app][movement]")
{
    // Wood Handbook table 13-5: red oak, tangential 0.00369. 0.305 × 0.00369 × 5 = 0.00562725.
    const json object = answer({"movement", "--species", "red oak", "--width", "305mm", "--from", "9", "--to", "14"});
    CHECK_THAT(object.at("coefficient_per_pct").get<double>(), WithinRel(0.00369, 1e-9));
    CHECK_THAT(object.at("change_m").get<double>(), WithinRel(0.00562725, 1e-9));
    CHECK_THAT(object.at("final_width_m").get<double>(), WithinRel(0.31062725, 1e-9));
    CHECK(assumes(object, "flat"));

    const json quarter =
        answer({"movement", "--species", "Oak, red", "--width", "305mm", "--rings", "quarter", "--from", "9", "--to", "14"});
    CHECK_THAT(quarter.at("coefficient_per_pct").get<double>(), WithinRel(0.00158, 1e-9));
    CHECK_FALSE(assumes(quarter, "flat"));
    // At 45° the squares of sine and cosine are both one half.
    const json rift =
        answer({"movement", "--species", "red oak", "--width", "305mm", "--rings", "45", "--from", "9", "--to", "14"});
    CHECK_THAT(rift.at("coefficient_per_pct").get<double>(), WithinRel((0.00369 + 0.00158) / 2, 1e-9));
}

TEST_CASE("movement outside 6 to 14 % follows the wider law and stops at fibre saturation", "[app][movement]")
{
    // S' = 3000/(1/0.00369 + 20) = 10.3092; (14.1 − 9)/(3000/10.3092 − 30 + 9) = 0.0188887.
    const json object = answer({"movement", "--species", "red oak", "--width", "1 m", "--from", "9", "--to", "14.1"});
    CHECK_THAT(object.at("change_m").get<double>(), WithinAbs(0.0188887, 1e-6));

    const json wet = answer({"movement", "--species", "red oak", "--width", "1 m", "--from", "9", "--to", "60"});
    const json saturated = answer({"movement", "--species", "red oak", "--width", "1 m", "--from", "9", "--to", "30"});
    CHECK(wet.at("change_m") == saturated.at("change_m"));
    CHECK(assumes(wet, "fibre saturation"));
    CHECK_FALSE(assumes(saturated, "fibre saturation"));
}

TEST_CASE("movement answers in the units that were typed", "[app][movement]")
{
    const Said inches = run({"movement", "--species", "red oak", "--width", "12\"", "--from", "12", "--to", "8"});
    CHECK(inches.status == 0);
    CHECK_THAT(inches.out, ContainsSubstring("0.177 in narrower"));
    const Said metric = run({"movement", "--species", "red oak", "--width", "300 mm", "--from", "12", "--to", "8"});
    CHECK_THAT(metric.out, ContainsSubstring("4.43 mm narrower"));
    const Said chosen =
        run({"movement", "--species", "red oak", "--width", "300 mm", "--from", "12", "--to", "8", "--units", "in"});
    CHECK_THAT(chosen.out, ContainsSubstring("0.174 in narrower"));
    for (const Said& said : {inches, metric, chosen}) {
        CHECK(program::widest_line(said.out) <= 80);
        CHECK_THAT(said.out, ContainsSubstring("flat"));
    }
}

TEST_CASE("beam: a shelf under a uniform load", "[app][beam]")
{
    // I = 250·19³/12 = 142 896 mm⁴. Bending 5·294·900³/(384·13750·142896) = 1.4203 mm; shear 294·900/8/(859.4·3958.3) = 0.0097 mm.
    // M = 294·900/8 = 33.075 N m, σ = 6M/(250·19²) = 2.19889 MPa; τ = 1.5·147/(250·19) = 0.046421 MPa.
    const json object = answer(shelf_with({"--uniform", "326.6666667 N/m"}));
    CHECK_THAT(object.at("deflection_m").get<double>(), WithinAbs(1.43006e-3, 1e-7));
    CHECK_THAT(object.at("bending_stress_Pa").get<double>(), WithinRel(2.19889e6, 1e-5));
    CHECK_THAT(object.at("shear_stress_Pa").get<double>(), WithinRel(4.6421e4, 1e-4));
    CHECK_THAT(object.at("span_ratio").get<double>(), WithinAbs(629.3, 0.1));
    CHECK(assumes(object, "pinned"));
    CHECK(assumes(object, "own weight"));
    CHECK(assumes(object, "sixteenth"));
}

TEST_CASE("beam: a load at mid-span, ends free and built in", "[app][beam]")
{
    // EI = 13750·142895.83 N mm²: 294·900³/(48 EI) = 2.27254 mm, built in a quarter of it; shear 294·900/4/(859.375·3958.33) = 0.019447 mm.
    const json pinned = answer(shelf_with({"--point", "294 N"}));
    CHECK_THAT(pinned.at("deflection_m").get<double>(), WithinAbs((2.27254 + 0.019447) * 1e-3, 1e-7));
    const json fixed = answer(shelf_with({"--point", "294 N", "--ends", "fixed"}));
    CHECK_THAT(fixed.at("deflection_m").get<double>(), WithinAbs((0.568135 + 0.019447) * 1e-3, 1e-7));
    CHECK_THAT(fixed.at("bending_stress_Pa").get<double>(), WithinRel(pinned.at("bending_stress_Pa").get<double>() / 2, 1e-9));
    CHECK_FALSE(assumes(fixed, "pinned"));
}

TEST_CASE("beam: loads given together add up, and a patch lies between a point and a uniform load", "[app][beam]")
{
    const double point = answer(shelf_with({"--point", "100 N"})).at("deflection_m");
    const double uniform = answer(shelf_with({"--uniform", "200 N/m"})).at("deflection_m");
    const double both = answer(shelf_with({"--point", "100 N", "--uniform", "200 N/m"})).at("deflection_m");
    CHECK_THAT(both, WithinRel(point + uniform, 1e-9));
    const double patch = answer(shelf_with({"--patch", "100 N:100 mm"})).at("deflection_m");
    CHECK(patch < point);
    const double whole = answer(shelf_with({"--patch", "180 N:900 mm"})).at("deflection_m");
    CHECK_THAT(whole, WithinRel(uniform, 1e-9));
}

TEST_CASE("beam takes the modulus of a wood from the tables, 1.10 times", "[app][beam]")
{
    // Wood Handbook table 5-3a: white oak 12.3 GPa at 12 %; free of shear 13.53 GPa.
    const std::vector<std::string> common = {"beam", "--span", "3 m", "--width", "100mm", "--depth", "20mm", "--point", "10 N"};
    auto named = common, given = common;
    named.insert(named.end(), {"--species", "white oak"});
    given.insert(given.end(), {"--modulus", "13.53 GPa"});
    const json by_name = answer(named);
    // At a span of 150 depths the shear part is under 0.1 %.
    CHECK_THAT(by_name.at("deflection_m").get<double>(), WithinRel(answer(given).at("deflection_m").get<double>(), 1e-3));
    CHECK(assumes(by_name, "moisture 12 %"));

    named.insert(named.end(), {"--moisture", "20"});
    const json damp = answer(named);
    CHECK(damp.at("deflection_m").get<double>() > by_name.at("deflection_m").get<double>());
    CHECK_FALSE(assumes(damp, "moisture 12 %"));
}

TEST_CASE("beam needs a load and one material", "[app][beam]")
{
    const Said nothing = run(kShelf);
    CHECK(nothing.status == 2);
    CHECK_THAT(nothing.err, ContainsSubstring("a load is needed: --point, --uniform or --patch [missing-option]"));
    const Said both = run(shelf_with({"--species", "white oak", "--point", "1 N"}));
    CHECK(both.status == 2);
    CHECK_THAT(both.err, ContainsSubstring("--species and --modulus are both given"));
}

TEST_CASE("The working is shown when asked for", "[app]")
{
    const auto plain = run(shelf_with({"--point", "294 N"})), worked = run(shelf_with({"--point", "294 N", "--working"}));
    CHECK(worked.out.size() > plain.out.size());
    CHECK_THAT(worked.out, ContainsSubstring("Wood Handbook"));
    CHECK(program::widest_line(worked.out) <= 80);
    CHECK(program::is_utf8(worked.out));
}
