// Files: what cannot be read, what must not be damaged, tables from a folder.

#include "app/designs.hpp"
#include "app/program.hpp"
#include "catch.hpp"
#include "places.hpp"

#include <sys/resource.h>
#include <sys/stat.h>

using program::Folder;
using program::run;
using program::Said;

namespace {

namespace fs = std::filesystem;

const std::string kPlank = designs::kPlank;

void refused(const Said& said, const std::string& file, const std::string& id)
{
    CHECK(said.status == 2);
    CHECK(said.out.empty());
    CHECK(program::is_utf8(said.err));
    CHECK(said.err.rfind(file + ":", 0) == 0);
    CHECK_THAT(said.err, ContainsSubstring("error: "));
    CHECK_THAT(said.err, ContainsSubstring("[" + id + "]"));
}

} // namespace

TEST_CASE("Designs that cannot be read are told by name", "[app][files]")
{
    const Folder folder;
    const std::string missing = folder.file("missing.toml");
    CHECK(run({"check", missing}).err == missing + ": error: there is no such file [file]\n");
    refused(run({"check", missing}), missing, "file");
    refused(run({"expand", missing}), missing, "file");
    refused(run({"check", folder.path().string()}), folder.path().string(), "file");
    refused(run({"check", folder.write("plain", "x") + "/bench.toml"}), folder.file("plain/bench.toml"), "file");
    // Opens, and fails when read.
    refused(run({"check", "/proc/self/mem"}), "/proc/self/mem", "file");
}

TEST_CASE("A design without the right to read it is refused", "[app][files]")
{
    if (geteuid() == 0) return; // the superuser may read everything
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank);
    chmod(design.c_str(), 0);
    const Said said = run({"check", design});
    refused(said, design, "file");
    CHECK_THAT(said.err, ContainsSubstring("permission denied"));
}

TEST_CASE("Empty, binary and huge designs are refused", "[app][files]")
{
    const Folder folder;
    const std::string empty = folder.write("empty.toml", "");
    refused(run({"check", empty}), empty, "missing-key");
    const std::string binary = folder.write("binary.toml", std::string("\x7f"
                                                                       "ELF\0\xff\xfe\x01",
                                                                       8));
    refused(run({"check", binary}), binary, "syntax");

    constexpr std::size_t kLimit = 4U * 1024 * 1024;
    const std::string over = folder.write("over.toml", kPlank + "#" + std::string(kLimit, 'x'));
    refused(run({"check", over}), over, "too-large");
    // 16 GiB of nothing: refused by its size alone.
    const std::string sparse = folder.write("sparse.toml", "");
    fs::resize_file(sparse, std::uintmax_t{16} << 30U);
    refused(run({"check", sparse}), sparse, "too-large");
    refused(run({"check", "/dev/zero"}), "/dev/zero", "too-large");

    // Exactly the limit is still read.
    const std::string full = kPlank + "#" + std::string(kLimit - kPlank.size() - 2, 'x') + "\n";
    REQUIRE(full.size() == kLimit);
    CHECK(run({"check", folder.write("full.toml", full)}).status == 0);
}

TEST_CASE("A file name with broken bytes is shown as valid text", "[app][files]")
{
    const Said said = run({"check", "/nowhere/\xff\x1b[2J.toml"});
    CHECK(said.status == 2);
    CHECK(program::is_utf8(said.err));
    CHECK(said.err.find('\x1b') == std::string::npos);
}

TEST_CASE("Option -o writes the same bytes as standard output and leaves nothing beside", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank), report = folder.file("report.json");
    const Said said = run({"check", design, "--format", "json", "-o", report});
    CHECK(said.status == 0);
    CHECK(said.out.empty());
    CHECK(said.err.empty());
    CHECK(program::text_of(report) == run({"check", design, "--format", "json"}).out);
    CHECK(folder.names() == std::vector<std::string>{"plank.toml", "report.json"});
}

