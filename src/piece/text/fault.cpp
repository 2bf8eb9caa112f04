#include "piece/text/fault.hpp"

#include "piece/text/source_text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>

namespace jointwright {

namespace {

constexpr std::size_t kShownCharacters = 70; // with the gutter within 80 columns
constexpr std::size_t kBeforeCaret = 24;     // kept in front of the caret when a line is cut

/// A line and its caret, cut around the caret when long.
struct Excerpt {
    std::string line, caret;
};

Excerpt excerpt(std::string_view text, const Spot& spot)
{
    const std::u32string line = characters_of(text);
    std::size_t at = std::min<std::size_t>(spot.column > 0 ? spot.column - 1 : 0, line.size());
    std::size_t first = 0;
    std::size_t last = line.size();
    if (line.size() > kShownCharacters) {
        first = at > kBeforeCaret ? std::min(at - kBeforeCaret, line.size() - std::min(line.size(), kShownCharacters)) : 0;
        last = std::min(line.size(), first + kShownCharacters);
    }
    const std::string before = first > 0 ? "…" : "";
    const std::string after = last < line.size() ? "…" : "";
    const std::size_t room = std::max<std::size_t>(last > at ? last - at : 0, 1);
    const std::size_t width = std::clamp<std::size_t>(spot.width, 1, room);
    at = at - first + (first > 0 ? 1 : 0);
    return {before + printable(std::u32string_view(line).substr(first, last - first)) + after,
            std::string(at, ' ') + "^" + std::string(width - 1, '~')};
}

/// `label: text`, further lines of the text under the first.
void write_labelled(std::string& out, std::string_view label, std::string_view text)
{
    const std::string indent(label.size() + 4, ' ');
    bool first = true;
    while (true) {
        const std::size_t end = text.find('\n');
        const std::string line = printable(text.substr(0, end));
        out += first ? fmt::format("  {}: {}\n", label, line) : fmt::format("{}{}\n", indent, line);
        if (end == std::string_view::npos) return;
        text.remove_prefix(end + 1);
        first = false;
    }
}

void write_fault(std::string& out, const Fault& fault, const std::string& file, const SourceText& source)
{
    const auto to = std::back_inserter(out);
    if (fault.spot.line == 0) {
        fmt::format_to(to, "{}: error: {} [{}]\n", file, printable(fault.says), fault.id);
    } else {
        fmt::format_to(to, "{}:{}:{}: error: {} [{}]\n", file, fault.spot.line, fault.spot.column, printable(fault.says),
                       fault.id);
        const Excerpt shown = excerpt(source.line(fault.spot.line), fault.spot);
        const std::string number = fmt::format("{:>5}", fault.spot.line);
        fmt::format_to(to, "{} | {}\n{} | {}\n", number, shown.line, std::string(number.size(), ' '), shown.caret);
    }
    if (!fault.fix.empty()) write_labelled(out, "fix", fault.fix);
    if (!fault.note.empty()) write_labelled(out, "note", fault.note);
}

} // namespace

std::string write_faults(const Faults& faults, const std::string& file, const std::string& text)
{
    const SourceText source(text);
    const std::string name = printable(file);
    std::string out;
    for (const Fault& fault : faults) {
        if (!out.empty()) out += '\n';
        write_fault(out, fault, name, source);
    }
    return out;
}

} // namespace jointwright
