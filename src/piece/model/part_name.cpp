#include "piece/model/part_name.hpp"

#include <fmt/core.h>

#include <charconv>

namespace jointwright {

namespace {

std::string_view trimmed(std::string_view text)
{
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

int copy_number(std::string_view digits)
{
    int number = 0;
    const auto [stop, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    const bool whole = error == std::errc{} && stop == digits.data() + digits.size() && number > 0;
    return whole ? number : 0;
}

} // namespace

std::string PartName::text() const { return number ? fmt::format("{} #{}", id, *number) : id; }

PartName part_name(std::string_view name)
{
    const std::size_t mark = name.find('#');
    PartName result;
    if (mark == std::string_view::npos) {
        result.id = std::string(name);
        return result;
    }
    result.id = std::string(trimmed(name.substr(0, mark)));
    result.number = copy_number(trimmed(name.substr(mark + 1)));
    return result;
}

} // namespace jointwright
