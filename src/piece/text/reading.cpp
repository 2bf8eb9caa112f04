#include "piece/text/reading.hpp"

#include "measure/text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>
#include <tuple>

namespace jointwright {

void Reading::fault(Fault fault)
{
    if (about_shapes) shapes_sound_ = false;
    if (!is_full())
        faults_.push_back(std::move(fault));
    else
        ++unlisted_;
}

void Reading::fault(Spot spot, std::string_view id, std::string says, std::string fix, std::string note)
{
    fault(Fault{spot, std::string(id), std::move(says), std::move(fix), std::move(note)});
}

void Reading::unknown_name(const DesignValue& value, std::string_view id, std::string says,
                           const std::vector<std::string>& nearest, std::string note)
{
    std::string fix;
    if (!nearest.empty()) fix = fixed(value, toml_text(nearest.front()));
    if (nearest.size() > 1) note = fmt::format("near to it: {}; {}", listed(nearest), note);
    fault(value.spot, id, std::move(says), std::move(fix), std::move(note));
}

Faults Reading::sorted_faults()
{
    std::stable_sort(faults_.begin(), faults_.end(), [](const Fault& a, const Fault& b) {
        return std::tie(a.spot.line, a.spot.column) < std::tie(b.spot.line, b.spot.column);
    });
    Faults result = faults_;
    if (unlisted_ > 0)
        result.push_back(
            {{}, "too-many", fmt::format("{} more errors are not listed", unlisted_), {}, "mend the first ones and run again"});
    return result;
}

std::string listed(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
        text += in_quotes(names[i]);
    }
    return text;
}

/// True where the number at a place counts something: `count = 3`.
static bool counts_at(std::string_view text, std::size_t at)
{
    const std::string_view before = text.substr(0, at);
    for (const std::string_view key : {"count = ", "tails = ", "boards = "})
        if (before.size() >= key.size() && before.substr(before.size() - key.size()) == key) return true;
    return false;
}

std::string Reading::lengths_example(std::string_view inches) const
{
    if (units == LengthUnit::inch) return std::string(inches);
    std::string example;
    const auto digit = [&](std::size_t i) {
        return i < inches.size() && (std::isdigit(static_cast<unsigned char>(inches[i])) != 0);
    };
    for (std::size_t i = 0; i < inches.size();) {
        const bool counts = counts_at(inches, i);
        const bool starts = !counts && digit(i) && (i == 0 || std::isalnum(static_cast<unsigned char>(inches[i - 1])) == 0);
        if (!starts) {
            example += inches[i++];
            continue;
        }
        std::size_t end = i;
        while (digit(end) || (end < inches.size() && inches[end] == '.')) ++end;
        const double millimetres = std::stod(std::string(inches.substr(i, end - i))) * 25.4, step = millimetres > 60 ? 5 : 1;
        const double rounded = std::round(millimetres / step) * step;
        example += fmt::format("{}", units == LengthUnit::centimetre ? rounded / 10 : rounded);
        i = end;
    }
    return example;
}

} // namespace jointwright
