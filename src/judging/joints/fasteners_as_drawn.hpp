#pragma once
// The screws, bolts, nails, buttons and plates of one contact, as the drawing has them. SI doubles: metres.

#include "bond/fastener.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// The fasteners of one contact.
struct DrawnFasteners {
    FastenerKind kind = FastenerKind::wood_screw;
    double diameter = 0, penetration = 0; ///< of a bolt those of its cross dowel
    int count = 1;
    std::size_t head = 0, holds = 0; ///< copies: that they go through, and with the threads
    bool end_grain = false;
    Point through{};            ///< unit vector out of the first part into the second
    Point along{};              ///< unit vector of the row
    Point head_grain{};         ///< unit vector of the grain of the part that they go through
    std::vector<double> places; ///< along the row, from the middle of the face; empty where unknown
    double face_long = 0, face_wide = 0;
    double spacing = 0,
           to_edge = 0; ///< along the row: to the next, and of the outer ones to the edge of the face; 0 where unknown
    bool narrow_across_grain =
        false;                    ///< the face's width runs across the grain of the part that holds, so that its edges may split
    bool row_along_grain = false; ///< of the part that holds
    double to_end_of_head = 0; ///< along the grain of the part under the heads to its nearer end; 0 where the row does not tell
    double beyond = 0;         ///< the tip stands out by so much
    double ahead = 0;          ///< of a cross dowel: wood between it and the end of its part
    double bolt = 0;           ///< its bolt's diameter
    bool wrong_way = false;    ///< the second part would be the one to drive them through
    std::string missing;       ///< the line to add where a size is not stated; empty else
};

/// Nothing for contacts that are not fastened so.
std::optional<DrawnFasteners> drawn_fasteners(const Prepared& prepared, std::size_t contact);

/// What of the drawing is wrong whatever the load: tips through the wood, too close to each other or to an end.
struct FastenerFault {
    std::string says;
    bool fails = false;
    std::string remedy;
};
std::optional<FastenerFault> placed_wrong(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn,
                                          const FastenerCapacity& capacity);

/// "pilot 3 mm, 5.3 mm under the head".
std::string hole_words(const Prepared& prepared, const FastenerCapacity& capacity);

} // namespace jointwright
