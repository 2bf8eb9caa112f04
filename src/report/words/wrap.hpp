#pragma once
// Breaking of text into lines of at most so many columns.

#include <string>
#include <string_view>

namespace jointwright {

/// What stands before the text of a first line. It may hold colour codes, so its columns are told apart from its bytes.
struct Lead {
    std::string text;
    int columns = 0;
};

/// A lead of plain characters.
Lead plain_lead(std::string text);
/// A lead of so many spaces.
Lead indent(int columns);

/// The text as lines that each end in a line end: the lead and the first words, then further lines set in by the lead's columns
/// (or by `hanging`, when it is not negative).
///
/// The text is made safe first (safe_text.hpp). Lines break at spaces, but not between a number and its unit or its fraction; a
/// word longer than a line is broken, never between a character and its combining marks. Columns count as in display_width.hpp.
/// No line is wider than `columns`, unless the lead leaves fewer than two columns of it.
std::string wrapped(std::string_view text, int columns, const Lead& lead = {}, int hanging = -1);

} // namespace jointwright
