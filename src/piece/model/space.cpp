#include "piece/model/space.hpp"

#include <utility>

namespace jointwright {

namespace {

constexpr std::array<std::string_view, 3> kAxisNames{"x", "y", "z"};
constexpr std::array<std::string_view, 6> kSideNames{"left", "right", "front", "back", "bottom", "top"};

} // namespace

std::string_view name_of(Axis axis) { return kAxisNames[index_of(axis)]; }

std::string_view name_of(Side side) { return kSideNames[static_cast<std::size_t>(side)]; }

std::optional<Axis> axis_named(std::string_view name)
{
    for (std::size_t i = 0; i < kAxisNames.size(); ++i)
        if (kAxisNames[i] == name) return static_cast<Axis>(i);
    return std::nullopt;
}

std::optional<Side> side_named(std::string_view name)
{
    for (std::size_t i = 0; i < kSideNames.size(); ++i)
        if (kSideNames[i] == name) return static_cast<Side>(i);
    return std::nullopt;
}

Axis axis_of(Side side) { return static_cast<Axis>(static_cast<std::size_t>(side) / 2); }

bool is_far(Side side) { return static_cast<std::size_t>(side) % 2 == 1; }

Axis third_axis(Axis a, Axis b) { return static_cast<Axis>(3 - index_of(a) - index_of(b)); }

} // namespace jointwright
