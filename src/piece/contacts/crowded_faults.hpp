#pragma once
// More than a face has room for: tails, and glue.

#include "piece/contacts/contact.hpp"

#include <optional>

namespace jointwright {

/// Tails or fingers too narrow to cut, or glue over more than the two parts touch along. Nothing where there is room.
std::optional<Fault> crowded_fault(const Piece& piece, const Contact& contact);

} // namespace jointwright
