// `beam` with several supports, overhangs, taper, notches and a drawing, asked at the command line.

#include "app/program.hpp"
#include "catch.hpp"

#include <nlohmann/json.hpp>

using nlohmann::json;
using program::run;
using program::Said;

namespace {

std::vector<std::string> plank_with(const std::vector<std::string>& more)
{
    std::vector<std::string> words = {"beam", "--span", "2m", "--width", "80mm", "--depth", "40mm", "--modulus", "12 GPa"};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

json numbers(std::vector<std::string> more)
{
    more.insert(more.end(), {"--format", "json"});
    const Said said = run(plank_with(more));
    INFO(said.err);
    REQUIRE(said.status == 0);
    return json::parse(said.out);
}

std::string refusal(const std::vector<std::string>& more)
{
    const Said said = run(plank_with(more));
    CHECK(said.status == 2);
    CHECK(said.out.empty());
    return said.err;
}

} // namespace

TEST_CASE("beam: a middle support takes ten eighths of a bay's load", "[app][beam]")
{
    const json object = numbers({"--uniform", "1 kN/m", "--support", "1 m"});
    const auto reactions = object.at("reactions_N").get<std::vector<double>>();
    REQUIRE(reactions.size() == 3);
    // Slender, yet shear deflection shifts a little to the outer supports: 2 % of a percent at E/G 16.
    CHECK_THAT(reactions[1], WithinRel(1250.0, 0.01));
    CHECK(object.at("supports_m") == json({0.0, 1.0, 2.0}));
    CHECK_THAT(object.at("moment_Nm").get<double>(), WithinRel(-125.0, 0.02));
    CHECK(object.at("bay_m") == 1.0);
}

TEST_CASE("beam: places, overhangs and loads apart from the middle", "[app][beam]")
{
    const json object = numbers({"--load", "600N:500mm", "--load", "300N:2m:2.5m", "--overhang-right", "500mm"});
    const auto reactions = object.at("reactions_N").get<std::vector<double>>();
    // Moments about the left support: 600·0.5 + 300·2.25 = 975 N m.
    CHECK_THAT(reactions[1], WithinRel(975.0 / 2, 1e-9));
    CHECK_THAT(reactions[0], WithinRel(900 - 975.0 / 2, 1e-9));
    CHECK_THAT(numbers({"--load", "100N:-200mm", "--overhang-left", "0.2 m"}).at("reactions_N")[1].get<double>(),
               WithinRel(-10.0, 1e-9));
}

TEST_CASE("beam: a tapered cantilever and a notch keep the names of the numbers", "[app][beam]")
{
    const json object =
        numbers({"--ends", "cantilever", "--taper", "60x20mm", "--load", "50N:2m", "--notch", "top:400mm:30x5mm"});
    for (const char* name : {"deflection_m", "bending_stress_Pa", "shear_stress_Pa", "span_ratio"})
        CHECK(object.at(name).is_number());
    CHECK_THAT(object.at("moment_Nm").get<double>(), WithinRel(-100.0, 1e-9));
    bool warned = false;
    for (const json& line : object.at("assumed")) warned = warned || line.get<std::string>().find("notch") != std::string::npos;
    CHECK(warned); // a cantilever is stretched at its top
}

TEST_CASE("beam: what is wrong with the further options is told in one go", "[app][beam]")
{
    const std::string all = refusal({"--support", "3m", "--load", "12", "--notch", "side:1m:2x3mm", "--taper", "1x2x3mm",
                                     "--ends", "fixed", "--overhang-left", "10mm"});
    CHECK_THAT(all, ContainsSubstring("--support: \"3m\" is not between the ends of the span [out-of-range]"));
    CHECK_THAT(all, ContainsSubstring("--load: \"12\" is not a force and a place"));
    CHECK_THAT(all, ContainsSubstring("--notch: \"side:1m:2x3mm\" is not a side, a place and a size"));
    CHECK_THAT(all, ContainsSubstring("--taper: \"1x2x3mm\" is not 1 or 2 sizes"));
    CHECK_THAT(all, ContainsSubstring("--overhang-left goes with an end that rests"));
    CHECK_THAT(refusal({"--load", "10N:2.1m"}), ContainsSubstring("reaches beyond the beam"));
    CHECK_THAT(refusal({"--point", "10N", "--notch", "top:1m:9x40mm"}), ContainsSubstring("at its shallowest"));
    CHECK_THAT(refusal({"--point", "10N", "--support", "1m", "--support", "1000mm"}), ContainsSubstring("given twice"));
    CHECK_THAT(refusal({"--point", "10N", "--support"}), ContainsSubstring("--support has no value [missing-value]"));
    CHECK_THAT(refusal({"--point", "10N", "--point", "20N"}), ContainsSubstring("[given-twice]"));
}

TEST_CASE("beam draws into a file beside its answer, or prints the drawing alone", "[app][beam]")
{
    const program::Folder folder;
    const std::string file = folder.file("plank.svg");
    const Said plain = run(plank_with({"--point", "300 N"})), drawn = run(plank_with({"--point", "300 N", "--draw", file}));
    CHECK(drawn.status == 0);
    CHECK(drawn.out == plain.out);
    const std::string svg = program::text_of(file);
    CHECK_THAT(svg, ContainsSubstring("<title>Beam 80 mm"));
    CHECK_THAT(svg, ContainsSubstring("150 N m</text>"));
    CHECK(folder.names() == std::vector<std::string>{"plank.svg"});
    CHECK(run(plank_with({"--point", "300 N", "--draw", "-"})).out == svg);

    const Said nowhere = run(plank_with({"--point", "300 N", "--draw", folder.file("no/such/folder.svg")}));
    CHECK(nowhere.status == 2);
    CHECK(nowhere.out.empty());
    CHECK_THAT(nowhere.err, ContainsSubstring("cannot be written"));
}
