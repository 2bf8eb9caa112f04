#include "measure/amount.hpp"

#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

struct VulgarFraction {
    char32_t sign;
    double numerator, denominator;
};

constexpr std::array kVulgarFractions{
    VulgarFraction{U'¼', 1, 4}, VulgarFraction{U'½', 1, 2},  VulgarFraction{U'¾', 3, 4}, VulgarFraction{U'⅐', 1, 7},
    VulgarFraction{U'⅑', 1, 9}, VulgarFraction{U'⅒', 1, 10}, VulgarFraction{U'⅓', 1, 3}, VulgarFraction{U'⅔', 2, 3},
    VulgarFraction{U'⅕', 1, 5}, VulgarFraction{U'⅖', 2, 5},  VulgarFraction{U'⅗', 3, 5}, VulgarFraction{U'⅘', 4, 5},
    VulgarFraction{U'⅙', 1, 6}, VulgarFraction{U'⅚', 5, 6},  VulgarFraction{U'⅛', 1, 8}, VulgarFraction{U'⅜', 3, 8},
    VulgarFraction{U'⅝', 5, 8}, VulgarFraction{U'⅞', 7, 8},
};

const VulgarFraction* vulgar_fraction(char32_t c)
{
    for (const VulgarFraction& fraction : kVulgarFractions)
        if (fraction.sign == c) return &fraction;
    return nullptr;
}

Misreading not_a_number(const MeasureCursor& at)
{
    const std::string rest = to_utf8(at.rest());
    if (rest.empty()) return {"wrong-type", fmt::format("{} lacks a number at its end", in_quotes(at.written())), {}};
    if (at.place() == 0) return {"wrong-type", fmt::format("{} does not begin with a number", in_quotes(at.written())), {}};
    return {"wrong-type", fmt::format("a number was expected in {} at {}", in_quotes(at.written()), in_quotes(rest)), {}};
}

Misreading not_finite(const MeasureCursor& at)
{
    return {"out-of-range", fmt::format("{} is not a finite number", in_quotes(at.written())), {}};
}

std::size_t digits_ahead(const MeasureCursor& at, std::size_t from)
{
    std::size_t count = 0;
    while (is_digit(at.peek(from + count))) ++count;
    return count;
}

bool names_no_finite_number(const MeasureCursor& at)
{
    if (at.peek() == U'∞') return true;
    MeasureCursor ahead = at;
    std::string word = to_utf8(ahead.take_letters());
    std::transform(word.begin(), word.end(), word.begin(), lower_case);
    return word == "nan" || word == "inf" || word == "infinity" || word == "infinite";
}

/// Length of a decimal number at the cursor; 0 when there is none. The exponent counts only with digits in it.
std::size_t decimal_ahead(const MeasureCursor& at)
{
    const std::size_t before = digits_ahead(at, 0);
    std::size_t length = before;
    if (at.peek(length) == U'.') {
        const std::size_t after = digits_ahead(at, length + 1);
        if (before + after == 0) return 0;
        // "12." is a number, the point in "12.in" belongs to it; a lone point is not.
        length += 1 + after;
    }
    if (length == 0 || (at.peek(length) != U'e' && at.peek(length) != U'E')) return length;
    const std::size_t sign = at.peek(length + 1) == U'-' || at.peek(length + 1) == U'+' ? 1 : 0;
    const std::size_t exponent = digits_ahead(at, length + 1 + sign);
    return exponent > 0 ? length + 1 + sign + exponent : length;
}

/// Takes so many characters as a number. Too large or too small for a double is no number.
std::optional<double> take_number(MeasureCursor& at, std::size_t length)
{
    const std::string digits = to_utf8(at.rest().substr(0, length));
    at.go_to(at.place() + length);
    double value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

bool fraction_ahead(const MeasureCursor& at)
{
    if (vulgar_fraction(at.peek()) != nullptr) return true;
    const std::size_t top = digits_ahead(at, 0);
    return top > 0 && at.peek(top) == U'/' && is_digit(at.peek(top + 1));
}

/// Reads `1/2` or `½` where fraction_ahead() says that one stands.
Outcome<double> take_fraction(MeasureCursor& at)
{
    if (const VulgarFraction* const sign = vulgar_fraction(at.peek())) {
        at.take(at.peek());
        return sign->numerator / sign->denominator;
    }
    const auto top = take_number(at, digits_ahead(at, 0));
    at.take(U'/');
    const auto bottom = take_number(at, digits_ahead(at, 0));
    if (!top || !bottom) return not_finite(at);
    if (*bottom == 0)
        return Misreading{"wrong-type", fmt::format("the fraction in {} is divided by zero", in_quotes(at.written())), {}};
    return *top / *bottom;
}

/// Moves to a fraction that belongs to the whole number just read: `12 1/2`, `12-1/2`, `12½`, `12 ½`, `12-½`. False: there is none.
bool step_to_fraction(MeasureCursor& at)
{
    MeasureCursor ahead = at;
    const bool hyphen = ahead.take(U'-');
    if (!hyphen) ahead.skip_spaces();
    if (!fraction_ahead(ahead)) return false;
    at.go_to(ahead.place());
    return true;
}

Misreading improper(const MeasureCursor& at, double whole, double fraction)
{
    return {"wrong-type", fmt::format("the fraction behind the whole number in {} is 1 or more", in_quotes(at.written())),
            std::isfinite(whole + fraction) ? write_number(whole + fraction, 6) + to_utf8(at.rest()) : ""};
}

} // namespace

bool MeasureCursor::take(char32_t c)
{
    if (at_end() || peek() != c) return false;
    ++at_;
    return true;
}

void MeasureCursor::skip_spaces()
{
    while (peek() == U' ') ++at_;
}

std::u32string MeasureCursor::take_letters()
{
    const std::size_t from = at_;
    while (is_letter(peek())) ++at_;
    return points_.substr(from, at_ - from);
}

std::string MeasureCursor::since(std::size_t place) const
{
    std::string text = to_utf8(std::u32string_view(points_).substr(place, at_ - place));
    text.resize(text.find_last_not_of(' ') + 1);
    return text;
}

Outcome<Amount> read_amount(MeasureCursor& at)
{
    at.skip_spaces();
    const std::size_t from = at.place();
    Amount amount;
    amount.negative = at.take(U'-');
    if (!amount.negative) at.take(U'+');
    if (names_no_finite_number(at)) return not_finite(at);
    amount.fraction = fraction_ahead(at);
    if (amount.fraction) {
        const Outcome<double> fraction = take_fraction(at);
        if (!fraction) return fraction.why();
        amount.value = *fraction;
    } else {
        const std::size_t length = decimal_ahead(at);
        if (length == 0) return not_a_number(at);
        amount.whole = digits_ahead(at, 0) == length;
        const auto number = take_number(at, length);
        if (!number) return not_finite(at);
        amount.value = *number;
    }
    if (amount.whole && step_to_fraction(at)) {
        const Outcome<double> fraction = take_fraction(at);
        if (!fraction) return fraction.why();
        if (*fraction >= 1) return improper(at, amount.value, *fraction);
        amount.value += *fraction;
        amount.whole = false;
        amount.fraction = true;
    }
    if (!std::isfinite(amount.value)) return not_finite(at);
    if (amount.negative && amount.value != 0) amount.value = -amount.value;
    amount.text = at.since(from);
    return amount;
}

} // namespace jointwright
