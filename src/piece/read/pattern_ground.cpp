#include "piece/read/pattern_ground.hpp"

#include "piece/read/readers.hpp"
#include "wood/moisture_balance.hpp"
#include "wood/movement.hpp"

#include <algorithm>

namespace jointwright {

namespace {

constexpr SeasonalStrain kUnknownStrain{0.012, 0.012}; // of a lively wood in a changeable room; estimated

const DesignValue* table_at(const DesignValue& root, std::string_view key, DesignValue::Kind kind)
{
    const DesignValue* value = root.find(key);
    return value != nullptr && value->kind == kind ? value : nullptr;
}

void take_in(SeasonalStrain& strain, double change)
{
    strain.swell = std::max(strain.swell, change);
    strain.shrink = std::max(strain.shrink, -change);
}

} // namespace

PatternGround pattern_ground(const DesignValue& root, std::string_view text, const Facts& facts)
{
    Reading ahead(text, facts);
    PatternGround ground;
    const DesignValue* head = table_at(root, "piece", DesignValue::Kind::table);
    const DesignValue* room = table_at(root, "room", DesignValue::Kind::table);
    const DesignValue* woods = table_at(root, "wood", DesignValue::Kind::list);
    if (head != nullptr) {
        DesignTable table(ahead, *head, "[piece]");
        read_piece_head(table, ground.piece);
        const DesignValue* units = table_at(*head, "units", DesignValue::Kind::text);
        ground.units_known = units != nullptr && length_unit_named(units->text).has_value();
    }
    if (room != nullptr) {
        DesignTable table(ahead, *room, "[room]");
        read_room(table, ground.piece.room);
    }
    if (woods != nullptr) read_woods(ahead, *woods, ground.piece);
    ground.sound = head != nullptr && room != nullptr && woods != nullptr && ahead.sorted_faults().empty();
    return ground;
}

PatternWood pattern_wood(const WoodChoice& choice, const PatternGround& ground, const Facts& facts)
{
    const PatternWood unknown{choice.id, kUnknownStrain, kUnknownStrain};
    if (!ground.sound) return unknown;
    const Room& room = ground.piece.room;
    PatternWood wood{choice.id, {}, {}};
    const MoistureContent made = choice.moisture.value_or(room.at_glue_up);
    std::vector<const WoodRecord*> records;
    for (const std::string& name : choice.species) records.push_back(facts.find_wood(name));
    if (records.empty()) records.push_back(nullptr); // own test values alone
    for (const WoodRecord* record : records) {
        const auto law = movement_law(facts, record, choice.own_movement);
        if (!std::holds_alternative<MovementLaw>(law)) return unknown;
        for (const Angle& rings : choice.rings)
            for (const Season* season : {&room.driest, &room.dampest}) {
                const BoardStrain strain = board_strain(std::get<MovementLaw>(law), rings, made, moisture_in(*season));
                take_in(wood.width, strain.width);
                take_in(wood.thickness, strain.thickness);
            }
    }
    return wood;
}

} // namespace jointwright
