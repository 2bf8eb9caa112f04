#pragma once
// The year month by month, for charts: what the wood would hold, and how wide parts and gaps would be. SI doubles: metres.

#include "facts/room_months.hpp"
#include "mechanics/prepared.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// A number of a finding, in every month.
struct MonthRow {
    std::string check, subject;
    double made = 0;                 ///< m
    std::array<double, 12> months{}; ///< m, January first
};

struct DrawnMonths {
    MonthlyMoisture moisture{}; ///< percent
    std::string source;         ///< readable, with table and provenance
    std::string combination;    ///< the woods that the rows are for, where the design leaves them open
    std::vector<MonthRow> rows; ///< of seasonal-size the width, of slat-gap, groove-room and bind the gap
};

/// Widths and gaps with every part in equilibrium with the air of each month in turn: no lag of thick wood, no finish that slows it.
/// Nothing where the room is not known month by month, or the piece has more than 1000 copies: their gaps take long to find.
std::optional<DrawnMonths> drawn_months(const Prepared& prepared);

} // namespace jointwright
