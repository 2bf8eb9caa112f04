#include "mechanics/seasons/mitre.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

struct MovedCut {
    double turn;   ///< rad, of the angle between the cut and the member's length, positive when the point grows sharper
    double length; ///< m, after the change
};

MovedCut moved_cut(const MitreMember& member)
{
    const double a = in_metres(member.along), b = in_metres(member.across);
    const double after_a = a * (1 + member.strain_along), after_b = b * (1 + member.strain_across);
    // One arctangent of the difference: two nearly equal angles would lose digits.
    return {std::atan2(after_a * b - a * after_b, a * after_a + b * after_b), std::hypot(after_a, after_b)};
}

} // namespace

MitreOpening mitre_opening(const MitreMember& first, const MitreMember& second)
{
    const MovedCut one = moved_cut(first), other = moved_cut(second);
    const double opening = one.turn + other.turn;
    MitreOpening result;
    result.angle = radians(opening);
    result.gap = metres(2 * std::min(one.length, other.length) * std::sin(std::abs(opening) / 2));
    return result;
}

} // namespace jointwright
