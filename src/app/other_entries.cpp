// Rooms, glues and finishes as the tables have them.

#include "app/entry.hpp"
#include "wood/moisture_balance.hpp"

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

void take_coats(EntryGroup& group, const char* name, const char* words, const std::optional<Datum<double>>& kept_out)
{
    if (kept_out) group.values.push_back({name, words, kept_out->value, "%", {}, {}, kept_out->cite});
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
    entry.texts.push_back({"says", "room", room.says, {}});
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
    entry.groups.push_back(std::move(numbers));

    entry.texts.push_back({"says", "glue", glue.says, {}});
    entry.texts.push_back({"water", "water", glue.water, {}});
    entry.texts.push_back({"wet_use",
                           "fit for",
                           glue.wet_use == "dry"    ? "dry rooms"
                           : glue.wet_use == "damp" ? "damp air and short wetting"
                                                    : "long wetting",
                           {}});
    if (glue.en204) entry.texts.push_back({"en204", "EN 204 class", *glue.en204, {}});
    entry.texts.push_back({"creeps", "under lasting load", glue.creeps ? "creeps" : "does not creep", {}});
    entry.texts.push_back(
        {"gap_filling", "gaps", glue.gap_filling ? "fills them with strength" : "fills none: the joint must fit", {}});
    entry.texts.push_back({"hazard", "hazard", glue.hazard, {}});
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
