#pragma once
// The data of an SVG path, as short as it can be written: steps from point to point in tenths of a unit.

#include "report/drawings/lines.hpp"

#include <string>

namespace jointwright::drawing {

/// Points are rounded before their differences are taken, so that errors do not add up.
class SvgPath {
public:
    /// Begins a new run of lines.
    void move_to(const Dot& p);
    /// A straight line from the last point; nothing when it ends on the same tenth of a unit.
    void line_to(const Dot& p);
    /// Back to where the run began.
    void close();
    /// True while nothing but moves was written.
    bool empty() const { return !drawn_; }
    /// What stands between the quotes of d="...".
    const std::string& text() const { return text_; }

private:
    void put_letter(char letter);
    void put_tenths(long long tenths);
    std::string text_;
    long long x_ = 0, y_ = 0, start_x_ = 0, start_y_ = 0;
    char letter_ = 0; ///< last command; numbers behind it may go on without a new one
    bool needs_space_ = false, drawn_ = false;
};

} // namespace jointwright::drawing
