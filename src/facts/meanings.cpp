#include "facts/meanings.hpp"

#include "facts/names.hpp"
#include "facts/table_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr const char* kNameTable = "names.toml";

LocalMeaning read_meaning(const Facts& facts, const TableReader& r, const toml::node& row)
{
    const toml::table* entry = row.as_table();
    if (!entry) r.broken("places", "a table is wanted");
    LocalMeaning meaning{r.required_text(*entry, "place"), r.texts(*entry, "woods"), r.text(*entry, "says")};
    if (meaning.woods.empty()) r.broken("woods", "at least one wood is wanted");
    for (const std::string& wood : meaning.woods)
        if (!facts.find_wood(wood)) r.broken("woods", fmt::format("no wood is named \"{}\"", wood));
    return meaning;
}

NameMeanings read_meanings(const Facts& facts, const TableReader& r, const toml::table& entry)
{
    NameMeanings meanings;
    meanings.name = r.required_text(entry, "name");
    const toml::node* node = entry.get("places");
    const toml::array* rows = node ? node->as_array() : nullptr;
    if (!rows || rows->size() < 2) r.broken(meanings.name, "at least two places are wanted");
    for (const toml::node& row : *rows) meanings.places.push_back(read_meaning(facts, r, row));
    return meanings;
}

} // namespace

std::string NameMeanings::words() const
{
    std::string text;
    for (const LocalMeaning& meaning : places) {
        if (!text.empty()) text += "; ";
        text += fmt::format("{}: {}", meaning.place, fmt::join(meaning.woods, " or "));
        if (!meaning.says.empty()) text += fmt::format(" ({})", meaning.says);
    }
    return text;
}

std::vector<NameMeanings> all_meanings(const Facts& facts)
{
    const std::string* text = facts.text(kNameTable);
    if (!text) return {};
    const TableReader r = reader_of(facts, kNameTable);
    const toml::table table = parse_table(*text, kNameTable);
    const toml::node* node = table.get("name");
    const toml::array* rows = node ? node->as_array() : nullptr;
    if (!rows) r.broken("name", "no such entries");
    std::vector<NameMeanings> all;
    for (const toml::node& row : *rows) {
        const toml::table* entry = row.as_table();
        if (!entry) r.broken("name", "a table is wanted");
        all.push_back(read_meanings(facts, r, *entry));
    }
    return all;
}

std::optional<NameMeanings> meanings_of(const Facts& facts, std::string_view name)
{
    const std::string normal = normal_form(name);
    if (normal.empty()) return std::nullopt;
    for (NameMeanings& meanings : all_meanings(facts))
        if (normal_form(meanings.name) == normal) return std::move(meanings);
    return std::nullopt;
}

std::vector<std::string> likeliest_woods(const Facts& facts, const NameMeanings& meanings)
{
    std::vector<std::string> woods;
    for (const LocalMeaning& meaning : meanings.places) {
        const auto held = std::find_if(meaning.woods.begin(), meaning.woods.end(), [&](const std::string& wood) {
            const WoodRecord* record = facts.find_wood(wood);
            return record && record->has_figures();
        });
        if (held != meaning.woods.end() && std::find(woods.begin(), woods.end(), *held) == woods.end()) woods.push_back(*held);
    }
    return woods;
}

} // namespace jointwright
