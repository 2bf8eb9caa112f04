// The quick verbs about glue, joints and fasteners: names of the contract, defaults named, messages.

#include "app/program.hpp"
#include "catch.hpp"

#include <nlohmann/json.hpp>

#include <numbers>

using nlohmann::json;
using program::run;
using program::Said;

namespace {

json told(std::vector<std::string> words)
{
    words.insert(words.end(), {"--format", "json"});
    const Said said = run(words);
    INFO(said.err);
    REQUIRE(said.status == 0);
    json object = json::parse(said.out);
    for (const char* list : {"working", "sources", "assumed"}) CHECK_FALSE(object.at(list).empty());
    for (const json& step : object.at("working")) {
        CAPTURE(step.dump());
        CHECK_FALSE(step.at("source").get<std::string>().empty());
    }
    return object;
}

bool names_default(const json& object, const std::string& words)
{
    for (const json& line : object.at("assumed"))
        if (line.get<std::string>().find(words) != std::string::npos) return true;
    return false;
}

double number_in(const json& object, const char* key) { return object.at(key).get<double>(); }

const std::vector<std::string> kTenon = {"joint",  "--kind",      "tenon",  "--species",  "red oak",
                                         "--rail", "22.2x63.5mm", "--size", "9.5x38x32mm"};

std::vector<std::string> with(std::vector<std::string> words, std::initializer_list<std::string> more)
{
    words.insert(words.end(), more);
    return words;
}

} // namespace

TEST_CASE("glue-line: wood and glue apart, the lower counts", "[app][glue-line]")
{
    // 100 × 20 mm of red oak: 12.3 MPa × 2000 mm² = 24 600 N; PVA 10 MPa 20 000 N; lower × 0.7697, allowable /2.3.
    const json object = told({"glue-line", "--species", "red oak", "--length", "100mm", "--width", "20mm"});
    CHECK_THAT(number_in(object, "area_m2"), WithinRel(0.002, 1e-9));
    CHECK_THAT(number_in(object, "wood_shear_mean_N"), WithinRel(24600.0, 1e-9));
    CHECK_THAT(number_in(object, "glue_shear_mean_N"), WithinRel(20000.0, 1e-9));
    CHECK_THAT(number_in(object, "shear_mean_N"), WithinRel(20000.0, 1e-9));
    CHECK_THAT(number_in(object, "shear_lower_N"), WithinRel(20000 * (1 - 1.645 * 0.14), 1e-9));
    CHECK_THAT(number_in(object, "shear_allowable_N"), WithinRel(20000 * (1 - 1.645 * 0.14) / 2.3, 1e-9));
    CHECK(names_default(object, "PVA"));
    CHECK(names_default(object, "angle 0"));
    CHECK(names_default(object, "same wood"));

    const json crossed =
        told({"glue-line", "--species", "red oak", "--length", "100mm", "--width", "20mm", "--angle", "90", "--glue", "PVA"});
    CHECK_THAT(number_in(crossed, "wood_shear_mean_N"), WithinAbs(8200, 5));
    CHECK(crossed.at("shear_mean_N") == crossed.at("wood_shear_mean_N"));
    CHECK_FALSE(names_default(crossed, "angle 0"));
    CHECK_FALSE(names_default(crossed, "PVA"));
}

TEST_CASE("glue-line: two woods, the weaker rules whichever stands first", "[app][glue-line]")
{
    const json one =
        told({"glue-line", "--species", "red oak", "--species", "eastern white pine", "--length", "4in", "--width", "1in"});
    const json other =
        told({"glue-line", "--species", "eastern white pine", "--species", "red oak", "--length", "4in", "--width", "1in"});
    CHECK(one.at("shear_mean_N") == other.at("shear_mean_N"));
    CHECK(one.at("shear_allowable_N") == other.at("shear_allowable_N"));
    CHECK_FALSE(names_default(one, "same wood"));
    CHECK(run({"glue-line", "--species", "red oak", "--species", "ash", "--species", "teak", "--length", "4in", "--width", "1in"})
              .status == 2);
}

TEST_CASE("glue-line: a glue without a figure leaves the wood to decide", "[app][glue-line]")
{
    const json object =
        told({"glue-line", "--species", "red oak", "--length", "100mm", "--width", "20mm", "--glue", "hide glue"});
    CHECK(object.at("glue_shear_mean_N").is_null());
    CHECK(object.at("shear_mean_N") == object.at("wood_shear_mean_N"));
}

TEST_CASE("joint: the tenon of the 215 tests", "[app][joint]")
{
    const json object = told(kTenon);
    CHECK_THAT(number_in(object, "moment_mean_Nm"), WithinAbs(284.9, 0.1));
    CHECK_THAT(number_in(object, "moment_lower_Nm"), WithinRel(0.75 * number_in(object, "moment_mean_Nm"), 1e-9));
    CHECK_THAT(number_in(object, "withdrawal_mean_N"), WithinAbs(10000, 50));
    CHECK_THAT(number_in(object, "moment_sitting_allowed_Nm"), WithinAbs(107, 0.5));
    CHECK(names_default(object, "post"));
    CHECK(names_default(object, "PVA"));
    CHECK(names_default(object, "clearance"));
    const json loose = told(with(kTenon, {"--clearance", "0.3mm"}));
    CHECK(number_in(loose, "moment_mean_Nm") < number_in(object, "moment_mean_Nm"));
    CHECK(told(with(kTenon, {"--clearance", "0mm"})).at("moment_mean_Nm") == object.at("moment_mean_Nm"));
    CHECK(number_in(told(with(kTenon, {"--post", "eastern white pine"})), "moment_mean_Nm") <
          number_in(object, "moment_mean_Nm"));
}

