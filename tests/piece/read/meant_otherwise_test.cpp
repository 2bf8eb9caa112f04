// Numbers that cannot be meant, each with what was meant in the fix.

#include "app/program.hpp"
#include "catch.hpp"
#include "checks/checked.hpp"
#include "places.hpp"

#include <fstream>
#include <iterator>

using namespace checked;

namespace {

/// The first design in README, as a reader would copy it.
std::string readme_design()
{
    std::ifstream file(testing::data_folder() + "/../README.md");
    const std::string readme{std::istreambuf_iterator<char>(file), {}};
    const std::size_t from = readme.find("```toml\n") + 8;
    return readme.substr(from, readme.find("```", from) - from);
}

std::string said_of(const std::string& from, const std::string& to)
{
    std::string text = readme_design();
    text.replace(text.find(from), from.size(), to);
    const program::Folder folder;
    const program::Said said = program::run({"check", folder.write("stool.toml", text), "--remedies", "none"});
    CHECK(said.status == 2);
    return said.err;
}

} // namespace

TEST_CASE("The design that README shows checks without a warning", "[readme]")
{
    const ReportContent content = content_of(readme_design());
    INFO(list_of(content.findings));
    CHECK(content.verdict == Verdict::pass);
}

TEST_CASE("A share of one where percent is wanted is refused with the percent", "[reading]")
{
    CHECK_THAT(said_of("moisture_at_glue_up = 9", "moisture_at_glue_up = 0.09"),
               ContainsSubstring("fix: moisture_at_glue_up = 9"));
    const std::string air = said_of("air = \"bathroom, ventilated\"",
                                    "driest = { humidity = 0.35, temperature = \"20 C\" }\ndampest = { moisture = 12 }");
    CHECK_THAT(air, ContainsSubstring("humidity is 0.35, but percent is wanted here"));
    CHECK_THAT(air, ContainsSubstring("humidity = 35"));
    const program::Said emc = program::run({"emc", "--humidity", "0.35", "--temperature", "20C"});
    CHECK(emc.status == 2);
    CHECK_THAT(emc.err, ContainsSubstring("fix: --humidity 35"));
}

TEST_CASE("Limits that limit nothing, people who are none and sizes of dust are refused", "[reading]")
{
    CHECK_THAT(said_of("[room]", "[limits]\nsag = 300\n\n[room]"), ContainsSubstring("fix: sag = \"span/300\""));
    CHECK_THAT(said_of("[room]", "[limits]\nsag = \"span/3\"\n\n[room]"), ContainsSubstring("span/30 at most"));
    CHECK_THAT(said_of("[room]", "[limits]\nsitter = \"1 g\"\n\n[room]"), ContainsSubstring("from 15 to 500 kg"));
    CHECK_THAT(said_of("thickness = 18", "thickness = 0.001"), ContainsSubstring("a size is at least"));
    const program::Said beam =
        program::run({"beam", "--span", "1e-6m", "--width", "280mm", "--depth", "18mm", "--modulus", "9GPa", "--point", "100N"});
    CHECK(beam.status == 2);
}

TEST_CASE("People put on the legs of a stool are asked about", "[stands]")
{
    std::string text = readme_design();
    const std::string carries = "carries = [\"slat\"]";
    text.replace(text.find(carries), carries.size(), "carries = [\"leg\"]");
    const auto content = content_of(text);
    const Finding& f = finding_of(content.findings, "stands", "leg");
    CHECK(f.verdict == Verdict::warn);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("carries = [\"slat\"]"));
    CHECK(content.verdict != Verdict::pass);
}

TEST_CASE("Pegs that are thicker than their tenon bears are refused", "[reading]")
{
    const std::string tenon = "tenon   = { length = 20, width = 50, thickness = 8 }";
    CHECK_THAT(said_of(tenon, tenon + "\npegs = { diameter = 100, count = 5 }"),
               ContainsSubstring("5 pegs of 100 mm will not fit"));
    CHECK_THAT(said_of(tenon, tenon + "\npegs = { diameter = 26, count = 1 }"), ContainsSubstring("a peg of 26 mm will not fit"));
}

TEST_CASE("A gap that no glue fills leaves a line that holds nothing, and no share of it", "[glue-line]")
{
    std::string text = readme_design();
    const std::string tenon = "tenon   = { length = 20, width = 50, thickness = 8 }";
    text.replace(text.find(tenon), tenon.size(), tenon + "\nclearance = 3");
    const auto content = content_of(text);
    const Finding& f = finding_of(content.findings, "glue-line", "long rail / leg");
    CHECK(f.verdict == Verdict::fail);
    CHECK_FALSE(f.utilisation);
    CHECK_THAT(f.headline, ContainsSubstring("holds nothing"));
    for (const Finding& any : content.findings) CHECK(any.headline.find("inf %") == std::string::npos);
}
