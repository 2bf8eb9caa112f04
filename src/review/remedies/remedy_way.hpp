#pragma once
// A way to mend a finding: one size in shop steps, or a single change. Nothing is known here of whether it works.

#include "facts/facts.hpp"
#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"
#include "piece/vary/editable_design.hpp"

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace jointwright {

/// What ways are made from.
struct RemedyBench {
    const EditableDesign& design;
    const Piece& piece;
    const Facts& facts;
    const Layout& layout;
    LengthUnit units;                                       ///< of what people read
    std::set<std::pair<std::size_t, std::size_t>> touching; ///< copies that touch as drawn

    RemedyBench(const EditableDesign& design, const Facts& facts, const Layout& layout, LengthUnit units);

    double shop_step() const;  ///< 1 mm or 1/16 in [m]
    double fine_step() const;  ///< 0.5 mm or 1/64 in: room, clearance
    double glued_step() const; ///< 5 mm or 1/4 in: how far glue is spread
    /// So many whole steps above or below a size, which itself need not be on one.
    double above(double size, double step, int count) const;
    double below(double size, double step, int count) const;
    /// For people, in their units.
    std::string words(double length) const;
    /// The piece with these edits, laid out; nothing where the format refuses it or something that touched stands apart.
    std::optional<LaidOut> changed(const std::vector<DesignEdit>& edits) const;
};

struct RemedyWay {
    std::function<std::vector<DesignEdit>(int)> edits; ///< after so many steps, 1 to `most`; empty: there is no such size
    std::function<std::string(int)> says;
    int most = 1;         ///< steps that make sense; 1 where there is but one change
    int guess = 1;        ///< where to begin
    bool may_end = false; ///< the finding is mended too when it is not there any more: no glue, no glue line
};

/// The ways to mend a finding, in the order in which a maker would try them: the cheap first, another wood last. None for findings that
/// no size mends.
std::vector<RemedyWay> ways_to_mend(const RemedyBench& bench, const Finding& finding);

/// True for checks whose words without a size are told beside what was tried: a brace, a back, an anchor in the wall.
bool keeps_its_words(const Finding& finding);

/// A value of a finding by its name.
std::optional<double> value_of(const Finding& finding, std::string_view name);
/// Steps from a size to that which would just bring the use to its limit, were it to fall with that power of the size; at least 1.
int steps_to_limit(const Finding& finding, double size, double step, double power);

// Makers of ways, by what they change. Each returns nothing where the change makes no sense for the finding.
using Ways = std::vector<RemedyWay>;
using MakeWays = Ways (*)(const RemedyBench&, const Finding&);

// remedy_parts.cpp
Ways bent_way_thicker(const RemedyBench& bench, const Finding& finding);  ///< the size that lies upright, of a lying part
Ways both_ways_thicker(const RemedyBench& bench, const Finding& finding); ///< width and thickness alike: a leg
Ways wider(const RemedyBench& bench, const Finding& finding);             ///< the parts named: more face
Ways narrower(const RemedyBench& bench, const Finding& finding);
Ways shallower_notches(const RemedyBench& bench, const Finding& finding);
Ways more_boards(const RemedyBench& bench, const Finding& finding);
Ways other_wood_in_stock(const RemedyBench& bench, const Finding& finding);
Ways deeper_rails(const RemedyBench& bench,
                  const Finding& finding); ///< those of the finding, or all that stand in posts; their tenons with them

// remedy_room.cpp
Ways wider_gap(const RemedyBench& bench, const Finding& finding);
Ways narrower_with_gaps(const RemedyBench& bench, const Finding& finding);   ///< the row keeps its step
Ways deeper_groove_pinned(const RemedyBench& bench, const Finding& finding); ///< and the panel held at its middle
Ways narrower_panel(const RemedyBench& bench, const Finding& finding);       ///< at both its edges; then pinned as well
Ways quarter_sawn(const RemedyBench& bench, const Finding& finding);
Ways settled_stock(const RemedyBench& bench, const Finding& finding); ///< at the mean of the room before it is cut

// remedy_joints.cpp
Ways longer_tenon(const RemedyBench& bench, const Finding& finding);
Ways shorter_tenon(const RemedyBench& bench, const Finding& finding);
Ways wider_tenon(const RemedyBench& bench, const Finding& finding);
Ways thicker_tenon(const RemedyBench& bench, const Finding& finding);
Ways deeper_rail_and_tenon(const RemedyBench& bench, const Finding& finding);
Ways more_clearance(const RemedyBench& bench, const Finding& finding);
Ways deeper_groove(const RemedyBench& bench, const Finding& finding);
Ways thicker_bridle(const RemedyBench& bench, const Finding& finding);
Ways deeper_slip(const RemedyBench& bench, const Finding& finding); ///< keys and splines of a mitre

// remedy_let_ins.cpp
Ways mitred_ends(const RemedyBench& bench, const Finding& finding);       ///< of two tenons that meet in a part
Ways one_tenon_shorter(const RemedyBench& bench, const Finding& finding); ///< of two that meet, to where the other begins
Ways shallower_let_in(const RemedyBench& bench, const Finding& finding);  ///< a tenon that leaves too little behind it

// remedy_fasteners.cpp
Ways longer_slot(const RemedyBench& bench, const Finding& finding);
Ways more_fasteners(const RemedyBench& bench, const Finding& finding); ///< screws, dowels, pegs, buttons, keys
Ways longer_fasteners(const RemedyBench& bench, const Finding& finding);
Ways thicker_fasteners(const RemedyBench& bench, const Finding& finding);
Ways thinner_screws(const RemedyBench& bench, const Finding& finding);
Ways dowels_instead(const RemedyBench& bench, const Finding& finding);
Ways screws_as_well(const RemedyBench& bench, const Finding& finding);

// remedy_glue.cpp
Ways glue_instead_of_dry(const RemedyBench& bench, const Finding& finding);
Ways all_glued(const RemedyBench& bench, const Finding& finding); ///< every dry joint of the piece that takes glue
Ways glued_at_the_middle(const RemedyBench& bench, const Finding& finding);
Ways left_dry(const RemedyBench& bench, const Finding& finding);
Ways buttons_instead(const RemedyBench& bench, const Finding& finding);
Ways glue_for_damp(const RemedyBench& bench, const Finding& finding);
Ways slower_glue(const RemedyBench& bench, const Finding& finding);

} // namespace jointwright
