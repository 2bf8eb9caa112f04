// Where people sit along a seat: few places, and the worst of every part among them.

#include "catch.hpp"
#include "mechanics/loads/row_places.hpp"

#include <algorithm>
#include <cmath>
#include <random>

using namespace jointwright;

namespace {

/// Slats of one width with one gap between them, the first at `from`.
SeatRow slats(int count, double width, double gap, double from = 0)
{
    SeatRow row;
    for (int i = 0; i < count; ++i) row.parts.emplace_back(from + i * (width + gap), from + i * (width + gap) + width);
    row.lo = row.parts.front().first;
    row.hi = row.parts.back().second;
    return row;
}

double share_of(const SeatRow& row, std::size_t part, double middle, double size)
{
    double whole = 0, own = 0;
    for (std::size_t i = 0; i < row.parts.size(); ++i) {
        const double on =
            std::max(0.0, std::min(row.parts[i].second, middle + size / 2) - std::max(row.parts[i].first, middle - size / 2));
        whole += on;
        if (i == part) own = on;
    }
    return whole > 0 ? own / whole : 0;
}

/// The largest share of a block that a part bears, over the places taken.
double most_at(const SeatRow& row, std::size_t part, double size, const std::vector<double>& places)
{
    double most = 0;
    for (const double at : places) most = std::max(most, share_of(row, part, at, size));
    return most;
}

bool has(const std::vector<double>& places, double at, double within = 1e-9)
{
    return std::any_of(places.begin(), places.end(), [&](double p) { return std::abs(p - at) < within; });
}

} // namespace

TEST_CASE("Every part of a row has its worst place among those taken, found by trying every millimetre", "[row-places]")
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> width(0.03, 0.14), gap(0.0, 0.05);
    for (int trial = 0; trial < 40; ++trial) {
        SeatRow row; // of unlike slats and unlike gaps
        double at = 0.1;
        for (int i = 0; i < 5 + trial % 11; ++i) {
            const double w = width(random);
            row.parts.emplace_back(at, at + w);
            at += w + gap(random);
        }
        row.lo = row.parts.front().first;
        row.hi = row.parts.back().second;
        const double size = 0.4;
        if (row.hi - row.lo < size + 0.02) continue;
        const auto places = row_places(row, size, true);
        CHECK(std::is_sorted(places.begin(), places.end()));
        CHECK(places.size() < 14);
        for (std::size_t part = 0; part < row.parts.size(); ++part) {
            double most = 0;
            for (double m = row.lo + size / 2; m < row.hi - size / 2; m += 0.001)
                most = std::max(most, share_of(row, part, m, size));
            CAPTURE(trial, part);
            CHECK(most_at(row, part, size, places) >= 0.99 * most * (1 - 1e-9));
        }
    }
}

TEST_CASE("More slats on the same seat never give one of them more to bear", "[row-places]")
{
    // 1.2 m of slats 60 mm wide, gaps closing from 97 mm to none: the one that bears most never bears a hundredth more than with fewer.
    double before = 1;
    for (int count = 8; count <= 20; ++count) {
        const SeatRow row = slats(count, 0.06, (1.2 - count * 0.06) / (count - 1));
        const auto places = row_places(row, 0.4, true);
        double most = 0;
        for (std::size_t i = 0; i < row.parts.size(); ++i) most = std::max(most, most_at(row, i, 0.4, places));
        CAPTURE(count);
        CHECK(most <= before * 1.01);
        before = most;
    }
    // The last row is closed: 60 of 400 mm.
    CHECK(std::abs(before - 0.15) < 0.0015);
}

TEST_CASE("A block stands at the ends of a row, over its bays and over its inner supports", "[row-places]")
{
    SeatRow row{0, 2.4, {{0, 2.4}}, {0.03, 0.9, 2.37, 2.33}}; // unlike bays; two legs as good as in line at 2.35
    const auto places = row_places(row, 0.8, false);
    CHECK(has(places, 0.4)); // the ends
    CHECK(has(places, 2.0));
    CHECK(has(places, 0.465)); // middles of the bays, 0.03 to 0.9 and 0.9 to 2.35
    CHECK(has(places, 1.625));
    CHECK(has(places, 0.9)); // over the inner support
    CHECK(has(places, 1.3)); // up against it from the right
    CHECK(has(places, 0.9 + 1.45 / 3));
}

TEST_CASE("A mirrored row has mirrored places", "[row-places]")
{
    SeatRow row{0.2, 1.9, {{0.2, 0.31}, {0.33, 0.5}, {0.55, 0.6}, {0.7, 1.3}, {1.33, 1.9}}, {0.25, 1.1, 1.85}}, mirrored = row;
    const auto turn = [&](double x) { return row.lo + row.hi - x; };
    for (auto& [from, to] : mirrored.parts) {
        const double a = turn(to), b = turn(from);
        from = a;
        to = b;
    }
    for (double& s : mirrored.supports) s = turn(s);
    for (const double size : {0.4, 0.8}) {
        const auto places = row_places(row, size, true), other = row_places(mirrored, size, true);
        REQUIRE(places.size() == other.size());
        for (const double p : places) CHECK(has(other, turn(p), 1e-6));
    }
}

TEST_CASE("A block as long as the row has one place, and one longer too", "[row-places]")
{
    const SeatRow row = slats(5, 0.08, 0.01);
    for (const double size : {row.hi - row.lo, 0.5, 0.43}) {
        const auto places = row_places(row, size, true);
        REQUIRE(places.size() == 1);
        CHECK(std::abs(places.front() - 0.22) < 1e-12);
    }
}
