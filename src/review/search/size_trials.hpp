#pragma once
// The whole check of a piece whose one part takes other sizes, each size worked out once.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/vary/variation.hpp"

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace jointwright {

/// Check and subject of a finding: what stays the same when a size changes.
using FindingKey = std::pair<std::string, std::string>;
FindingKey key_of(const Finding& finding);

/// What the whole check says of one variant, or why there is no such piece.
struct Trial {
    bool possible = false;
    std::string why;      ///< where it is not: one sentence
    std::string fault_id; ///< of that fault, "joint-apart"
    std::vector<Finding> findings;
    const Finding* find(const FindingKey& key) const;
};

/// What a variant is measured by. A maker asks what a size changes, so that two kinds of findings are named and left aside.
struct Yardstick {
    /// Not pass at any size: those that no size changes, and those about other parts alone that no size cures; never that a piece comes apart.
    std::set<FindingKey> aside;
    /// Warnings that the drawn size has already within its limits (advice of practice): they count only where they get worse.
    std::map<FindingKey, Verdict> advice;

    /// True when a finding says nothing against a variant.
    bool allows(const Finding& finding) const;
    /// True for a finding that is looked at.
    bool counts(const Finding& finding) const { return aside.count(key_of(finding)) == 0; }
};

/// The yardstick that the drawn piece sets, without any variant known.
Yardstick yardstick_of(const Trial& drawn);
/// Sets aside what none of the variants cures. @param part  the varied one
void set_aside_what_stays(Yardstick& yardstick, const Trial& drawn, const std::vector<const Trial*>& all,
                          const std::string& part);

/// True when such a piece is possible and no finding speaks against it.
bool passes(const Trial& trial, const Yardstick& yardstick);

/// How far a variant is from the border: negative when it passes, continuous where the governing utilisation is.
double margin(const Trial& trial, const Yardstick& yardstick);

/// The finding that governs: the worst that speaks against the variant, else the one that uses most of its limit; of those that another
/// variant changes, where there are such. Nothing without findings.
const Finding* governing(const Trial& trial, const Trial& other, const Yardstick& yardstick);

class SizeTrials {
public:
    SizeTrials(const Variation& variation, const Piece& piece, const Facts& facts, LengthUnit units);

    /// The whole check at a size. References stay good.
    const Trial& at(Length size);
    HeldSide held() const { return held_; }
    std::size_t worked_out() const { return trials_.size(); }
    /// Every size worked out so far.
    std::vector<const Trial*> all() const;

private:
    Trial work_out(Length size, HeldSide held) const;
    void choose_held_side();

    const Variation& variation_;
    const Piece& piece_;
    const Facts& facts_;
    LengthUnit units_;
    HeldSide held_ = HeldSide::stated;
    std::set<std::pair<std::size_t, std::size_t>> touching_; ///< copies that touch in the design
    std::map<double, Trial> trials_;
};

} // namespace jointwright
