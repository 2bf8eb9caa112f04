#pragma once
// One part of a design with another size: the varied piece is made from the design's values, never from its text.

#include "facts/facts.hpp"
#include "piece/model/piece.hpp"
#include "piece/read/read_design.hpp"
#include "piece/text/value.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace jointwright {

enum class VariedSize { thickness, width, length };
std::string_view name_of(VariedSize what); ///< "thickness"

/// Which side of the part stays where it is while its thickness or width changes.
enum class HeldSide {
    stated, ///< the one that `at` names; with `at = [x, y, z]` the left, front or bottom one
    other   ///< the one across
};

/// A design in which one part may take other sizes.
///
/// Thickness and width: the part alone changes; one side stays put, the other moves (a mirrored copy mirrors that). Length: the piece
/// is drawn out with the part, for a rail cannot grow while the legs at its ends stand still. Along the grain of the part
/// * what reaches over most of it grows with it (the other rail, a top);
/// * what stands beyond its far end, or within its last quarter, moves along; what stands before it, or in its first quarter, stays;
/// * what stands between moves in proportion, and a row of three or more like copies keeps its ends and spreads evenly;
/// * notches of what grows, places of loads and the size of the piece go along.
class Variation {
public:
    /// @param text  the one that the piece was read from, with the same facts; must outlive this, as must piece and facts
    Variation(std::string_view text, const Piece& piece, const Facts& facts, std::size_t part, VariedSize what);

    /// The piece with that size, or the faults that it then has. `held` means nothing for a length.
    DesignRead with_size(Length size, HeldSide held) const;
    /// The size as the design has it.
    Length as_drawn() const;
    /// Why a length cannot be varied whatever it is: copies side by side that do not end in line, like parts that would grow by
    /// unlike amounts. Nothing where it can.
    const std::optional<std::string>& hindrance() const { return hindrance_; }
    /// "its front side stays where it is", "the piece is drawn out with it, along x".
    std::string words(HeldSide held) const;

private:
    Axis axis() const;
    DesignValue with_part_size(Length size, HeldSide held) const;
    void keep_loads_on_it(DesignValue& root, Length size, HeldSide held) const;
    DesignValue drawn_out(Length size) const;
    Side side_of(HeldSide held) const;

    std::string_view text_;
    const Piece& piece_;
    const Facts& facts_;
    std::size_t part_;
    VariedSize what_;
    DesignValue root_; ///< the design with its pattern written out
    std::optional<std::string> hindrance_;
};

} // namespace jointwright
