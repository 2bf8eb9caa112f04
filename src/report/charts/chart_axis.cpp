#include "report/charts/chart_axis.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright::drawing {

std::vector<double> ChartAxis::ticks() const
{
    std::vector<double> ticks;
    constexpr double kMost = 1000;
    const double first = std::ceil(lo / step - 1e-9);
    for (double k = first; k * step <= hi + 1e-9 * step && k - first < kMost; ++k) ticks.push_back(k * step + 0.0);
    return ticks;
}

ChartAxis axis_over(double least, double most, int steps, double from, double to)
{
    if (!std::isfinite(least) || !std::isfinite(most) || least > most) least = 0, most = 1;
    if (most - least <= 1e-12 * std::max(std::abs(least), std::abs(most)) || most == least) {
        const double margin = std::max(std::abs(least) * 0.1, 1e-6);
        least -= margin;
        most += margin;
    }
    const double raw = (most - least) / std::max(steps, 1);
    const double decade = std::pow(10, std::floor(std::log10(raw)));
    double step = 10 * decade;
    for (const double s : {5.0, 2.0, 1.0})
        if (raw <= s * decade * (1 + 1e-9)) step = s * decade;
    return {std::floor(least / step + 1e-9) * step, std::ceil(most / step - 1e-9) * step, from, to, step};
}

} // namespace jointwright::drawing
