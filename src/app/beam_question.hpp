#pragma once
// What `beam` is asked: its options as typed, and the beam and loads that they describe.

#include "app/option_set.hpp"
#include "app/values.hpp"
#include "facts/facts.hpp"
#include "mechanics/beam/beam_on_supports.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

struct BeamTexts {
    std::optional<std::string> span, width, depth, species, modulus, moisture, point, uniform, patch, ends;
    std::optional<std::string> overhang_left, overhang_right, taper, draw;
    std::vector<std::string> supports, notches, loads;
    /// Only what the closed forms of two supports take.
    bool is_plain() const;
};

struct BeamQuestion {
    SimpleBeam simple{};    ///< for the closed forms
    BeamLoads simple_loads; ///< of --point, --uniform and --patch
    BeamOnSupports beam;
    std::vector<PlacedLoad> loads; ///< all of them
    std::string material;
    Working working; ///< how the moduli came about
    std::vector<std::string> assumed;
};

void add_beam_options(OptionSet& options, BeamTexts& texts);

/// Reads all options; what is wrong with them stays in the reader.
BeamQuestion read_beam_question(const Facts& facts, const BeamTexts& texts, ValueReader& reader);

} // namespace jointwright
