#pragma once
// The bores of dowels, screws and bolts. SI doubles: metres.

#include "piece/let_ins/let_ins.hpp"

namespace jointwright {

/// Bores of the contact of that index, appended; nothing for kinds without stated fasteners.
void add_bores(const Piece& piece, const Contact& contact, std::size_t index, std::vector<LetIn>& all);

} // namespace jointwright
