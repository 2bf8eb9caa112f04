#pragma once
// What a text must be before it is worth parsing: of a sane size, UTF-8, and not nested without end.

#include "piece/text/fault.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

namespace jointwright {

constexpr std::size_t kLargestText = std::size_t{4} * 1024 * 1024; ///< bytes

/// The fault that keeps a text from being parsed: "too-large", or "syntax" for bytes that are not UTF-8, control characters
/// that no text has, or nesting deeper than kDeepest (a parser that recurses would run out of stack).
std::optional<Fault> text_fault(std::string_view text);

} // namespace jointwright
