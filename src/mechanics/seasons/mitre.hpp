#pragma once
// A mitre whose members change in width but hardly in length: the angle of each cut turns, and the joint opens at one end.

#include "measure/quantity.hpp"

namespace jointwright {

/// One member at a mitre, in the plane of the corner. The cut is the diagonal of `along` by `across`.
struct MitreMember {
    Length along;                               ///< how far the cut reaches along the member's length
    Length across;                              ///< the member's width in the plane of the corner
    double strain_along = 0, strain_across = 0; ///< free strains, positive when the wood swells [1]
};

struct MitreOpening {
    Angle angle; ///< between the two cut faces, positive open at the inside corner
    Length gap;  ///< at the open end, never negative
};

/// Opening of a mitre whose members stay square to each other and touch at the other end of the cut.
///
///     turn of each cut = atan[a (1 + e_l)/(b (1 + e_w))] − atan(a/b),  a along, b across;  angle = sum of both
///     gap = 2 L sin(|angle|/2), L the length of the cut afterwards, of the shorter one where they differ
///
/// Exact for uniform strains. For two like members at 45° and small strains: e_l − e_w radians, and √2 × width × that.
/// Positive angle, drying: open at the inside corner. Laws: 0 when a member moves alike along and across; exchanging the members changes nothing.
/// Leaves out: what glue, keys or the rest of the frame hold back. Derived from geometry; checked in tests/published/mitre_test.cpp.
MitreOpening mitre_opening(const MitreMember& first, const MitreMember& second);

} // namespace jointwright
