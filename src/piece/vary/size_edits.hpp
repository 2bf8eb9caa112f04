#pragma once
// The edits that give a part another thickness or width and keep it where it is held.

#include "piece/vary/editable_design.hpp"
#include "piece/vary/variation.hpp"

#include <vector>

namespace jointwright {

/// The size itself; with the other side held also the places of the part and of its further copies, and the size of the piece where the
/// part would stand out of it and nothing is mirrored about its middle.
/// @param what  thickness or width
std::vector<DesignEdit> size_edits(const EditableDesign& design, std::size_t part, VariedSize what, Length size, HeldSide held);

} // namespace jointwright
