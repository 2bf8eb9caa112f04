#include "bond/glue/open_time.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kTabled = 20, kColdest = 10, kWarmest = 30; // °C

} // namespace

std::optional<GlueTimes> glue_times(const GlueRecord& glue, Temperature shop, Working* working)
{
    if (!glue.open_time) return std::nullopt;
    const double steps = (std::clamp(shop.celsius(), kColdest, kWarmest) - kTabled) / 10;
    const double factor = std::pow(glue.warmer_time ? glue.warmer_time->value : 1.0, steps);
    GlueTimes times;
    times.open = seconds(glue.open_time->value * factor);
    times.closed = seconds((glue.closed_time ? glue.closed_time->value : 0.0) * factor);
    times.clamped = seconds(glue.clamp_time ? glue.clamp_time->value : 0.0);
    if (!working) return times;
    working->push_back(
        {fmt::format("Open time of {} at 20 °C", glue.name), "t20", "", glue.open_time->value, "s", glue.open_time->cite.text()});
    if (glue.warmer_time)
        working->push_back(
            {"Open time in this shop", "t = t20 f^((T − 20)/10)",
             fmt::format("f = {}, T = {} °C", write_number(glue.warmer_time->value, 2), write_number(shop.celsius(), 3)),
             in_seconds(times.open), "s", glue.warmer_time->cite.text()});
    return times;
}

TimeSpan spreading_time(const Facts& facts, Area area, bool shaped)
{
    const double start = facts.number(shaped ? "assembly_shaped_joint" : "assembly_plain_joint").value;
    return seconds(start + area.value() * facts.number("assembly_spreading").value);
}

} // namespace jointwright
