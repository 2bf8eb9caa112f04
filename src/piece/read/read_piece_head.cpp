// [piece]: name, units, use, what it carries, its size.

#include "piece/read/readers.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

const std::vector<std::string> kUses{"seat", "table", "shelf", "cabinet", "panel", "none", "door", "gate"};
const std::vector<std::string> kUnits{"in", "mm", "cm"};

void read_size(Reading& reading, const DesignValue& value, Piece& piece)
{
    if (const auto size = as_lengths(reading, value, "size", 3, LengthRule::size, "[42, 14, 17.5]"))
        piece.size = Point{(*size)[0], (*size)[1], (*size)[2]};
}

} // namespace

void read_piece_head(DesignTable& table, Piece& piece)
{
    Reading& reading = table.reading();
    // The unit first: every bare length hangs on it.
    if (const DesignValue* units = table.must("units", R"("in")"))
        if (const auto choice = as_choice(reading, *units, "units", "unit", kUnits))
            piece.units = *length_unit_named(kUnits[*choice]);
    reading.units = piece.units;
    if (const DesignValue* name = table.must("name", R"("Cloakroom boot bench")"))
        if (auto text = as_text(reading, *name, "name")) piece.name = std::move(*text);
    if (const DesignValue* use = table.must("use", R"("seat")"))
        if (const auto choice = as_choice(reading, *use, "use", "use", kUses)) piece.use = static_cast<Use>(*choice);
    if (const DesignValue* size = table.may("size")) {
        reading.size_stated = true;
        reading.about_shapes = true;
        read_size(reading, *size, piece);
        reading.about_shapes = false;
    }
}

void read_piece_names(DesignTable& table, const PartIds& ids, Piece& piece)
{
    Reading& reading = table.reading();
    const bool bears = bears_something(piece.use);
    const std::string example = ids.empty() ? R"(["slat"])" : "[" + toml_text(ids.begin()->first) + "]";
    const DesignValue* carries = bears ? table.must("carries", example) : table.may("carries");
    if (carries != nullptr) {
        if (auto names = as_part_names(reading, *carries, "carries", ids)) {
            if (bears && names->empty())
                reading.fault(carries->spot, "missing-key",
                              fmt::format("carries names no part, but a {} bears people or goods on some", name_of(piece.use)),
                              reading.fixed(*carries, example));
            piece.carries = std::move(*names);
        }
    }
    if (const DesignValue* wall = table.may("wall"))
        if (auto names = as_part_names(reading, *wall, "wall", ids)) piece.wall = std::move(*names);
}

} // namespace jointwright
