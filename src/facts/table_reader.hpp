#pragma once
// Reading the tables of data/ from TOML. Only facts/ includes this: it brings toml++ with it.

#include "facts/citation.hpp"
#include "facts/facts.hpp"

#include <toml++/toml.h>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Parses a table; a syntax error becomes BrokenData with file and place.
toml::table parse_table(std::string_view text, std::string_view file);

/// Reads values of one file, with its sources looked up.
class TableReader {
public:
    using SourceName = std::string (*)(const void* tables, std::string_view key);
    TableReader(std::string file, const void* tables, SourceName source)
        : file_(std::move(file)), tables_(tables), source_(source)
    {
    }

    /// A text, or empty when there is none.
    std::string text(const toml::table& table, std::string_view key) const;
    std::string required_text(const toml::table& table, std::string_view key) const;
    std::vector<std::string> texts(const toml::table& table, std::string_view key) const;
    bool flag(const toml::table& table, std::string_view key) const;
    /// A plain number, whole or decimal, or `otherwise` when there is none.
    double plain_number(const toml::table& table, std::string_view key, double otherwise) const;
    /// The table under a key, or nullptr when there is none.
    const toml::table* part(const toml::table& table, std::string_view key) const;

    /// `{ printed, unit, source, where, provenance, note }` as a number in SI; nothing when the key is absent.
    /// The unit must be one of those that the quantity allows.
    using Units = std::span<const std::string_view>;
    std::optional<Datum<double>> number(const toml::table* table, std::string_view key, Units units) const;
    /// One such value or a list of them, in the order of the file; empty when the key is absent.
    std::vector<Datum<double>> numbers(const toml::table* table, std::string_view key, Units units) const;
    Datum<double> number_of(const toml::table& entry, std::string_view key) const;
    /// Source, place and provenance of a table.
    Citation citation(const toml::table& entry, std::string_view key) const;

    [[noreturn]] void broken(std::string_view key, std::string_view why) const;

private:
    Datum<double> number_at(const toml::node& node, std::string_view key, Units units) const;

    std::string file_;
    const void* tables_;
    SourceName source_;
};

/// Looks sources up in tables that are already loaded, for readers of tables that are read when they are asked for.
TableReader reader_of(const Facts& facts, std::string file);

/// A plain datum as a datum of quantities.
template <class Q, class Make>
std::optional<Datum<Q>> as(const std::optional<Datum<double>>& plain, Make make)
{
    if (!plain) return std::nullopt;
    return Datum<Q>{make(plain->value), plain->cite};
}

} // namespace jointwright