TEST_CASE("Option -o keeps the rights of an earlier report and follows a link", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank), report = folder.write("real/report.txt", "old");
    chmod(report.c_str(), 0640);
    fs::create_symlink(report, folder.file("link.txt"));
    CHECK(run({"check", design, "-o", folder.file("link.txt")}).status == 0);
    CHECK(fs::is_symlink(folder.file("link.txt")));
    CHECK(program::text_of(report) == run({"check", design}).out);
    struct stat about = {};
    REQUIRE(stat(report.c_str(), &about) == 0);
    CHECK((about.st_mode & 0777U) == 0640U);
}

TEST_CASE("A wrong design leaves an earlier report alone", "[app][files]")
{
    const Folder folder;
    const std::string report = folder.write("report.txt", "earlier"), design = folder.write("bad.toml", "units = 3");
    CHECK(run({"check", design, "-o", report}).status == 2);
    CHECK(program::text_of(report) == "earlier");
    CHECK(folder.names() == std::vector<std::string>{"bad.toml", "report.txt"});
}

TEST_CASE("A target that cannot be opened ends with 2", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank);
    fs::create_directory(folder.file("taken"));
    for (const std::string& target :
         {folder.file("taken"), folder.file("no/such/report.txt"), design + "/report.txt", std::string("/proc/report.txt")}) {
        CAPTURE(target);
        refused(run({"check", design, "-o", target}), target, "file");
    }
    CHECK(folder.names() == std::vector<std::string>{"plank.toml", "taken"});
}

TEST_CASE("The design itself is never overwritten", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank);
    CHECK(run({"check", design, "-o", design}).status == 2);
    CHECK(program::text_of(design) == kPlank);
}

TEST_CASE("A report that does not fit on the disk ends with 3 and damages nothing", "[app][files]")
{
    const Folder folder;
    const std::string design = folder.write("plank.toml", kPlank), report = folder.write("report.html", "earlier");
    CHECK(run({"check", design, "-o", "/dev/full"}).status == 3);

    // A limit on the size of files stands for the full disk.
    struct rlimit before = {};
    getrlimit(RLIMIT_FSIZE, &before);
    const struct rlimit tight = {512, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &tight);
    const Said said = run({"check", design, "--format", "html", "-o", report});
    setrlimit(RLIMIT_FSIZE, &before);
    CHECK(said.status == 3);
    CHECK_THAT(said.err, ContainsSubstring(report + ": error: the file cannot be written: "));
    CHECK(program::text_of(report) == "earlier");
    CHECK(folder.names() == std::vector<std::string>{"plank.toml", "report.html"});
}

TEST_CASE("Option --data reads the tables of a folder", "[app][files]")
{
    CHECK(run({"species", "--data", jointwright::testing::data_folder()}).out == run({"species"}).out);
    CHECK(run({"checks", "--data", jointwright::testing::data_folder(), "dust"}).out == run({"checks", "dust"}).out);

    const Folder folder;
    fs::copy(jointwright::testing::data_folder(), folder.file("data"), fs::copy_options::recursive);
    std::string wood = program::text_of(folder.file("data/woods/apple.toml"));
    wood.replace(wood.find("\"apple\""), 7, "\"quince\"");
    wood.replace(wood.find("[\"applewood\"]"), 13, "[]");
    folder.write("data/woods/quince.toml", wood);
    const Said said = run({"species", "quince", "--data", folder.file("data")});
    INFO(said.err);
    CHECK(said.status == 0);
    CHECK_THAT(said.out, ContainsSubstring("quince"));
}

TEST_CASE("Option --data with a missing or broken folder says which and ends with 2", "[app][files]")
{
    const Folder folder;
    refused(run({"species", "--data", folder.file("none")}), folder.file("none"), "file");
    refused(run({"species", "--data", folder.write("file.toml", "")}), folder.file("file.toml"), "file");
    fs::create_directory(folder.file("empty"));
    refused(run({"emc", "--temperature", "20C", "--humidity", "40", "--data", folder.file("empty")}), folder.file("empty"),
            "broken-data");

    fs::copy(jointwright::testing::data_folder(), folder.file("data"), fs::copy_options::recursive);
    folder.write("data/woods/apple.toml", "name = \"apple\nbotanical");
    const Said said = run({"species", "apple", "--data", folder.file("data")});
    refused(said, folder.file("data"), "broken-data");
    CHECK_THAT(said.err, ContainsSubstring("woods/apple.toml"));
}
