#include "app/files.hpp"

#include "app/streams.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <climits>
#include <csignal>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

namespace jointwright {

namespace {

namespace fs = std::filesystem;

/// A file descriptor that closes itself; standard streams are not owned.
class Descriptor {
public:
    explicit Descriptor(int number, bool owned = true) : number_(number), owned_(owned) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor()
    {
        if (owned_ && number_ >= 0) ::close(number_);
    }
    int number() const { return number_; }

private:
    int number_;
    bool owned_;
};

Fault cannot_read(int error)
{
    if (error == ENOENT) return fault_of("file", "there is no such file");
    if (error == EISDIR) return fault_of("file", "this is a folder, not a file");
    return fault_of("file", "the file cannot be read: " + why_not(error));
}

Fault too_large(std::string_view has)
{
    return fault_of("too-large", fmt::format("the file has {} bytes; at most {} (4 MiB) are read", has, kLargestText));
}

constexpr int kEndingSignals[] = {SIGINT, SIGTERM, SIGHUP};
char unfinished[PATH_MAX]; ///< path of the temporary file that a signal would leave behind; empty: none

/// Removes what is half written, then ends as the signal would have ended it.
extern "C" void remove_unfinished(int signal)
{
    if (unfinished[0] != '\0') ::unlink(unfinished);
    ::signal(signal, SIG_DFL);
    ::raise(signal);
}

/// Beside the target, so that renaming stays on one disk. Removed unless it was kept, by a signal that ends the program too.
class TemporaryFile {
public:
    explicit TemporaryFile(const fs::path& target)
        : path_((target.parent_path() / ".jointwright-XXXXXX").string()), file_(mkstemp(path_.data()))
    {
        if (file_.number() < 0 || path_.size() >= sizeof unfinished) return;
        std::copy(path_.begin(), path_.end(), unfinished);
        // A signal that whoever started the program had switched off stays off.
        for (const int signal : kEndingSignals)
            if (::signal(signal, remove_unfinished) == SIG_IGN) ::signal(signal, SIG_IGN);
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;
    ~TemporaryFile()
    {
        if (file_.number() >= 0 && !kept_) ::unlink(path_.c_str());
        unfinished[0] = '\0';
    }
    int number() const { return file_.number(); }
    bool rename_to(const fs::path& target)
    {
        kept_ = ::rename(path_.c_str(), target.c_str()) == 0;
        return kept_;
    }

private:
    std::string path_;
    Descriptor file_;
    bool kept_ = false;
};

FileWritten cannot_open(std::string why) { return {ExitStatus::wrong_input, std::move(why)}; }

FileWritten cannot_write(int error) { return {ExitStatus::broken, why_not(error)}; }

FileWritten write_in_place(const fs::path& path, const std::string& text)
{
    const Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (file.number() < 0) return cannot_open(why_not(errno));
    if (const std::error_code error = write_all(file.number(), text)) return cannot_write(error.value());
    return {};
}

/// Rights of a new file: those of the one it replaces, else what the user's mask leaves.
mode_t rights_for(const struct stat* earlier)
{
    if (earlier != nullptr) return earlier->st_mode & 0777U;
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666U & ~mask;
}

FileWritten replace(const fs::path& target, const struct stat* earlier, const std::string& text)
{
    if (earlier != nullptr && ::access(target.c_str(), W_OK) != 0) return cannot_open(why_not(errno));
    TemporaryFile file(target);
    if (file.number() < 0)
        return cannot_open(errno == ENOENT ? "its folder does not exist" : "its folder cannot be written to: " + why_not(errno));
    if (const std::error_code error = write_all(file.number(), text)) return cannot_write(error.value());
    // On the disk before the name: after a power cut the name must not lead to an empty file.
    if (::fchmod(file.number(), rights_for(earlier)) != 0 || ::fsync(file.number()) != 0) return cannot_write(errno);
    // Whoever runs this for another leaves the file with its owner, where that is allowed.
    if (earlier != nullptr && ::geteuid() == 0) [[maybe_unused]]
        const int kept_owner = ::fchown(file.number(), earlier->st_uid, earlier->st_gid);
    if (!file.rename_to(target)) return cannot_open(why_not(errno));
    return {};
}

/// The file that a path leads to, through links; of a link to nothing the place that it names. Nothing where links lead in a circle.
std::optional<fs::path> behind_links(const std::string& path)
{
    constexpr int most = 40; // as the kernel does
    std::error_code error;
    fs::path target = fs::absolute(path, error);
    for (int links = 0; links < most; ++links) {
        if (!fs::is_symlink(fs::symlink_status(target, error))) return target;
        const fs::path next = fs::read_symlink(target, error);
        if (error) return target;
        target = next.is_absolute() ? next : target.parent_path() / next;
    }
    return std::nullopt;
}

bool is_table(const fs::path& path)
{
    static constexpr const char* kEndings[] = {".toml", ".md", ".json", ".html", ".css"};
    return std::find(std::begin(kEndings), std::end(kEndings), path.extension().string()) != std::end(kEndings);
}

} // namespace

std::string name_in_messages(const std::string& path) { return path == "-" ? "<stdin>" : safe_text(path); }

std::variant<std::string, Fault> read_text_file(const std::string& path)
{
    const bool standard_input = path == "-";
    const Descriptor file(standard_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC), !standard_input);
    if (file.number() < 0) return cannot_read(errno);
    struct stat about = {};
    if (::fstat(file.number(), &about) != 0) return cannot_read(errno);
    if (S_ISDIR(about.st_mode)) return cannot_read(EISDIR);
    if (S_ISREG(about.st_mode) && static_cast<std::size_t>(about.st_size) > kLargestText)
        return too_large(fmt::to_string(about.st_size));

