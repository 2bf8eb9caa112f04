#include "piece/read/read_place.hpp"

#include "facts/places.hpp"
#include "facts/room_months.hpp"
#include "measure/text.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

constexpr const char* kMonthExample = R"({ temperature = "-3 C", humidity = 80 })";

Shelter shelter_of(Reading& reading, const PlaceKeys& keys)
{
    if (!keys.shelter) {
        reading.assumed.push_back("The room says nothing of its shelter: a heated room is taken.");
        return Shelter::heated;
    }
    const auto choice = as_choice(reading, *keys.shelter, "shelter", "shelter", {"heated", "not heated", "outdoors"});
    return choice ? static_cast<Shelter>(*choice) : Shelter::heated;
}

std::optional<AirState> as_month(Reading& reading, const DesignValue& value)
{
    if (!is_kind(reading, value, "a month", DesignValue::Kind::table, kMonthExample)) return std::nullopt;
    DesignTable table(reading, value, "a month");
    const DesignValue* warmth = table.must("temperature", R"("-3 C")");
    const DesignValue* damp = table.must("humidity", "80");
    table.finish();
    const auto temperature = warmth ? as_air_temperature(reading, *warmth, "temperature") : std::nullopt;
    const auto humidity = damp ? as_number(reading, *damp, "humidity", {0, 100, false, "%"}) : std::nullopt;
    if (!temperature || !humidity) return std::nullopt;
    return AirState{RelativeHumidity::percent(*humidity), *temperature};
}

std::optional<MonthlyAir> as_months(Reading& reading, const DesignValue& value)
{
    if (value.kind != DesignValue::Kind::list || value.items.size() != 12) {
        reading.fault(value.spot, "wrong-type", "months is not a list of the air outside in twelve months, January first", {},
                      fmt::format("each month is {}", kMonthExample));
        return std::nullopt;
    }
    MonthlyAir air;
    bool good = true;
    for (std::size_t m = 0; m < air.size(); ++m) {
        const auto month = as_month(reading, value.items[m]);
        if (month)
            air[m] = *month;
        else
            good = false;
    }
    return good ? std::optional(air) : std::nullopt;
}

std::optional<RoomYear> read_listed(Reading& reading, const PlaceKeys& keys, Shelter shelter, Room& room)
{
    const auto text = as_text(reading, *keys.place, "place");
    if (!text) return std::nullopt;
    const auto place = find_place(reading.facts, *text);
    if (!place) {
        reading.unknown_name(*keys.place, "unknown-name", fmt::format("no place is named {}", in_quotes(*text)),
                             suggest_places(reading.facts, *text),
                             "`jointwright rooms` lists the places behind the rooms; or give months of your own");
        return std::nullopt;
    }
    const bool warm = shelter == Shelter::heated && !ever_heated(place->air, usual_gain(reading.facts));
    room.name = fmt::format("{}, {}", warm ? "indoors" : word_of(shelter), place->name);
    return year_at(reading.facts, *place, shelter);
}

std::optional<RoomYear> read_own(Reading& reading, const PlaceKeys& keys, Shelter shelter, Room& room)
{
    const auto air = as_months(reading, *keys.months);
    if (!air) return std::nullopt;
    room.name = fmt::format("{}, by the design's own months", word_of(shelter));
    return year_of(reading.facts, *air, shelter, "air outside: the design's own months");
}

Season season_of(const RoomMonth& month, Shelter shelter)
{
    // In a room the air counts too, for glue that creeps; outdoors the mean of the daily equilibria says more than the mean air.
    if (shelter == Shelter::heated && month.air) return *month.air;
    return month.moisture;
}

} // namespace

void read_place(Reading& reading, const PlaceKeys& keys, Room& room)
{
    if (keys.place && keys.months) {
        reading.fault(keys.months->spot, "one-too-many", "[room] gives a place and months of its own as well; one is enough");
        return;
    }
    if (!keys.place && !keys.months) {
        reading.fault(keys.shelter->spot, "missing-key", "shelter goes with place or months, and [room] has neither",
                      R"(place = "Harbin")", "`jointwright rooms` lists the places behind the rooms");
        return;
    }
    const Shelter shelter = shelter_of(reading, keys);
    const auto year = keys.place ? read_listed(reading, keys, shelter, room) : read_own(reading, keys, shelter, room);
    if (!year) return;
    room.year = year;
    room.outdoors = shelter == Shelter::outdoors;
    room.driest = season_of(year->driest(), shelter);
    room.dampest = season_of(year->dampest(), shelter);
    if (year->in_frost) reading.assumed.emplace_back(kFrostWords);
}

std::optional<RoomYear> year_of_listed(const Facts& facts, const RoomRecord& record)
{
    const auto moisture = months_of_room(facts, record.name);
    if (!moisture) return std::nullopt;
    RoomYear year;
    for (std::size_t m = 0; m < year.months.size(); ++m)
        year.months[m] = {std::nullopt, MoistureContent::percent((*moisture)[m])};
    year.source = record.cite.text();
    return year;
}

} // namespace jointwright
