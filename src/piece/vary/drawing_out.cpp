#include "piece/vary/drawing_out.hpp"

#include "measure/text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMostOfIt = 0.5; // a part that reaches over more of the stretch than this grows with it
constexpr double kFirstQuarter = 0.25, kLastQuarter = 0.75; // what stands there belongs to that end
constexpr std::size_t kLeastRow = 3;

/// What belongs to an end stays with it.
double kept_to_ends(double share)
{
    if (share < kFirstQuarter) return 0;
    return share > kLastQuarter ? 1 : share;
}

} // namespace

DrawingOut::DrawingOut(const Piece& piece, std::size_t part) : piece_(piece), axis_(piece.parts[part].grain)
{
    find_stretches(part);
    copies_.assign(piece.copies.size(), {});
    if (hindrance_) return;
    draw_copies(part);
    spread_rows();
    check_growths();
}

void DrawingOut::find_stretches(std::size_t part)
{
    const std::size_t i = index_of(axis_);
    for (const Copy& copy : piece_.copies) {
        if (copy.part != part) continue;
        const Stretch here{copy.box.lo[i], copy.box.hi[i]};
        const auto same = [&](const Stretch& s) {
            return std::abs(s.from - here.from) < kTouch && std::abs(s.to - here.to) < kTouch;
        };
        if (std::none_of(stretches_.begin(), stretches_.end(), same)) stretches_.push_back(here);
    }
    std::sort(stretches_.begin(), stretches_.end(), [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    for (std::size_t s = 0; s + 1 < stretches_.size(); ++s)
        if (stretches_[s].to > stretches_[s + 1].from + kTouch && !hindrance_)
            hindrance_ =
                fmt::format("copies of {} lie beside each other without ending in line, so that the piece cannot be drawn "
                            "out with them",
                            in_quotes(piece_.parts[part].id));
}

void DrawingOut::draw_copies(std::size_t part)
{
    const std::size_t i = index_of(axis_);
    for (std::size_t c = 0; c < copies_.size(); ++c) {
        const Copy& copy = piece_.copies[c];
        const double lo = copy.box.lo[i], hi = copy.box.hi[i];
        for (const Stretch& s : stretches_) {
            const double over = std::min(hi, s.to) - std::max(lo, s.from);
            const bool grows = over > kMostOfIt * (s.to - s.from) && (copy.part != part || over > s.to - s.from - 2 * kTouch);
            if (grows)
                copies_[c].growth += 1;
            else
                copies_[c].shift += kept_to_ends(share_along(s, (lo + hi) / 2));
        }
    }
}

/// A row of like copies within a stretch keeps its ends and spreads evenly between them.
void DrawingOut::spread_rows()
{
    const std::size_t i = index_of(axis_);
    for (std::size_t p = 0; p < piece_.parts.size(); ++p)
        for (const Stretch& s : stretches_) {
            std::vector<std::size_t> row;
            std::vector<double> places;
            for (std::size_t c = 0; c < copies_.size(); ++c) {
                const double share = share_along(s, piece_.copies[c].box.middle(axis_));
                if (piece_.copies[c].part != p || copies_[c].growth > 0 || share <= 0 || share >= 1) continue;
                row.push_back(c);
                const double at = piece_.copies[c].box.lo[i];
                if (std::none_of(places.begin(), places.end(), [&](double other) { return std::abs(other - at) < kTouch; }))
                    places.push_back(at);
            }
            if (places.size() < kLeastRow) continue;
            const auto [first, last] = std::minmax_element(places.begin(), places.end());
            const double half = piece_.copies[row.front()].box.size(axis_) / 2;
            const double at_first = kept_to_ends(share_along(s, *first + half)),
                         at_last = kept_to_ends(share_along(s, *last + half));
            for (const std::size_t c : row) {
                const double lo = piece_.copies[c].box.lo[i];
                copies_[c].shift +=
                    at_first + (at_last - at_first) * (lo - *first) / (*last - *first) - kept_to_ends(share_along(s, lo + half));
            }
        }
}

/// A part has one length: its copies must all grow alike.
void DrawingOut::check_growths()
{
    for (std::size_t c = 1; c < copies_.size(); ++c) {
        const std::size_t part = piece_.copies[c].part;
        if (piece_.copies[c - 1].part != part || copies_[c].growth == copies_[c - 1].growth || hindrance_) continue;
        hindrance_ = fmt::format("some copies of {} would have to grow with it and others not", in_quotes(piece_.parts[part].id));
    }
}

double DrawingOut::growth_of(std::size_t part) const
{
    for (std::size_t c = 0; c < copies_.size(); ++c)
        if (piece_.copies[c].part == part) return copies_[c].growth;
    return 0;
}

double DrawingOut::shift_at(double place) const
{
    double shift = 0;
    for (const Stretch& s : stretches_) shift += std::clamp(share_along(s, place), 0.0, 1.0);
    return shift;
}

} // namespace jointwright
