#include "report/words/display_width.hpp"

#include "report/words/safe_text.hpp"

#include <algorithm>
#include <utf8proc.h>

namespace jointwright {

namespace {

constexpr char32_t kEmojiSelector = 0xFE0F;

} // namespace

int columns_of(char32_t character)
{
    constexpr char32_t kFirstUnusual = 0x300;
    if (character < kFirstUnusual) return 1;
    const auto point = static_cast<utf8proc_int32_t>(character);
    switch (utf8proc_category(point)) {
    case UTF8PROC_CATEGORY_CN: // not assigned, or newer than the library: as a terminal shows a box for it
    case UTF8PROC_CATEGORY_CO: return std::max(1, utf8proc_charwidth(point));
    default: return utf8proc_charwidth(point);
    }
}

int ColumnCounter::add(char32_t character)
{
    const bool widens = character == kEmojiSelector && previous_ == 1;
    previous_ = columns_of(character);
    return widens ? 1 : previous_;
}

int columns_of(std::u32string_view text)
{
    ColumnCounter counter;
    int columns = 0;
    for (const char32_t c : text) columns += counter.add(c);
    return columns;
}

int columns_of(std::string_view text) { return columns_of(std::u32string_view{characters_of(text)}); }

} // namespace jointwright
