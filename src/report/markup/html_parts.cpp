#include "report/markup/html_parts.hpp"

#include "report/words/people.hpp"
#include "report/words/safe_text.hpp"

#include <algorithm>
#include <cmath>

#include <iterator>

namespace jointwright {

std::string html_text(std::string_view text)
{
    std::string escaped;
    for (const char c : safe_text(text)) {
        switch (c) {
        case '&': escaped += "&amp;"; break;
        case '<': escaped += "&lt;"; break;
        case '>': escaped += "&gt;"; break;
        case '"': escaped += "&quot;"; break;
        case '\'': escaped += "&#39;"; break;
        default: escaped += c;
        }
    }
    return escaped;
}

std::string html_name(std::string_view name) { return fmt::format("<bdi>{}</bdi>", html_text(name)); }

void put_formatted(HtmlOut& out, fmt::string_view markup, fmt::format_args arguments)
{
    fmt::vformat_to(std::back_inserter(out), markup, arguments);
}

std::string finding_anchor(std::size_t index) { return fmt::format("finding-{}", index + 1); }

std::string_view css_class(Verdict verdict) { return verdict == Verdict::cannot_tell ? "tell" : word_of(verdict); }

std::string sign_svg(Verdict verdict)
{
    return fmt::format(R"(<svg class="sign" aria-hidden="true"><use href="#sign-{}"/></svg>)", css_class(verdict));
}

std::string shared_shapes(const BarScale& scale)
{
    return fmt::format(R"(<svg class="shapes" aria-hidden="true"><defs>
<symbol id="sign-pass" viewBox="0 0 24 24"><circle cx="12" cy="12" r="10"/><path d="M7 12.5l3.6 3.6L17 8.8"/></symbol>
<symbol id="sign-warn" viewBox="0 0 24 24"><path d="M12 2.5L22.5 21h-21z"/><path d="M12 9.5v5.5M12 17.4v.6"/></symbol>
<symbol id="sign-tell" viewBox="0 0 24 24"><path d="M12 1.5L22.5 12 12 22.5 1.5 12z"/><path d="M9.6 9.8a2.4 2.4 0 1 1 3.5 2.1c-.8.4-1.1.9-1.1 1.7M12 16.3v.6"/></symbol>
<symbol id="sign-fail" viewBox="0 0 24 24"><path d="M8 2h8l6 6v8l-6 6H8l-6-6V8z"/><path d="M8.3 8.3l7.4 7.4M15.7 8.3l-7.4 7.4"/></symbol>
<symbol id="box" viewBox="0 0 16 16"><rect x="1.5" y="1.5" width="13" height="13"/></symbol>
<rect id="track" y="4" width="100%" height="8"/><line id="limit" x1="{0:.2f}%" x2="{0:.2f}%" y2="16"/>
</defs></svg>
)",
                       100 / scale.full);
}

BarScale bar_scale(const std::vector<Finding>& findings)
{
    constexpr double kShortest = 1.25, kLongest = 2.5;
    double largest = 0;
    for (const Finding& finding : findings)
        if (finding.utilisation && std::isfinite(*finding.utilisation)) largest = std::max(largest, *finding.utilisation);
    return {std::clamp(largest, kShortest, kLongest)};
}

std::string bar_svg(const Finding& finding, const BarScale& scale)
{
    constexpr double kHundred = 100;
    const double used = finding.utilisation.value_or(0);
    const double length = std::clamp(used / scale.full, 0.0, 1.0) * kHundred;
    // The nested drawing keeps the arrow's shape while the bar stretches with the page.
    const std::string_view runs_off =
        used > scale.full
            ? R"(<svg x="100%" y="0" width="1" height="16" overflow="visible"><path class="off" d="M-9 1l8 7-8 7"/></svg>)"
            : "";
    return fmt::format(R"(<svg class="bar {}" role="img"><title>{} of the limit is used; the upright line is the limit</title>)"
                       R"(<use class="track" href="#track"/><rect class="used" y="4" width="{:.1f}%" height="8"/>{})"
                       R"(<use class="limit" href="#limit"/></svg>)",
                       css_class(finding.verdict), utilisation_words(finding).value_or("nothing"), length, runs_off);
}

} // namespace jointwright
