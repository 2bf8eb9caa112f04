#pragma once
// What a glued contact has to bear, by hand statics, and how much of its glue counts. SI doubles: metres, newtons, pascals.

#include "bond/glue/glue_line.hpp"
#include "bond/glue/glue_patch.hpp"
#include "mechanics/prepared.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// What counts of the glue at a contact.
struct GluedArea {
    double area = 0;        ///< side grain to side grain [m²]
    double end_grain = 0;   ///< counted as nothing [m²]
    double glued_share = 1; ///< of the face's longer side
    const Patch* largest = nullptr;
    std::optional<double> angle; ///< of the largest counted face
    GlueFace face = GlueFace::side_grain;
};

/// End grain and the narrow edges of a tenon are left out; a stated glued length lessens the rest.
GluedArea glued_area(const Contact& contact, const Joint& joint);

/// One demand on a glue line.
struct GlueDemand {
    std::string name;
    bool proof = true; ///< no service load
    DemandKind kind = DemandKind::proof;
    LoadDuration duration = LoadDuration::short_term;
    GluePatch patch;      ///< the glued side grain, its a along the grain of the part that is carried
    Point along{};        ///< unit vector of that a
    Point across{};       ///< unit vector of its b
    bool directed = true; ///< the way of the push is known; not of a part's own weight put on it for want of anything else
    PatchForces forces;   ///< that count there; of a part lifted by its edge without what turns it: that is `peel`
    double shear = 0;     ///< with what twists the face, as a force in it [N]
    double tension = 0;   ///< largest, from pull and bending or from peeling [Pa]
    double peel = 0;      ///< at the edge that a lift opens, checked apart [Pa]; 0 where nothing is lifted
    double pull = 0;      ///< of the tension, the force [N]
    double lever = 0;     ///< and how far from the middle of the glue it acts [m]
    std::string source;
    std::string sum;    ///< how it came about
    bool lies = false;  ///< the part lies on this face and on another, and would not fall without the glue
    bool hangs = false; ///< a lasting pull on the glue, not a jerk
    bool lift = false;  ///< the piece taken up by one of its parts: no design relies on it
};

/// Everything asked of the glue at a contact: pushes and lifts of what people sit on, what the parts hand down, else a part's own weight.
std::vector<GlueDemand> glue_demands(const Prepared& prepared, std::size_t contact, const GluedArea& glue);

/// A mitre with keys, a spline or dowels: they bear what turns it, and what its own glue gives up.
bool is_reinforced(const Joint& joint);

/// A joint that bears without its glue: a tenon in its mortise, a part in a housing or groove, a part lying on another.
bool bears_by_shape(const Joint& joint, const GluedArea& glue);

} // namespace jointwright
