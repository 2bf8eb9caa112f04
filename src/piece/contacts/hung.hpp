#pragma once
// Which copies hold together by their joints, and which of them hang on hinges: doors, gates, lids and flaps.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"

#include <cstddef>
#include <vector>

namespace jointwright {

/// By copy: the number of its group. Copies of one group hold together by stated joints, hinges left out; a copy without a joint is a group of its own.
std::vector<std::size_t> joined_groups(const Piece& piece, const std::vector<Contact>& contacts);

/// By copy: it hangs on hinges, and so never stands on the floor, however low it is drawn. The first part of a hinge hangs on the second, and all that is
/// joined to it hangs with it. Nothing hangs where the hinged parts are joined otherwise too, or where all would hang on each other in a ring. Empty
/// where no hinge is.
std::vector<bool> hung_copies(const Piece& piece, const std::vector<Contact>& contacts);

} // namespace jointwright
