#include "facts/room_months.hpp"

#include "facts/table_reader.hpp"

namespace jointwright {

namespace {

constexpr std::string_view kRoomTable = "rooms.toml";
constexpr double kWettest = 30; // percent: where the table of equilibria ends

MonthlyMoisture twelve_of(const toml::node& node, std::string_view room)
{
    const auto broken = [&] {
        return BrokenData(std::string(kRoomTable) + ": months of " + std::string(room) +
                          ": twelve numbers from 0 to 30 are wanted");
    };
    const toml::array* list = node.as_array();
    MonthlyMoisture months{};
    if (!list || list->size() != months.size()) throw broken();
    for (std::size_t i = 0; i < months.size(); ++i) {
        const auto number = (*list)[i].value<double>();
        if (!number || !(*number >= 0 && *number <= kWettest)) throw broken();
        months[i] = *number;
    }
    return months;
}

} // namespace

std::optional<MonthlyMoisture> months_of_room(const Facts& facts, std::string_view room)
{
    const RoomRecord* record = facts.find_room(room);
    const std::string* text = facts.text(kRoomTable);
    if (!record || !text) return std::nullopt;
    const toml::table table = parse_table(*text, kRoomTable);
    const toml::node* rooms = table.get("room");
    if (!rooms || !rooms->is_array()) return std::nullopt;
    for (const toml::node& row : *rooms->as_array()) {
        const toml::table* entry = row.as_table();
        if (!entry || (*entry)["name"].value_or<std::string_view>("") != record->name) continue;
        const toml::node* months = entry->get("months");
        return months ? std::optional(twelve_of(*months, record->name)) : std::nullopt;
    }
    return std::nullopt;
}

} // namespace jointwright
