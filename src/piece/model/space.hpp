#pragma once
// Axes, sides and boxes of the piece. SI doubles: metres. x from left to right, y from front to back, z up.

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace jointwright {

enum class Axis : std::size_t { x = 0, y = 1, z = 2 };
enum class Side { left, right, front, back, bottom, top };

constexpr std::size_t index_of(Axis axis) { return static_cast<std::size_t>(axis); }
std::string_view name_of(Axis axis); ///< "x", "y", "z"
std::string_view name_of(Side side); ///< "left", ...
std::optional<Axis> axis_named(std::string_view name);
std::optional<Side> side_named(std::string_view name);
Axis axis_of(Side side); ///< left and right: x
bool is_far(Side side);  ///< right, back and top lie at the far end of their axis
/// The axis that neither of two unlike axes is.
Axis third_axis(Axis a, Axis b);

using Point = std::array<double, 3>; ///< metres

/// An axis-aligned box, lo <= hi.
struct Box {
    Point lo{}, hi{};
    double size(Axis a) const { return hi[index_of(a)] - lo[index_of(a)]; }
    double middle(Axis a) const { return (hi[index_of(a)] + lo[index_of(a)]) / 2; }
};

/// Faces nearer than this touch; overlaps smaller than this are none.
constexpr double kTouch = 1e-4;

} // namespace jointwright
