#include "report/words/safe_text.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace jointwright {

namespace {

constexpr char32_t kReplacement = U'\uFFFD';

bool is_space(char32_t c)
{
    constexpr std::u32string_view kSpaces = U" \t\n\v\f\r\u0085\u2028\u2029";
    return kSpaces.find(c) != std::u32string_view::npos;
}

bool is_control(char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }

/// Marks, embeddings, overrides and isolates of the bidirectional algorithm, with the deprecated formats after them.
bool turns_direction(char32_t c)
{
    return c == 0x061C || c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x206F);
}

bool is_no_character(char32_t c)
{
    constexpr char32_t kLastTwoOfPlane = 0xFFFE;
    return (c & kLastTwoOfPlane) == kLastTwoOfPlane || (c >= 0xFDD0 && c <= 0xFDEF) || (c >= 0xFFF9 && c <= 0xFFFB) ||
           c == 0xFEFF;
}

} // namespace

std::u32string safe_characters(std::string_view text)
{
    std::u32string safe;
    for (const char32_t c : characters_of(text)) {
        if (is_space(c)) {
            if (!safe.empty() && safe.back() != U' ') safe.push_back(U' ');
            continue;
        }
        const bool harmful = is_control(c) || turns_direction(c) || is_no_character(c);
        safe.push_back(harmful ? kReplacement : c);
    }
    if (!safe.empty() && safe.back() == U' ') safe.pop_back();
    return safe;
}

std::string safe_text(std::string_view text) { return to_utf8(safe_characters(text)); }

} // namespace jointwright
