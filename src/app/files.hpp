#pragma once
// Reading and writing of files. Nothing else in the program opens one.

#include "app/answer.hpp"
#include "facts/facts.hpp"

#include <optional>
#include <string>
#include <variant>

namespace jointwright {

/// Largest design or table that is read.
constexpr std::size_t kLargestText = std::size_t{4} * 1024 * 1024;

/// Name of a file in messages: `-` is `<stdin>`.
std::string name_in_messages(const std::string& path);

/// The bytes of a file (`-`: standard input), or why it cannot be read: [file], or [too-large] without having read it all.
std::variant<std::string, Fault> read_text_file(const std::string& path);

/// Whether two paths lead to one file that exists; the first may be `-`, standard input.
bool same_file(const std::string& first, const std::string& second);

/// The fault of writing what is no design to a file that ends in ".toml". @param instead  a name that will do, for the fix
std::optional<Fault> design_at_risk(const std::string& option, const std::string& target, const std::string& instead);

/// All tables and texts below a folder by relative path, or the answer that says which file or folder is at fault.
std::variant<DataTexts, Answer> read_data_folder(const std::string& folder);

/// How writing a file ended.
struct FileWritten {
    ExitStatus status = ExitStatus::fine; ///< wrong_input: it could not be opened; broken: opened, but not written
    std::string why;
};

/// Writes a file whole or not at all: to a temporary file beside it, which then takes its name. An earlier file keeps its rights, and a link
/// stays a link. What is no plain file (a pipe, a device) is written to as it is.
FileWritten write_file(const std::string& path, const std::string& text);

} // namespace jointwright
