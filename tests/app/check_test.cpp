// check and expand as a whole: exit statuses, formats, standard input, the same bytes again.

#include "app/designs.hpp"
#include "app/program.hpp"
#include "catch.hpp"

#include <nlohmann/json.hpp>

#include <regex>

using nlohmann::json;
using program::Folder;
using program::run;
using program::Said;

namespace {

const std::string kPlank = designs::kPlank;
const std::string kSplitting = kPlank + designs::kGluedBatten;

} // namespace

TEST_CASE("A piece with nothing to fail ends with 0", "[app][check]")
{
    const Folder folder;
    const Said said = run({"check", folder.write("plank.toml", kPlank)});
    INFO(said.err);
    CHECK(said.status == 0);
    CHECK(said.err.empty());
    CHECK_THAT(said.out, ContainsSubstring("Plank"));
    CHECK(program::widest_line(said.out) <= 80);
    CHECK(said.out.find('\x1b') == std::string::npos);
}

TEST_CASE("A plank with a batten glued across it fails and ends with 1", "[app][check]")
{
    const Folder folder;
    const std::string design = folder.write("door.toml", kSplitting);
    const Said said = run({"check", design, "--format", "json"});
    INFO(said.err);
    CHECK(said.status == 1);
    const json report = json::parse(said.out);
    CHECK(report.at("verdict") == "fail");
    CHECK(report.at("findings").at(0).at("check") == "cross-grain");
    CHECK(report.at("findings").at(0).at("verdict") == "fail");
    CHECK(run({"check", design}).status == 1);
}

TEST_CASE("Option --strict turns warns and doubts into 1", "[app][check]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank);
    const json counts = json::parse(run({"check", design, "--format", "json"}).out).at("counts");
    const bool doubts = counts.at("warn").get<int>() + counts.at("cannot_tell").get<int>() > 0;
    CHECK(run({"check", design, "--strict"}).status == (doubts ? 1 : 0));
}

TEST_CASE("The design may come from standard input", "[app][check]")
{
    program::Setting setting;
    setting.input = kPlank;
    const Folder folder;
    CHECK(run({"check", "-"}, setting).out == run({"check", folder.write("plank.toml", kPlank)}).out);

    setting.input = "[piece]\nname = \"x\"\nunits = \"yard\"\n";
    const Said said = run({"check", "-"}, setting);
    CHECK(said.status == 2);
    CHECK(said.err.rfind("<stdin>:", 0) == 0);
}

TEST_CASE("The same design gives the same bytes", "[app][check]")
{
    const Folder folder;
    const std::string design = folder.write("door.toml", kSplitting);
    for (const char* format : {"text", "json", "html", "markdown"}) {
        CAPTURE(format);
        const Said once = run({"check", design, "--format", format, "--working"});
        CHECK_FALSE(once.out.empty());
        CHECK(program::is_utf8(once.out));
        CHECK(run({"check", design, "--format", format, "--working"}).out == once.out);
    }
}

TEST_CASE("Units, working, colour and date are options of the report", "[app][check]")
{
    const Folder folder;
    const std::string design = folder.write("door.toml", kSplitting);
    const std::string plain = run({"check", design}).out;
    CHECK_THAT(plain, ContainsSubstring("mm"));
    CHECK_THAT(run({"check", design, "--units", "in"}).out, ContainsSubstring(" in"));
    CHECK(run({"check", design, "--working"}).out.size() > plain.size());
    CHECK(run({"check", design, "--color", "always"}).out.find("\x1b[") != std::string::npos);
    CHECK(run({"check", design, "--color", "never"}).out == plain);
    // ISO: four digits, two, two.
    const std::string dated = run({"check", design, "--date"}).out;
    CHECK(dated != plain);
    CHECK(std::regex_search(dated, std::regex("20[0-9]{2}-[01][0-9]-[0-3][0-9]")));
}

TEST_CASE("Remedies are tried unless the command line says not to", "[app][check][remedies]")
{
    const Folder folder;
    const std::string design = folder.write("door.toml", kSplitting);
    const json tried = json::parse(run({"check", design, "--format", "json"}).out),
               none = json::parse(run({"check", design, "--format", "json", "--remedies", "none"}).out);
    const json &first = tried.at("do_first").at(0), &plain = none.at("do_first").at(0);
    CHECK(first.at("subject") == "plank / batten");
    CHECK(first.at("then").at("verdict") == "warn"); // the plank cups, as it does when drawn
    REQUIRE_FALSE(first.at("edit").empty());
    CHECK(first.at("edit").at(0).at("table") == "joint");
    CHECK(first.at("edit").at(0).at("id") == "plank / batten");
    CHECK(plain.at("then").is_null());
    CHECK(plain.at("edit").empty());
    CHECK(none.at("counts") == tried.at("counts")); // the piece as drawn is judged alike
    CHECK(run({"check", design, "--remedies", "maybe"}).status == 2);
}

TEST_CASE("Faults of a design are told with file, line and column, all in one go", "[app][check]")
{
    const Folder folder;
    std::string text = kPlank;
    text.replace(text.find("red oak"), 7, "red ook");
    text.replace(text.find("thickness = 20"), 14, "thickness = -2");
    const std::string design = folder.write("plank.toml", text);
    for (const char* verb : {"check", "expand"}) {
        const Said said = run({verb, design});
        CHECK(said.status == 2);
        CHECK(said.out.empty());
        CHECK_THAT(said.err, ContainsSubstring(design + ":13:11: error: no wood is named \"red ook\" [unknown-wood]"));
        CHECK_THAT(said.err, ContainsSubstring("[out-of-range]"));
    }
}

TEST_CASE("expand prints a design with the same verdicts", "[app][check]")
{
    const Folder folder;
    const std::string design = folder.write("door.toml", kSplitting);
    const Said expanded = run({"expand", design});
    INFO(expanded.err);
    CHECK(expanded.status == 0);
    const json before = json::parse(run({"check", design, "--format", "json"}).out);
    const Said again = run({"check", folder.write("expanded.toml", expanded.out), "--format", "json"});
    INFO(again.err);
    REQUIRE(again.status == 1);
    CHECK(json::parse(again.out).at("counts") == before.at("counts"));
}
