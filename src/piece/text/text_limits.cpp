#include "piece/text/text_limits.hpp"

#include "piece/text/value.hpp"

#include <boost/nowide/utf/utf.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <string>

namespace jointwright {

namespace {

std::optional<Fault> encoding_fault(std::string_view text)
{
    using Utf8 = boost::nowide::utf::utf_traits<char>;
    const char* at = text.data();
    const char* const end = at + text.size();
    Spot spot{1, 1, 1};
    while (at != end) {
        const auto point = Utf8::decode(at, end);
        if (point == boost::nowide::utf::illegal || point == boost::nowide::utf::incomplete)
            return Fault{spot,
                         "syntax",
                         fmt::format("line {} holds bytes that are not UTF-8", spot.line),
                         {},
                         "a design file is plain text; save it as UTF-8"};
        if (point == 0)
            return Fault{spot,
                         "syntax",
                         fmt::format("line {} holds a NUL byte, which no text has", spot.line),
                         {},
                         "a design file is plain text, not a binary file"};
        ++spot.column;
        if (point == U'\n') spot = {spot.line + 1, 1, 1};
    }
    return std::nullopt;
}

/// Walks over the words of TOML and measures how deep keys and brackets nest, without recursion.
class NestingScan {
public:
    explicit NestingScan(std::string_view text) : text_(text) {}

    /// The line where nesting grows too deep; 0 when it does nowhere.
    unsigned too_deep_line()
    {
        while (at_ < text_.size()) {
            step();
            if (dots_ > kDeepest || brackets_ > kDeepest) return line_;
        }
        return 0;
    }

private:
    void step()
    {
        const char c = text_[at_];
        if (c == '"' || c == '\'') return skip_quoted(c);
        ++at_;
        switch (c) {
        case '\n':
            ++line_;
            dots_ = 0;
            break;
        case '#': at_ = std::min(text_.find('\n', at_), text_.size()); break;
        case '.': ++dots_; break;
        case '[':
        case '{':
            ++brackets_;
            dots_ = 0;
            break;
        case ']':
        case '}':
            --brackets_;
            dots_ = 0;
            break;
        case '=':
        case ',': dots_ = 0; break;
        default: break;
        }
    }

    void skip_quoted(char quote)
    {
        const std::string three(3, quote);
        const bool long_one = text_.substr(at_, 3) == three;
        at_ += long_one ? 3 : 1;
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '\n') {
                if (!long_one) return; // an unclosed quote: the parser says so
                ++line_;
            }
            if (c == '\\' && quote == '"' && at_ + 1 < text_.size() && text_[at_ + 1] != '\n') {
                at_ += 2;
                continue;
            }
            if (c == quote && (!long_one || text_.substr(at_, 3) == three)) {
                at_ += long_one ? 3 : 1;
                // A long text may end in one or two quotes of its own, just before the closing three.
                for (int extra = 0; long_one && extra < 2 && at_ < text_.size() && text_[at_] == quote; ++extra) ++at_;
                return;
            }
            ++at_;
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    unsigned line_ = 1;
    int dots_ = 0, brackets_ = 0;
};

} // namespace

std::optional<Fault> text_fault(std::string_view text)
{
    if (text.size() > kLargestText)
        return Fault{{},
                     "too-large",
                     fmt::format("the text has {} bytes; a design file has at most 4 MiB ({} bytes)", text.size(), kLargestText),
                     {},
                     {}};
    if (auto fault = encoding_fault(text)) return fault;
    if (const unsigned line = NestingScan(text).too_deep_line())
        return Fault{{line, 1, 1},
                     "syntax",
                     fmt::format("keys or brackets are nested deeper than {} levels", kDeepest),
                     {},
                     "no part of a design is nested deeper than 6 levels"};
    return std::nullopt;
}

} // namespace jointwright
