#include "piece/text/source_text.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace jointwright {

namespace {

constexpr char32_t kBroken = U'\uFFFD';

bool is_control(char32_t c)
{
    const bool line_or_paragraph = c == 0x2028 || c == 0x2029;
    const bool turns_direction = (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
    return c < 0x20 || (c >= 0x7F && c < 0xA0) || line_or_paragraph || turns_direction;
}

/// Finds the first of two characters outside quotes; npos when there is none.
std::size_t find_unquoted(const std::u32string& line, char32_t wanted)
{
    char32_t quote = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char32_t c = line[i];
        if (quote != 0) {
            if (c == U'\\' && quote == U'"')
                ++i;
            else if (c == quote)
                quote = 0;
        } else if (c == wanted) {
            return i;
        } else if (c == U'"' || c == U'\'') {
            quote = c;
        }
    }
    return std::u32string::npos;
}

std::u32string trimmed(const std::u32string& text)
{
    const std::size_t first = text.find_first_not_of(U" \t");
    if (first == std::u32string::npos) return {};
    return text.substr(first, text.find_last_not_of(U" \t") - first + 1);
}

} // namespace

std::string printable(std::u32string_view characters)
{
    std::u32string shown(characters);
    for (char32_t& c : shown)
        if (is_control(c)) c = c == U'\t' ? U' ' : kBroken;
    return to_utf8(shown);
}

std::string printable(std::string_view text) { return printable(characters_of(text)); }

SourceText::SourceText(std::string_view text)
{
    constexpr std::string_view kMark = "\xEF\xBB\xBF"; // a byte order mark takes no column
    if (text.substr(0, kMark.size()) == kMark) text.remove_prefix(kMark.size());
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        std::string_view line = text.substr(0, end);
        if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
        lines_.push_back(line);
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + 1);
    }
}

std::string_view SourceText::line(unsigned number) const
{
    return number >= 1 && number <= lines_.size() ? lines_[number - 1] : std::string_view{};
}

std::string SourceText::at(Spot spot) const
{
    const std::u32string line = characters_of(this->line(spot.line));
    if (spot.column < 1 || spot.column > line.size()) return {};
    return printable(line.substr(spot.column - 1, spot.width));
}

std::string SourceText::replaced(Spot spot, std::string_view by) const
{
    std::u32string line = characters_of(this->line(spot.line));
    if (spot.column < 1 || spot.column > line.size()) return std::string(by);
    line.replace(spot.column - 1, std::min<std::size_t>(spot.width, line.size() - spot.column + 1), characters_of(by));
    line = trimmed(line.substr(0, find_unquoted(line, U'#')));
    const std::size_t equals = find_unquoted(line, U'=');
    if (equals == std::u32string::npos) return printable(line);
    return printable(trimmed(line.substr(0, equals))) + " = " + printable(trimmed(line.substr(equals + 1)));
}

} // namespace jointwright
