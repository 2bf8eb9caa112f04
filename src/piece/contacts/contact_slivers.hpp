#pragma once
// Faces so narrow that no maker's saw and no wood's season lets anything rest on them. SI doubles: metres.

#include "piece/contacts/contact.hpp"

namespace jointwright {

/// Says of every face of a contact how much of what presses on it it takes (`Patch::bears`): nothing where it is narrower than 3 mm (common
/// practice, no source) or than half of the thinner part, all of it from twice that, rising slowly between. Faces that meet in one plane count as one.
/// @param thinnest  the smallest size of either part
void mark_slivers(Contact& contact, double thinnest);

} // namespace jointwright
