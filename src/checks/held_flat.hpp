#pragma once
// Which boards others keep from cupping: battens, frames, housings across them. Found from the drawing.

#include "mechanics/prepared.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// What holds a board straight across its width.
struct Holders {
    std::vector<std::size_t> copies;
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
std::vector<Holders> holders_across(const Prepared& prepared);

} // namespace jointwright
