// [[part]]: size, wood and axes of a part, and its copies.

#include "piece/model/turn.hpp"
#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

bool read_size(DesignTable& table, std::string_view key, std::string_view example, Length& into)
{
    const DesignValue* value = table.must(key, table.reading().lengths_example(example));
    if (value == nullptr) return false;
    const auto length = as_length(table.reading(), *value, key, LengthRule::size);
    if (length) into = *length;
    return length.has_value();
}

bool read_axis(DesignTable& table, std::string_view key, std::string_view example, Axis& into)
{
    const DesignValue* value = table.must(key, example);
    if (value == nullptr) return false;
    const auto axis = as_axis(table.reading(), *value, key);
    if (axis) into = *axis;
    return axis.has_value();
}

/// Axes of length and thickness; they must differ.
bool read_axes(DesignTable& table, Part& part)
{
    const bool grain = read_axis(table, "grain", R"("x")", part.grain);
    const bool face = read_axis(table, "face", R"("z")", part.face);
    if (part.grain != part.face) return grain && face;
    const Axis other = part.grain == Axis::z ? Axis::y : Axis::z;
    part.face = other; // so that the part has three axes whatever was written
    if (!grain || !face) return false;
    const DesignValue& value = *table.may("face");
    table.reading().fault(value.spot, "same-axis", fmt::format("grain and face both run along {}", name_of(part.grain)),
                          table.reading().fixed(value, toml_text(name_of(other))),
                          "the length runs along one axis, the thickness along another");
    return false;
}

void read_wood_of(DesignTable& table, const Piece& piece, Part& part)
{
    Reading& reading = table.reading();
    const NotAboutShapes scope(reading);
    std::vector<std::string> ids;
    for (const WoodChoice& wood : piece.woods)
        if (!wood.id.empty()) ids.push_back(wood.id);
    const DesignValue* value = table.must("wood", ids.empty() ? R"("frame")" : toml_text(ids.front()));
    if (value == nullptr) return;
    const auto id = as_text(reading, *value, "wood");
    if (!id) return;
    const auto found =
        std::find_if(piece.woods.begin(), piece.woods.end(), [&](const WoodChoice& wood) { return wood.id == *id; });
    if (found == piece.woods.end()) {
        reading.unknown_name(*value, "unknown-wood", fmt::format("no [[wood]] has the id {}", in_quotes(*id)),
                             nearest_spellings(*id, ids),
                             ids.empty() ? "the design has no [[wood]]" : "woods are named by the id of their [[wood]]");
        return;
    }
    part.wood = static_cast<std::size_t>(found - piece.woods.begin());
}

/// Rings, finish and moisture: those of the wood unless the part has its own.
void read_overrides(DesignTable& table, const Piece& piece, Part& part)
{
    Reading& reading = table.reading();
    const NotAboutShapes scope(reading);
    if (part.wood < piece.woods.size()) {
        const WoodChoice& wood = piece.woods[part.wood];
        part.rings = wood.rings;
        part.finish = wood.finish;
        part.moisture = wood.moisture;
    }
    if (const DesignValue* rings = table.may("rings")) {
        part.own_rings = true;
        if (auto cuts = as_rings(reading, *rings)) part.rings = std::move(*cuts);
    }
    if (part.rings.empty()) part.rings.push_back(degrees(0));
    if (const DesignValue* finish = table.may("finish")) read_finish(reading, *finish, part.finish);
    if (const DesignValue* moisture = table.may("moisture")) part.moisture = as_moisture(reading, *moisture, "moisture");
}

void read_id(DesignTable& table, Part& part)
{
    const DesignValue* id = table.must("id", R"("slat")");
    if (id == nullptr) return;
    auto text = as_id(table.reading(), *id, "id");
    if (!text) return;
    part.id = std::move(*text);
    part.spot = id->spot;
    table.rename(fmt::format("part {}", in_quotes(part.id)));
}

bool too_many(Reading& reading, Spot spot, double copies)
{
    if (copies <= kMostCopies) return false;
    reading.fault(spot, "too-large",
                  fmt::format("the piece would have {:.0f} copies of parts; it may have {}", copies, kMostCopies));
    return true;
}

