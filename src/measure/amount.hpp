#pragma once
// The number in front of a unit: decimal, fraction or mixed number; and the walk over a text that the readers share.

#include "measure/outcome.hpp"
#include "measure/text.hpp"

#include <string>
#include <string_view>

namespace jointwright {

/// A walk over the folded code points of one measure.
class MeasureCursor {
public:
    /// @param text must outlive the cursor; its words are quoted in messages
    explicit MeasureCursor(std::string_view text) : written_(text), points_(folded(text)) {}

    std::string_view written() const { return written_; }
    bool at_end() const { return at_ >= points_.size(); }
    /// The code point so far ahead, 0 behind the end.
    char32_t peek(std::size_t ahead = 0) const { return at_ + ahead < points_.size() ? points_[at_ + ahead] : 0; }
    bool take(char32_t c);
    void skip_spaces();
    std::u32string take_letters();
    std::size_t place() const { return at_; }
    void go_to(std::size_t place) { at_ = place; }
    std::u32string_view rest() const { return std::u32string_view(points_).substr(at_); }
    /// What was walked over since a place, as UTF-8 without spaces at its end.
    std::string since(std::size_t place) const;

private:
    std::string_view written_;
    std::u32string points_;
    std::size_t at_ = 0;
};

/// A number as written.
struct Amount {
    double value = 0;      ///< with its sign
    bool negative = false; ///< told apart from the value because of -0
    bool fraction = false; ///< has a fraction: 1/2, 12 1/2, 12½
    bool whole = false;    ///< plain digits
    std::string text;      ///< the number as written, for a fix
};

/// Reads a number at the cursor: `12`, `-0.25`, `.5`, `1.8e6`, `1/2`, `½`, `12 1/2`, `12-1/2`, `12½`, `12 ½`.
///
/// Misreadings: no number there, a zero denominator, a fraction of 1 or more behind a whole number, a fraction behind a
/// decimal ("wrong-type"); NaN, infinity, more than a double holds ("out-of-range").
Outcome<Amount> read_amount(MeasureCursor& at);

} // namespace jointwright
