#pragma once
// Small pieces of the page: escaped text, the sign of a verdict, the bar of a utilisation.

#include "judging/finding.hpp"

#include <fmt/core.h>

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

using HtmlOut = std::string;

/// What `put` hands on: one place formats, so that no file of the page compiles the formatting anew.
void put_formatted(HtmlOut& out, fmt::string_view markup, fmt::format_args arguments);

/// Appends formatted markup. Text of the content goes through html_text or html_name first.
template <class... Args>
void put(HtmlOut& out, fmt::format_string<const Args&...> markup, const Args&... args)
{
    put_formatted(out, markup, fmt::make_format_args(args...));
}

/// A text safe between tags and within a quoted attribute: safe_text with & < > " ' escaped.
std::string html_text(std::string_view text);
/// A name of the maker's, kept apart from the direction of the text around it: <bdi>...</bdi>.
std::string html_name(std::string_view name);

/// The id of a finding's place on the page: "finding-1" for the first.
std::string finding_anchor(std::size_t index);

/// The class of a verdict in the style sheet: "fail", "tell", "warn", "pass".
std::string_view css_class(Verdict verdict);
/// The sign of a verdict, by shape: octagon with a cross, triangle with a stroke, diamond with a question, circle with a tick.
/// Decoration: the word stands beside it.
std::string sign_svg(Verdict verdict);

/// Where 100 % of a bar's length lies, as a share of the limit, so that the bars of one page compare.
struct BarScale {
    double full = 1.25;
};
/// A scale on which the largest utilisation fits, from 1.25 to 2.5 times the limit; larger ones run off the end.
BarScale bar_scale(const std::vector<Finding>& findings);
/// The shapes that signs, boxes and bars of one page refer to; it stands first in the page and shows nothing itself.
std::string shared_shapes(const BarScale& scale);
/// A bar of the utilisation with the limit drawn across it, as an inline drawing with a title. The finding has a finite utilisation.
std::string bar_svg(const Finding& finding, const BarScale& scale);

} // namespace jointwright
