#include "mechanics/loads/back_rest.hpp"

#include "piece/model/lying.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

Box box_round(const Piece& piece, const std::vector<std::size_t>& copies)
{
    Box all{{1e30, 1e30, 1e30}, {-1e30, -1e30, -1e30}};
    for (const std::size_t i : copies) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        for (std::size_t k = 0; k < 3; ++k) {
            all.lo[k] = std::min(all.lo[k], b.lo[k]);
            all.hi[k] = std::max(all.hi[k], b.hi[k]);
        }
    }
    return all;
}

double overlap(double a, double b, double c, double d) { return std::max(0.0, std::min(b, d) - std::max(a, c)); }

/// What stands up on one side of the seat, above a height.
std::vector<std::size_t> standing_up(const Piece& piece, const Box& seat, const std::vector<std::size_t>& carried,
                                     std::size_t axis, bool far, double above)
{
    constexpr double kOuterShare = 1.0 / 3; // of the seat's depth
    const double depth = seat.hi[axis] - seat.lo[axis];
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (std::find(carried.begin(), carried.end(), i) != carried.end()) continue;
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        const double middle = (b.lo[axis] + b.hi[axis]) / 2;
        const bool outside = far ? middle > seat.hi[axis] - kOuterShare * depth : middle < seat.lo[axis] + kOuterShare * depth;
        if (outside && b.hi[2] > above) found.push_back(i);
    }
    return found;
}

/// Height at which the most of the back lies behind a pad, the nearest to the wanted one among equals.
double pressed_at(const Piece& piece, const BackRest& back, double wanted, double pad)
{
    const double most = back.top - pad / 2, least = back.seat + pad / 2;
    const auto behind = [&](double height) {
        double area = 0;
        for (const std::size_t i : back.copies) {
            const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
            area += overlap(b.lo[2], b.hi[2], height - pad / 2, height + pad / 2) * (b.hi[back.along()] - b.lo[back.along()]);
        }
        return area;
    };
    const double start = std::clamp(wanted, std::min(least, most), std::max(least, most));
    // Between two rails a pad slides up or down until it bears on one.
    double best = start, area = behind(start);
    for (const double height : {start - pad / 2, start + pad / 2})
        if (height > least - 1e-9 && height < most + 1e-9 && behind(height) > 2 * area) {
            best = height;
            area = behind(height);
        }
    return best;
}

/// What of a copy lies behind a pad, seen along the way a person leans.
struct BehindPad {
    double lo, hi, low, high;
};

/// A level load on that stretch of the copy, without its size.
CopyLoad pressed_on(const Lying& lying, const BackRest& back, const Box& bounds, const BehindPad& behind)
{
    const std::size_t along = back.along();
    constexpr double mostly = 0.7; // of a direction
    const bool level = !lying.upright() && std::abs(lying.direct(lying.grain())[along]) > mostly,
               end_on = !lying.upright() && !level;
    Point middle{};
    middle[along] = (behind.lo + behind.hi) / 2;
    middle[2] = (behind.low + behind.high) / 2;
    middle[back.axis] = (bounds.lo[back.axis] + bounds.hi[back.axis]) / 2;
    if (end_on) middle[back.axis] = back.far ? bounds.lo[back.axis] : bounds.hi[back.axis]; // the end that the back meets
    const Point drawn = lying.drawn(middle);
    const double at = std::clamp(drawn[index_of(lying.grain())], lying.from(), lying.to());
    const double half = end_on ? 0 : level ? (behind.hi - behind.lo) / 2 : (behind.high - behind.low) / 2;
    CopyLoad load;
    load.direction = {0, 0, 0};
    load.direction[back.axis] = back.far ? 1 : -1;
    load.from = std::max(lying.from(), at - half);
    load.to = std::min(lying.to(), at + half);
    load.across = lying.middle();
    if (std::abs(lying.direct(lying.across())[along]) > mostly) {
        load.across = drawn[index_of(lying.across())];
        load.breadth = behind.hi - behind.lo;
    }
    return load;
}

} // namespace

std::optional<BackRest> back_rest_of(const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried)
{
    if (carried.empty()) return std::nullopt;
    const Box seat = box_round(piece, carried);
    const double least = facts.number("back_least").value;
    std::optional<BackRest> best;
    for (const std::size_t axis : {std::size_t{1}, std::size_t{0}})
        for (const bool far : {true, false}) {
            BackRest back;
            back.axis = axis;
            back.far = far;
            back.seat = seat.hi[2];
            back.copies = standing_up(piece, seat, carried, axis, far, back.seat + least);
            if (back.copies.empty()) continue;
            const Box box = box_round(piece, back.copies);
            const std::size_t along = back.along();
            back.lo = std::max(box.lo[along], seat.lo[along]);
            back.hi = std::min(box.hi[along], seat.hi[along]);
            if (back.hi - back.lo < (seat.hi[along] - seat.lo[along]) / 2) continue;
            back.top = box.hi[2];
            // Two posts alone are no back: something between them must take a pad at the middle.
            back.height =
                pressed_at(piece, back, back.seat + facts.number("back_height").value, facts.number("back_pad_height").value);
            if (lean_back(piece, facts, back, (back.lo + back.hi) / 2, 1).empty()) continue;
            double inner = far ? 1e30 : -1e30;
            for (const std::size_t i : back.copies) {
                const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
                inner = far ? std::min(inner, b.lo[axis]) : std::max(inner, b.hi[axis]);
            }
            back.front = std::clamp(inner, seat.lo[axis], seat.hi[axis]);
            if (!best || back.top > best->top + 1e-6) best = back;
        }
    return best;
}

std::vector<CopyLoad> lean_back(const Piece& piece, const Facts& facts, const BackRest& back, double at, double force)
{
    const double tall = facts.number("back_pad_height").value, wide = facts.number("back_pad_width").value;
    const std::size_t along = back.along();
    std::vector<CopyLoad> loads;
    double whole = 0;
    for (const std::size_t i : back.copies) {
        const Box b = bounds_of(piece.part_of(i), piece.copies[i]);
        const double lo = std::max(b.lo[along], at - wide / 2), hi = std::min(b.hi[along], at + wide / 2);
        const double low = std::max(b.lo[2], back.height - tall / 2), high = std::min(b.hi[2], back.height + tall / 2);
        if (hi <= lo || high <= low) continue;
        loads.push_back(pressed_on(Lying(piece.part_of(i), piece.copies[i]), back, b, {lo, hi, low, high}));
        CopyLoad& load = loads.back();
        load.copy = i;
        load.force = (hi - lo) * (high - low);
        whole += load.force;
    }
    for (CopyLoad& load : loads) load.force *= force / whole;
    return loads;
}

} // namespace jointwright
