#pragma once
// Screws in place of a glue line that does not hold: how many, what size, what holes, and whether they want slots.

#include "bond/fastener.hpp"
#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string>

namespace jointwright {

/// What the glue would have had to bear. SI doubles.
struct FallbackNeed {
    double shear = 0, pull = 0, moment = 0; ///< N, N, N m
    LoadDuration duration = LoadDuration::short_term;
    Point through{}; ///< the screws' direction
};

/// Adds a way to a remedy: "screw it: 2 wood screws number 8 (4.2 mm), …"; says so where screws alone cannot do it. Nothing where no specific gravity is
/// known. Screws go through the thinner part into the thicker; the glue is not counted on beside them.
void offer_screws(Remedy& remedy, const Prepared& prepared, const Contact& contact, const FallbackNeed& need);

/// The hardest that any load case asks of a contact, for a joint without glue that counts: worst of joint_demand, else the weight of the lighter part.
FallbackNeed hardest_need(const Prepared& prepared, std::size_t contact);

/// The wood that holds a part's threads: 12 %, with the table's own specific gravity.
WoodState holding_wood(const Prepared& prepared, std::size_t copy);

} // namespace jointwright
