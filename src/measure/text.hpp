#pragma once
// The letters of a measure: UTF-8 decoded, typographic variants folded to the plain characters of a keyboard.

#include <cstddef>
#include <string>
#include <string_view>

namespace jointwright {

/// Longest text that is looked at as a measure, in bytes; anything longer is not one.
constexpr std::size_t kLongestMeasure = 1000;

/// Code points of a text, folded: every kind of space is ' ', primes and curly quotes are ' and ", two primes are ",
/// minus signs and hyphens are '-', fraction slashes '/', super- and subscript digits round a fraction slash plain digits,
/// ordinal and ring signs '°'. Bytes that are not UTF-8 become U+FFFD. Spaces at both ends are dropped.
std::u32string folded(std::string_view text);

/// Code points of a text; every byte that is not UTF-8 becomes one U+FFFD.
std::u32string characters_of(std::string_view text);

/// Code points as UTF-8.
std::string to_utf8(std::u32string_view text);

/// A text for a sentence: in double quotes, at most 40 characters, control characters and broken bytes shown as U+FFFD.
/// Always valid UTF-8.
std::string in_quotes(std::string_view text);

constexpr bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
constexpr bool is_letter(char32_t c) { return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z'); }

/// An ASCII capital made small; everything else stays. Does not depend on a locale.
constexpr char lower_case(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

} // namespace jointwright
