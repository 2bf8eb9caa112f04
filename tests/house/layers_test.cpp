// The house holds its own rules: no file looks down a layer, no two rooms look into each other, no file outgrows its room.
#include "catch.hpp"
#include "places.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iostream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

/// From the top: each may include its own layer and those before it.
const std::vector<std::string> kLayers = {"measure", "facts",  "wood",   "bond",   "piece",  "mechanics",
                                          "judging", "checks", "review", "report", "engine", "app"};
constexpr int kMostLines = 500;

struct SourceFile {
    std::string path, room, layer; ///< below src/: "piece/read/readers.hpp", "piece/read", "piece"
    std::vector<std::string> includes;
    int lines = 0;
};

SourceFile source_file(const fs::path& path, const fs::path& under)
{
    SourceFile file;
    file.path = fs::relative(path, under).generic_string();
    file.room = fs::path(file.path).parent_path().generic_string();
    file.layer = file.room.substr(0, file.room.find('/'));
    static const std::regex own(R"re(^\s*#include "([^"]+)")re");
    std::ifstream in(path);
    for (std::string line; std::getline(in, line); ++file.lines)
        if (std::smatch m; std::regex_search(line, m, own)) file.includes.push_back(m[1]);
    return file;
}

const std::vector<SourceFile>& sources()
{
    static const std::vector<SourceFile> all = [] {
        const fs::path under = fs::path(jointwright::testing::data_folder()).parent_path() / "src";
        std::vector<SourceFile> files;
        for (const auto& entry : fs::recursive_directory_iterator(under))
            if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp")
                files.push_back(source_file(entry.path(), under));
        return files;
    }();
    return all;
}

std::string room_of(const std::string& header) { return fs::path(header).parent_path().generic_string(); }
std::ptrdiff_t height_of(const std::string& room)
{
    return std::find(kLayers.begin(), kLayers.end(), room.substr(0, room.find('/'))) - kLayers.begin();
}

/// Which rooms each room looks into, with one include that shows it.
std::map<std::string, std::map<std::string, std::string>> views()
{
    std::map<std::string, std::map<std::string, std::string>> seen;
    for (const SourceFile& file : sources())
        for (const std::string& header : file.includes)
            if (room_of(header) != file.room) seen[file.room].emplace(room_of(header), file.path + " takes " + header);
    return seen;
}

} // namespace

TEST_CASE("No file looks down a layer", "[house]")
{
    REQUIRE(sources().size() > 200);
    for (const SourceFile& file : sources()) {
        INFO(file.path);
        CHECK(std::count(kLayers.begin(), kLayers.end(), file.layer) == 1);
        for (const std::string& header : file.includes) {
            INFO("takes " << header);
            CHECK(height_of(room_of(header)) <= height_of(file.room));
        }
    }
}

TEST_CASE("Rooms of one layer look one way only, and their order is printed", "[house]")
{
    const auto seen = views();
    std::set<std::string> rooms;
    for (const SourceFile& file : sources()) rooms.insert(file.room);
    std::vector<std::string> order, path;
    std::set<std::string> done;
    const std::function<void(const std::string&)> visit = [&](const std::string& room) {
        if (done.count(room) > 0) return;
        if (const auto again = std::find(path.begin(), path.end(), room); again != path.end()) {
            std::ostringstream circle;
            for (auto it = again; it != path.end(); ++it) {
                const std::string& next = it + 1 != path.end() ? *(it + 1) : room;
                circle << "\n  " << seen.at(*it).at(next);
            }
            FAIL_CHECK("rooms look into each other in a circle:" << circle.str());
            return;
        }
        path.push_back(room);
        if (const auto into = seen.find(room); into != seen.end())
            for (const auto& [other, how] : into->second) visit(other);
        path.pop_back();
        done.insert(room);
        order.push_back(room);
    };
    for (const std::string& room : rooms) visit(room);
    std::stable_sort(order.begin(), order.end(),
                     [](const std::string& a, const std::string& b) { return height_of(a) < height_of(b); });
    for (const std::string& room : order) std::cout << "  src/" << room << '\n';
    CHECK(order.size() == rooms.size());
}

TEST_CASE("Every include of the project's own names a file that is there", "[house]")
{
    std::set<std::string> there;
    for (const SourceFile& file : sources()) there.insert(file.path);
    for (const SourceFile& file : sources())
        for (const std::string& header : file.includes) {
            INFO(file.path << " takes " << header);
            CHECK(there.count(header) == 1);
        }
}

TEST_CASE("One name, one thing: no two classes of one name in one namespace", "[house]")
{
    // Where the linker keeps one of two unlike destructors a program dies or not as the compiler pleases. The layout of the sources lets
    // lines be read: what stands in a namespace begins in the first column.
    static const std::regex opens(R"(^namespace ([\w:]*) ?\{)"),
        defines(R"(^(?:struct|class|enum class|union) (\w+)(?![\w:])[^;()]*(?:\{.*)?$)");
    std::map<std::string, std::set<std::string>> where;
    for (const SourceFile& file : sources()) {
        std::ifstream in(fs::path(jointwright::testing::data_folder()).parent_path() / "src" / file.path);
        std::vector<std::string> inside;
        for (std::string line; std::getline(in, line);) {
            std::smatch m;
            if (std::regex_search(line, m, opens)) inside.push_back(m[1]);
            if (line.rfind("} // namespace", 0) == 0 && !inside.empty()) inside.pop_back();
            if (!std::regex_match(line, m, defines)) continue;
            std::string name;
            bool known_to_others = true;
            for (const std::string& space : inside) {
                known_to_others = known_to_others && !space.empty();
                name += space + "::";
            }
            if (known_to_others) where[name + m[1].str()].insert(file.path);
        }
    }
    CHECK(where.size() > 200);
    for (const auto& [name, files] : where) {
        std::string list;
        for (const std::string& f : files) list += " " + f;
        INFO(name << " is defined in" << list);
        CHECK(files.size() == 1);
    }
}

TEST_CASE("No file outgrows what a reader holds in mind", "[house]")
{
    for (const SourceFile& file : sources()) {
        INFO(file.path << " has " << file.lines << " lines");
        CHECK(file.lines <= kMostLines);
    }
}

TEST_CASE("Tests stand in rooms of the house", "[house]")
{
    std::set<std::string> rooms;
    for (const SourceFile& file : sources())
        for (std::string room = file.room; !room.empty(); room = room_of(room)) rooms.insert(room);
    const fs::path tests = fs::path(jointwright::testing::data_folder()).parent_path() / "tests";
    const std::set<std::string> apart = {"published", "outside", "house", "benchmark", "browser"};
    int looked_at = 0;
    for (const auto& entry : fs::recursive_directory_iterator(tests)) {
        const std::string name = entry.path().filename().string();
        if (name.size() < 9 || name.substr(name.size() - 9) != "_test.cpp") continue;
        const std::string room = room_of(fs::relative(entry.path(), tests).generic_string());
        INFO("tests/" << room << '/' << name);
        CHECK((rooms.count(room) == 1 || apart.count(room.substr(0, room.find('/'))) == 1));
        ++looked_at;
    }
    CHECK(looked_at > 100);
}
