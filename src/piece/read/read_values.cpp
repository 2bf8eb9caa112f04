#include "piece/read/read_values.hpp"

#include "measure/text.hpp"

#include <fmt/core.h>

#include <cmath>

namespace jointwright {

const DesignValue* DesignTable::may(std::string_view key)
{
    known_.emplace(key);
    return table_.find(key);
}

const DesignValue* DesignTable::must(std::string_view key, std::string_view example)
{
    const DesignValue* value = may(key);
    if (value == nullptr)
        reading_.fault(table_.spot, "missing-key", fmt::format("{} lacks {}", name_, key), with_key(key, example));
    return value;
}

std::string DesignTable::with_key(std::string_view key, std::string_view example) const
{
    const std::string line = fmt::format("{} = {}", key, example);
    const std::string written = reading_.source.at(table_.spot);
    const bool inside_a_line = written.size() > 1 && written.front() == '{' && written.back() == '}';
    if (!inside_a_line) return line;
    if (table_.entries.empty()) return reading_.source.replaced(table_.spot, "{ " + line + " }");
    const std::size_t last = written.find_last_not_of(" \t", written.size() - 2);
    return reading_.source.replaced(table_.spot, written.substr(0, last + 1) + ", " + line + " }");
}

void DesignTable::not_yet(std::string_view key, std::string_view what)
{
    if (may(key) == nullptr) return;
    reading_.fault(key_spot(key), "not-yet", fmt::format("{} cannot be used yet", key), {}, std::string(what));
}

void DesignTable::finish()
{
    const std::vector<std::string> known(known_.begin(), known_.end());
    for (const DesignEntry& entry : table_.entries) {
        if (known_.count(entry.key) > 0) continue;
        const auto nearest = reading_.is_full() ? std::vector<std::string>{} : nearest_spellings(entry.key, known, 1);
        std::string fix;
        if (!nearest.empty()) fix = reading_.source.replaced(entry.key_spot, nearest.front());
        std::string all;
        for (const std::string& key : known) all += (all.empty() ? "" : ", ") + key;
        reading_.fault(entry.key_spot, "unknown-key", fmt::format("{} has no key {}", name_, in_quotes(entry.key)),
                       std::move(fix), "keys here: " + all);
    }
}

Spot DesignTable::key_spot(std::string_view key) const
{
    for (const DesignEntry& entry : table_.entries)
        if (entry.key == key) return entry.key_spot;
    return table_.spot;
}

bool is_kind(Reading& reading, const DesignValue& value, std::string_view what, DesignValue::Kind wanted,
             std::string_view example)
{
    if (value.kind == wanted) return true;
    const std::string fix = example.empty() ? std::string{} : reading.fixed(value, example);
    reading.fault(value.spot, "wrong-type",
                  fmt::format("{} is {}, but {} is wanted here", what, words_for(value.kind), words_for(wanted)), fix);
    return false;
}

std::vector<const DesignValue*> one_or_more(const DesignValue& value)
{
    if (value.kind != DesignValue::Kind::list) return {&value};
    std::vector<const DesignValue*> items;
    for (const DesignValue& item : value.items) items.push_back(&item);
    return items;
}

std::optional<std::string> as_text(Reading& reading, const DesignValue& value, std::string_view what)
{
    const std::string example = value.is_number() ? toml_text(reading.source.at(value.spot)) : std::string{};
    if (!is_kind(reading, value, what, DesignValue::Kind::text, example)) return std::nullopt;
    return value.text;
}

std::optional<bool> as_truth(Reading& reading, const DesignValue& value, std::string_view what)
{
    const bool word = value.kind == DesignValue::Kind::text && (value.text == "true" || value.text == "false");
    if (!is_kind(reading, value, what, DesignValue::Kind::truth, word ? value.text : "true")) return std::nullopt;
    return value.truth;
}

std::optional<std::size_t> as_choice(Reading& reading, const DesignValue& value, std::string_view what, std::string_view noun,
                                     const std::vector<std::string>& choices)
{
    if (!is_kind(reading, value, what, DesignValue::Kind::text, toml_text(choices.front()))) return std::nullopt;
    const std::string* text = &value.text;
    for (std::size_t i = 0; i < choices.size(); ++i)
        if (choices[i] == *text) return i;
    const auto nearest = nearest_spellings(*text, choices, 1);
    reading.unknown_name(value, "unknown-name", fmt::format("no {} is named {}", noun, in_quotes(*text)), nearest,
                         fmt::format("{} is one of {}", what, listed(choices)));
    return std::nullopt;
}

std::optional<Side> as_side(Reading& reading, const DesignValue& value, std::string_view what)
{
    const auto choice = as_choice(reading, value, what, "side", {"left", "right", "front", "back", "bottom", "top"});
    if (!choice) return std::nullopt;
    return static_cast<Side>(*choice);
}

std::optional<Axis> as_axis(Reading& reading, const DesignValue& value, std::string_view what)
{
    const auto choice = as_choice(reading, value, what, "axis", {"x", "y", "z"});
    if (!choice) return std::nullopt;
    return static_cast<Axis>(*choice);
}

namespace {

/// A list whose items are all read by one reader; an item twice is reported.
template <class T, class Reader>
std::optional<std::vector<T>> as_distinct(Reading& reading, const DesignValue& value, std::string_view what,
                                          std::string_view example, Reader read)
{
    if (!is_kind(reading, value, what, DesignValue::Kind::list, example)) return std::nullopt;
    std::vector<T> result;
    bool good = true;
    for (const DesignValue& item : value.items) {
        const auto one = read(reading, item, what);
        if (!one) {
            good = false;
            continue;
        }
        for (const T& before : result)
            if (before == *one) {
                reading.fault(item.spot, "out-of-range", fmt::format("{} names {} twice", what, in_quotes(item.text)));
                good = false;
            }
        result.push_back(*one);
    }
    if (!good) return std::nullopt;
    return result;
}

} // namespace

std::optional<std::vector<Side>> as_sides(Reading& reading, const DesignValue& value, std::string_view what)
{
    const std::string example = value.kind == DesignValue::Kind::text ? "[" + toml_text(value.text) + "]" : R"(["bottom"])";
    return as_distinct<Side>(reading, value, what, example, as_side);
}

std::optional<std::vector<Axis>> as_axes(Reading& reading, const DesignValue& value, std::string_view what)
{
    const std::string example = value.kind == DesignValue::Kind::text ? "[" + toml_text(value.text) + "]" : R"(["x"])";
    return as_distinct<Axis>(reading, value, what, example, as_axis);
}

} // namespace jointwright
