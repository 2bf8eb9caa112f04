#include "report/drawings/view.hpp"

#include <cmath>

namespace jointwright::drawing {

View view_from_front() { return {}; }

View view_from_above() { return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}; }

View view_from_left() { return {{0, -1, 0}, {0, 0, 1}, {-1, 0, 0}}; }

View view_from_corner(double turn, double rise)
{
    const double ct = std::cos(turn), st = std::sin(turn), cr = std::cos(rise), sr = std::sin(rise);
    return {{ct, -st, 0}, {st * sr, ct * sr, cr}, {-st * cr, -ct * cr, sr}};
}

} // namespace jointwright::drawing
