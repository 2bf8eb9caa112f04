// The JSON report, looked at as structure. Against the schema itself: write a report with `check --format json -o REPORT.json` and run
// `python3 -m jsonschema -i REPORT.json data/schema/report-1.schema.json` (Debian: python3-jsonschema).

#include "catch.hpp"
#include "report/sample_content.hpp"

#include "report/json/json.hpp"
#include "report/words/safe_text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>

using namespace jointwright;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys(const Json& object)
{
    std::vector<std::string> names;
    for (const auto& [key, value] : object.items()) names.push_back(key);
    return names;
}

using Names = std::vector<std::string>;

} // namespace

TEST_CASE("Keys stand in the order of the format", "[json]")
{
    const Json report = Json::parse(write_json(sample_content()));
    CHECK(keys(report) == Names{"format", "program", "piece", "room", "parts", "contacts", "verdict", "counts", "findings",
                                "do_first", "assumed", "cautions"});
    CHECK(keys(report["program"]) == Names{"name", "version"});
    CHECK(keys(report["piece"]) == Names{"name", "use", "mass_kg"});
    CHECK(keys(report["room"]) == Names{"moisture_driest_pct", "moisture_dampest_pct", "moisture_at_glue_up_pct"});
    CHECK(keys(report["parts"][0]) == Names{"id", "copies", "length_m", "width_m", "thickness_m", "mass_kg"});
    CHECK(keys(report["contacts"][0]) == Names{"between", "joint", "glue", "area_m2", "grain_angle_deg"});
    CHECK(keys(report["counts"]) == Names{"pass", "warn", "fail", "cannot_tell"});
    CHECK(keys(report["findings"][0]) == Names{"check", "subject", "verdict", "utilisation", "headline", "where", "remedy",
                                               "tried", "values", "working", "sources"});
    CHECK(keys(report["findings"][0]["values"][0]) == Names{"name", "value", "unit"});
    CHECK(keys(report["findings"][0]["working"][0]) == Names{"says", "formula", "with", "value", "unit", "source"});
}

TEST_CASE("Values have the types and the content of the format", "[json]")
{
    const Json report = Json::parse(write_json(sample_content()));
    CHECK(report["format"] == "jointwright-report/1");
    CHECK(report["program"]["name"] == "jointwright");
    CHECK(report["program"]["version"] == "9.8.7");
    CHECK(report["piece"]["mass_kg"] == 12.5);
    CHECK(report["parts"][1]["copies"].is_number_integer());
    CHECK(report["parts"][1]["length_m"] == 0.3048);
    CHECK(report["contacts"][0]["between"] == Json({"slat #1", "long rail #1"}));
    CHECK(report["contacts"][0]["grain_angle_deg"] == 90.0);
    CHECK(report["contacts"][1]["joint"].is_null());
    CHECK(report["contacts"][1]["glue"].is_null());
    CHECK(report["contacts"][1]["grain_angle_deg"].is_null());
    CHECK(report["verdict"] == "fail");
    CHECK(report["counts"] == Json({{"pass", 1}, {"warn", 1}, {"fail", 1}, {"cannot_tell", 1}}));
    CHECK(report["findings"][1]["verdict"] == "cannot-tell");
    CHECK(report["findings"][1]["utilisation"].is_null());
    CHECK(report["findings"][1]["values"] == Json::array());
    CHECK(report["findings"][2]["where"].is_null());
    CHECK(report["findings"][2]["utilisation"] == 1.21);
    CHECK(report["findings"][0]["values"][0]["value"] == 9.1e6);
    CHECK(report["cautions"].size() == 1);
}

TEST_CASE("A verdict of cannot-tell is a warn for the whole piece", "[json]")
{
    ReportContent content = sample_content();
    content.verdict = Verdict::cannot_tell;
    CHECK(Json::parse(write_json(content))["verdict"] == "warn");
}

TEST_CASE("A date stands in the report only when asked for", "[json]")
{
    ReportContent content = sample_content();
    CHECK_FALSE(Json::parse(write_json(content)).contains("date"));
    content.date = "2031-05-06";
    CHECK(Json::parse(write_json(content))["date"] == "2031-05-06");
}

