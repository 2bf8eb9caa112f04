#include "app/files.hpp"

#include "app/streams.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
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

/// Beside the target, so that renaming stays on one disk. Removed unless it was kept.
class TemporaryFile {
public:
    explicit TemporaryFile(const fs::path& target)
        : path_((target.parent_path() / ".jointwright-XXXXXX").string()), file_(mkstemp(path_.data()))
    {
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;
    ~TemporaryFile()
    {
        if (file_.number() >= 0 && !kept_) ::unlink(path_.c_str());
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
    if (!file.rename_to(target)) return cannot_open(why_not(errno));
    return {};
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
    std::error_code error;
    return fs::equivalent(first, second, error) && !error && fs::is_regular_file(first, error);
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
    std::error_code error;
    // Through links to the file itself; a link to nothing is replaced.
    fs::path target = fs::canonical(path, error);
    if (error) target = fs::absolute(path, error);
    struct stat about = {};
    if (::stat(target.c_str(), &about) != 0) return replace(target, nullptr, text);
    if (S_ISDIR(about.st_mode)) return cannot_open(why_not(EISDIR));
    if (!S_ISREG(about.st_mode)) return write_in_place(target, text);
    return replace(target, &about, text);
}

} // namespace jointwright
