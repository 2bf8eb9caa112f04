#pragma once
// From the text of a design file to a Piece. All errors that can be found are reported in one go.

#include "facts/facts.hpp"
#include "piece/model/piece.hpp"
#include "piece/text/fault.hpp"
#include "piece/text/value.hpp"

#include <optional>
#include <string_view>

namespace jointwright {

/// A piece, or the faults that keep it from being one (never both).
struct DesignRead {
    std::optional<Piece> piece;
    Faults faults;
};

/// Reads and resolves a design. Works in memory; knows no files. Text over 4 MiB, bytes that are not UTF-8 and an empty text are faults
/// ("too-large", "syntax", "missing-key"). Geometry is checked too: joints whose parts stand apart, parts that share space without a joint.
DesignRead read_design(std::string_view text, const Facts& facts);

/// The same for a design that has been parsed already, its values changed perhaps: for variants.
/// @param text  that the tree was parsed from, for the lines shown in messages
DesignRead read_design(DesignValue root, std::string_view text, const Facts& facts);

/// The same design with every pattern, repeat, copy and mirror written out as single copies: itself a valid design text with the same
/// verdicts. Numbers of the copies stay ("slat #3" names the same one).
/// @param text  the one that the piece was read from, with the same facts
std::string expand_design(const Piece& piece, std::string_view text, const Facts& facts);

} // namespace jointwright
