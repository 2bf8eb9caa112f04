#pragma once
// One entry of the tables, as the list verbs show it: every number with its unit and source, what is said in words, what is missing.

#include "facts/facts.hpp"
#include "facts/places.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

constexpr double kKelvinAtZeroCelsius = 273.15;

struct EntryValue {
    std::string name;  ///< in JSON, "bending_strength"
    std::string words; ///< for people, "bending strength"
    double value = 0;  ///< SI, temperatures in kelvin
    std::string unit;
    std::optional<double> moisture_pct; ///< of the wood it was measured on
    std::string state;                  ///< "dry", "green" or empty
    Citation cite;
};

struct EntryGroup {
    std::string heading;
    std::vector<EntryValue> values;
};

/// Something said in words; `cite` where it has a source.
struct EntryText {
    std::string name;    ///< in JSON, "dust"
    std::string heading; ///< for people, "dust"
    std::string says;
    std::optional<Citation> cite;
};

struct Entry {
    std::string name;
    std::string botanical; ///< woods only
    std::vector<std::string> aliases;
    std::vector<EntryGroup> groups;
    std::vector<EntryText> texts;
    std::vector<std::string> missing; ///< what no table gives
};

Entry entry_of(const Facts& facts, const WoodRecord& wood);
Entry entry_of(const Facts& facts, const RoomRecord& room);
/// A place: the open air there month by month, and the heated room worked out from it.
Entry entry_of(const Facts& facts, const PlaceRecord& place);
Entry entry_of(const GlueRecord& glue);
Entry entry_of(const FinishRecord& finish);

/// For people: at most 80 columns, sources numbered and listed at the end.
std::string write_entry_text(const Entry& entry);
/// One JSON object: name, botanical, aliases, values [{name, value, unit, moisture_pct, state, source, provenance, note}], texts, missing,
/// and the working, sources and assumed of every quick answer.
std::string write_entry_json(const Entry& entry);

} // namespace jointwright
