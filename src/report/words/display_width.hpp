#pragma once
// How many columns of a terminal a text takes.

#include <string_view>

namespace jointwright {

/// Columns of one character: 0 for combining marks and invisible format characters, 2 for wide ones (East Asian, emoji), else 1.
/// By the tables of the Unicode Character Database in utf8proc (general category and East_Asian_Width).
int columns_of(char32_t character);

/// Counts along a text: an emoji selector (U+FE0F) after a character of one column makes that character wide.
class ColumnCounter {
public:
    /// Columns that this character adds to those before it.
    int add(char32_t character);

private:
    int previous_ = 0;
};

/// Columns of a run of characters.
int columns_of(std::u32string_view text);

/// Columns of a UTF-8 text; each broken byte counts as the one column of its replacement character.
int columns_of(std::string_view text);

} // namespace jointwright
