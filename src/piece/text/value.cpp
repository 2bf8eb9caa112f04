#include "piece/text/value.hpp"

#include "piece/text/source_text.hpp"
#include "piece/text/text_limits.hpp"

#include <fmt/core.h>
#include <toml++/toml.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <sstream>
#include <vector>

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

/// The line up to its comment, without the blanks at its ends.
std::string bare_line(std::string_view line)
{
    std::string whole = printable(line.substr(0, line.find('#')));
    const std::size_t first = whole.find_first_not_of(" \t"), last = whole.find_last_not_of(" \t");
    return first == std::string::npos ? std::string{} : whole.substr(first, last - first + 1);
}

/// `name = value` where a value that TOML cannot read needs quotes: `17 1/8`, `12in`, `oak`. Not numbers: those want mending, not quotes.
std::string quoted_line(const std::string& line)
{
    const std::size_t equals = line.find('=');
    if (equals == std::string::npos || equals == 0) return {};
    const std::size_t first = line.find_first_not_of(" \t", equals + 1);
    if (first == std::string::npos || line.find_first_of("\"'[]{}=", first) != std::string::npos) return {};
    const std::string written = line.substr(first);
    if (written.find_first_not_of("+-0123456789.eE_") == std::string::npos) return {};
    return fmt::format("{} = {}", line.substr(0, line.find_last_not_of(" \t", equals - 1) + 1), toml_text(written));
}

/// Typeset quotes made plain.
std::string with_plain_quotes(std::string line)
{
    for (const std::string_view typeset : {"\u201c", "\u201d", "\u201e", "\u00ab", "\u00bb", "\u2033"})
        for (std::size_t at = line.find(typeset); at != std::string::npos; at = line.find(typeset, at))
            line.replace(at, typeset.size(), "\"");
    return line;
}

/// 18,5 made 18.5, where that is the whole value.
std::string with_decimal_point(const std::string& line)
{
    static const std::regex comma(R"(^(.*=\s*[+-]?\d+),(\d+)$)");
    std::smatch m;
    return std::regex_match(line, m, comma) ? m[1].str() + "." + m[2].str() : std::string{};
}

bool leaves_quote_open(const std::string& line) { return std::count(line.begin(), line.end(), '"') % 2 == 1; }

/// True when the text with that line in place of its own can be read at least as far as the next line.
bool mends(std::string_view text, unsigned number, const std::string& line)
{
    std::string changed;
    unsigned at = 1;
    for (std::size_t from = 0; from <= text.size(); ++at) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        changed += at == number ? line : std::string(text.substr(from, end - from));
        changed += '\n';
        from = end + 1;
    }
    try {
        static_cast<void>(toml::parse(std::string_view(changed)));
        return true;
    } catch (const toml::parse_error& error) {
        return error.source().begin.line > number;
    }
}

/// The line to paste in place of one that TOML cannot read; empty where none is known that mends it.
std::string mended_line(std::string_view text, unsigned number)
{
    const std::string line = bare_line(SourceText(text).line(number));
    std::vector<std::string> candidates{with_plain_quotes(line), with_decimal_point(line), quoted_line(line)};
    if (leaves_quote_open(line)) candidates.push_back(line + '"');
    for (const std::string& candidate : candidates)
        if (!candidate.empty() && candidate != line && mends(text, number, candidate)) return candidate;
    return {};
}

/// "Error while parsing array: x" reads "array: x"; what makers meet most in their own words.
std::string plain_words(std::string description, const std::string& line)
{
    if (description.find("redefine") != std::string::npos) {
        const std::size_t equals = line.find('=');
        const std::string name =
            line.substr(0, line.find_last_not_of(" \t", equals == std::string::npos ? equals : equals - 1) + 1);
        return fmt::format("{} is given twice", name);
    }
    if (description.find("control character") != std::string::npos && leaves_quote_open(line))
        return "a quote is opened on this line and not closed";
    constexpr std::string_view kStart = "Error while parsing ";
    if (description.rfind(kStart, 0) == 0) description.erase(0, kStart.size());
    return description;
}

Fault syntax_fault(const toml::parse_error& error, std::string_view text)
{
    Fault fault;
    fault.spot = spot_of(error.source());
    fault.id = "syntax";
    const std::string line = bare_line(SourceText(text).line(fault.spot.line));
    fault.says = fmt::format("this is not valid TOML: {}", plain_words(std::string(error.description()), line));
    fault.fix = mended_line(text, fault.spot.line);
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
