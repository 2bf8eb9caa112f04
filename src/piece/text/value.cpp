#include "piece/text/value.hpp"

#include "piece/text/source_text.hpp"
#include "piece/text/text_limits.hpp"

#include <fmt/core.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace jointwright {

namespace {

Spot spot_of(const toml::source_region& region)
{
    const bool one_line = region.begin.line == region.end.line && region.end.column > region.begin.column;
    return {region.begin.line, region.begin.column, one_line ? region.end.column - region.begin.column : 1};
}

DesignValue converted(const toml::node& node);

DesignValue converted_table(const toml::table& table)
{
    DesignValue value;
    value.kind = DesignValue::Kind::table;
    for (auto&& [key, node] : table) value.entries.push_back({std::string(key.str()), spot_of(key.source()), converted(node)});
    // The library sorts keys by name; makers read them in the order in which they wrote them.
    std::stable_sort(value.entries.begin(), value.entries.end(), [](const DesignEntry& a, const DesignEntry& b) {
        return std::pair(a.key_spot.line, a.key_spot.column) < std::pair(b.key_spot.line, b.key_spot.column);
    });
    return value;
}

DesignValue converted_kind(const toml::node& node)
{
    DesignValue value;
    if (const auto* table = node.as_table()) return converted_table(*table);
    if (const auto* list = node.as_array()) {
        value.kind = DesignValue::Kind::list;
        for (const toml::node& item : *list) value.items.push_back(converted(item));
    } else if (const auto* text = node.as_string()) {
        value.kind = DesignValue::Kind::text;
        value.text = text->get();
    } else if (const auto* whole = node.as_integer()) {
        value.kind = DesignValue::Kind::whole;
        value.number = static_cast<double>(whole->get());
    } else if (const auto* number = node.as_floating_point()) {
        value.kind = DesignValue::Kind::number;
        value.number = number->get();
    } else if (const auto* truth = node.as_boolean()) {
        value.kind = DesignValue::Kind::truth;
        value.truth = truth->get();
    } else {
        value.kind = DesignValue::Kind::date;
    }
    return value;
}

DesignValue converted(const toml::node& node)
{
    DesignValue value = converted_kind(node);
    value.spot = spot_of(node.source());
    return value;
}

/// A line to paste where a value that TOML cannot read needs quotes: `17 1/8`, `12in`, `oak`, `1,5`.
std::string quoted_line(std::string_view line)
{
    const std::string whole = printable(line.substr(0, line.find('#')));
    const std::size_t equals = whole.find('=');
    if (equals == std::string::npos) return {};
    const std::size_t first = whole.find_first_not_of(" \t", equals + 1);
    if (first == std::string::npos || whole.find_first_of("\"'[]{}=", first) != std::string::npos) return {};
    const std::string written = whole.substr(first, whole.find_last_not_of(" \t") - first + 1);
    const std::size_t key = whole.find_first_not_of(" \t");
    const std::string name = whole.substr(key, whole.find_last_not_of(" \t", equals - 1) - key + 1);
    return fmt::format("{} = {}", name, toml_text(written));
}

/// "Error while parsing array: x" reads "array: x".
std::string plain_words(std::string description)
{
    constexpr std::string_view kStart = "Error while parsing ";
    if (description.rfind(kStart, 0) == 0) description.erase(0, kStart.size());
    return description;
}

Fault syntax_fault(const toml::parse_error& error, std::string_view text)
{
    Fault fault;
    fault.spot = spot_of(error.source());
    fault.id = "syntax";
    fault.says = fmt::format("this is not valid TOML: {}", plain_words(std::string(error.description())));
    fault.fix = quoted_line(SourceText(text).line(fault.spot.line));
    fault.note = "the rest of the file is read once this is mended";
    return fault;
}

bool is_bare(std::string_view key)
{
    return !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
    });
}

template <class Items, class Write>
std::string joined(const Items& items, Write write)
{
    std::string text;
    for (const auto& item : items) {
        if (!text.empty()) text += ", ";
        text += write(item);
    }
    return text;
}

} // namespace

const DesignValue* DesignValue::find(std::string_view key) const
{
    for (const DesignEntry& entry : entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

std::string_view words_for(DesignValue::Kind kind)
{
    switch (kind) {
    case DesignValue::Kind::text: return "a text";
    case DesignValue::Kind::whole: return "a whole number";
    case DesignValue::Kind::number: return "a number";
    case DesignValue::Kind::truth: return "true or false";
    case DesignValue::Kind::list: return "a list";
    case DesignValue::Kind::table: return "a table";
    case DesignValue::Kind::date: return "a date or time";
    }
    return "a value";
}

std::variant<DesignValue, Fault> parse_tree(std::string_view text)
{
    if (auto fault = text_fault(text)) return *fault;
    try {
        const toml::table table = toml::parse(text);
        return converted(table);
    } catch (const toml::parse_error& error) {
        return syntax_fault(error, text);
    }
}

std::string toml_text(std::string_view text)
{
    std::ostringstream out;
    out << toml::toml_formatter{toml::value<std::string>(std::string(text)), toml::format_flags::allow_unicode_strings};
    return out.str();
}

std::string toml_key(std::string_view key) { return is_bare(key) ? std::string(key) : toml_text(key); }

std::string toml_value(const DesignValue& value)
{
    switch (value.kind) {
    case DesignValue::Kind::text: return toml_text(value.text);
    case DesignValue::Kind::whole: return fmt::format("{:.0f}", value.number);
    case DesignValue::Kind::number: return fmt::format("{}", value.number);
    case DesignValue::Kind::truth: return value.truth ? "true" : "false";
    case DesignValue::Kind::list:
        return "[" + joined(value.items, [](const DesignValue& item) { return toml_value(item); }) + "]";
    case DesignValue::Kind::table:
        if (value.entries.empty()) return "{}";
        return "{ " + joined(value.entries, [](const DesignEntry& e) { return toml_key(e.key) + " = " + toml_value(e.value); }) +
               " }";
    case DesignValue::Kind::date: return "\"\""; // no key takes one, so a design that was read has none
    }
    return "\"\"";
}

} // namespace jointwright
