#include "facts/table_reader.hpp"

#include "measure/quantity.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

/// Factor from a printed unit to SI; percent stays a number of percent in tables of wood, a share elsewhere (see `number_of`).
std::optional<double> factor_of(std::string_view unit)
{
    static const std::map<std::string_view, double> factors = {
        {"1", 1.0},
        {"1/%", 1.0},
        {"% per %", 1e-2},
        {"%", 1.0},
        {"MPa", 1e6},
        {"GPa", 1e9},
        {"kPa", 1e3},
        {"N/mm2", 1e6},
        {"psi", kPascalsPerPsi},
        {"ksi", 1e3 * kPascalsPerPsi},
        {"kJ/m3", 1e3},
        {"N", 1.0},
        {"kN", 1e3},
        {"lbf", kNewtonsPerPoundForce},
        {"mm", 1e-3},
        {"m", 1.0},
        {"kg", 1.0},
        {"kg/m3", 1.0},
        {"N/m", 1.0},
        {"J/m2", 1.0},
        {"K", 1.0},
        {"C", 1.0},
        {"s", 1.0},
        {"min", 60.0},
        {"h", 3600.0},
        {"g/m2", 1e-3},
        {"g/m3", 1e-3},
        {"mg/m3", 1e-6},
        {"deg", kRadiansPerDegree},
        {"lbf/ft", kNewtonsPerPoundForce / (12 * kMetresPerInch)},
    };
    const auto found = factors.find(unit);
    if (found == factors.end()) return std::nullopt;
    return found->second;
}

Provenance provenance_named(std::string_view word, bool& known)
{
    known = true;
    if (word == "retrieved") return Provenance::retrieved;
    if (word == "memory") return Provenance::memory;
    if (word == "computed") return Provenance::computed;
    if (word == "estimated") return Provenance::estimated;
    known = false;
    return Provenance::estimated;
}

} // namespace

toml::table parse_table(std::string_view text, std::string_view file)
{
    try {
        return toml::parse(text, file);
    } catch (const toml::parse_error& error) {
        throw BrokenData(
            fmt::format("{}:{}:{}: {}", file, error.source().begin.line, error.source().begin.column, error.description()));
    }
}

void TableReader::broken(std::string_view key, std::string_view why) const
{
    throw BrokenData(fmt::format("{}: {}: {}", file_, key, why));
}

TableReader reader_of(const Facts& facts, std::string file)
{
    return {std::move(file), &facts, [](const void* loaded, std::string_view key) -> std::string {
                const std::string* name = static_cast<const Facts*>(loaded)->find_source(key);
                return name ? *name : std::string{};
            }};
}

std::string TableReader::text(const toml::table& table, std::string_view key) const
{
    const toml::node* node = table.get(key);
    if (!node) return {};
    const auto value = node->value<std::string>();
    if (!value) broken(key, "a text in quotes is wanted");
    return *value;
}

std::string TableReader::required_text(const toml::table& table, std::string_view key) const
{
    std::string value = text(table, key);
    if (value.empty()) broken(key, "is missing");
    return value;
}

std::vector<std::string> TableReader::texts(const toml::table& table, std::string_view key) const
{
    std::vector<std::string> all;
    const toml::node* node = table.get(key);
    if (!node) return all;
    const toml::array* array = node->as_array();
    if (!array) broken(key, "a list of texts is wanted");
    for (const toml::node& item : *array) {
        const auto value = item.value<std::string>();
        if (!value) broken(key, "a list of texts is wanted");
        all.push_back(*value);
    }
    return all;
}

bool TableReader::flag(const toml::table& table, std::string_view key) const
{
    const toml::node* node = table.get(key);
    if (!node) return false;
    const auto value = node->value<bool>();
    if (!value) broken(key, "true or false is wanted");
    return *value;
}

double TableReader::plain_number(const toml::table& table, std::string_view key, double otherwise) const
{
    const toml::node* node = table.get(key);
    if (!node) return otherwise;
    const auto value = node->value<double>();
    if (!value || !std::isfinite(*value)) broken(key, "a number is wanted");
    return *value;
}

const toml::table* TableReader::part(const toml::table& table, std::string_view key) const
{
    const toml::node* node = table.get(key);
    if (!node) return nullptr;
    if (!node->is_table()) broken(key, "a table is wanted");
    return node->as_table();
}

Citation TableReader::citation(const toml::table& entry, std::string_view key) const
{
    Citation cite;
    const std::string source = text(entry, "source");
    if (source.empty()) broken(key, "has no source");
    cite.source = source_(tables_, source);
    if (cite.source.empty()) broken(key, fmt::format("source \"{}\" is not in sources.toml", source));
    cite.where = text(entry, "where");
    cite.note = text(entry, "note");
    bool known = false;
    cite.provenance = provenance_named(text(entry, "provenance"), known);
    if (!known) broken(key, "provenance must be retrieved, memory, computed or estimated");
    return cite;
}

Datum<double> TableReader::number_of(const toml::table& entry, std::string_view key) const
{
    const std::string printed = required_text(entry, "printed"), unit = required_text(entry, "unit");
    const auto factor = factor_of(unit);
    if (!factor) broken(key, fmt::format("unit \"{}\" is not known here", unit));
    double value = 0;
    const auto [end, error] = std::from_chars(printed.data(), printed.data() + printed.size(), value);
    if (error != std::errc{} || end != printed.data() + printed.size() || !std::isfinite(value))
        broken(key, fmt::format("\"{}\" is not a number", printed));
    return {value * *factor, citation(entry, key)};
}

Datum<double> TableReader::number_at(const toml::node& node, std::string_view key, Units units) const
{
    const toml::table* entry = node.as_table();
    if (!entry) broken(key, "a value with printed, unit, source, where and provenance is wanted");
    const std::string unit = text(*entry, "unit");
    if (!unit.empty() && std::find(units.begin(), units.end(), unit) == units.end())
        broken(key, fmt::format("unit \"{}\" is of the wrong kind", unit));
    return number_of(*entry, key);
}

std::optional<Datum<double>> TableReader::number(const toml::table* table, std::string_view key, Units units) const
{
    const toml::node* node = table ? table->get(key) : nullptr;
    if (!node) return std::nullopt;
    return number_at(*node, key, units);
}

std::vector<Datum<double>> TableReader::numbers(const toml::table* table, std::string_view key, Units units) const
{
    const toml::node* node = table ? table->get(key) : nullptr;
    if (!node) return {};
    const toml::array* list = node->as_array();
    if (!list) return {number_at(*node, key, units)};
    if (list->empty()) broken(key, "the list is empty");
    std::vector<Datum<double>> all;
    for (const toml::node& item : *list) all.push_back(number_at(item, key, units));
    return all;
}

} // namespace jointwright
