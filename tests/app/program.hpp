#pragma once
// Runs the real program and keeps what it said, for the tests of the command line.

#include "places.hpp"

#include <boost/nowide/utf/utf.hpp>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <spawn.h>
#include <sstream>
#include <stdexcept>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace program {

namespace fs = std::filesystem;

/// A folder of its own that vanishes with the test.
class Folder {
public:
    Folder()
    {
        std::string name = (fs::temp_directory_path() / "jointwright-test-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder()
    {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    const fs::path& path() const { return path_; }
    std::string file(const std::string& name) const { return (path_ / name).string(); }
    std::string write(const std::string& name, const std::string& text) const
    {
        fs::create_directories((path_ / name).parent_path());
        std::ofstream(path_ / name, std::ios::binary) << text;
        return file(name);
    }
    /// Names of everything in it, hidden files too.
    std::vector<std::string> names() const
    {
        std::vector<std::string> found;
        for (const auto& entry : fs::directory_iterator(path_)) found.push_back(entry.path().filename().string());
        std::sort(found.begin(), found.end());
        return found;
    }

private:
    fs::path path_;
};

inline std::string text_of(const fs::path& path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Said {
    int status = -1; ///< exit status; 128 + signal when a signal ended it
    std::string out, err;
};

/// How a run differs from a plain one.
struct Setting {
    std::string input = {};      ///< standard input
    std::string input_from = {}; ///< file that standard input is instead
    std::string output_to = {};  ///< file that standard output goes to instead of being kept
    bool close_output = false;   ///< standard output closed
    bool reader_gone = false;    ///< standard output is a pipe that nobody reads
};

inline Said run(const std::vector<std::string>& arguments, const Setting& setting = {})
{
    const Folder folder;
    const std::string in = folder.write("in", setting.input), out = folder.file("out"), err = folder.file("err");
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, (setting.input_from.empty() ? in : setting.input_from).c_str(),
                                     O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, err.c_str(), O_WRONLY | O_CREAT, 0600);
    std::array<int, 2> ends{-1, -1};
    if (setting.close_output) {
        posix_spawn_file_actions_addclose(&actions, STDOUT_FILENO);
    } else if (setting.reader_gone) {
        if (pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
        close(ends[0]);
        posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    } else {
        const std::string& target = setting.output_to.empty() ? out : setting.output_to;
        posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, target.c_str(), O_WRONLY | O_CREAT, 0600);
    }

    std::vector<std::string> words = {jointwright::testing::program_path()};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<char*> pointers;
    for (std::string& word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    pid_t process = 0;
    const int trouble =
        posix_spawn(&process, jointwright::testing::program_path().c_str(), &actions, nullptr, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    if (ends[1] >= 0) close(ends[1]);
    if (trouble != 0) throw std::runtime_error("cannot run " + jointwright::testing::program_path());
    int ended = 0;
    waitpid(process, &ended, 0);
    return {WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended), text_of(out), text_of(err)};
}

inline bool is_utf8(const std::string& text)
{
    using Utf8 = boost::nowide::utf::utf_traits<char>;
    for (auto at = text.begin(); at != text.end();) {
        const auto point = Utf8::decode(at, text.end());
        if (point == boost::nowide::utf::illegal || point == boost::nowide::utf::incomplete) return false;
    }
    return true;
}

inline std::vector<std::string> lines_of(const std::string& text)
{
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

/// Characters (code points) of the longest line.
inline std::size_t widest_line(const std::string& text)
{
    std::size_t widest = 0;
    for (const std::string& line : lines_of(text)) {
        std::size_t width = 0;
        for (const char c : line) width += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
        widest = std::max(widest, width);
    }
    return widest;
}

} // namespace program
