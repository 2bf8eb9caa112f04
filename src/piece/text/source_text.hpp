#pragma once
// The text of a design by lines and characters, for messages: what may be shown of it, and lines with one value replaced.

#include "measure/text.hpp"
#include "piece/text/fault.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// A text that is safe to print on one line: valid UTF-8, control characters and broken bytes shown as U+FFFD, tabs as a space.
std::string printable(std::string_view text);
/// The same for characters.
std::string printable(std::u32string_view characters);

/// A text cut into lines. Keeps views: the text must outlive it.
class SourceText {
public:
    explicit SourceText(std::string_view text);
    /// A line by its number from 1, without its end; empty when there is none such.
    std::string_view line(unsigned number) const;
    /// What stands at a place, as written.
    std::string at(Spot spot) const;
    /// The line of a place with the characters there replaced: ready to paste. Indent, comment and spaces for alignment are left out.
    std::string replaced(Spot spot, std::string_view by) const;

private:
    std::vector<std::string_view> lines_;
};

} // namespace jointwright
