#include "piece/vary/design_edit.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

DesignEdit edit_of(DesignEdit::Table table, std::string id, std::string key, DesignEdit::Unit unit)
{
    DesignEdit edit;
    edit.table = table;
    edit.id = std::move(id);
    edit.key = std::move(key);
    edit.unit = unit;
    return edit;
}

} // namespace

std::string_view name_of(DesignEdit::Table table)
{
    switch (table) {
    case DesignEdit::Table::part: return "part";
    case DesignEdit::Table::joint: return "joint";
    case DesignEdit::Table::wood: return "wood";
    case DesignEdit::Table::room: return "room";
    case DesignEdit::Table::piece: return "piece";
    }
    return "";
}

std::optional<std::string_view> name_of(DesignEdit::Unit unit)
{
    switch (unit) {
    case DesignEdit::Unit::none: return std::nullopt;
    case DesignEdit::Unit::one: return "1";
    case DesignEdit::Unit::metres: return "m";
    case DesignEdit::Unit::percent: return "%";
    }
    return std::nullopt;
}

DesignEdit length_edit(DesignEdit::Table table, std::string id, std::string key, Length value)
{
    DesignEdit edit = edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::metres);
    edit.value = in_metres(value);
    return edit;
}

DesignEdit count_edit(DesignEdit::Table table, std::string id, std::string key, int value)
{
    DesignEdit edit = edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::one);
    edit.value = static_cast<double>(value);
    return edit;
}

DesignEdit percent_edit(DesignEdit::Table table, std::string id, std::string key, double value)
{
    DesignEdit edit = edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::percent);
    edit.value = value;
    return edit;
}

DesignEdit text_edit(DesignEdit::Table table, std::string id, std::string key, std::string value)
{
    DesignEdit edit = edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::none);
    edit.value = std::move(value);
    return edit;
}

DesignEdit truth_edit(DesignEdit::Table table, std::string id, std::string key, bool value)
{
    DesignEdit edit = edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::none);
    edit.value = value;
    return edit;
}

DesignEdit take_away(DesignEdit::Table table, std::string id, std::string key)
{
    return edit_of(table, std::move(id), std::move(key), DesignEdit::Unit::none);
}

std::string words_of(const std::vector<DesignEdit>& edits)
{
    std::string words;
    for (const DesignEdit& edit : edits) {
        words += fmt::format("{}|{}|{}|", name_of(edit.table), edit.id, edit.key);
        if (const double* number = std::get_if<double>(&edit.value)) words += fmt::format("{:.9f}", *number);
        if (const std::string* text = std::get_if<std::string>(&edit.value)) words += "\"" + *text;
        if (const bool* truth = std::get_if<bool>(&edit.value)) words += *truth ? "yes" : "no";
        if (const auto* list = std::get_if<std::vector<double>>(&edit.value))
            for (const double number : *list) words += fmt::format("{:.9f},", number);
        if (const bool* truth = std::get_if<bool>(&edit.value)) words += *truth ? "true" : "false";
        words += "\n";
    }
    return words;
}

} // namespace jointwright
