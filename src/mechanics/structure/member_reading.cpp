#include "mechanics/structure/member_reading.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

double span_about(const std::vector<double>& supports, double at)
{
    constexpr double on_support = 1e-6;
    if (supports.empty()) return 0;
    if (at < supports.front() - on_support) return 2 * (supports.front() - at);
    if (at > supports.back() + on_support) return 2 * (at - supports.back());
    if (supports.size() < 2) return 0;
    const auto after = std::lower_bound(supports.begin() + 1, supports.end() - 1, at - on_support);
    return *after - *(after - 1);
}

void keep_sag(MemberResult& r, double sag, double span, bool beyond, double& worst)
{
    if (span > 0 && sag / span > worst) {
        worst = sag / span;
        r.sag = sag;
        r.sag_span = span;
        r.sag_overhangs = beyond;
    }
    if (sag > r.most_sag) {
        r.most_sag = sag;
        r.most_sag_span = span;
        r.most_sag_overhangs = beyond;
    }
}

void note_notch(MemberResult& r, const NetStretch& s, double sagging, double shear, double at,
                const std::vector<double>& supports, double& worst)
{
    const double loss = sagging > 0 ? s.bottom_loss : s.top_loss;
    if (loss <= 0) return;
    const double weight = std::abs(sagging) * 6 / (s.breadth * s.depth * s.depth) + shear * 1.5 / (s.breadth * s.depth);
    if (weight <= worst) return;
    worst = weight;
    r.notch_moment = std::abs(sagging);
    r.notch_shear = shear;
    r.notch_left = s.depth;
    r.notch_whole = s.depth + loss;
    r.notch_breadth = s.breadth;
    r.notch_at = at;
    const double span = supports.size() > 1 ? supports.back() - supports.front() : 0,
                 from = supports.empty() ? 0 : at - supports.front();
    r.notch_near_end = span <= 0 || from < r.notch_whole || span - from < r.notch_whole;
    r.notch_in_middle_third = span > 0 && from > span / 3 && from < 2 * span / 3;
}

} // namespace jointwright
