#pragma once
// Pieces of JSON that the report and the quick answers share. Only the writers include this.

#include "facts/working.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

using OrderedJson = nlohmann::ordered_json;

/// The number rounded to 12 significant digits, so that the last bits of a sum do not show; null when it is not finite.
OrderedJson json_number(double number);
OrderedJson json_number(const std::optional<double>& number);
OrderedJson json_text(const std::optional<std::string>& text);
OrderedJson json_list(const std::vector<std::string>& texts);
OrderedJson json_working(const Working& working);
/// Two spaces of indentation and a line end; broken UTF-8 becomes U+FFFD.
std::string json_bytes(const OrderedJson& json);

} // namespace jointwright
