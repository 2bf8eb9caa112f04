#pragma once
// Sizes of a tenon that its two parts contradict.

#include "piece/contacts/contact.hpp"

#include <optional>

namespace jointwright {

/// What is wrong with the tenon of a contact: wider or thicker than what it is cut from, another length than its part is drawn in, longer
/// than the wood that it goes into. Nothing where it fits, and where the sizes are not stated.
std::optional<Fault> tenon_fault(const Piece& piece, const Contact& contact);

} // namespace jointwright
