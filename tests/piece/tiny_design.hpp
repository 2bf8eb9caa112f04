#pragma once
// A small sound design, and the same with some of its text replaced: for tests of single faults.

#include "piece/read/read_design.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tiny {

/// A board with a post on it, a dry joint and a load. Line numbers matter to the tests.
constexpr std::string_view kDesign = R"([piece]
name = "Tiny"
units = "mm"
use = "none"
size = [500, 500, 500]
[room]
air = "heated, cold winters"
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "board"
wood = "oak"
length = 400
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
[[part]]
id = "post"
wood = "oak"
length = 300
width = 40
thickness = 40
grain = "z"
face = "y"
at = [0, 0, 20]
[[joint]]
between = ["post", "board"]
kind = "butt"
[[load]]
name = "pot"
on = "board"
force = "200 N"
patch = [50, 50]
at = [200, 50]
)";

inline std::string replaced(std::string text, std::string_view from, std::string_view to)
{
    const std::size_t at = text.find(from);
    if (at == std::string::npos) throw std::logic_error("not in the tiny design: " + std::string(from));
    return text.replace(at, from.size(), to);
}

/// The tiny design with the first place of each text replaced.
inline std::string design(const std::vector<std::pair<std::string_view, std::string_view>>& changes = {})
{
    std::string text(kDesign);
    for (const auto& [from, to] : changes) text = replaced(text, from, to);
    return text;
}

inline const jointwright::Facts& facts()
{
    static const jointwright::Facts facts(jointwright::embedded_data());
    return facts;
}

inline jointwright::DesignRead read(std::string_view text) { return jointwright::read_design(text, facts()); }

/// Reads a text that must be sound.
inline jointwright::Piece piece(const std::string& text)
{
    auto result = read(text);
    if (!result.piece) throw std::logic_error(jointwright::write_faults(result.faults, "design", text));
    return *std::move(result.piece);
}

/// The messages about a text, as the command line prints them.
inline std::string messages(const std::string& text) { return jointwright::write_faults(read(text).faults, "t.toml", text); }

inline std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

} // namespace tiny
