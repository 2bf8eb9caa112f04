#pragma once
// How far wood swells and shrinks across its grain.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>
#include <variant>

namespace jointwright {

/// Movement of one wood in its three directions: coefficients per point of moisture and the fibre saturation they go with.
struct MovementLaw {
    MovementCoefficient tangential, radial;
    MovementCoefficient along; ///< 0.00005 per point
    MoistureContent fibre_saturation = MoistureContent::percent(30);
    Citation tangential_cite, radial_cite, along_cite;
};

/// Own test values of a design that replace the table's.
struct OwnMovement {
    std::optional<MovementCoefficient> tangential, radial;
};

/// The law of a wood: printed coefficients, or computed from shrinkage where the table prints none.
/// Returns the name of what is missing ("radial movement coefficient or shrinkage of ...") when it cannot be made.
std::variant<MovementLaw, std::string> movement_law(const Facts& facts, const WoodRecord* wood, const OwnMovement& own = {});

/// "Of mango no figures are held; the nearest listed relative is goncalo alves: same family, but much denser." For a wood that names one.
std::string nearest_sentence(const WoodRecord& wood);

/// Strain from one moisture content to another, positive when the wood swells [1].
///
/// Within 6 to 14 %: C (M1 − M0). If either end lies outside: (M1 − M0)/(100F/S' − F + M0), both capped at F, with
/// S' = 100F/(1/C + F − 10), so that the two laws meet. Exactly 0 when the two contents agree.
/// Swelling back returns to the start within the linearity of the law.
/// Source: Wood Handbook ch. 13, eqs. 13-2 and 13-3.
double movement_strain(MovementCoefficient coefficient, MoistureContent fibre_saturation, MoistureContent from,
                       MoistureContent to);

/// Free strains of a board for a change of moisture, in its own axes [1].
struct BoardStrain {
    double along = 0; ///< along the grain
    double width = 0; ///< across the grain, on the face
    double thickness = 0;
    double shear = 0; ///< engineering shear in the end-grain plane: a square turns to a diamond
    double tangential = 0, radial = 0;
};

/// Strains of a board whose rings stand at `rings` to the wide face (0 flat-sawn, 90° quarter-sawn).
/// Plane strain transformation of the tangential and radial strains. Working, when wanted, names the law and its source.
BoardStrain board_strain(const MovementLaw& law, Angle rings, MoistureContent from, MoistureContent to);

/// The steps behind the width strain of board_strain, for a board of that width.
Working movement_working(const Facts& facts, const MovementLaw& law, Angle rings, Length width, MoistureContent from,
                         MoistureContent to);

} // namespace jointwright