TEST_CASE("Numbers that are not finite are null, everywhere", "[json]")
{
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity()}) {
        ReportContent content = sample_content();
        content.mass_kg = content.moisture_driest_pct = content.parts[0].length_m = content.contacts[0].area_m2 = bad;
        content.contacts[0].grain_angle_deg = bad;
        content.findings[0].utilisation = bad;
        content.findings[0].values[0].value = content.findings[0].working[0].value = bad;
        const std::string bytes = write_json(content);
        CHECK(bytes.find("nan") == std::string::npos);
        CHECK(bytes.find("inf") == std::string::npos);
        const Json report = Json::parse(bytes);
        CHECK(report["piece"]["mass_kg"].is_null());
        CHECK(report["room"]["moisture_driest_pct"].is_null());
        CHECK(report["parts"][0]["length_m"].is_null());
        CHECK(report["contacts"][0]["area_m2"].is_null());
        CHECK(report["contacts"][0]["grain_angle_deg"].is_null());
        CHECK(report["findings"][0]["utilisation"].is_null());
        CHECK(report["findings"][0]["values"][0]["value"].is_null());
        CHECK(report["findings"][0]["working"][0]["value"].is_null());
    }
}

TEST_CASE("Twelve digits are kept, last bits and the sign of zero are not", "[json]")
{
    ReportContent content = sample_content();
    content.mass_kg = 0.1 + 0.2;
    content.parts[0].length_m = -0.0;
    content.parts[0].width_m = 1.23456789012;
    content.parts[0].mass_kg = std::numeric_limits<double>::max();
    const std::string bytes = write_json(content);
    CHECK_THAT(bytes, ContainsSubstring("\"mass_kg\": 0.3\n"));
    CHECK_THAT(bytes, ContainsSubstring("\"length_m\": 0.0,"));
    CHECK_THAT(bytes, ContainsSubstring("\"width_m\": 1.23456789012,"));
    CHECK(Json::parse(bytes)["parts"][0]["mass_kg"].is_number());
}

TEST_CASE("Two spaces of indentation, a line end behind, the same bytes again", "[json]")
{
    const std::string bytes = write_json(sample_content());
    CHECK(bytes.rfind("{\n  \"format\": \"jointwright-report/1\",\n  \"program\": {\n    \"name\"", 0) == 0);
    CHECK(bytes.substr(bytes.size() - 3) == "\n}\n");
    CHECK(bytes == write_json(sample_content()));
}

TEST_CASE("Hostile names come back as they were, broken bytes replaced", "[json][hostile]")
{
    for (const std::string& name : hostile_names()) {
        CAPTURE(name.substr(0, 40));
        const std::string bytes = write_json(hostile_content(name));
        CHECK(bytes.find('\x1b') == std::string::npos);
        const Json report = Json::parse(bytes);
        const auto read = report["piece"]["name"].get<std::string>();
        const bool broken = name.find('\xff') != std::string::npos;
        if (!broken) CHECK(read == name);
        if (broken) CHECK_THAT(read, ContainsSubstring("broken \uFFFD"));
        CHECK(report["findings"].size() == 4);
    }
}

TEST_CASE("Remedies are edits that a program can apply", "[json]")
{
    ReportContent content = sample_content();
    using Table = DesignEdit::Table;
    TriedRemedy remedy{
        "hold the top on the rail by 2 buttons in place of glue",
        {take_away(Table::joint, "top / end rail", "glue"), count_edit(Table::joint, "top / end rail", "buttons.count", 2),
         length_edit(Table::part, "top", "width", millimetres(340)), text_edit(Table::room, "", "shop_temperature", "15 C")},
        0.75,
        {Verdict::cannot_tell, 0.91}};
    content.findings[0].tried = {remedy};
    content.do_first = {{"cross-grain", "top / end rail", remedy.says, remedy.edit, remedy.then},
                        {"sag", "slat", "ask a friend", {}, std::nullopt}};
    const Json report = Json::parse(write_json(content));
    const Json& first = report["do_first"][0];
    CHECK(keys(first) == Names{"check", "subject", "says", "edit", "then"});
    REQUIRE(first["edit"].size() == 4);
    CHECK(first["edit"][0] ==
          Json({{"table", "joint"}, {"id", "top / end rail"}, {"key", "glue"}, {"value", nullptr}, {"unit", nullptr}}));
    CHECK(first["edit"][1]["value"].is_number_integer());
    CHECK(first["edit"][1]["unit"] == "1");
    CHECK(first["edit"][2]["value"] == 0.34);
    CHECK(first["edit"][2]["unit"] == "m");
    CHECK(first["edit"][3]["id"].is_null());
    CHECK(first["edit"][3]["value"] == "15 C");
    CHECK(first["then"]["verdict"] == "warn"); // cannot-tell counts as warn
    CHECK(first["then"]["utilisation"] == 0.91);
    CHECK(report["do_first"][1]["then"].is_null());
    CHECK(report["do_first"][1]["edit"].empty());
    const Json& tried = report["findings"][0]["tried"][0];
    CHECK(keys(tried) == Names{"says", "edit", "share", "then"});
    CHECK(tried["share"] == 0.75);
}
