#pragma once
// Text of a design made harmless for terminals and pages.

#include "measure/text.hpp"

#include <string>
#include <string_view>

namespace jointwright {

/// The same text for people, as characters: line ends and tabs are spaces, runs of spaces one space, none at the ends. Control
/// characters (escape sequences begin with one), marks that turn the direction of writing and non-characters become U+FFFD, so
/// that a name can neither drive a terminal nor pose as something else.
std::u32string safe_characters(std::string_view text);

/// safe_characters as UTF-8: always valid.
std::string safe_text(std::string_view text);

} // namespace jointwright
