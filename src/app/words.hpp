#pragma once
// Small services for text on a terminal: valid UTF-8, words wrapped to a line, an argument as a shell takes it.

#include <string>
#include <string_view>

namespace jointwright {

constexpr int kLineWidth = 80;

/// The text as valid UTF-8; broken bytes become U+FFFD. Everything else stays, line ends too.
std::string valid_utf8(std::string_view text);

/// The text with ASCII capitals made small.
std::string small_letters(std::string_view text);

/// Words wrapped to kLineWidth after what starts the first line; the other lines are set in as far.
std::string wrapped_after(const std::string& first, std::string_view text);

/// Markdown wrapped to kLineWidth: headings, tables and code stay as they are, lists keep their indent, paragraphs flow.
std::string wrapped_markdown(std::string_view markdown);

/// An argument as it is typed at a shell: in quotes where it has spaces or special characters.
std::string as_typed(std::string_view argument);

} // namespace jointwright
