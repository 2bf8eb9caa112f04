#pragma once
// The chart of `beam`: the beam with its supports and loads, and below it shear force, bending moment and deflection.

#include "measure/read.hpp"
#include "mechanics/beam/beam_on_supports.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// One SVG with title and description, in the maker's unit of length; forces in N and moments in N m, their largest values written out.
std::string beam_chart(const std::string& title, const BeamOnSupports& beam, const std::vector<PlacedLoad>& loads,
                       const SupportedBeamAnswer& answer, LengthUnit units);

} // namespace jointwright
