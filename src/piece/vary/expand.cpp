// A design with every pattern, repeat, copy and mirror written out as single copies.

#include "piece/read/read_design.hpp"

#include "piece/read/read_pattern.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace jointwright {

namespace {

constexpr std::string_view kFirstLine = "# Every copy written out.\n";

bool is_placing(std::string_view key)
{
    return key == "at" || key == "repeat" || key == "copies" || key == "mirror" || key == "mirrored";
}

/// A coordinate in the unit of the piece, to 1e-9 of it: far below what matters, and the same again when it is read and written back.
std::string coordinate(double metres_from_origin, LengthUnit unit)
{
    std::string text = fmt::format("{:.9f}", number_in(metres(metres_from_origin), unit));
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string place_of(const Copy& copy, LengthUnit unit, std::string_view between)
{
    const Point& lo = copy.box.lo;
    std::string text =
        fmt::format("at = [{}, {}, {}]", coordinate(lo[0], unit), coordinate(lo[1], unit), coordinate(lo[2], unit));
    std::string axes;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (copy.mirrored[index_of(axis)]) axes += fmt::format("{}\"{}\"", axes.empty() ? "" : ", ", name_of(axis));
    if (!axes.empty()) text += fmt::format("{}mirrored = [{}]", between, axes);
    return text;
}

std::string places_of(const Piece& piece, std::size_t part)
{
    std::string text;
    bool first = true;
    for (const Copy& copy : piece.copies) {
        if (copy.part != part) continue;
        if (copy.number == 1) {
            text += place_of(copy, piece.units, "\n") + "\n";
            continue;
        }
        text += fmt::format("{}    {{ {} }}", first ? "copies = [\n" : ",\n", place_of(copy, piece.units, ", "));
        first = false;
    }
    return first ? text : text + "\n]\n";
}

std::string line_of(const DesignEntry& entry) { return fmt::format("{} = {}\n", toml_key(entry.key), toml_value(entry.value)); }

std::string part_lines(const DesignValue& part, const Piece& piece, std::size_t index)
{
    std::string text;
    bool placed = false;
    for (const DesignEntry& entry : part.entries) {
        if (!is_placing(entry.key)) {
            text += line_of(entry);
        } else if (!placed) {
            text += places_of(piece, index);
            placed = true;
        }
    }
    return text;
}

std::string table_lines(const DesignValue& table)
{
    std::string text;
    for (const DesignEntry& entry : table.entries) text += line_of(entry);
    return text;
}

std::string section_text(const DesignEntry& entry, const Piece& piece)
{
    const std::string key = toml_key(entry.key);
    if (entry.value.kind == DesignValue::Kind::table) return fmt::format("\n[{}]\n{}", key, table_lines(entry.value));
    std::string text;
    for (std::size_t i = 0; i < entry.value.items.size(); ++i) {
        const DesignValue& item = entry.value.items[i];
        text += fmt::format("\n[[{}]]\n{}", key, entry.key == "part" ? part_lines(item, piece, i) : table_lines(item));
    }
    return text;
}

} // namespace

std::string expand_design(const Piece& piece, std::string_view text, const Facts& facts)
{
    auto tree = parse_tree(text);
    DesignValue* root = std::get_if<DesignValue>(&tree);
    if (root == nullptr) throw std::invalid_argument("expand_design: the text is not the one that the piece was read from");
    Reading reading(text, facts); // the text has been read before: there is nothing to report
    write_out_pattern(reading, *root, text);
    std::string out(kFirstLine);
    for (const DesignEntry& entry : root->entries) out += section_text(entry, piece);
    return out;
}

} // namespace jointwright
