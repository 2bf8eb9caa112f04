// What the program must not do to files: overwrite a design, leave half a report behind, wait for what never comes.

#include "app/designs.hpp"
#include "app/program.hpp"
#include "catch.hpp"
#include "places.hpp"

#include <csignal>
#include <sys/stat.h>

using program::Folder;
using program::run;
using program::Said;

namespace {

namespace fs = std::filesystem;

const std::string kPlank = designs::kPlank;

} // namespace

TEST_CASE("A design that comes from standard input is not overwritten either", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank", kPlank); // by the file, not by its ending
    const Said said = run({"check", "-", "-o", design}, {.input_from = design});
    CHECK(said.status == 2);
    CHECK_THAT(said.err, ContainsSubstring("the report would overwrite the design [file]"));
    CHECK(program::text_of(design) == kPlank);
    // Another file may be written.
    CHECK(run({"check", "-", "-o", folder.file("report.txt")}, {.input_from = design}).status < 2);
    CHECK_FALSE(program::text_of(folder.file("report.txt")).empty());
}

TEST_CASE("Nothing but a design is written to a file that ends as one", "[app][files]")
{
    const Folder folder;
    const std::string other = folder.write("other.toml", kPlank), design = folder.write("plank.toml", kPlank);
    const Said check = run({"check", design, "-o", other});
    CHECK(check.status == 2);
    CHECK_THAT(check.err, ContainsSubstring("has the ending of a design") && ContainsSubstring("fix: -o report.txt"));
    const Said beam = run({"beam", "--span", "900mm", "--width", "60mm", "--depth", "20mm", "--species", "white oak", "--point",
                           "100N", "--draw", other});
    CHECK(beam.status == 2);
    CHECK_THAT(beam.err, ContainsSubstring("has the ending of a design") && ContainsSubstring("fix: --draw beam.svg"));
    CHECK(program::text_of(other) == kPlank);
}

TEST_CASE("A report goes through links to the file that they name, and links in a circle are told", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank);
    fs::create_directory(folder.path() / "reports");
    fs::create_symlink("reports/new.txt", folder.path() / "link");
    CHECK(run({"check", design, "-o", folder.file("link")}).status < 2);
    CHECK(fs::is_symlink(folder.path() / "link"));
    CHECK_FALSE(program::text_of(folder.path() / "reports" / "new.txt").empty());

    fs::create_symlink("b", folder.path() / "a");
    fs::create_symlink("a", folder.path() / "b");
    const Said circle = run({"check", design, "-o", folder.file("a")});
    CHECK(circle.status == 2);
    CHECK_THAT(circle.err, ContainsSubstring("its links lead in a circle"));
    CHECK(fs::is_symlink(folder.path() / "a"));

    fs::create_symlink("nowhere/new.txt", folder.path() / "lost");
    CHECK_THAT(run({"check", design, "-o", folder.file("lost")}).err, ContainsSubstring("its folder does not exist"));
}

TEST_CASE("A pipe among the tables is refused, not waited for", "[app][files]")
{
    const Folder folder;
    fs::copy(jointwright::testing::data_folder(), folder.path() / "data", fs::copy_options::recursive);
    const std::string pipe = folder.file("data/woods/pipe.toml");
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    const Said said = run({"species", "--data", folder.file("data")});
    CHECK(said.status == 2);
    CHECK_THAT(said.err, ContainsSubstring("pipe.toml") && ContainsSubstring("this is no plain file"));
}

TEST_CASE("A signal in the middle of writing leaves nothing half written", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank), report = folder.file("report.html");
    const auto half_written = [&] {
        for (const std::string& name : folder.names())
            if (name.rfind(".jointwright-", 0) == 0) return true;
        return false;
    };
    int caught = 0;
    for (int attempt = 0; attempt < 60 && caught < 3; ++attempt) {
        fs::remove(report);
        const std::string program = jointwright::testing::program_path();
        std::vector<std::string> words = {program, "check", design, "--format", "html", "-o", report};
        std::vector<char*> pointers;
        for (std::string& word : words) pointers.push_back(word.data());
        pointers.push_back(nullptr);
        pid_t process = 0;
        REQUIRE(posix_spawn(&process, program.c_str(), nullptr, nullptr, pointers.data(), environ) == 0);
        int ended = 0;
        bool running = true;
        while (running && !half_written()) running = waitpid(process, &ended, WNOHANG) == 0;
        if (running) {
            kill(process, SIGTERM);
            waitpid(process, &ended, 0);
        }
        if (WIFSIGNALED(ended)) {
            CHECK(WTERMSIG(ended) == SIGTERM);
            ++caught;
        }
        CHECK_FALSE(half_written());
        // Whole or not there.
        const std::string text = fs::exists(report) ? program::text_of(report) : "</html>\n";
        CHECK(text.substr(text.size() - 8) == "</html>\n");
    }
    WARN(caught << " runs were ended while they wrote");
}
