#include "report/markup/formula_html.hpp"

#include "report/markup/html_parts.hpp"

namespace jointwright {

namespace {

bool is_ascii_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
/// Greek letters and other signs come as several bytes, all of them with the highest bit.
bool is_letter(char c) { return is_ascii_letter(c) || static_cast<unsigned char>(c) >= 0x80; }

std::size_t end_of_index(std::string_view text, std::size_t from)
{
    std::size_t end = from;
    while (end < text.size() &&
           (is_letter(text[end]) || is_digit(text[end]) ||
            (text[end] == ',' && end + 1 < text.size() && (is_letter(text[end + 1]) || is_digit(text[end + 1])))))
        ++end;
    return end;
}

/// Behind the bracket that closes the one at `from`; npos when none does.
std::size_t end_of_brackets(std::string_view text, std::size_t from)
{
    int depth = 0;
    for (std::size_t i = from; i < text.size(); ++i) {
        if (text[i] == '(') ++depth;
        if (text[i] == ')' && --depth == 0) return i + 1;
    }
    return std::string_view::npos;
}

std::size_t end_of_number(std::string_view text, std::size_t from)
{
    std::size_t end = from;
    while (end < text.size() && (is_digit(text[end]) || text[end] == '.')) ++end;
    return end;
}

/// @param formula  escaped already
std::string with_indices(std::string_view formula)
{
    std::string markup;
    std::size_t plain = 0; // first that is not yet written
    const auto write_plain = [&](std::size_t until) { markup += formula.substr(plain, until - plain); };
    for (std::size_t i = 0; i < formula.size();) {
        const char before = i > 0 ? formula[i - 1] : ' ';
        const bool lone_letter = i > 0 && is_ascii_letter(before) && (i < 2 || !is_ascii_letter(formula[i - 2]));
        if (formula[i] == '_' && is_letter(before)) {
            const std::size_t end = end_of_index(formula, i + 1);
            if (end > i + 1) {
                write_plain(i);
                markup += fmt::format("<sub>{}</sub>", formula.substr(i + 1, end - i - 1));
                i = plain = end;
                continue;
            }
        } else if (is_digit(formula[i]) && lone_letter) {
            std::size_t end = i;
            while (end < formula.size() && is_digit(formula[end])) ++end;
            write_plain(i);
            markup += fmt::format("<sub>{}</sub>", formula.substr(i, end - i));
            i = plain = end;
            continue;
        } else if (formula[i] == '^' && i + 1 < formula.size()) {
            const bool brackets = formula[i + 1] == '(';
            const std::size_t end = brackets ? end_of_brackets(formula, i + 1) : end_of_number(formula, i + 1);
            if (end != std::string_view::npos && end > i + 1) {
                write_plain(i);
                markup += fmt::format("<sup>{}</sup>", with_indices(brackets ? formula.substr(i + 2, end - i - 3)
                                                                             : formula.substr(i + 1, end - i - 1)));
                i = plain = end;
                continue;
            }
        }
        ++i;
    }
    write_plain(formula.size());
    return markup;
}

} // namespace

std::string formula_html(std::string_view formula) { return with_indices(html_text(formula)); }

} // namespace jointwright
