#pragma once
// Small tools that the checks share: subjects, labels, and keeping the worst finding of a subject.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// How bad a verdict is: pass 0, warn 1, cannot-tell 2, fail 3.
int severity(Verdict verdict);
/// True when `a` is the worse of two: by verdict, then by utilisation.
bool is_worse(const Finding& a, const Finding& b);
/// Adds a finding, or replaces the one of the same subject when it is worse.
void keep_worst(std::vector<Finding>& findings, Finding finding);

/// "slat / long rail": the part ids of a contact, in the order of the joint's `between`.
std::string pair_subject(const Prepared& prepared, const Contact& contact);
/// "slat #3 on long rail #1".
std::string pair_place(const Prepared& prepared, const Contact& contact);
/// A length in the maker's units: fractions for sizes, decimals for movements.
std::string size_words(const Prepared& prepared, double metres);
std::string small_words(const Prepared& prepared, double metres);
/// The nearest size in shop steps, 1/64 in or 0.5 mm, that is not above [m].
double shop_size_below(const Prepared& prepared, double metres);
/// The nearest that is not below [m].
double shop_size_above(const Prepared& prepared, double metres);
/// "5.4 %".
std::string moisture_words(MoistureContent moisture);
/// Puts the distinct sources of the working into `sources`.
void gather_sources(Finding& finding);
/// "name a wood whose figures are held, such as its nearest relative Indian rosewood": the way out where a table has nothing.
std::string name_another_wood(const PartState& state);
/// A finding that cannot tell, naming what is missing.
Finding cannot_tell(std::string check, std::string subject, std::string headline, Remedy remedy);

/// Strain of a part along an axis of the piece, from its board strains [1].
double strain_along(const Part& part, const BoardStrain& strain, Axis axis);
/// "along the grain", "across its width", "through its thickness": what an axis of the piece is to a part.
std::string direction_words(const Part& part, Axis axis);
/// The axis that a unit vector points along most.
Axis main_axis_of(const Point& normal);
/// "left to right", "front to back", "up and down"; "slanting, 45° from left to right towards front to back".
std::string way_words(const Point& direction);
bool has_glue(const Prepared& prepared, const Contact& contact);

/// True when two boxes differ along one axis only: they stand in a row.
bool in_line(const Box& a, const Box& b, Axis along);

} // namespace jointwright
