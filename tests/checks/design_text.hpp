#pragma once
// The text of a small design, in millimetres, written in a few lines of a test.

#include <fmt/format.h>

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace checked {

/// What a design begins with: the piece, and its room, which stays at 12 % unless told otherwise. Where `air` is told it stands instead of
/// the driest and the dampest.
struct DesignHead {
    std::string name = "Test piece", use = "none";
    std::vector<std::string> carries = {}, wall = {};
    std::string more = ""; ///< more lines of [piece]
    double driest = 12, dampest = 12, made = 12;
    std::string air = "";
};

/// Sizes of a part in millimetres: along the grain, across it, through it.
struct PartSize {
    double length, width, thickness;
};

/// The lines as they are, the last one ended.
inline std::string lines_text(std::string_view lines)
{
    return lines.empty() || lines.back() == '\n' ? std::string(lines) : std::string(lines) + "\n";
}

/// A list of names, `key = ["one", "two"]`; nothing for none.
inline std::string names_text(std::string_view key, const std::vector<std::string>& names)
{
    return names.empty() ? "" : fmt::format("{} = [\"{}\"]\n", key, fmt::join(names, "\", \""));
}

/// The pieces of a design, one after the other.
inline std::string design(std::initializer_list<std::string> tables) { return fmt::format("{}", fmt::join(tables, "")); }

inline std::string head_text(const DesignHead& head)
{
    const std::string seasons =
        head.air.empty() ? fmt::format("driest = {{ moisture = {} }}\ndampest = {{ moisture = {} }}\n", head.driest, head.dampest)
                         : fmt::format("air = \"{}\"\n", head.air);
    return fmt::format("[piece]\nname = \"{}\"\nunits = \"mm\"\nuse = \"{}\"\n", head.name, head.use) +
           names_text("carries", head.carries) + names_text("wall", head.wall) + lines_text(head.more) +
           fmt::format("[room]\n{}moisture_at_glue_up = {}\n", seasons, head.made);
}

/// The one wood of a design, called stock; its rings are not told where `rings` is empty.
inline std::string wood_text(std::string_view species, std::string_view rings = "flat", std::string_view more = "")
{
    return fmt::format("[[wood]]\nid = \"stock\"\nspecies = \"{}\"\n", species) +
           (rings.empty() ? "" : fmt::format("rings = \"{}\"\n", rings)) + lines_text(more);
}

/// A part of that wood; `more`: more of its lines.
inline std::string part_text(std::string_view id, const PartSize& size, std::string_view grain, std::string_view face,
                             std::string_view at, std::string_view more = "")
{
    return fmt::format("[[part]]\nid = \"{}\"\nwood = \"stock\"\nlength = {}\nwidth = {}\nthickness = {}\n", id, size.length,
                       size.width, size.thickness) +
           fmt::format("grain = \"{}\"\nface = \"{}\"\nat = {}\n", grain, face, at) + lines_text(more);
}

/// A joint; without glue where `glue` is empty.
inline std::string joint_text(std::string_view first, std::string_view second, std::string_view kind, std::string_view glue,
                              std::string_view more = "")
{
    return fmt::format("[[joint]]\nbetween = [\"{}\", \"{}\"]\nkind = \"{}\"\n", first, second, kind) +
           (glue.empty() ? "" : fmt::format("glue = \"{}\"\n", glue)) + lines_text(more);
}

inline std::string load_text(std::string_view name, std::string_view on, double newtons, std::string_view at,
                             std::string_view more = "")
{
    return fmt::format("[[load]]\nname = \"{}\"\non = \"{}\"\nforce = \"{} N\"\nat = {}\n", name, on, newtons, at) +
           lines_text(more);
}

} // namespace checked
