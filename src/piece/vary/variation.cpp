#include "piece/vary/variation.hpp"

#include "piece/model/placement.hpp"
#include "piece/read/read_pattern.hpp"
#include "piece/vary/drawing_out.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <stdexcept>

namespace jointwright {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kSidesOfAxes{
    {{"left", "right"}, {"front", "back"}, {"bottom", "top"}}};

DesignValue* found(DesignValue& table, std::string_view key)
{
    for (DesignEntry& entry : table.entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

void erase(DesignValue& table, std::string_view key)
{
    table.entries.erase(
        std::remove_if(table.entries.begin(), table.entries.end(), [&](const DesignEntry& entry) { return entry.key == key; }),
        table.entries.end());
}

/// Puts a value under a key, at the place of the one that it replaces or of the table.
void put(DesignValue& table, std::string_view key, DesignValue value)
{
    if (DesignValue* old = found(table, key)) {
        value.spot = old->spot;
        *old = std::move(value);
        return;
    }
    value.spot = table.spot;
    table.entries.push_back({std::string(key), table.spot, std::move(value)});
}

DesignValue bare_number(double number, Spot spot)
{
    DesignValue value;
    value.kind = DesignValue::Kind::number;
    value.number = number;
    value.spot = spot;
    return value;
}

DesignValue bare_text(std::string text, Spot spot)
{
    DesignValue value;
    value.kind = DesignValue::Kind::text;
    value.text = std::move(text);
    value.spot = spot;
    return value;
}

DesignValue list_of_lengths(const double* begin, std::size_t count, LengthUnit unit, Spot spot)
{
    DesignValue list;
    list.kind = DesignValue::Kind::list;
    list.spot = spot;
    for (std::size_t i = 0; i < count; ++i) list.items.push_back(bare_number(number_in(metres(begin[i]), unit), spot));
    return list;
}

DesignValue mirrored_axes(const Copy& copy, Spot spot)
{
    DesignValue list;
    list.kind = DesignValue::Kind::list;
    list.spot = spot;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        if (copy.mirrored[index_of(axis)]) list.items.push_back(bare_text(std::string(name_of(axis)), spot));
    return list;
}

/// Parts as the tree has them, in the order of the piece's.
std::vector<DesignValue*> part_tables(DesignValue& root)
{
    std::vector<DesignValue*> tables;
    if (DesignValue* parts = found(root, "part"))
        for (DesignValue& part : parts->items) tables.push_back(&part);
    return tables;
}

std::string_view size_key(const Part& part, Axis axis)
{
    if (axis == part.grain) return "length";
    return axis == part.face ? "thickness" : "width";
}

/// True when some part is mirrored along an axis: the middle of the piece's size then has a meaning.
bool mirrors_along(DesignValue& root, Axis axis)
{
    for (DesignValue* part : part_tables(root)) {
        const DesignValue* axes = found(*part, "mirror");
        if (axes == nullptr) continue;
        for (const DesignValue& one : axes->items)
            if (one.text == name_of(axis)) return true;
    }
    return false;
}

/// States the place of the other side across an axis instead of the one that `at` states.
/// @param size  of the part across that axis, in the unit of the piece
void state_other_side(DesignValue& at, Axis axis, Length size, LengthUnit unit)
{
    if (at.kind == DesignValue::Kind::list) {
        DesignValue sides;
        sides.kind = DesignValue::Kind::table;
        sides.spot = at.spot;
        for (std::size_t i = 0; i < 3 && i < at.items.size(); ++i)
            sides.entries.push_back({std::string(kSidesOfAxes[i].first), at.spot, at.items[i]});
        at = std::move(sides);
    }
    const auto [near, far] = kSidesOfAxes[index_of(axis)];
    for (DesignEntry& entry : at.entries) {
        if (entry.key != near && entry.key != far) continue;
        const Outcome<Length> place =
            entry.value.is_number() ? Outcome<Length>(length_in(entry.value.number, unit)) : read_length(entry.value.text, unit);
        if (!place) return;
        const bool was_near = entry.key == near;
        entry.value = bare_number(number_in(was_near ? *place + size : *place - size, unit), entry.value.spot);
        entry.key = std::string(was_near ? far : near);
    }
}

/// Every copy written at its own corner; nothing of rows and mirrors is left.
void place_copies(DesignValue& table, const Piece& piece, std::size_t part, const DrawingOut& drawing, double growth)
{
    const Spot spot = found(table, "at") != nullptr ? found(table, "at")->spot : table.spot;
    for (const std::string_view key : {"at", "repeat", "copies", "mirror", "mirrored"}) erase(table, key);
    DesignValue copies;
    copies.kind = DesignValue::Kind::list;
    copies.spot = spot;
    for (std::size_t c = 0; c < piece.copies.size(); ++c) {
        const Copy& copy = piece.copies[c];
        if (copy.part != part) continue;
        Point corner = copy.box.lo;
        corner[index_of(drawing.axis())] += drawing.copy(c).shift * growth;
        DesignValue one;
        one.spot = spot;
        DesignValue& into = copy.number == 1 ? table : one;
        put(into, "at", list_of_lengths(corner.data(), 3, piece.units, spot));
        DesignValue axes = mirrored_axes(copy, spot);
        if (!axes.items.empty()) put(into, "mirrored", std::move(axes));
        if (copy.number > 1) copies.items.push_back(std::move(one));
    }
    if (!copies.items.empty()) put(table, "copies", std::move(copies));
}

/// The point that a turn goes through moves with the first copy.
void move_turn(DesignValue& table, const Piece& piece, std::size_t part, const DrawingOut& drawing, double growth)
{
    DesignValue* turn = found(table, "turn");
    const auto& read = piece.parts[part].turn;
    if (turn == nullptr || !read || found(*turn, "at") == nullptr) return;
    for (std::size_t c = 0; c < piece.copies.size(); ++c) {
        const Copy& copy = piece.copies[c];
        if (copy.part != part || copy.number != 1) continue;
        Point at{};
        for (std::size_t i = 0; i < 3; ++i) at[i] = (copy.box.lo[i] + copy.box.hi[i]) / 2 + read->offset[i];
        at[index_of(drawing.axis())] += (drawing.copy(c).shift + drawing.copy(c).growth / 2) * growth;
        put(*turn, "at", list_of_lengths(at.data(), 3, piece.units, turn->spot));
    }
}

/// Notches of a part that grows along its grain keep their shares of the length.
void spread_notches(DesignValue& table, const Part& part, LengthUnit unit, double scale)
{
    DesignValue* notches = found(table, "notches");
    if (notches == nullptr) return;
    for (std::size_t n = 0; n < notches->items.size() && n < part.notches.size(); ++n) {
        DesignValue& one = notches->items[n];
        for (const auto& [key, length] : {std::pair("first", part.notches[n].first), std::pair("step", part.notches[n].step)})
            if (found(one, key) != nullptr) put(one, key, bare_number(number_in(length * scale, unit), one.spot));
    }
}

void move_loads(DesignValue& root, const Piece& piece, const DrawingOut& drawing, double growth)
{
    DesignValue* loads = found(root, "load");
    const std::size_t i = index_of(drawing.axis());
    for (std::size_t n = 0; loads != nullptr && n < loads->items.size() && n < piece.loads.size(); ++n) {
        DesignValue* at = found(loads->items[n], "at");
        if (at == nullptr || i >= at->items.size()) continue; // in plan a load has no height
        const double place = piece.loads[n].at[i];
        at->items[i] = bare_number(number_in(metres(place + drawing.shift_at(place) * growth), piece.units), at->items[i].spot);
    }
}

void enlarge(DesignValue& root, const Piece& piece, Axis axis, double by)
{
    DesignValue* head = found(root, "piece");
    if (head == nullptr || !piece.size) return;
    Point size = *piece.size;
    size[index_of(axis)] += by;
    put(*head, "size", list_of_lengths(size.data(), 3, piece.units, head->spot));
}

} // namespace

std::string_view name_of(VariedSize what)
{
    switch (what) {
    case VariedSize::thickness: return "thickness";
    case VariedSize::width: return "width";
    case VariedSize::length: return "length";
    }
    return "";
}

Variation::Variation(std::string_view text, const Piece& piece, const Facts& facts, std::size_t part, VariedSize what)
    : text_(text), piece_(piece), facts_(facts), part_(part), what_(what)
{
    auto tree = parse_tree(text);
    DesignValue* root = std::get_if<DesignValue>(&tree);
    if (root == nullptr) throw std::invalid_argument("Variation: the text is not the one that the piece was read from");
    Reading reading(text, facts); // the text has been read before: there is nothing to report
    write_out_pattern(reading, *root, text);
    root_ = std::move(*root);
    if (what == VariedSize::length) hindrance_ = DrawingOut(piece, part).hindrance();
}

Axis Variation::axis() const
{
    const Part& part = piece_.parts[part_];
    if (what_ == VariedSize::length) return part.grain;
    return what_ == VariedSize::thickness ? part.face : part.width_axis();
}

Length Variation::as_drawn() const
{
    const Part& part = piece_.parts[part_];
    if (what_ == VariedSize::length) return part.length;
    return what_ == VariedSize::thickness ? part.thickness : part.width;
}

DesignRead Variation::with_size(Length size, HeldSide held) const
{
    return read_design(what_ == VariedSize::length ? drawn_out(size) : with_part_size(size, held), text_, facts_);
}

DesignValue Variation::with_part_size(Length size, HeldSide held) const
{
    DesignValue root = root_;
    DesignValue& part = *part_tables(root)[part_];
    put(part, name_of(what_), bare_number(number_in(size, piece_.units), part.spot));
    if (held == HeldSide::other) {
        if (DesignValue* at = found(part, "at")) state_other_side(*at, axis(), as_drawn(), piece_.units);
        if (DesignValue* copies = found(part, "copies"))
            for (DesignValue& one : copies->items)
                if (DesignValue* at = found(one, "at")) state_other_side(*at, axis(), as_drawn(), piece_.units);
    }
    keep_loads_on_it(root, size, held);
    // Where nothing is mirrored about it, the stated size is what the drawing came to, not a wish: a thicker part may pass it.
    if (size > as_drawn() && !mirrors_along(root, axis())) enlarge(root, piece_, axis(), in_metres(size - as_drawn()));
    return root;
}

/// A load at a point of the part stays at the same share of the size that changes.
void Variation::keep_loads_on_it(DesignValue& root, Length size, HeldSide held) const
{
    DesignValue* loads = found(root, "load");
    const std::size_t i = index_of(axis());
    for (std::size_t n = 0; loads != nullptr && n < loads->items.size() && n < piece_.loads.size(); ++n) {
        const StatedLoad& load = piece_.loads[n];
        DesignValue* at = found(loads->items[n], "at");
        if (load.patch || at == nullptr || i >= at->items.size() || load.copies.empty()) continue;
        const Copy& copy = piece_.copies[load.copies.front()];
        if (copy.part != part_) continue;
        const bool far_held = is_far(side_of(held)) != copy.mirrored[i];
        const double still = far_held ? copy.box.hi[i] : copy.box.lo[i];
        const double place = still + (load.at[i] - still) * (size / as_drawn());
        at->items[i] = bare_number(number_in(metres(place), piece_.units), at->items[i].spot);
    }
}

DesignValue Variation::drawn_out(Length size) const
{
    DesignValue root = root_;
    const DrawingOut drawing(piece_, part_);
    const double growth = in_metres(size - as_drawn());
    const auto tables = part_tables(root);
    for (std::size_t p = 0; p < tables.size() && p < piece_.parts.size(); ++p) {
        const Part& part = piece_.parts[p];
        const double grown = drawing.growth_of(p) * growth, before = box_sizes(part)[index_of(drawing.axis())];
        place_copies(*tables[p], piece_, p, drawing, growth);
        move_turn(*tables[p], piece_, p, drawing, growth);
        if (grown == 0) continue;
        put(*tables[p], size_key(part, drawing.axis()),
            bare_number(number_in(metres(before + grown), piece_.units), tables[p]->spot));
        if (part.grain == drawing.axis()) spread_notches(*tables[p], part, piece_.units, (before + grown) / before);
    }
    move_loads(root, piece_, drawing, growth);
    enlarge(root, piece_, drawing.axis(), drawing.whole() * growth);
    return root;
}

Side Variation::side_of(HeldSide held) const
{
    bool far = false;
    DesignValue root = root_;
    const DesignValue* at = found(*part_tables(root)[part_], "at");
    if (at != nullptr && at->find(kSidesOfAxes[index_of(axis())].second) != nullptr) far = true;
    if (held == HeldSide::other) far = !far;
    return static_cast<Side>(2 * index_of(axis()) + (far ? 1 : 0));
}

std::string Variation::words(HeldSide held) const
{
    if (what_ == VariedSize::length) return fmt::format("the piece is drawn out with it, along {}", name_of(axis()));
    return fmt::format("its {} side stays where it is{}", name_of(side_of(held)),
                       held == HeldSide::stated ? "" : ", since what touches it there would come apart otherwise");
}

} // namespace jointwright
