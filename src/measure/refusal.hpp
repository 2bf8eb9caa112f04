#pragma once
// What no reader of measures looks into: nothing, far too much, and a comma in a number.

#include "measure/outcome.hpp"

#include <optional>
#include <string_view>

namespace jointwright {

/// Why a text is refused before it is read, or nothing. A comma between digits is refused because it parts decimals in one
/// country and thousands in another: the sentence names the decimal point, the fix has it where the reading is beyond doubt
/// (`12,5 mm`, `1,234.5 mm`, `1.234,5 mm`); `1,200 mm` could be either, so its sentence shows both and there is no fix.
std::optional<Misreading> refuse_at_sight(std::string_view text, std::string_view wanted, std::string_view examples);

} // namespace jointwright
