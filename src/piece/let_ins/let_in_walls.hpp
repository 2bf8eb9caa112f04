#pragma once
// The wood that is left round what is let into a part. SI doubles: metres.

#include "piece/let_ins/let_ins.hpp"

#include <vector>

namespace jointwright {

/// Wood between one let-in and one outer face of the part that it goes into.
struct Wall {
    enum class Place { beside, end_of_run, bottom } place = Place::beside;
    double left = 0;          ///< m; 0: open to that side, or through and flush; below 0: it comes out there by so much
    kernel::Vec out{0, 0, 1}; ///< unit vector, through the wall to the open air
};

/// The walls of one let-in, one for each outer face of the drawn part but that by which it enters. `end_of_run` is the wall that closes a
/// housing or groove at its end. Leaves out: the part's own notches and round-over, other let-ins.
std::vector<Wall> walls_of(const Piece& piece, const LetIn& in);

} // namespace jointwright
