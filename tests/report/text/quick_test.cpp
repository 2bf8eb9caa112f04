#include "catch.hpp"
#include "report/sample_content.hpp"

#include "report/text/quick.hpp"

#include <nlohmann/json.hpp>

#include <limits>

using namespace jointwright;
using Json = nlohmann::ordered_json;

namespace {

QuickAnswer sample_answer()
{
    QuickAnswer answer;
    answer.title = "Sag of a beam of sugar maple";
    answer.units = LengthUnit::inch;
    answer.values = {{"deflection_m", 0.00254, "m", "deflection at mid-span", ""},
                     {"span_ratio", 360.0, "1", "sag over span", "1/360"},
                     {"part", std::string("slat"), "", "part", ""},
                     {"passes", std::vector<std::string>{"oak", "ash"}, "", "", ""}};
    answer.working = sample_finding("sag", "slat", Verdict::pass, 0.5, "").working;
    answer.sources = {"a book of beams"};
    answer.assumed = {"ends pinned"};
    return answer;
}

} // namespace

TEST_CASE("Quick JSON: named values in order, then working, sources, assumed", "[quick]")
{
    const Json json = Json::parse(write_quick_json(sample_answer()));
    std::vector<std::string> keys;
    for (const auto& [key, value] : json.items()) keys.push_back(key);
    CHECK(keys == std::vector<std::string>{"deflection_m", "span_ratio", "part", "passes", "working", "sources", "assumed"});
    CHECK(json["deflection_m"] == 0.00254);
    CHECK(json["part"] == "slat");
    CHECK(json["passes"] == Json({"oak", "ash"}));
    CHECK(json["working"][0]["formula"] == "σ = M/W");
    CHECK(json["assumed"] == Json({"ends pinned"}));
}

TEST_CASE("Quick JSON: table values and missing numbers", "[quick]")
{
    QuickAnswer answer;
    answer.values = {{"emc_pct", std::numeric_limits<double>::quiet_NaN(), "%", "", ""},
                     {"values",
                      std::vector<QuickRow>{{"shear", 1.2e7, "Pa", 12.0, "a book", "memory"},
                                            {"hardness", std::nullopt, "N", std::nullopt, "", ""}},
                      "", "", ""}};
    const Json json = Json::parse(write_quick_json(answer));
    CHECK(json["emc_pct"].is_null());
    CHECK(json["values"][0] == Json({{"name", "shear"},
                                     {"value", 1.2e7},
                                     {"unit", "Pa"},
                                     {"moisture_pct", 12.0},
                                     {"source", "a book"},
                                     {"provenance", "memory"}}));
    CHECK(json["values"][1]["value"].is_null());
    CHECK(json["values"][1]["moisture_pct"].is_null());
    CHECK(json["working"] == Json::array());
    CHECK(json["sources"] == Json::array());
    CHECK(json["assumed"] == Json::array());
    const std::string text = write_quick_text(answer, {});
    CHECK_THAT(text, ContainsSubstring("emc pct: unknown"));
    CHECK_THAT(text, ContainsSubstring("shear: 12 MPa at 12 %; a book, memory"));
    CHECK_THAT(text, ContainsSubstring("hardness: none in the tables"));
}

TEST_CASE("Quick text: title, values in the maker's units, assumptions and sources", "[quick]")
{
    const std::string text = write_quick_text(sample_answer(), {});
    CHECK(text.rfind("Sag of a beam of sugar maple\n\ndeflection at mid-span: 0.1 in\nsag over span: 1/360\npart: slat\npasses: "
                     "oak, ash\n",
                     0) == 0);
    CHECK(text.find("σ = M/W") == std::string::npos);
    CHECK_THAT(text, ContainsSubstring("* ends pinned\n"));
    CHECK_THAT(text, ContainsSubstring("* a book of beams\n"));
    CHECK_THAT(write_quick_text(sample_answer(), {false, true, 80}), ContainsSubstring("σ = M/W"));
}