/// Reads `turn` for a placed part: about an axis, by so many degrees, through the middle of its box or a given point.
void read_turn(Reading& reading, const DesignValue& value, const std::optional<Placement>& placement, Part& part)
{
    if (!is_kind(reading, value, "turn", DesignValue::Kind::table, R"({ about = "y", degrees = 8 })")) return;
    DesignTable table(reading, value, "turn");
    const DesignValue* about = table.must("about", R"("y")");
    const DesignValue* degrees_value = table.must("degrees", "8");
    const DesignValue* at = table.may("at");
    table.finish();
    const auto axis = about ? as_axis(reading, *about, "about") : std::nullopt;
    const auto angle = degrees_value ? as_number(reading, *degrees_value, "degrees", {-360, 360, true, "degrees"}) : std::nullopt;
    std::optional<std::vector<double>> point;
    if (at) point = as_lengths(reading, *at, "at", 3, LengthRule::coordinate, "[0, 0, 0]");
    if (!axis || !angle || !placement || (at && !point)) return;
    Turn turn;
    turn.about = *axis;
    turn.angle = degrees(*angle);
    turn.mirrored_as_placed = placement->placed.mirrored;
    const Point sizes = box_sizes(part);
    for (std::size_t i = 0; point && i < 3; ++i) turn.offset[i] = (*point)[i] - (placement->placed.corner[i] + sizes[i] / 2);
    part.turn = turn;
}

/// Reads one part and its copies. @return whether it could be placed
bool read_part(DesignTable& table, Piece& piece)
{
    Reading& reading = table.reading();
    Part part;
    part.spot = table.spot();
    read_id(table, part);
    read_wood_of(table, piece, part);
    bool sound = read_size(table, "length", "38.5", part.length);
    sound = read_size(table, "width", "3", part.width) && sound;
    sound = read_size(table, "thickness", "0.875", part.thickness) && sound;
    sound = read_axes(table, part) && sound;
    read_overrides(table, piece, part);
    read_shape(table, part, sound);
    const auto placement = read_placement(table, part, sound, piece);
    if (const DesignValue* at = table.may("at")) part.spot = at->spot;
    const DesignValue* turn = table.may("turn");
    table.finish();
    if (turn) read_turn(reading, *turn, placement, part);
    const bool fits = placement && !too_many(reading, part.spot, static_cast<double>(piece.copies.size()) + placement->count());
    if (fits) {
        const std::size_t first = piece.copies.size();
        for (Copy& copy : build_copies(*placement, part, piece.parts.size(), piece.size)) piece.copies.push_back(copy);
        piece.parts.push_back(std::move(part));
        check_outside(reading, piece, first);
    } else {
        piece.parts.push_back(std::move(part));
    }
    return fits;
}

} // namespace

PartIds read_parts(Reading& reading, const DesignValue& list, Piece& piece)
{
    PartIds ids;
    std::map<std::string, unsigned, std::less<>> lines;
    for (const DesignValue* value : tables_of(reading, list, "part")) {
        DesignTable table(reading, *value, "[[part]]");
        const std::size_t before = piece.copies.size();
        const bool placed = read_part(table, piece);
        const Part& part = piece.parts.back();
        if (part.id.empty()) continue;
        const auto [first, fresh] = lines.emplace(part.id, value->find("id")->spot.line);
        if (!fresh) {
            const Spot spot = value->find("id")->spot;
            reading.fault(spot, "duplicate-id", fmt::format("two parts have the id {}", in_quotes(part.id)),
                          reading.source.replaced(spot, toml_text(part.id + " 2")),
                          fmt::format("the first one is in line {}", first->second));
            continue;
        }
        ids[part.id] = placed ? std::optional(static_cast<int>(piece.copies.size() - before)) : std::nullopt;
    }
    return ids;
}

void check_outside(Reading& reading, const Piece& piece, std::size_t first_copy)
{
    if (!piece.size || first_copy >= piece.copies.size()) return;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t i = index_of(axis);
        std::size_t worst = first_copy;
        double most = 0;
        bool far = false;
        int count = 0;
        for (std::size_t c = first_copy; c < piece.copies.size(); ++c) {
            const Box bounds = bounds_of(piece.part_of(c), piece.copies[c]);
            const double before = -bounds.lo[i];
            const double beyond = bounds.hi[i] - (*piece.size)[i];
            const double out = std::max(before, beyond);
            if (out <= kTouch) continue;
            ++count;
            if (out <= most + 1e-9) continue;
            most = out;
            worst = c;
            far = beyond >= before;
        }
        if (count == 0) continue;
        const std::string others = count > 1 ? fmt::format(" ({} copies do, this one most)", count) : std::string{};
        reading.fault(
            piece.part_of(worst).spot, "outside-size",
            fmt::format("{} sticks out of the piece's size by {} along {}, at its {} side{}", piece.label(worst, true),
                        write_small_length(metres(most), reading.units), name_of(axis),
                        name_of(static_cast<Side>(2 * i + (far ? 1 : 0))), others),
            {},
            fmt::format("size along {} is {} {}", name_of(axis), write_length(metres((*piece.size)[i]), reading.units),
                        reading.size_by_pattern ? "by the pattern; for a larger piece state size in [piece]" : "in [piece]"));
    }
}

} // namespace jointwright
