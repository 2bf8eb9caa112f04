#include "piece/vary/editable_design.hpp"

#include "piece/read/read_pattern.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace jointwright {

namespace {

constexpr double kFiner = 1e9; // steps of a number in the unit of the design: far below what matters

/// As a person would write it: without the last digits that come of changing units.
double without_dust(double number) { return std::round(number * kFiner) / kFiner; }

DesignValue number_value(double number, bool whole, Spot spot)
{
    DesignValue value;
    value.kind = whole ? DesignValue::Kind::whole : DesignValue::Kind::number;
    value.number = number;
    value.spot = spot;
    return value;
}

double in_file(double number, DesignEdit::Unit unit, LengthUnit units)
{
    return unit == DesignEdit::Unit::metres ? without_dust(number_in(metres(number), units)) : number;
}

DesignValue value_of(const DesignEdit& edit, LengthUnit units, Spot spot)
{
    if (const double* number = std::get_if<double>(&edit.value)) {
        const double written = in_file(*number, edit.unit, units);
        return number_value(written, edit.unit == DesignEdit::Unit::one && written == std::round(written), spot);
    }
    DesignValue value;
    value.spot = spot;
    if (const std::string* text = std::get_if<std::string>(&edit.value)) {
        value.kind = DesignValue::Kind::text;
        value.text = *text;
        return value;
    }
    if (const bool* truth = std::get_if<bool>(&edit.value)) {
        value.kind = DesignValue::Kind::truth;
        value.truth = *truth;
        return value;
    }
    value.kind = DesignValue::Kind::list;
    for (const double number : std::get<std::vector<double>>(edit.value))
        value.items.push_back(number_value(in_file(number, edit.unit, units), false, spot));
    return value;
}

DesignValue* entry_of(DesignValue& table, std::string_view key)
{
    for (DesignEntry& entry : table.entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

/// What one name of a key with points leads to; a table that is not there yet is made where `make`.
DesignValue* step_into(DesignValue& from, std::string_view name, bool make)
{
    if (from.kind == DesignValue::Kind::list) {
        std::size_t place = 0;
        const auto [end, wrong] = std::from_chars(name.data(), name.data() + name.size(), place);
        const bool good = wrong == std::errc{} && end == name.data() + name.size() && place < from.items.size();
        return good ? &from.items[place] : nullptr;
    }
    if (from.kind != DesignValue::Kind::table) return nullptr;
    if (DesignValue* there = entry_of(from, name)) return there;
    if (!make) return nullptr;
    DesignValue table;
    table.spot = from.spot;
    from.entries.push_back({std::string(name), from.spot, std::move(table)});
    return &from.entries.back().value;
}

/// Puts a value under a key with points, or takes the key away. False where the way there is no way.
bool put_at(DesignValue& table, std::string_view key, const DesignEdit& edit, LengthUnit units)
{
    const bool removes = std::holds_alternative<std::monostate>(edit.value);
    DesignValue* at = &table;
    for (std::size_t point = key.find('.'); point != std::string_view::npos; point = key.find('.')) {
        at = step_into(*at, key.substr(0, point), !removes);
        if (at == nullptr) return removes; // what is not there need not be taken away
        key.remove_prefix(point + 1);
    }
    if (removes) {
        std::erase_if(at->entries, [&](const DesignEntry& entry) { return entry.key == key; });
        return true;
    }
    DesignValue* into = step_into(*at, key, true);
    if (into == nullptr) return false;
    *into = value_of(edit, units, into->spot);
    return true;
}

std::string_view text_of(const DesignValue& table, std::string_view key)
{
    const DesignValue* value = table.find(key);
    return value != nullptr ? std::string_view(value->text) : std::string_view{};
}

bool is_named(const DesignValue& table, const DesignEdit& edit)
{
    if (edit.table != DesignEdit::Table::joint) return text_of(table, "id") == edit.id;
    const DesignValue* between = table.find("between");
    return between != nullptr && between->items.size() == 2 && between->items[0].text + " / " + between->items[1].text == edit.id;
}

std::string section_lines(const DesignValue& table)
{
    std::string text;
    for (const DesignEntry& entry : table.entries) text += fmt::format("{} = {}\n", toml_key(entry.key), toml_value(entry.value));
    return text;
}

std::string section_text(const DesignEntry& entry)
{
    const std::string key = toml_key(entry.key);
    if (entry.value.kind == DesignValue::Kind::table) return fmt::format("[{}]\n{}\n", key, section_lines(entry.value));
    std::string text;
    for (const DesignValue& item : entry.value.items) text += fmt::format("[[{}]]\n{}\n", key, section_lines(item));
    return text;
}

} // namespace

std::string id_of(const Joint& joint) { return joint.first + " / " + joint.second; }

std::optional<Length> length_stated(const DesignValue& value, LengthUnit unit)
{
    if (value.is_number()) return length_in(value.number, unit);
    if (value.kind != DesignValue::Kind::text) return std::nullopt;
    const Outcome<Length> read = read_length(value.text, unit);
    return read ? std::optional<Length>(*read) : std::nullopt;
}

EditableDesign::EditableDesign(std::string_view text, const Piece& piece, const Facts& facts)
    : text_(text), piece_(piece), facts_(facts)
{
    auto tree = parse_tree(text);
    DesignValue* root = std::get_if<DesignValue>(&tree);
    if (root == nullptr) throw std::invalid_argument("EditableDesign: the text is not the one that the piece was read from");
    Reading reading(text, facts); // the text has been read before: there is nothing to report
    write_out_pattern(reading, *root, text);
    root_ = std::move(*root);
}

bool EditableDesign::put_in(DesignValue& root, const DesignEdit& edit) const
{
    DesignValue* section = entry_of(root, name_of(edit.table));
    if (section == nullptr) return false;
    if (section->kind == DesignValue::Kind::table) return put_at(*section, edit.key, edit, piece_.units);
    for (DesignValue& table : section->items)
        if (is_named(table, edit)) return put_at(table, edit.key, edit, piece_.units);
    return false;
}

DesignRead EditableDesign::with(const std::vector<DesignEdit>& edits) const
{
    DesignValue root = root_;
    for (const DesignEdit& edit : edits)
        if (!put_in(root, edit))
            return {std::nullopt,
                    {{Spot{},
                      "unknown-key",
                      fmt::format("the {} \"{}\" has no {}", name_of(edit.table), edit.id, edit.key),
                      {},
                      {}}}};
    return read_design(std::move(root), text_, facts_);
}

std::string EditableDesign::text_with(const std::vector<DesignEdit>& edits) const
{
    DesignValue root = root_;
    for (const DesignEdit& edit : edits) put_in(root, edit);
    std::string text;
    for (const DesignEntry& entry : root.entries) text += section_text(entry);
    return text;
}

const DesignValue* EditableDesign::part_value(std::string_view id, std::string_view key) const
{
    const DesignValue* parts = root_.find("part");
    if (parts == nullptr) return nullptr;
    for (const DesignValue& part : parts->items)
        if (text_of(part, "id") == id) return part.find(key);
    return nullptr;
}

} // namespace jointwright
