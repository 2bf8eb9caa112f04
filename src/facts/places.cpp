#include "facts/places.hpp"

#include "facts/names.hpp"
#include "facts/table_reader.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr const char* kPlaceTable = "places.toml";

struct Range {
    double least, most;
};

/// `{ values = [twelve numbers], unit, source, where, provenance }`.
std::array<double, 12> twelve_of(const TableReader& r, const toml::table& place, std::string_view key, std::string_view unit,
                                 Range range, Citation& cite)
{
    const toml::table* entry = r.part(place, key);
    if (!entry) r.broken(key, "is missing");
    const toml::node* node = entry->get("values");
    const toml::array* list = node ? node->as_array() : nullptr;
    if (!list || list->size() != 12) r.broken(key, "twelve values are wanted, January first");
    if (r.required_text(*entry, "unit") != unit) r.broken(key, "the unit is of the wrong kind");
    std::array<double, 12> values{};
    for (std::size_t m = 0; m < values.size(); ++m) {
        const auto value = (*list)[m].value<double>();
        if (!value || !(*value >= range.least && *value <= range.most)) r.broken(key, "a month is no number or out of range");
        values[m] = *value;
    }
    cite = r.citation(*entry, key);
    return values;
}

PlaceRecord read_place(const TableReader& r, const toml::table& entry)
{
    PlaceRecord place;
    place.name = r.required_text(entry, "name");
    place.aliases = r.texts(entry, "aliases");
    const auto temperature = twelve_of(r, entry, "temperature", "C", {-60, 60}, place.air_cite);
    const auto humidity = twelve_of(r, entry, "humidity", "%", {0, 100}, place.air_cite);
    place.moisture = twelve_of(r, entry, "moisture", "%", {0, 30}, place.moisture_cite);
    for (std::size_t m = 0; m < place.air.size(); ++m)
        place.air[m] = {RelativeHumidity::percent(humidity[m]), Temperature::celsius(temperature[m])};
    return place;
}

} // namespace

std::vector<PlaceRecord> all_places(const Facts& facts)
{
    const std::string* text = facts.text(kPlaceTable);
    if (!text) return {};
    const TableReader r = reader_of(facts, kPlaceTable);
    const toml::table table = parse_table(*text, kPlaceTable);
    const toml::node* node = table.get("place");
    const toml::array* rows = node ? node->as_array() : nullptr;
    if (!rows) r.broken("place", "no such entries");
    std::vector<PlaceRecord> places;
    for (const toml::node& row : *rows) {
        const toml::table* entry = row.as_table();
        if (!entry) r.broken("place", "a table is wanted");
        places.push_back(read_place(r, *entry));
    }
    return places;
}

std::optional<PlaceRecord> find_place(const Facts& facts, std::string_view name)
{
    const std::string normal = normal_form(name);
    if (normal.empty()) return std::nullopt;
    for (PlaceRecord& place : all_places(facts)) {
        const auto is_meant = [&](const std::string& known) { return normal_form(known) == normal; };
        if (is_meant(place.name) || std::any_of(place.aliases.begin(), place.aliases.end(), is_meant)) return std::move(place);
    }
    return std::nullopt;
}

std::vector<std::string> suggest_places(const Facts& facts, std::string_view name, std::size_t most)
{
    std::vector<std::string> names;
    for (const PlaceRecord& place : all_places(facts)) {
        names.push_back(place.name);
        names.insert(names.end(), place.aliases.begin(), place.aliases.end());
    }
    return nearest_spellings(name, names, most);
}

} // namespace jointwright
