// The engine as other programs see it: through its one header.
#include "app/program.hpp"
#include "catch.hpp"
#include "engine/jointwright.hpp"
#include "places.hpp"

#include <fstream>
#include <sstream>
#include <string>
#include <thread>

using namespace jointwright;

namespace {

std::string text_of(const std::string& name)
{
    std::ifstream in(testing::data_folder() + "/" + name);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

const engine::Tables& tables()
{
    static const engine::Tables built_in;
    return built_in;
}

} // namespace

TEST_CASE("The engine gives the bytes of the command line in every format", "[engine]")
{
    for (const std::string name : {"designs/boot-bench.toml", "designs/hall-table-glued-top.toml", "patterns/panel-door.toml"}) {
        const std::string path = testing::data_folder() + "/" + name, text = text_of(name);
        REQUIRE(!text.empty());
        const engine::Read read = engine::read(text, tables());
        REQUIRE(read);
        CHECK(read.problems.empty());
        CHECK(read.messages(name).empty());
        for (const auto& [format, word] :
             {std::pair{engine::Format::text, "text"}, std::pair{engine::Format::json, "json"},
              std::pair{engine::Format::html, "html"}, std::pair{engine::Format::markdown, "markdown"}}) {
            INFO(name << " as " << word);
            engine::CheckSettings settings;
            settings.remedies_tried = false;
            settings.drawn = format == engine::Format::html;
            const std::string own = engine::write(engine::check(*read.design, tables(), settings), format);
            const auto ran = program::run({"check", path, "--format", word, "--remedies", "none"});
            CHECK((own == ran.out));
        }
    }
}

TEST_CASE("The engine tells faults with their places, and what the verdict is", "[engine]")
{
    std::string text = text_of("designs/boot-bench.toml");
    const engine::Read whole = engine::read(text, tables());
    REQUIRE(whole);
    const std::string_view fails = engine::verdict(*engine::check(
        *engine::read(text_of("designs/table-batten-glued-whole.toml"), tables()).design, tables(), {.remedies_tried = false}));
    CHECK(fails == "fail");
    CHECK(engine::verdict(*engine::check(*whole.design, tables(), {.remedies_tried = false})) != "fail");

    const std::size_t at = text.find("\nspecies");
    REQUIRE(at != std::string::npos);
    text.insert(at, "\nspeces = \"oak\"");
    const engine::Read broken = engine::read(text, tables());
    CHECK_FALSE(broken);
    REQUIRE(!broken.problems.empty());
    CHECK(broken.problems.front().line > 1);
    CHECK(!broken.problems.front().id.empty());
    CHECK_THAT(broken.messages("bench.toml"),
               ContainsSubstring("bench.toml:" + std::to_string(broken.problems.front().line) + ":"));
    CHECK_FALSE(engine::read("", tables()));
    CHECK_FALSE(engine::read("\xff\xfe", tables()));
}

TEST_CASE("Lengths of a report follow the settings", "[engine]")
{
    const engine::Read read = engine::read(text_of("designs/boot-bench.toml"), tables());
    REQUIRE(read);
    const auto as = [&](engine::Lengths lengths) {
        return engine::write(engine::check(*read.design, tables(), {lengths, false, false}), engine::Format::text);
    };
    CHECK(as(engine::Lengths::inches) != as(engine::Lengths::millimetres));
    CHECK_THAT(as(engine::Lengths::millimetres), ContainsSubstring(" mm"));
}

TEST_CASE("One set of tables serves several threads", "[engine]")
{
    const engine::Tables own;
    const std::string text = text_of("designs/slat-on-end-grain.toml");
    std::vector<std::string> written(4);
    std::vector<std::thread> threads;
    for (std::string& into : written)
        threads.emplace_back([&own, &text, &into] {
            const engine::Read read = engine::read(text, own);
            into = engine::write(engine::check(*read.design, own, {.remedies_tried = false}), engine::Format::json);
        });
    for (std::thread& t : threads) t.join();
    for (const std::string& w : written) CHECK((!w.empty() && w == written.front()));
}

TEST_CASE("Tables that are not whole are refused with the place", "[engine]")
{
    CHECK_THROWS_AS(engine::Tables(std::map<std::string, std::string>{}), engine::WrongTables);
    CHECK(engine::Tables().fingerprint() == tables().fingerprint());
}
