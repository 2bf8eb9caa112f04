#include "mechanics/loads/row_places.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kHair = 1e-6;          // m: the same place
constexpr double kNoRoom = 0.02;        // m: shifting a block by half of it changes next to nothing
constexpr double kBeside = 0.02;        // m: a further place so near another shows nothing new: these influences have flat tops
constexpr double kOneSupport = 0.06;    // m: a front and a back leg that stand in line but for a little
constexpr std::size_t kFewSupports = 5; // a row on more is long, and one bay like another
constexpr double kWithin = 0.01;        // share of a part's worst load by which the place taken for it may miss it

double covered(const std::pair<double, double>& part, double from, double to)
{
    return std::max(0.0, std::min(part.second, to) - std::max(part.first, from));
}

class Places {
public:
    Places(const SeatRow& row, double size) : row_(row), size_(size) {}

    void add(double middle)
    {
        const double at = within(middle);
        if (nearest(at) > kHair) places_.push_back(at);
    }
    /// Places that only refine: dropped where one of the others lies beside them.
    void add_between(const std::vector<double>& middles)
    {
        const std::vector<double> others = places_;
        for (const double middle : middles) {
            const double at = within(middle);
            const bool beside = std::any_of(others.begin(), others.end(), [&](double o) { return std::abs(o - at) < kBeside; });
            if (!beside && nearest(at) > kHair) places_.push_back(at);
        }
    }
    double within(double middle) const { return std::clamp(middle, row_.lo + size_ / 2, row_.hi - size_ / 2); }
    std::vector<double> sorted() const
    {
        std::vector<double> places = places_;
        std::sort(places.begin(), places.end());
        return places;
    }

private:
    double nearest(double at) const
    {
        double least = 1e30;
        for (const double p : places_) least = std::min(least, std::abs(p - at));
        return least;
    }
    const SeatRow& row_;
    double size_;
    std::vector<double> places_;
};

/// Supports that stand as good as in line are one.
std::vector<double> merged(std::vector<double> supports)
{
    std::sort(supports.begin(), supports.end());
    std::vector<double> merged;
    for (std::size_t i = 0; i < supports.size();) {
        std::size_t j = i;
        double sum = 0;
        for (; j < supports.size() && supports[j] - supports[i] < kOneSupport; ++j) sum += supports[j];
        merged.push_back(sum / static_cast<double>(j - i));
        i = j;
    }
    return merged;
}

void add_bays(const SeatRow& row, double size, Places& places)
{
    const std::vector<double> supports = merged(row.supports);
    std::vector<double> between;
    for (std::size_t i = 0; i < supports.size(); ++i) {
        if (i > 0 && i + 1 < supports.size()) places.add(supports[i]);
        if (i == 0) continue;
        const double from = supports[i - 1], to = supports[i], bay = to - from;
        places.add((from + to) / 2);
        for (const double middle : {from + bay / 3, to - bay / 3, from + size / 2, to - size / 2}) between.push_back(middle);
    }
    if (supports.size() <= kFewSupports) places.add_between(between);
}

/// A part's share of a block at every candidate, and the largest of them.
struct Shares {
    std::vector<double> at;
    double most = 0;
};

/// Candidates: an end of the block over an edge of a part, and the mirror image of each, so that no side goes before the other.
std::vector<double> edge_places(const SeatRow& row, double size, const Places& places)
{
    std::vector<double> all;
    const auto take = [&](double middle) {
        const double at = places.within(middle);
        all.push_back(at);
        all.push_back(row.lo + row.hi - at);
    };
    take(row.lo);
    take((row.lo + row.hi) / 2);
    for (const auto& [from, to] : row.parts)
        for (const double edge : {from, to}) {
            take(edge - size / 2);
            take(edge + size / 2);
        }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end(), [](double a, double b) { return std::abs(a - b) < kHair; }), all.end());
    return all;
}

/// So few candidates that every part has its worst: time and again those that serve the most parts, the nearest to the middle among equals.
void add_worst_of_each(const SeatRow& row, double size, Places& places)
{
    const std::vector<double> candidates = edge_places(row, size, places);
    std::vector<double> whole(candidates.size(), 0.0);
    for (std::size_t c = 0; c < candidates.size(); ++c)
        for (const auto& part : row.parts) whole[c] += covered(part, candidates[c] - size / 2, candidates[c] + size / 2);
    std::vector<std::pair<double, double>> left = row.parts;
    // Parts on the same stretch have the same worst place.
    std::sort(left.begin(), left.end());
    left.erase(std::unique(left.begin(), left.end()), left.end());
    std::vector<Shares> shares;
    for (const auto& part : left) {
        Shares s;
        for (std::size_t c = 0; c < candidates.size(); ++c) {
            const double on = covered(part, candidates[c] - size / 2, candidates[c] + size / 2);
            s.at.push_back(whole[c] > 0 ? on / whole[c] : 0);
            s.most = std::max(s.most, s.at.back());
        }
        if (s.most > 0) shares.push_back(std::move(s));
    }
    const double middle = (row.lo + row.hi) / 2;
    while (!shares.empty()) {
        std::vector<std::size_t> serves(candidates.size(), 0);
        for (const Shares& s : shares)
            for (std::size_t c = 0; c < candidates.size(); ++c) serves[c] += s.at[c] >= s.most * (1 - kWithin) ? 1 : 0;
        const std::size_t most = *std::max_element(serves.begin(), serves.end());
        double off = 1e30;
        for (std::size_t c = 0; c < candidates.size(); ++c)
            if (serves[c] == most) off = std::min(off, std::abs(candidates[c] - middle));
        std::vector<std::size_t> taken; // one, or both of a pair that mirror each other
        for (std::size_t c = 0; c < candidates.size(); ++c)
            if (serves[c] == most && std::abs(candidates[c] - middle) < off + kHair) taken.push_back(c);
        for (const std::size_t c : taken) places.add(candidates[c]);
        std::erase_if(shares, [&](const Shares& s) {
            return std::any_of(taken.begin(), taken.end(), [&](std::size_t c) { return s.at[c] >= s.most * (1 - kWithin); });
        });
    }
}

} // namespace

std::vector<double> row_places(const SeatRow& row, double size, bool each_part)
{
    if (row.hi - row.lo - size < kNoRoom) return {(row.lo + row.hi) / 2};
    Places places(row, size);
    places.add(row.lo);
    places.add(row.hi);
    if (each_part) add_worst_of_each(row, size, places);
    places.add_between({(row.lo + row.hi) / 2});
    add_bays(row, size, places);
    return places.sorted();
}

} // namespace jointwright
