#pragma once
// Designs written in a test, read and checked as a whole: the way of a design through the program without its command line.

#include "checks/registry.hpp"
#include "facts/shared_facts.hpp"
#include "mechanics/prepared.hpp"
#include "piece/read/read_design.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace checked {

using namespace jointwright;

/// A text with every `$name` put in.
inline std::string fill(std::string text, const std::vector<std::pair<std::string, std::string>>& words)
{
    for (const auto& [name, word] : words) {
        const std::string mark = "$" + name;
        std::size_t at = text.find(mark);
        if (at == std::string::npos) throw std::logic_error("no " + mark + " in the design");
        for (; at != std::string::npos; at = text.find(mark, at + word.size())) text.replace(at, mark.size(), word);
    }
    return text;
}

/// Reads a design that must be sound.
inline Piece piece_of(const std::string& text)
{
    DesignRead read = read_design(text, testing::shared_facts());
    if (!read.piece) throw std::logic_error(write_faults(read.faults, "design", text));
    return *std::move(read.piece);
}

inline ReportContent content_of(const Piece& piece) { return check_piece(piece, testing::shared_facts()); }
inline ReportContent content_of(const std::string& text) { return content_of(piece_of(text)); }

inline std::string list_of(const std::vector<Finding>& findings)
{
    std::string list;
    for (const Finding& f : findings)
        list += "\n" + std::string(word_of(f.verdict)) + " " + f.check + " of " + f.subject + ": " + f.headline;
    return list;
}

/// The one finding of a check and a subject; without a subject the only one of that check.
inline const Finding& finding_of(const std::vector<Finding>& findings, std::string_view check, std::string_view subject = "")
{
    const Finding* found = nullptr;
    for (const Finding& f : findings) {
        if (f.check != check || (!subject.empty() && f.subject != subject)) continue;
        if (found)
            throw std::logic_error("more than one " + std::string(check) + " of " + std::string(subject) + list_of(findings));
        found = &f;
    }
    if (!found) throw std::logic_error("no " + std::string(check) + " of " + std::string(subject) + list_of(findings));
    return *found;
}

inline std::size_t count_of(const std::vector<Finding>& findings, std::string_view check)
{
    return static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.check == check; }));
}

inline double value_of(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name) return v.value;
    throw std::logic_error("no value " + std::string(name) + " in " + finding.check + " of " + finding.subject);
}

inline bool has_value(const Finding& finding, std::string_view name)
{
    return std::any_of(finding.values.begin(), finding.values.end(), [&](const NamedValue& v) { return v.name == name; });
}

/// A piece with everything that its checks need, for the first combination of its woods.
struct Bench {
    Prepared prepared;
    const Piece& piece = *prepared.piece;
    const Layout& layout = *prepared.layout;

    /// The copy of that label, "slat #2".
    std::size_t copy(std::string_view name) const
    {
        const auto copies = piece.copies_named(name);
        if (copies.size() != 1) throw std::logic_error("not one copy: " + std::string(name));
        return copies.front();
    }
    /// The contact between two copies.
    const Contact& contact(std::string_view a, std::string_view b) const
    {
        const std::size_t i = copy(a), j = copy(b);
        for (const Contact& c : layout.contacts)
            if ((c.first == i && c.second == j) || (c.first == j && c.second == i)) return c;
        throw std::logic_error("no contact between " + std::string(a) + " and " + std::string(b));
    }
    /// What bears a copy, by name.
    std::vector<std::string> borne_by(std::string_view name) const
    {
        std::vector<std::string> names;
        for (const Bearing& b : prepared.layout->path.bearings[copy(name)]) names.push_back(piece.label(b.below));
        std::sort(names.begin(), names.end());
        return names;
    }
};

inline std::unique_ptr<Bench> bench_of(Piece piece)
{
    const LaidOut laid = lay_out(std::move(piece));
    return std::unique_ptr<Bench>(
        new Bench{prepare(laid, testing::shared_facts(), combinations_of(*laid.piece).front(), laid.piece->units)});
}
inline std::unique_ptr<Bench> bench_of(const std::string& text) { return bench_of(piece_of(text)); }

/// A design of data/designs/, as built in.
inline std::string built_in_design(const std::string& name)
{
    const std::string* text = testing::shared_facts().text("designs/" + name + ".toml");
    if (!text) throw std::logic_error("no such design: " + name);
    return *text;
}

/// Head of a design in millimetres: a piece without loads in a room whose moisture contents are given.
constexpr std::string_view kStill = R"(
[piece]
name = "Test piece"
units = "mm"
use = "none"
[room]
driest = { moisture = $driest }
dampest = { moisture = $dampest }
moisture_at_glue_up = $made
)";

/// The two rooms that the cross-grain cases are told for: made at 9 %, 5.4 to 11.9 %; made at 8 %, 6 to 10 %.
inline std::string still_head(bool wide_room)
{
    const std::string head(kStill);
    return wide_room ? fill(head, {{"driest", "5.4"}, {"dampest", "11.9"}, {"made", "9"}})
                     : fill(head, {{"driest", "6"}, {"dampest", "10"}, {"made", "8"}});
}

} // namespace checked
