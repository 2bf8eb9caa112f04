#pragma once
// Formulas with their indices below and their exponents above the line.

#include <string>
#include <string_view>

namespace jointwright {

/// A formula as markup, escaped as in html_text: "C_T" gets its T below the line, as do the digits of "f05" and "M1"; "P^0.8" and
/// "(a/b)^((12 − M)/n)" get their exponents above it.
std::string formula_html(std::string_view formula);

} // namespace jointwright