    std::string text;
    char block[65536];
    while (text.size() <= kLargestText) {
        const ssize_t got = ::read(file.number(), block, sizeof block);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return cannot_read(errno);
        if (got == 0) return text;
        text.append(block, static_cast<std::size_t>(got));
    }
    return too_large("more than " + fmt::to_string(kLargestText));
}

bool same_file(const std::string& first, const std::string& second)
{
    if (first == "-") {
        struct stat input = {}, other = {};
        return ::fstat(STDIN_FILENO, &input) == 0 && S_ISREG(input.st_mode) && ::stat(second.c_str(), &other) == 0 &&
               input.st_dev == other.st_dev && input.st_ino == other.st_ino;
    }
    std::error_code error;
    return fs::equivalent(first, second, error) && !error && fs::is_regular_file(first, error);
}

std::optional<Fault> design_at_risk(const std::string& option, const std::string& target, const std::string& instead)
{
    if (fs::path(target).extension() != ".toml") return std::nullopt;
    return fault_of(
        "file", fmt::format("{}: {} has the ending of a design, and a report would take its place", option, in_quotes(target)),
        option + " " + instead);
}

std::variant<DataTexts, Answer> read_data_folder(const std::string& folder)
{
    std::error_code error;
    const fs::file_status status = fs::status(folder, error);
    if (!fs::exists(status)) return wrong_file(folder, fault_of("file", "there is no such folder of tables"));
    if (!fs::is_directory(status)) return wrong_file(folder, fault_of("file", "this is a file, not a folder of tables"));

    DataTexts texts;
    fs::recursive_directory_iterator entry(folder, error);
    for (; !error && entry != fs::recursive_directory_iterator(); entry.increment(error)) {
        const fs::path& path = entry->path();
        std::error_code unclear; // a link to nothing is no folder; reading it says what is wrong
        if (entry->is_directory(unclear) || !is_table(path)) continue;
        if (!unclear && !entry->is_regular_file(unclear))
            return wrong_file(path.string(), fault_of("file", "this is no plain file: a table cannot be read from it"));
        auto text = read_text_file(path.string());
        if (const Fault* fault = std::get_if<Fault>(&text)) return wrong_file(path.string(), *fault);
        texts.emplace(path.lexically_relative(folder).generic_string(), std::move(std::get<std::string>(text)));
    }
    if (error) return wrong_file(folder, fault_of("file", "the folder cannot be read: " + why_not(error.value())));
    return texts;
}

FileWritten write_file(const std::string& path, const std::string& text)
{
    if (path.empty()) return cannot_open("a file name is empty");
    const auto led_to = behind_links(path);
    if (!led_to) return cannot_open("its links lead in a circle");
    const fs::path& target = *led_to;
    struct stat about = {};
    if (::stat(target.c_str(), &about) != 0) return replace(target, nullptr, text);
    if (S_ISDIR(about.st_mode)) return cannot_open(why_not(EISDIR));
    if (!S_ISREG(about.st_mode)) return write_in_place(target, text);
    return replace(target, &about, text);
}

} // namespace jointwright
