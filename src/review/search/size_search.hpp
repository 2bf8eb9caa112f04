#pragma once
// How thin, how narrow, how long may a part be, and from which woods: the whole check swept over one part of a design.

#include "facts/facts.hpp"
#include "judging/finding.hpp"
#include "piece/model/piece.hpp"
#include "piece/vary/variation.hpp"
#include "review/search/size_trials.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// One side of the border: a size that can be worked, and what governs there.
struct SizeSide {
    Length size{};
    std::optional<Finding> governs; ///< nothing where there is no such piece, or no finding
    std::string why_not;            ///< why there is no such piece; else empty
};

struct SizeSearch {
    Length as_drawn{};
    bool passes_as_drawn = false;
    std::optional<Length> passes_at; ///< the smallest thickness or width that passes, the longest length; next to the drawn size
    bool end_of_search = false;      ///< every size out to passes_at passes and none beyond was tried
    std::optional<SizeSide> passing, failing; ///< rounded to what can be worked on either side of passes_at
    std::vector<SizeSide> no_further;         ///< where nothing passes: sizes at which there is no such piece
    std::vector<Finding> aside;               ///< warn, fail or cannot-tell at every size alike: no answer to the question
    std::vector<Finding> advice;              ///< warnings within their limits that the drawn size has too
    std::vector<Finding> in_the_way;          ///< where nothing passes: what keeps the drawn size from passing
    std::string held;                         ///< what stays put, in words
    std::optional<std::string> hindrance;     ///< the part cannot be varied so at all, and why
    std::size_t worked_out = 0;               ///< whole checks made
};

/// Sweeps a size of one part from the drawn one outwards, in steps of a fourth root of 2 over a factor of 8 towards the border and 4 the
/// other way, until the verdict changes, then finds the border by a bracketed root (TOMS 748) on the governing utilisation to 1 µm.
///
/// "Passes": every finding of the whole check is pass, but for three kinds that say nothing of the size and are named: those that no
/// size changes and those about other parts alone that no size cures (`aside`), and warnings within their limits that the drawn size
/// has too (`advice`). A size at which the piece falls apart (parts that touched no longer do, or an input error) does not pass.
/// Sizes beyond a band of failing ones are not looked for: from the drawn size to the answer everything passes.
SizeSearch search_size(std::string_view text, const Piece& piece, const Facts& facts, std::size_t part, VariedSize what,
                       LengthUnit units);

/// What the whole check says with one wood.
struct WoodTrial {
    std::string name;
    Verdict verdict = Verdict::pass; ///< worst of the findings that count
    std::optional<Finding> governs;
};

struct WoodSearch {
    std::vector<WoodTrial> woods;       ///< every wood of the tables, by name
    std::vector<Finding> aside, advice; ///< as for sizes
    /// The wood that passes with least to spare and the one that misses by least.
    std::optional<std::size_t> just_passes, just_misses; ///< places in `woods`
};

/// The whole check with every wood of the tables for one part, its ring cut, finish and moisture kept; other parts keep their woods.
WoodSearch search_woods(const Piece& piece, const Facts& facts, std::size_t part, LengthUnit units);

} // namespace jointwright
