#pragma once
// What keeps boards from cupping and glued pairs from bowing: battens, frames, housings across them. Found from the drawing. SI doubles: metres.

#include "mechanics/given/given.hpp"
#include "mechanics/seasons/ties.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// What holds a board straight across its width.
struct Holders {
    std::vector<std::size_t> copies;
    std::vector<double> places;       ///< of each, along the board's grain [m]
    bool glued_over_its_face = false; ///< one crossed layer over half of the wide face or more
    /// Two holders, or one over the whole face: the board cannot cup by itself.
    bool keep_flat() const { return glued_over_its_face || copies.size() > 1; }
    /// "rail #1 and rail #2": at most two names.
    std::string words(const Piece& piece) const;
};

/// The holders of every copy, by copy.
///
/// A holder reaches over most of the board's width, runs across its grain or takes its end in a housing or mortise, and is fastened: glued,
/// screwed, buttoned, dowelled, or cut to take it. What merely touches, and boards joined edge to edge, hold nothing.
std::vector<Holders> holders_across(const Given& given);

/// What keeps a glued pair from bowing in one direction of its glue face.
enum class FlatBy { nothing, like_layer, frame, other_holder };
std::string_view words_of(FlatBy by); ///< "a like layer on the other face"; empty for nothing

/// One glue face in one direction, as the question of bowing sees it.
struct GluedStretch {
    const Contact* contact = nullptr;
    const Patch* patch = nullptr;
    Point direction{};
    double length = 0; ///< of the glue in that direction
};

/// Whether the two parts of a glued face may bow together as one of them shrinks, or are held flat, and by what.
///
/// Held flat by, in this order:
/// - a like layer: a layer of the same thickness and grain glued to the other face of one of the two, which pulls as hard the other way;
/// - a frame: one of the two runs along the glue, has more than 60 % of its length in it, and is joined to others at both its ends, which do
///   not let it turn there;
/// - another holder: the glue reaches over more than 60 % of the width of a board that has it across its grain, and a part other than the
///   partner holds this board straight across (`holders_across`) no farther from the glue than the board is wide. So are the sides of a case
///   by the boards housed between them, and boards by a second rail near the first. A cup dies away along a board within about its own
///   width; farther off, one rail does not feel the other, and each bows as if it were alone.
/// Glue on a lesser part of a width or a length bows the wood about it, whatever holds the whole.
FlatBy held_flat_by(const Given& given, const Ties& ties, const std::vector<Holders>& holders, const GluedStretch& glue);

} // namespace jointwright
