#include "measure/text.hpp"

#include <boost/nowide/utf/utf.hpp>

#include <algorithm>
#include <array>
#include <iterator>

namespace jointwright {

namespace {

using Utf8 = boost::nowide::utf::utf_traits<char>;
constexpr char32_t kBroken = U'\uFFFD';

struct Folding {
    std::u32string_view variants;
    char32_t plain;
};

constexpr std::array kFoldings{
    Folding{
        U"\t\u00A0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200A\u200B\u202F\u205F\u2060\u3000\uFEFF",
        U' '},
    Folding{U"\u2018\u2019\u201B\u2032\u02B9\u00B4", U'\''},
    Folding{U"\u201C\u201D\u201F\u2033\u02BA", U'"'},
    Folding{U"\u2010\u2011\u2012\u2013\u2212\uFE63\uFF0D", U'-'},
    Folding{U"\u2044\u2215", U'/'},
    Folding{U"\u00BA\u02DA", U'°'},
};

constexpr std::u32string_view kSuperscripts = U"⁰¹²³⁴⁵⁶⁷⁸⁹";
constexpr std::u32string_view kSubscripts = U"₀₁₂₃₄₅₆₇₈₉";

char32_t plain(char32_t c)
{
    for (const Folding& folding : kFoldings)
        if (folding.variants.find(c) != std::u32string_view::npos) return folding.plain;
    return c;
}

/// Makes `¹⁵⁄₁₆` `15/16`. Superscripts elsewhere (mm², kg/m³) stay. A raised digit after a plain one starts a new number.
std::u32string with_plain_fractions(const std::u32string& text)
{
    std::u32string result;
    std::size_t i = 0;
    while (i < text.size()) {
        std::size_t slash = i, end = i;
        while (slash < text.size() && kSuperscripts.find(text[slash]) != std::u32string_view::npos) ++slash;
        if (slash > i && slash < text.size() && text[slash] == U'/') end = slash + 1;
        while (end > slash && end < text.size() && kSubscripts.find(text[end]) != std::u32string_view::npos) ++end;
        if (end <= slash + 1) {
            // A run without a fraction is copied whole, so that no character is looked at more than twice.
            const std::size_t stop = std::max(slash, i + 1);
            result.append(text, i, stop - i);
            i = stop;
            continue;
        }
        if (!result.empty() && is_digit(result.back())) result.push_back(U' ');
        for (; i < slash; ++i) result.push_back(U'0' + static_cast<char32_t>(kSuperscripts.find(text[i])));
        result.push_back(U'/');
        for (++i; i < end; ++i) result.push_back(U'0' + static_cast<char32_t>(kSubscripts.find(text[i])));
    }
    return result;
}

std::u32string with_double_primes(const std::u32string& text)
{
    std::u32string result;
    for (const char32_t c : text) {
        if (c == U'\'' && !result.empty() && result.back() == U'\'')
            result.back() = U'"';
        else
            result.push_back(c);
    }
    return result;
}

} // namespace

std::u32string characters_of(std::string_view text)
{
    std::u32string result;
    result.reserve(text.size());
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at != end) {
        const char* next = at;
        const auto point = Utf8::decode(next, end);
        const bool whole = point != boost::nowide::utf::illegal && point != boost::nowide::utf::incomplete;
        // After a broken byte reading starts again at the very next one, so that no good character is lost.
        result.push_back(whole ? static_cast<char32_t>(point) : kBroken);
        at = whole ? next : at + 1;
    }
    return result;
}

std::u32string folded(std::string_view text)
{
    std::u32string points = characters_of(text);
    std::transform(points.begin(), points.end(), points.begin(), plain);
    points = with_double_primes(with_plain_fractions(points));
    const std::size_t first = points.find_first_not_of(U' ');
    if (first == std::u32string::npos) return {};
    return points.substr(first, points.find_last_not_of(U' ') - first + 1);
}

std::string to_utf8(std::u32string_view text)
{
    std::string bytes;
    for (const char32_t c : text) Utf8::encode(c, std::back_inserter(bytes));
    return bytes;
}

std::string in_quotes(std::string_view text)
{
    constexpr std::size_t kShown = 40;
    constexpr std::size_t kLongestCharacter = 4;
    std::u32string shown = characters_of(text.substr(0, (kShown + 1) * kLongestCharacter));
    if (shown.size() > kShown) {
        shown.resize(kShown - 1);
        shown.push_back(U'…');
    }
    for (char32_t& c : shown) {
        const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0);
        if (control) c = c == U'\t' ? U' ' : kBroken;
    }
    return '"' + to_utf8(shown) + '"';
}

} // namespace jointwright
