#pragma once
// Single changes of a design, by table and key: what a maker would write into the file, and a program can.

#include "measure/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace jointwright {

/// One value of one table of a design.
struct DesignEdit {
    enum class Table { part, joint, wood, room, piece };
    enum class Unit {
        none,
        one,
        metres,
        percent
    }; ///< of texts, truths and keys taken away; of counts and shares; of lengths; of moisture
    Table table = Table::part;
    std::string id;  ///< id of a part or a wood; "first / second" of a joint as its `between` has them; empty for room and piece
    std::string key; ///< "thickness", "tenon.length", "copies.1.at.top": names of tables and places in lists (from 0) with points
    std::variant<std::monostate, double, std::string, std::vector<double>, bool> value; ///< SI; nothing: the key is taken away
    Unit unit = Unit::none;
};

/// "part", "joint".
std::string_view name_of(DesignEdit::Table table);
/// "m", "1", "%"; nothing for the others.
std::optional<std::string_view> name_of(DesignEdit::Unit unit);

DesignEdit length_edit(DesignEdit::Table table, std::string id, std::string key, Length value);
DesignEdit count_edit(DesignEdit::Table table, std::string id, std::string key, int value);
DesignEdit percent_edit(DesignEdit::Table table, std::string id, std::string key, double value);
DesignEdit text_edit(DesignEdit::Table table, std::string id, std::string key, std::string value);
DesignEdit truth_edit(DesignEdit::Table table, std::string id, std::string key, bool value);
DesignEdit take_away(DesignEdit::Table table, std::string id, std::string key);

/// A text that is the same for the same edits.
std::string words_of(const std::vector<DesignEdit>& edits);

} // namespace jointwright
