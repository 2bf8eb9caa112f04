#include "mechanics/structure/plate_mesh.hpp"

#include "mechanics/structure/places_apart.hpp"
#include "piece/model/lying.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kCellsOnPatch = 3;
constexpr double kReach = 1; // of a patch: so far beyond its edges the grid stays as fine
constexpr std::size_t kMostCells = 1000;

double plate_cell(double size, int parts, double least, double most) { return std::clamp(size / parts, least, most); }

/// A stretch of a plate on which its cells are to be no longer than so much.
struct Fineness {
    double from, to, cell;
};

/// Lines between two held ones, the denser the finer the cells are to be: even steps of the integral of 1/cell. The same from either end.
void add_between(std::vector<double>& lines, double lo, double hi, double cell, const std::vector<Fineness>& fine)
{
    std::vector<double> breaks{lo, hi};
    for (const Fineness& f : fine)
        for (const double at : {f.from, f.to})
            if (at > lo && at < hi) breaks.push_back(at);
    std::sort(breaks.begin(), breaks.end());
    std::vector<double> sums{0};
    for (std::size_t k = 0; k + 1 < breaks.size(); ++k) {
        const double middle = (breaks[k] + breaks[k + 1]) / 2;
        double least = cell;
        for (const Fineness& f : fine)
            if (f.from <= middle && middle <= f.to) least = std::min(least, f.cell);
        sums.push_back(sums.back() + (breaks[k + 1] - breaks[k]) / least);
    }
    const int n = std::max(1, static_cast<int>(std::ceil(sums.back() - 1e-9)));
    for (int i = 1; i < n; ++i) {
        const double sum = sums.back() * i / n;
        const auto after = std::upper_bound(sums.begin() + 1, sums.end() - 1, sum);
        const auto k = static_cast<std::size_t>(after - sums.begin()) - 1;
        lines.push_back(breaks[k] + (breaks[k + 1] - breaks[k]) * (sum - sums[k]) / (sums[k + 1] - sums[k]));
    }
    lines.push_back(hi);
}

/// Grid lines of one direction: edges, the lines on which it is held where they lie apart, and steps between.
std::vector<double> grid_lines(double lo, double hi, std::vector<double> held, double cell, const std::vector<Fineness>& fine)
{
    sort_apart(held, cell / 3 + 1e-5);
    std::vector<double> lines{lo};
    for (const double h : held)
        if (h - lo > cell / 3 + 1e-5 && hi - h > cell / 3 + 1e-5) add_between(lines, lines.back(), h, cell, fine);
    add_between(lines, lines.back(), hi, cell, fine);
    return lines;
}

void add_fineness(std::vector<Fineness>& fine, double from, double to, double cell, double coarser)
{
    const double size = to - from, wanted = coarser * size / kCellsOnPatch;
    if (wanted < cell) fine.push_back({from - kReach * size, to + kReach * size, wanted});
}

std::pair<double, double> limits(double from, double to, double lo, double hi, double least)
{
    const double a = std::clamp(from, lo, hi), b = std::clamp(to, lo, hi), half = std::min(least, hi - lo) / 2;
    if (b - a >= 2 * half) return {a, b};
    const double middle = std::clamp((a + b) / 2, lo + half, hi - half);
    return {middle - half, middle + half};
}

} // namespace

PlatePatch plate_patch(const Piece& piece, const MemberLine& line, const CopyLoad& load)
{
    const Part& part = piece.part_of(load.copy);
    const Lying lying(part, piece.copies[load.copy]);
    const auto [s0, s1] = limits(load.from - lying.from(), load.to - lying.from(), 0, line.length, line.thick);
    const double middle = load.across - lying.middle();
    // Beside the middle of an upright board: a child on the latch side of a door.
    const bool placed = line.lies || std::abs(middle) > kTouch;
    if (!placed || lying.across() != part.width_axis()) return {s0, s1, -line.wide / 2, line.wide / 2};
    const auto [t0, t1] = limits(middle - load.breadth / 2, middle + load.breadth / 2, -line.wide / 2, line.wide / 2, line.thick);
    return {s0, s1, t0, t1};
}

PlateGrid plate_grid(const MemberLine& line, std::vector<double> held_along, std::vector<double> held_across,
                     const std::vector<PlatePatch>& patches)
{
    const double cell_along = plate_cell(line.length, 10, 0.06, 0.2), cell_across = plate_cell(line.wide, 4, 0.05, 0.15);
    // Many small loads at many places on a large plate: as fine as the sums can bear.
    PlateGrid grid;
    for (double coarser = 1; coarser < 100; coarser *= 1.25) {
        std::vector<Fineness> along, across;
        for (const PlatePatch& p : patches) {
            add_fineness(along, p.s0, p.s1, cell_along, coarser);
            add_fineness(across, p.t0, p.t1, cell_across, coarser);
        }
        grid.along = grid_lines(0, line.length, held_along, cell_along, along);
        grid.across = grid_lines(-line.wide / 2, line.wide / 2, held_across, cell_across, across);
        if ((grid.along.size() - 1) * (grid.across.size() - 1) <= kMostCells) break;
        if (along.empty() && across.empty()) break;
    }
    return grid;
}

std::vector<std::vector<PlatePatch>> bending_patches(const Piece& piece, const std::vector<MemberLine>& lines,
                                                     const LoadCases& cases)
{
    std::vector<std::vector<PlatePatch>> patches(lines.size());
    const auto add = [&](const CopyLoad& load) {
        const MemberLine& line = lines[load.copy];
        const kernel::Vec3 direction(load.direction[0], load.direction[1], load.direction[2]);
        if (!line.plate || std::abs(direction.dot(line.face)) < 0.5) return;
        patches[load.copy].push_back(plate_patch(piece, line, load));
    };
    for (const CopyLoad& load : cases.lasting) add(load);
    for (const LoadCase& one : cases.cases)
        for (const CopyLoad& load : one.loads) add(load);
    return patches;
}

} // namespace jointwright
