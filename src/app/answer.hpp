#pragma once
// What a verb answers: text for standard output, text for standard error, and the exit status. Verbs themselves write nothing.

#include "piece/text/fault.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

enum class ExitStatus {
    fine = 0,        ///< nothing failed
    failed = 1,      ///< a check failed; with --strict also a warn or cannot-tell
    wrong_input = 2, ///< the design, the tables or the command line
    broken = 3,      ///< the program could not finish
};

/// A file that goes with an answer, such as a drawing.
struct SideFile {
    std::string path, text;
};

struct Answer {
    ExitStatus status = ExitStatus::fine;
    std::string output;                ///< results
    std::string messages;              ///< for standard error
    std::optional<std::string> target; ///< file for the results; none: standard output
    std::vector<SideFile> files = {};  ///< further files, written first
};

/// The words after the verb, as the shell passed them.
using Arguments = std::vector<std::string>;

/// Results, nothing wrong.
Answer results(std::string output);
/// Faults of the command line: `jointwright: error: …`, status 2.
Answer wrong_command_line(const Faults& faults);
/// One fault of a file without a place in it: `FILE: error: … [id]`, status 2.
Answer wrong_file(const std::string& file, const Fault& fault);

/// A fault without a place.
Fault fault_of(std::string id, std::string says, std::string fix = {}, std::string note = {});

} // namespace jointwright
