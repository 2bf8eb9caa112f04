#pragma once
// What the maker wrote, every value with its place: the design before anything of it is understood.

#include "piece/text/fault.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace jointwright {

struct DesignEntry;

/// A value of the design file.
struct DesignValue {
    enum class Kind { text, whole, number, truth, list, table, date };
    Kind kind = Kind::table;
    Spot spot;
    std::string text;  ///< of a text
    double number = 0; ///< of a whole number or a number; may be NaN or infinite
    bool truth = false;
    std::vector<DesignValue> items;   ///< of a list
    std::vector<DesignEntry> entries; ///< of a table, in the order of the file

    bool is_number() const { return kind == Kind::whole || kind == Kind::number; }
    /// The value under a key of this table; nullptr when there is none.
    const DesignValue* find(std::string_view key) const;
};

struct DesignEntry {
    std::string key;
    Spot key_spot;
    DesignValue value;
};

/// "a text", "a whole number", "a list".
std::string_view words_for(DesignValue::Kind kind);

/// Deepest nesting of tables and lists that is read.
constexpr int kDeepest = 32;

/// Reads TOML. The root is a table.
/// @return the tree, or the one fault that keeps it from being read: "syntax"
std::variant<DesignValue, Fault> parse_tree(std::string_view text);

/// A text as TOML writes it, quoted and escaped.
std::string toml_text(std::string_view text);
/// A value on one line as TOML writes it. Numbers with as many digits as they need.
std::string toml_value(const DesignValue& value);
/// A key as TOML writes it, in quotes where needed.
std::string toml_key(std::string_view key);

} // namespace jointwright
