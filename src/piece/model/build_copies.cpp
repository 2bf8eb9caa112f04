#include "piece/model/placement.hpp"

#include <cmath>

namespace jointwright {

namespace {

/// To a millionth of a millimetre: the same place however it was arrived at. A sixty-fourth of an inch is a whole number of these.
double snapped(double coordinate)
{
    constexpr double steps = 1e9;
    return std::round(coordinate * steps) / steps;
}

Copy copy_at(const Placement::Single& single, const Point& sizes, std::size_t part)
{
    Copy copy;
    copy.part = part;
    copy.mirrored = single.mirrored;
    for (std::size_t i = 0; i < 3; ++i) {
        copy.box.lo[i] = snapped(single.corner[i]);
        copy.box.hi[i] = snapped(single.corner[i] + sizes[i]);
    }
    return copy;
}

Copy mirrored(Copy copy, Axis axis, const Point& size)
{
    const std::size_t i = index_of(axis);
    const double lo = snapped(size[i] - copy.box.hi[i]);
    copy.box.hi[i] = snapped(size[i] - copy.box.lo[i]);
    copy.box.lo[i] = lo;
    copy.mirrored[i] = !copy.mirrored[i];
    return copy;
}

} // namespace

double Placement::count() const
{
    const double first = row ? static_cast<double>(row->count) : 1.0;
    return (first + static_cast<double>(singles.size())) * std::exp2(static_cast<double>(mirror.size()));
}

Point box_sizes(const Part& part)
{
    Point sizes{};
    sizes[index_of(part.grain)] = in_metres(part.length);
    sizes[index_of(part.face)] = in_metres(part.thickness);
    sizes[index_of(part.width_axis())] = in_metres(part.width);
    return sizes;
}

std::vector<Copy> build_copies(const Placement& placement, const Part& part, std::size_t part_index,
                               const std::optional<Point>& size)
{
    const Point sizes = box_sizes(part);
    std::vector<Copy> copies;
    const int in_row = placement.row ? placement.row->count : 1;
    for (int n = 0; n < in_row; ++n) {
        Placement::Single one = placement.placed;
        for (std::size_t i = 0; placement.row && i < 3; ++i) one.corner[i] += n * placement.row->step[i];
        copies.push_back(copy_at(one, sizes, part_index));
    }
    for (const Placement::Single& single : placement.singles) copies.push_back(copy_at(single, sizes, part_index));
    if (size)
        for (const Axis axis : placement.mirror) {
            const std::size_t before = copies.size();
            for (std::size_t i = 0; i < before; ++i) copies.push_back(mirrored(copies[i], axis, *size));
        }
    for (std::size_t i = 0; i < copies.size(); ++i) copies[i].number = static_cast<int>(i) + 1;
    return copies;
}

} // namespace jointwright
