// The command line itself: verbs, options, help, and the words for mistakes.

#include "app/program.hpp"
#include "catch.hpp"

using program::run;
using program::Said;

namespace {

const std::vector<std::string> kVerbs = {"check",    "movement", "emc", "beam",   "species",   "rooms", "glues",
                                         "finishes", "checks",   "new", "expand", "glue-line", "joint", "fastener"};

void says_wrong(const Said& said, const std::string& first_line)
{
    CHECK(said.status == 2);
    CHECK(said.out.empty());
    CHECK_THAT(said.err, ContainsSubstring(first_line));
    CHECK(said.err.rfind("jointwright: error: ", 0) == 0);
}

} // namespace

TEST_CASE("The program says its name and version", "[app]")
{
    const Said said = run({"--version"});
    CHECK(said.status == 0);
    CHECK(said.out == std::string("jointwright ") + JOINTWRIGHT_VERSION + "\n");
    CHECK(said.err.empty());
}

TEST_CASE("Help lists every verb and goes to standard output", "[app]")
{
    const Said said = run({"--help"});
    CHECK(said.status == 0);
    CHECK(said.err.empty());
    CHECK(program::widest_line(said.out) <= 80);
    for (const std::string& verb : kVerbs) CHECK_THAT(said.out, ContainsSubstring("\n  " + verb + " "));
}

TEST_CASE("Without a verb the usage goes to standard error", "[app]")
{
    const Said said = run({});
    CHECK(said.status == 2);
    CHECK(said.out.empty());
    CHECK_THAT(said.err, ContainsSubstring("usage: jointwright VERB"));
}

TEST_CASE("Each verb has a help of its own", "[app]")
{
    for (const std::string& verb : kVerbs) {
        CAPTURE(verb);
        const Said said = run({verb, "--help"});
        CHECK(said.status == 0);
        CHECK(said.err.empty());
        CHECK(said.out.rfind("usage: jointwright " + verb + " ", 0) == 0);
        CHECK(program::widest_line(said.out) <= 80);
        CHECK_THAT(said.out, ContainsSubstring("--data DIR"));
    }
}

TEST_CASE("A misspelt verb gets the nearest one", "[app]")
{
    const Said said = run({"chekc", "bench.toml"});
    says_wrong(said, "jointwright: error: there is no verb \"chekc\" [unknown-verb]");
    CHECK_THAT(said.err, ContainsSubstring("fix: jointwright check"));
}

TEST_CASE("A design without a verb gets the verb", "[app]")
{
    const Said said = run({"my bench.toml"});
    says_wrong(said, "[unknown-verb]");
    CHECK_THAT(said.err, ContainsSubstring("fix: jointwright check \"my bench.toml\""));
}

TEST_CASE("Options that are wrong are told with the nearest right one", "[app]")
{
    const Said unknown = run({"movement", "--species", "red oak", "--widht", "5in"});
    says_wrong(unknown, "movement has no option \"--widht\" [unknown-option]");
    CHECK_THAT(unknown.err, ContainsSubstring("fix: --width"));

    says_wrong(run({"emc", "--humidity", "40", "--temperature"}), "--temperature has no value [missing-value]");
    says_wrong(run({"emc", "--humidity", "--temperature", "20C"}), "--humidity has no value [missing-value]");
    says_wrong(run({"emc", "--humidity", "40", "--humidity", "50"}), "--humidity is given more than once [given-twice]");
    says_wrong(run({"emc", "40"}), "emc does not take \"40\" [unexpected-argument]");
    says_wrong(run({"check", "a.toml", "b.toml"}), "check does not take \"b.toml\" [unexpected-argument]");
    says_wrong(run({"check"}), "check needs a design file [missing-argument]");

    const Said format = run({"check", "a.toml", "--format", "htm"});
    says_wrong(format, "--format: \"htm\" is not one of text, json, html, markdown [unknown-name]");
    CHECK_THAT(format.err, ContainsSubstring("fix: --format html"));
    says_wrong(run({"check", "a.toml", "--units", "cm"}), "--units: \"cm\" is not one of in, mm");
    says_wrong(run({"check", "a.toml", "--color", "yes"}), "--color: \"yes\" is not one of auto, always, never");
}

TEST_CASE("Everything wrong with the values is told in one go", "[app]")
{
    const Said said = run({"movement", "--species", "red ook", "--width", "5 N", "--from", "-3", "--rings", "flatt"});
    says_wrong(said, "no wood is named \"red ook\" [unknown-wood]");
    CHECK_THAT(said.err, ContainsSubstring("fix: --species \"red oak\""));
    CHECK_THAT(said.err, ContainsSubstring("jointwright: error: --width: "));
    CHECK_THAT(said.err, ContainsSubstring("[wrong-unit]"));
    CHECK_THAT(said.err, ContainsSubstring("--from: \"-3\" is out of range"));
    CHECK_THAT(said.err, ContainsSubstring("jointwright: error: --to is needed [missing-option]"));
    CHECK_THAT(said.err, ContainsSubstring("fix: --rings flat"));
}

TEST_CASE("Sizes and loads that cannot be are refused", "[app]")
{
    struct Row {
        const char* option;
        const char* value;
        const char* id;
    };
    const Row rows[] = {
        {"--width", "-5in", "[out-of-range]"},
        {"--width", "-.5in", "[out-of-range]"},
        {"--width", "0 mm", "[out-of-range]"},
        {"--width", "21 m", "[out-of-range]"},
        {"--width", "12", "[wrong-unit]"},
        {"--width", "nan mm", "["},
        {"--width", "inf in", "["},
        {"--width", "1e400 mm", "["},
        {"--width", "", "["},
        {"--width", "3 kg", "[wrong-unit]"},
        {"--point", "-800 N", "[out-of-range]"},
        {"--point", "80 kg", "[wrong-unit]"},
        {"--point", "nan N", "["},
        {"--modulus", "0 GPa", "[out-of-range]"},
        {"--modulus", "12.5", "[wrong-unit]"},
        {"--patch", "800 N", "[wrong-type]"},
        {"--patch", "800 N:2 m", "[out-of-range]"},
        {"--patch", "800 N:-2 mm", "[out-of-range]"},
        {"--ends", "free", "[unknown-name]"},
        {"--width", "1\xff mm", "["},
    };
    for (const Row& row : rows) {
        CAPTURE(row.option, row.value);
        std::vector<std::string> words = {"beam"};
        const std::vector<std::pair<std::string, std::string>> good = {
            {"--span", "900mm"}, {"--width", "250mm"}, {"--depth", "19mm"}, {"--modulus", "10GPa"}, {"--point", "100N"}};
        for (const auto& [option, value] : good) {
            words.push_back(option);
            words.push_back(option == row.option ? row.value : value);
        }
        if (std::find(words.begin(), words.end(), row.option) == words.end()) words.insert(words.end(), {row.option, row.value});
        const Said said = run(words);
        says_wrong(said, std::string("jointwright: error: ") + row.option + ": ");
        CHECK_THAT(said.err, ContainsSubstring(row.id));
        CHECK(program::is_utf8(said.err));
    }
}

TEST_CASE("A full disk, a closed output and a reader who left are told, not passed over", "[app]")
{
    program::Setting full;
    full.output_to = "/dev/full";
    program::Setting closed;
    closed.close_output = true;
    program::Setting gone;
    gone.reader_gone = true;
    for (const auto& setting : {full, closed, gone}) {
        const Said said = run({"species"}, setting);
        CHECK(said.status == 3);
        CHECK_THAT(said.err, ContainsSubstring("jointwright: error: standard output cannot be written: "));
    }
}
