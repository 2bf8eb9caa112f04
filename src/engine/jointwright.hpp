#pragma once
// The engine for other programs: read a design, check it, write its report. Needs nothing but the standard library to include.
//
//     using namespace jointwright;
//     const engine::Tables tables;
//     const engine::Read read = engine::read(text, tables);
//     if (!read) std::cerr << read.messages("bench.toml");
//     else std::cout << engine::write(engine::check(*read.design, tables), engine::Format::text);
//
// All of it works in memory: no file, no clock, no global that changes. Calls with one `Tables` may run on several threads at once.

#include <map>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright::engine {

/// A table that is missing or wrong: the message names the file, the place and what was expected.
class WrongTables : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// The facts that a check goes by: woods, glues, finishes, rooms, loads, limits, each with its source. Outlives what is checked with it.
class Tables {
public:
    Tables(); ///< those built in
    /// Others in their place. @param texts  by path in the data folder, "woods/white-oak.toml"; all of them
    /// @throws WrongTables
    explicit Tables(std::map<std::string, std::string> texts);
    ~Tables();
    Tables(Tables&&) noexcept;
    Tables& operator=(Tables&&) noexcept;

    std::string fingerprint() const; ///< of all texts, as reports print it

    struct Held;
    const Held& held() const { return *held_; } ///< for the engine itself

private:
    std::unique_ptr<Held> held_;
};

/// A design that was read without a fault.
class Design;

/// One fault of a design: what is wrong, where, and what mends it. Line and column start at 1, as editors count; line 0: no place.
struct Problem {
    unsigned line = 0, column = 0, width = 1;
    std::string id;       ///< stable, "unknown-wood"
    std::string sentence; ///< no wood is named "whit oak"
    std::string fix;      ///< a line to paste, or empty
    std::string note;     ///< where the limit comes from, nearest names, or empty
};

/// A design, or every fault that keeps it from being one; never both.
struct Read {
    std::shared_ptr<const Design> design;
    std::vector<Problem> problems;
    std::string text; ///< as read

    explicit operator bool() const { return design != nullptr; }
    /// All faults as the command line prints them, each with its place, its line and a caret. Empty without a fault.
    std::string messages(const std::string& file_name) const;
};

/// Reads the text of a design file. UTF-8, at most 4 MiB; everything else is a fault, never an exception. @throws WrongTables
Read read(std::string_view text, const Tables& tables);

enum class Lengths { as_design, inches, millimetres };

struct CheckSettings {
    Lengths lengths = Lengths::as_design; ///< of what people read; JSON is always SI
    bool remedies_tried = true; ///< changes that mend what fails are looked for and checked again: takes many times as long
    bool drawn = false;         ///< makes what `Format::html` draws; without it the page has no drawings
};

/// What a check found, ready to be written.
class Report;

/// Checks a design. The same design, tables and settings give the same report. @throws WrongTables
std::shared_ptr<const Report> check(const Design& design, const Tables& tables, const CheckSettings& settings = {});

/// "pass", "warn" or "fail", the gravest of all findings; what cannot be told counts as "warn". Not a promise that the piece is safe: every
/// written report ends with its cautions.
std::string_view verdict(const Report& report);

enum class Format { text, json, html, markdown };

/// The report as UTF-8, the bytes that the command line writes. JSON is the format "jointwright-report/1".
/// @param working  the sums of every finding too, in text, Markdown and page
std::string write(const Report& report, Format format, bool working = false);
inline std::string write(const std::shared_ptr<const Report>& report, Format format, bool working = false)
{
    return write(*report, format, working);
}

/// The version of the program, "0.1.0".
std::string_view version();

} // namespace jointwright::engine
