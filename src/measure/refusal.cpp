#include "measure/refusal.hpp"

#include "measure/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

bool is_separator(char32_t c) { return c == U',' || c == U'.'; }

/// A comma right before a digit, unless a word ends there.
bool has_decimal_comma(const std::u32string& text)
{
    for (std::size_t i = 0; i + 1 < text.size(); ++i)
        if (text[i] == U',' && is_digit(text[i + 1]) && (i == 0 || !is_letter(text[i - 1]))) return true;
    return false;
}

std::u32string without(std::u32string number, char32_t separator)
{
    std::erase(number, separator);
    return number;
}

/// `1,200` may be one and a fifth or twelve hundred; `0,200` and `1,20` can only be decimals.
bool may_part_thousands(const std::u32string& number)
{
    constexpr std::size_t kGroup = 3;
    const std::size_t comma = number.find(U',');
    return number.size() - comma - 1 == kGroup && comma >= 1 && comma <= kGroup && number.front() != U'0';
}

/// One number with a decimal point, made from digits, commas and points; `unclear` is set where it could be read in two ways.
std::u32string with_decimal_point(std::u32string number, bool& unclear)
{
    const auto commas = std::count(number.begin(), number.end(), U','), points = std::count(number.begin(), number.end(), U'.');
    if (commas == 0) return number;
    const bool point_is_last = points > 0 && number.rfind(U'.') > number.rfind(U',');
    if (point_is_last || (points == 0 && commas > 1)) return without(std::move(number), U',');
    unclear = unclear || (points == 0 && may_part_thousands(number));
    number = without(std::move(number), U'.');
    std::replace(number.begin(), number.end(), U',', U'.');
    if (number.front() == U'.') number.insert(number.begin(), U'0');
    return number;
}

Misreading comma_in_number(std::string_view text, const std::u32string& points)
{
    std::u32string fixed;
    bool unclear = false;
    for (std::size_t i = 0; i < points.size();) {
        std::size_t end = i;
        while (end < points.size() && (is_digit(points[end]) || is_separator(points[end]))) ++end;
        if (end > i) fixed += with_decimal_point(points.substr(i, end - i), unclear);
        if (end < points.size()) fixed.push_back(points[end]);
        i = end + 1;
    }
    if (unclear)
        return {"wrong-type",
                fmt::format("{} has a comma in a number; write {} with a decimal point, or {} if thousands were meant",
                            in_quotes(text), in_quotes(to_utf8(fixed)), in_quotes(to_utf8(without(points, U',')))),
                {}};
    return {"wrong-type", fmt::format("{} has a comma in a number; decimals are written with a decimal point", in_quotes(text)),
            to_utf8(fixed)};
}

} // namespace

std::optional<Misreading> refuse_at_sight(std::string_view text, std::string_view wanted, std::string_view examples)
{
    if (text.size() > kLongestMeasure)
        return Misreading{
            "wrong-type", fmt::format("{} is too long to be {} ({} characters)", in_quotes(text), wanted, text.size()), {}};
    const std::u32string points = folded(text);
    if (points.empty())
        return Misreading{"wrong-type", fmt::format("{} is empty; {} is written like {}", in_quotes(text), wanted, examples), {}};
    if (has_decimal_comma(points)) return comma_in_number(text, points);
    return std::nullopt;
}

} // namespace jointwright
