#pragma once
// The answer of a quick verb (emc, movement, beam, species NAME, ...), as text or as JSON.

#include "facts/working.hpp"
#include "measure/read.hpp"
#include "report/text/text.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace jointwright {

/// One number of the tables, for answers that list them.
struct QuickRow {
    std::string name;
    std::optional<double> value; ///< SI; none where the tables have none
    std::string unit;
    std::optional<double> moisture_pct; ///< moisture content that the value belongs to
    std::string source;
    std::string provenance; ///< "retrieved", "memory", "computed", "estimated"
};

/// A number in SI, a text, a list of names, of table values or of numbers in SI.
using QuickContent = std::variant<double, std::string, std::vector<std::string>, std::vector<QuickRow>, std::vector<double>>;

struct QuickValue {
    std::string name;     ///< key in the JSON, with its unit: "deflection_m"
    QuickContent content; ///< SI
    std::string unit;     ///< unit of the contract, for a number: "m", "N m", "%", "1"
    std::string says;     ///< what it is, for people: "deflection at mid-span"
    std::string people;   ///< the value for people; when empty it is written from `content` and `unit` in the units of the answer
};

struct QuickAnswer {
    std::string title; ///< one line: what was asked
    LengthUnit units = LengthUnit::millimetre;
    std::vector<QuickValue> values; ///< in the order of the output
    Working working;
    std::vector<std::string> sources;
    std::vector<std::string> assumed;
};

/// Title, values, and with `options.working` the sums; then what was assumed and the sources. Width and safety as in write_text.
std::string write_quick_text(const QuickAnswer& answer, const TextOptions& options);

/// One JSON object: the values by name in their order, then "working", "sources", "assumed". Bytes as in write_json.
std::string write_quick_json(const QuickAnswer& answer);

} // namespace jointwright
