// Rooms, glues and finishes as the tables have them.

#include "app/entry.hpp"
#include "facts/room_months.hpp"
#include "wood/moisture_balance.hpp"
#include "wood/room_year.hpp"

#include <fmt/format.h>

namespace jointwright {

namespace {

Citation computed_balance(const Facts& facts)
{
    return {facts.source("wood-handbook-2010"), "eq. 4-5, from the humidity and temperature above", Provenance::computed, {}};
}

void take_season(EntryGroup& group, const std::string& name, const Season& season, const Citation& cite, const Facts& facts)
{
    if (const auto* air = std::get_if<AirState>(&season)) {
        group.values.push_back({"humidity_" + name, "relative humidity", air->humidity.percent(), "%", {}, {}, cite});
        group.values.push_back(
            {"temperature_" + name, "temperature", air->temperature.celsius() + kKelvinAtZeroCelsius, "K", {}, {}, cite});
        group.values.push_back({"moisture_" + name,
                                "moisture that wood settles at",
                                moisture_in(season).percent(),
                                "%",
                                {},
                                {},
                                computed_balance(facts)});
        return;
    }
    group.values.push_back({"moisture_" + name, "moisture of the wood", moisture_in(season).percent(), "%", {}, {}, cite});
}

constexpr const char* kNames[] = {"January", "February", "March",     "April",   "May",      "June",
                                  "July",    "August",   "September", "October", "November", "December"};

EntryGroup months_group(const MonthlyMoisture& months, const Citation& cite)
{
    EntryGroup group{"moisture that wood settles at, by month", {}};
    for (std::size_t m = 0; m < months.size(); ++m)
        group.values.push_back({fmt::format("moisture_month_{}", m + 1), kNames[m], months[m], "%", {}, {}, cite});
    return group;
}

void take_air(EntryGroup& group, const std::string& name, const std::string& month, const AirState& air, const Citation& cite)
{
    group.values.push_back(
        {name + "_temperature", month + ", temperature", air.temperature.celsius() + kKelvinAtZeroCelsius, "K", {}, {}, cite});
    group.values.push_back({name + "_humidity", month + ", relative humidity", air.humidity.percent(), "%", {}, {}, cite});
}

void take_coats(EntryGroup& group, const char* name, const char* words, const std::optional<Datum<double>>& kept_out)
{
    if (kept_out) group.values.push_back({name, words, kept_out->value, "%", {}, {}, kept_out->cite});
}

void take_number(EntryGroup& group, const char* name, const char* words, const char* unit,
                 const std::optional<Datum<double>>& datum)
{
    if (datum) group.values.push_back({name, words, datum->value, unit, {}, {}, datum->cite});
}

void take_temperature(EntryGroup& group, const char* name, const char* words, const std::optional<Datum<double>>& celsius)
{
    if (celsius) group.values.push_back({name, words, celsius->value + kKelvinAtZeroCelsius, "K", {}, {}, celsius->cite});
}

void take_words(Entry& entry, const char* name, const char* heading, const std::optional<SourcedWords>& words)
{
    if (words) entry.texts.push_back({name, heading, words->says, words->cite});
}

void take_limits_of(EntryGroup& group, const GlueRecord& glue)
{
    if (glue.wet_shear)
        group.values.push_back({"wet_shear",
                                "shear strength asked for when wet",
                                glue.wet_shear->value.value(),
                                "Pa",
                                {},
                                {},
                                glue.wet_shear->cite});
    take_number(group, "widest_gap", "thickest glue line that holds", "m", glue.widest_gap);
    take_temperature(group, "hottest", "hottest in use", glue.hottest);
    take_temperature(group, "coldest", "coldest shop", glue.coldest);
    take_number(group, "driest_wood", "driest wood when glued", "%", glue.driest_wood);
    take_number(group, "wettest_wood", "wettest wood when glued", "%", glue.wettest_wood);
    take_number(group, "spread", "glue to spread on one face", "kg/m2", glue.spread);
    if (glue.pressure)
        group.values.push_back({"pressure", "pressure, most", glue.pressure->value.value(), "Pa", {}, {}, glue.pressure->cite});
}

EntryGroup times_of(const GlueRecord& glue)
{
    EntryGroup group{"times at 20 °C", {}};
    take_number(group, "open_time", "open: spreading to closing", "s", glue.open_time);
    take_number(group, "closed_time", "closed: closing to pressure", "s", glue.closed_time);
    take_number(group, "warmer_time", "open time 10 °C warmer, against 20 °C", "1", glue.warmer_time);
    take_number(group, "clamp_time", "in clamps", "s", glue.clamp_time);
    return group;
}

} // namespace

Entry entry_of(const Facts& facts, const RoomRecord& room)
{
    Entry entry;
    entry.name = room.name;
    EntryGroup driest{"driest", {}}, dampest{"dampest", {}};
    take_season(driest, "driest", room.driest, room.cite, facts);
    take_season(dampest, "dampest", room.dampest, room.cite, facts);
    entry.groups = {std::move(driest), std::move(dampest)};
    if (const auto months = months_of_room(facts, room.name)) entry.groups.push_back(months_group(*months, room.cite));
    entry.texts.push_back({"says", "room", room.says, {}});
    if (room.outdoors) entry.texts.push_back({"outdoors", "place", "open air, under a roof", {}});
    return entry;
}

Entry entry_of(const Facts& facts, const PlaceRecord& place)
{
    Entry entry;
    entry.name = place.name;
    entry.aliases = place.aliases;
    EntryGroup outside{"outside, by month", {}},
        heated{ever_heated(place.air, usual_gain(facts)) ? "in a heated room, by month"
                                                         : "indoors, where nothing needs heating, by month",
               {}};
    const RoomYear year = year_at(facts, place, Shelter::heated);
    const Citation worked_out{year.source, "", Provenance::computed, ""};
    for (std::size_t m = 0; m < place.air.size(); ++m) {
        const std::string number = std::to_string(m + 1), name = kNames[m];
        take_air(outside, "outside_" + number, name, place.air[m], place.air_cite);
        outside.values.push_back(
            {"outside_moisture_" + number, name + ", moisture of wood", place.moisture[m], "%", {}, {}, place.moisture_cite});
        take_air(heated, "heated_" + number, name, *year.months[m].air, worked_out);
        heated.values.push_back({"heated_moisture_" + number,
                                 name + ", moisture of wood",
                                 year.months[m].moisture.percent(),
                                 "%",
                                 {},
                                 {},
                                 worked_out});
    }
    entry.groups = {std::move(outside), std::move(heated)};
    entry.texts.push_back({"use",
                           "in a design",
                           fmt::format("[room] place = \"{}\", shelter = \"heated\", \"not heated\" or \"outdoors\"", place.name),
                           {}});
    return entry;
}

Entry entry_of(const GlueRecord& glue)
{
    Entry entry;
    entry.name = glue.name;
    entry.aliases = glue.aliases;
    EntryGroup numbers{"numbers", {}};
    if (glue.shear)
        numbers.values.push_back(
            {"shear", "mean shear strength, side grain", glue.shear->value.value(), "Pa", {}, {}, glue.shear->cite});
    else
        entry.missing.push_back("mean shear strength");
    if (glue.relaxation)
        numbers.values.push_back(
            {"relaxation", "share of stress kept when wood moves", glue.relaxation->value, "1", {}, {}, glue.relaxation->cite});
    take_limits_of(numbers, glue);
    entry.groups.push_back(std::move(numbers));
    entry.groups.push_back(times_of(glue));

    // What the table says of the glue as a whole carries the source of the entry; its note is a text of its own.
    Citation whole = glue.cite;
    whole.note.clear();
    entry.texts.push_back({"says", "glue", glue.says, {}});
    entry.texts.push_back({"water", "water", glue.water, whole});
    entry.texts.push_back({"wet_use", "fit for",
                           glue.wet_use == "dry"    ? "dry rooms"
                           : glue.wet_use == "damp" ? "damp air and short wetting"
                                                    : "long wetting",
                           whole});
    if (glue.indoors_only) entry.texts.push_back({"indoors_only", "place", "indoors only", whole});
    if (glue.en204) entry.texts.push_back({"en204", "EN 204 class", *glue.en204, whole});
    take_words(entry, "standard", "standard", glue.standard);
    entry.texts.push_back({"creeps", "under lasting load", glue.creeps ? "creeps" : "does not creep", {}});
    take_words(entry, "yields", "in other words", glue.yields);
    entry.texts.push_back(
        {"gap_filling", "gaps", glue.gap_filling ? "fills them with strength" : "fills none: the joint must fit", {}});
    entry.texts.push_back(
        {"oily_woods", "woods with oil or wax", glue.oily_woods ? "takes them better than most" : "wipe and try first", {}});
    take_words(entry, "reverses", "undone again", glue.reverses);
    take_words(entry, "stains", "stains", glue.stains);
    take_words(entry, "food", "near food", glue.food);
    take_words(entry, "hazard", "hazard", glue.hazard);
    if (!glue.cite.note.empty()) entry.texts.push_back({"note", "note", glue.cite.note, {}});
    return entry;
}

Entry entry_of(const FinishRecord& finish)
{
    Entry entry;
    entry.name = finish.name;
    entry.aliases = finish.aliases;
    for (const FinishCoats& coats : finish.coats) {
        EntryGroup group{
            fmt::format("moisture kept out by {} coat{}, against bare wood", coats.coats, coats.coats == 1 ? "" : "s"), {}};
        const std::string name = fmt::format("coats_{}_", coats.coats);
        take_coats(group, (name + "day_1").c_str(), "after 1 day of damp", coats.day_1);
        take_coats(group, (name + "day_7").c_str(), "after 7 days", coats.day_7);
        take_coats(group, (name + "day_14").c_str(), "after 14 days", coats.day_14);
        entry.groups.push_back(std::move(group));
    }
    if (!finish.note.empty()) entry.texts.push_back({"note", "note", finish.note, {}});
    return entry;
}

} // namespace jointwright
