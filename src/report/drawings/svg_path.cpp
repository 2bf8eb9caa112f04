#include "report/drawings/svg_path.hpp"

#include <cmath>
#include <cstdlib>

namespace jointwright::drawing {

void SvgPath::put_letter(char letter)
{
    if (letter_ == letter) return;
    text_ += letter;
    letter_ = letter;
    needs_space_ = false;
}

void SvgPath::put_tenths(long long tenths)
{
    const long long whole = std::llabs(tenths) / 10, rest = std::llabs(tenths) % 10;
    if (tenths < 0)
        text_ += '-';
    else if (needs_space_)
        text_ += ' ';
    if (whole != 0 || rest == 0) text_ += std::to_string(whole);
    if (rest != 0) text_ += '.', text_ += static_cast<char>('0' + rest);
    needs_space_ = true;
}

void SvgPath::move_to(const Dot& p)
{
    const long long x = std::llround(p.x * 10), y = std::llround(p.y * 10);
    letter_ = 0;
    put_letter('m');
    put_tenths(x - x_);
    put_tenths(y - y_);
    // Numbers that follow a move are lines.
    letter_ = 'l';
    x_ = start_x_ = x;
    y_ = start_y_ = y;
}

void SvgPath::line_to(const Dot& p)
{
    const long long x = std::llround(p.x * 10), y = std::llround(p.y * 10), dx = x - x_, dy = y - y_;
    if (dx == 0 && dy == 0) return;
    put_letter(dy == 0 ? 'h' : dx == 0 ? 'v' : 'l');
    if (dx != 0) put_tenths(dx);
    if (dy != 0) put_tenths(dy);
    x_ = x;
    y_ = y;
    drawn_ = true;
}

void SvgPath::close()
{
    text_ += 'z';
    letter_ = 'z';
    needs_space_ = false;
    x_ = start_x_;
    y_ = start_y_;
}

} // namespace jointwright::drawing
