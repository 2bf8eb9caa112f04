#include "review/content/doubts.hpp"

#include "measure/write.hpp"
#include "mechanics/given/floor.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

// None of these is a limit of anything: beyond them another unit or a slip is likelier than the piece (estimated).
constexpr double kHeavy = 500;    // kg
constexpr double kHighSeat = 1.0; // m
constexpr double kThin = 0.001;   // m
constexpr double kLong = 12;      // m

/// What the numbers may have been meant in.
std::string likelier(const Piece& piece, bool too_large)
{
    if (piece.units == LengthUnit::millimetre)
        return too_large ? "was a digit too many written" : "are its sizes in inches or centimetres";
    return too_large ? "are its sizes in millimetres" : "is a decimal point in the wrong place";
}

} // namespace

std::vector<std::string> doubts_about_sizes(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    std::vector<std::string> doubts;
    if (const double mass = prepared.whole_mass(); mass > kHeavy)
        doubts.push_back(fmt::format("the piece weighs {}, which is much for furniture: {}?",
                                     write_mass(kilograms(mass), prepared.units), likelier(piece, true)));
    if (piece.use == Use::seat) {
        double top = -1e30;
        for (const std::size_t i : piece.carried_copies())
            top = std::max(top, bounds_of(piece.part_of(i), piece.copies[i]).hi[2]);
        const double high = top - floor_level(piece);
        if (piece.wall.empty() && high > kHighSeat)
            doubts.push_back(fmt::format("the seat is {} above the floor, more than anyone sits at: {}?",
                                         write_length(metres(high), prepared.units), likelier(piece, true)));
    }
    for (const Part& part : piece.parts) {
        if (in_metres(part.thickness) < kThin)
            doubts.push_back(fmt::format("{} is {} thick, as thin as veneer: {}?", part.id,
                                         write_small_length(part.thickness, prepared.units), likelier(piece, false)));
        if (in_metres(part.length) > kLong)
            doubts.push_back(fmt::format("{} is {} long, more than a plank is sold in: {}?", part.id,
                                         write_length(part.length, prepared.units), likelier(piece, true)));
    }
    return doubts;
}

} // namespace jointwright
