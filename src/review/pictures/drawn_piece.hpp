#pragma once
// What the drawings of a report need of a piece: bodies, where findings point to, how the parts of a joint move. SI doubles: metres.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/let_ins/joined_solid.hpp"
#include "review/pictures/drawn_load.hpp"
#include "review/pictures/drawn_months.hpp"
#include "review/pictures/sag_by_thickness.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// One copy as it is drawn.
struct DrawnBody {
    std::string label;    ///< "slat #3"
    std::size_t part = 0; ///< index into PartLine lists
    std::size_t wood = 0; ///< index of the [[wood]], for its tone
    JoinedSolid solid;
    Point pith{}; ///< a point of the axis that the growth rings run round
};

/// A place of the piece that findings speak of.
struct DrawnMark {
    Point at{};
    std::vector<std::size_t> findings; ///< indices, in order
};

/// How far one part of a joint moves along a direction of the glue face, from made to a season.
struct DrawnMove {
    Point direction{};   ///< unit vector
    double length = 0;   ///< of the face in that direction [m]
    double of_first = 0; ///< change of that length if free, positive when it swells [m]
    double of_second = 0;
    bool driest = true;   ///< else the dampest
    bool at_edge = false; ///< the first is a panel whose width moves in and out of the second: its edge goes half of the way
};

/// How far one part of a mitre moves across its own grain.
struct DrawnAcross {
    Point at{};        ///< middle of the part beside the cut
    Point direction{}; ///< unit vector across the grain, in the plane of the frame
    double length = 0; ///< of the part in that direction [m]
    double change = 0; ///< from made to the season, positive when it swells [m]
};

/// A joint taken apart: two copies, drawn near their contact.
struct ExplodedJoint {
    std::vector<std::size_t> findings; ///< all that speak of it, in order
    std::size_t first = 0, second = 0; ///< bodies
    std::string kind;
    Point apart{};                   ///< unit vector along which the first leaves the second
    Box contact;                     ///< box round all faces of the contact
    std::vector<DrawnMove> moves;    ///< none: nothing is known, or both move alike
    std::vector<DrawnAcross> across; ///< of mitres, whose parts move alike along the cut: the first and the second
    bool driest = true;              ///< season of `across`; else the dampest
    bool alike = false;              ///< both parts move, but not against each other
};

/// The end grain of a board that leaves its shape.
struct DrawnEnd {
    std::size_t finding = 0;
    double width = 0, thickness = 0;   ///< of one board, the wide face first [m]
    double ring_radius = 0;            ///< at the middle of the width [m]
    double rings = 0;                  ///< angle between rings and wide face [rad]
    double tangential = 0, radial = 0; ///< free strains from made to the season [1]
    bool driest = true;
};

struct DrawnPiece {
    std::vector<DrawnBody> bodies; ///< by copy
    Box bounds;
    std::vector<DrawnMark> marks;
    std::size_t unmarked = 0; ///< further places, left out so that the piece stays to be seen
    std::vector<ExplodedJoint> joints;
    std::vector<DrawnEnd> ends;
    std::optional<DrawnLoad> load;        ///< none: nothing is loaded, or no such load can be told
    std::optional<SagByThickness> sag_by; ///< none: nothing sags, or it was not worked out
    std::optional<DrawnMonths> months;    ///< none: the room is not known month by month
};

/// Bodies, marks of everything that does not pass, joints and boards to look at closely.
/// @param findings  sorted, as the report lists them
DrawnPiece drawn_piece(const Prepared& prepared, const std::vector<Finding>& findings);

} // namespace jointwright
