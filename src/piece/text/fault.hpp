#pragma once
// An error in the input: a value, with the place a maker would change. All that can be found are reported in one go.

#include <string>
#include <vector>

namespace jointwright {

/// Place in a text. Line and column start at 1, as editors count (columns in characters); line 0: no place.
struct Spot {
    unsigned line = 0, column = 0, width = 1;
};

/// One error of the input. The sentence has no place in it; `id` is stable.
struct Fault {
    Spot spot;
    std::string id;   ///< "unknown-wood"
    std::string says; ///< no wood is named "whit oak"
    std::string fix;  ///< a line to paste, or empty
    std::string note; ///< where the limit comes from, nearest names, or empty
};

using Faults = std::vector<Fault>;

/// Writes faults as the contract wants: `FILE:LINE:COLUMN: error: SENTENCE [id]`, the line, a caret, `fix:` and `note:`.
/// Always valid UTF-8; long lines of the text are shown cut around the caret.
std::string write_faults(const Faults& faults, const std::string& file, const std::string& text);

} // namespace jointwright