TEST_CASE("joint: every kind answers, in millimetres and inches", "[app][joint]")
{
    const std::pair<const char*, const char*> kinds[] = {
        {"loose-tenon", "8x40x30mm"},   {"bridle", "8 x 60 x 60 mm"}, {"lap", "2in x 2in"},
        {"dowels", "3/8in x 2in x 2"},  {"housing", "60x8mm"},        {"dovetail", "15mm × 18mm × 4"},
        {"sliding dovetail", "60x9mm"}, {"finger-joint", "10x3.8mm"}, {"keyed-mitre", "3mmx30mmx2"}};
    for (const auto& [kind, size] : kinds) {
        CAPTURE(kind);
        const json object = told({"joint", "--kind", kind, "--species", "white ash", "--rail", "24x64mm", "--size", size});
        for (const char* key : {"moment_mean_Nm", "moment_lower_Nm", "withdrawal_mean_N"}) CHECK(object.at(key).is_number());
        const Said text =
            run({"joint", "--kind", kind, "--species", "white ash", "--rail", "24x64mm", "--size", size, "--working"});
        CHECK(text.status == 0);
        CHECK(program::widest_line(text.out) <= 80);
        CHECK(program::is_utf8(text.out));
    }
}

TEST_CASE("joint: what cannot be is refused with the way out", "[app][joint]")
{
    const auto refused = [](std::vector<std::string> words, const char* says) {
        const Said said = run(words);
        CHECK(said.status == 2);
        CHECK_THAT(said.err, ContainsSubstring(says));
    };
    refused({"joint", "--kind", "tennon", "--species", "red oak", "--rail", "22x63mm", "--size", "9x38x32mm"},
            "fix: --kind tenon");
    refused({"joint", "--kind", "tenon", "--species", "red oak", "--rail", "22x63mm", "--size", "9x38mm"}, "3 sizes are wanted");
    refused({"joint", "--kind", "tenon", "--species", "red oak", "--rail", "22x63mm", "--size", "30x38x32mm"},
            "more than the rail's thickness");
    refused({"joint", "--kind", "dowels", "--species", "red oak", "--rail", "22x63mm", "--size", "10mm x 50mm x 2.5"},
            "whole number");
    refused({"joint", "--kind", "tenon", "--species", "red oak", "--rail", "22x63", "--size", "9x38x32mm"}, "[wrong-unit]");
    refused(
        {"joint", "--kind", "tenon", "--species", "red oak", "--rail", "22x63mm", "--size", "9x38x32mm", "--clearance", "-1mm"},
        "[out-of-range]");
    refused({"joint", "--kind", "tenon", "--species", "red oak", "--rail", "22x63mm", "--size", "9x38x32mm", "--glue", "past"},
            "[unknown-name]");
}

TEST_CASE("fastener: a wood screw by the handbook", "[app][fastener]")
{
    const std::vector<std::string> screw = {"fastener",   "--kind", "wood-screw",    "--species", "red oak",
                                            "--diameter", "5mm",    "--penetration", "40mm"};
    const json object = told(screw);
    CHECK_THAT(number_in(object, "withdrawal_ultimate_N"), WithinRel(108.25 * 0.63 * 0.63 * 5 * 40, 1e-9));
    CHECK_THAT(number_in(object, "withdrawal_allowable_N"), WithinRel(19.65 * 0.63 * 0.63 * 5 * 40, 1e-9));
    CHECK_THAT(number_in(object, "lateral_allowable_N"), WithinRel(0.75 * 44.13 * 25, 1e-9));
    CHECK_THAT(number_in(object, "pilot_m"), WithinAbs(0.9 * 2.0 / 3 * 0.005, 1e-6));
    CHECK(names_default(object, "side grain"));
    const json end = told(with(screw, {"--grain", "end"}));
    CHECK(number_in(end, "withdrawal_allowable_N") == 0);
    CHECK_THAT(number_in(end, "lateral_allowable_N"), WithinRel(number_in(object, "lateral_allowable_N") * 0.6667, 1e-9));
    CHECK_FALSE(names_default(end, "side grain"));
}

TEST_CASE("fastener: every kind answers, an unknown one is refused", "[app][fastener]")
{
    for (const char* kind :
         {"wood-screw", "lag-screw", "nail", "dowel", "pocket-screw", "cross-dowel", "button", "figure-plate"}) {
        CAPTURE(kind);
        const json object =
            told({"fastener", "--kind", kind, "--species", "american beech", "--diameter", "1/4in", "--penetration", "1 1/2 in"});
        for (const char* key : {"withdrawal_ultimate_N", "withdrawal_allowable_N", "pilot_m"}) CHECK(object.at(key).is_number());
        CHECK(object.contains("lateral_allowable_N"));
        CHECK(number_in(object, "withdrawal_allowable_N") < number_in(object, "withdrawal_ultimate_N"));
    }
    const Said said =
        run({"fastener", "--kind", "staple", "--species", "american beech", "--diameter", "1mm", "--penetration", "10mm"});
    CHECK(said.status == 2);
    CHECK_THAT(said.err, ContainsSubstring("[unknown-name]"));
}
