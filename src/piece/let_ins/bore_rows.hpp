#pragma once
// The rows in which a joint's dowels, screws, bolts and pegs stand. SI doubles: metres.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"
#include "piece/solid/convex_kernel.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Places of a row on a face, along its longer side.
struct RowOnFace {
    std::vector<kernel::Vec> places;
    kernel::Vec normal{0, 0, 1}, along{1, 0, 0}; ///< unit vectors: out of the first part; the way the row runs
    double length = 0;                           ///< of the face along the row [m]
};

/// @param inset  from either end of the face to the first and the last; without it each stands in the middle of its share of the length
RowOnFace row_on(const Patch& face, int count, std::optional<Length> inset);

/// What one joint sets side by side at one contact.
struct BoreRow {
    enum class Kind { dowel, screw, bolt, peg } kind = Kind::dowel;
    std::size_t contact = 0; ///< index
    int count = 1;
    double diameter = 0;        ///< [m]
    double pitch = 0;           ///< from the middle of one to that of the next [m]; of a row of one: its length
    double length = 0;          ///< of the face or of the tenon's width along the row [m]
    kernel::Vec along{1, 0, 0}; ///< unit vector
    double between() const { return pitch - diameter; } ///< wood left between two; under 0 they run into one another
    /// How many stand at this pitch in the same length; at least one.
    int fits(double pitch_wanted) const;
};
std::string_view name_of(BoreRow::Kind kind); ///< "dowel", "peg"

/// The rows of more than one, in the order of the contacts: dowels, screws of all kinds, bolts, and pegs across the width of their tenon.
std::vector<BoreRow> bore_rows(const Piece& piece, const std::vector<Contact>& contacts);

} // namespace jointwright
