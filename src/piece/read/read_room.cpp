// [room]: the air that the piece will live in, and the moisture of the wood when it is glued up.

#include "piece/read/read_place.hpp"
#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

std::optional<Season> as_season(Reading& reading, const DesignValue& value, const std::string& what)
{
    if (!is_kind(reading, value, what, DesignValue::Kind::table, R"({ humidity = 35, temperature = "20 C" })"))
        return std::nullopt;
    DesignTable table(reading, value, what);
    const DesignValue* moisture = table.may("moisture");
    const DesignValue* humidity = table.may("humidity");
    const DesignValue* temperature = table.may("temperature");
    table.finish();
    if (moisture != nullptr && humidity != nullptr) {
        reading.fault(table.key_spot("moisture"), "one-too-many",
                      fmt::format("{} gives both the humidity of the air and the moisture of the wood; one is enough", what));
        return std::nullopt;
    }
    if (moisture != nullptr) {
        const auto content = as_moisture(reading, *moisture, "moisture");
        if (!content) return std::nullopt;
        return Season{*content};
    }
    if (humidity == nullptr) {
        reading.fault(value.spot, "missing-key", fmt::format("{} lacks humidity", what),
                      fmt::format(R"({} = {{ humidity = 35, temperature = "20 C" }})", what),
                      "or moisture: what the wood settles at, in percent");
        return std::nullopt;
    }
    AirState air;
    const auto percent = as_number(reading, *humidity, "humidity", {0, 100, false, "%"});
    if (temperature != nullptr) {
        const auto read = as_air_temperature(reading, *temperature, "temperature");
        if (!read) return std::nullopt;
        air.temperature = *read;
    } else {
        reading.assumed.push_back(fmt::format("The room's {} air has no temperature: 20 °C is taken.", what));
    }
    if (!percent) return std::nullopt;
    air.humidity = RelativeHumidity::percent(*percent);
    return Season{air};
}

void read_named_air(Reading& reading, const DesignValue& value, Room& room)
{
    const auto text = as_text(reading, value, "air");
    if (!text) return;
    if (const RoomRecord* record = reading.facts.find_room(*text)) {
        room.name = record->name;
        room.outdoors = record->outdoors;
        room.year = year_of_listed(reading.facts, *record);
        room.driest = record->driest;
        room.dampest = record->dampest;
        return;
    }
    reading.unknown_name(value, "unknown-name", fmt::format("no room is named {}", in_quotes(*text)),
                         reading.facts.suggest_rooms(*text), "`jointwright rooms` lists them all; or give driest and dampest");
}

void check_order(Reading& reading, const DesignValue& driest_value, const Room& room)
{
    const MoistureContent driest = moisture_in(room.driest);
    const MoistureContent dampest = moisture_in(room.dampest);
    if (driest <= dampest) return;
    reading.fault(driest_value.spot, "out-of-range",
                  fmt::format("driest lets wood settle at {}, but dampest at {}: they are the wrong way round",
                              write_moisture(driest), write_moisture(dampest)));
}

void read_air(DesignTable& table, Room& room)
{
    Reading& reading = table.reading();
    const DesignValue* air = table.may("air");
    const DesignValue* driest = table.may("driest");
    const DesignValue* dampest = table.may("dampest");
    const PlaceKeys by_place{table.may("place"), table.may("months"), table.may("shelter")};
    if (by_place.any() && (air != nullptr || driest != nullptr || dampest != nullptr)) {
        const char* key = air != nullptr ? "air" : driest != nullptr ? "driest" : "dampest";
        reading.fault(table.key_spot(key), "one-too-many",
                      fmt::format("[room] is described by its place and gives {} as well; one is enough", key));
        return;
    }
    if (by_place.any()) return read_place(reading, by_place, room);
    if (air != nullptr && (driest != nullptr || dampest != nullptr)) {
        reading.fault(table.key_spot("air"), "one-too-many",
                      "[room] names its air and gives driest or dampest as well; one is enough");
        return;
    }
    if (air != nullptr) return read_named_air(reading, *air, room);
    if (driest == nullptr && dampest == nullptr) {
        reading.fault(table.spot(), "missing-key", "[room] lacks air, or driest and dampest", R"(air = "heated, cold winters")",
                      "`jointwright rooms` lists the names; or place = \"Harbin\", a place of that list");
        return;
    }
    driest = table.must("driest", R"({ humidity = 35, temperature = "20 C" })");
    dampest = table.must("dampest", R"({ humidity = 65, temperature = "22 C" })");
    const auto dry = driest != nullptr ? as_season(reading, *driest, "driest") : std::nullopt;
    const auto damp = dampest != nullptr ? as_season(reading, *dampest, "dampest") : std::nullopt;
    if (!dry || !damp) return;
    room.driest = *dry;
    room.dampest = *damp;
    check_order(reading, *driest, room);
}

void tell_frost(Reading& reading, const Room& room)
{
    if (room.year) return; // told there
    for (const Season* season : {&room.driest, &room.dampest})
        if (const auto* air = std::get_if<AirState>(season); air != nullptr && ice_free(*air).temperature > air->temperature) {
            reading.assumed.emplace_back(kFrostWords);
            return;
        }
}

} // namespace

void read_room(DesignTable& table, Room& room)
{
    Reading& reading = table.reading();
    read_air(table, room);
    tell_frost(reading, room);
    if (const DesignValue* moisture = table.must("moisture_at_glue_up", "8"))
        if (const auto content = as_moisture(reading, *moisture, "moisture_at_glue_up")) room.at_glue_up = *content;
    if (const DesignValue* shop = table.may("shop_temperature"))
        if (const auto temperature = as_temperature(reading, *shop, "shop_temperature")) {
            room.shop = *temperature;
            room.shop_stated = true;
        }
    table.not_yet("log", "readings of a logger come later; until then give driest and dampest");
    table.finish();
}

} // namespace jointwright
