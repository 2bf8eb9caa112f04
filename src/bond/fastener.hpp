#pragma once
// What a screw, nail, dowel or bolt holds in a wood, the holes it wants, and how far from ends, edges and its neighbours it must stand.

#include "facts/facts.hpp"
#include "facts/working.hpp"
#include "measure/quantity.hpp"
#include "wood/resistance.hpp"
#include "wood/state.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

enum class FastenerKind {
    wood_screw,
    pocket_screw, ///< a wood screw set at a slope through a pocket in the first part
    lag_screw,
    nail,
    dowel,           ///< wooden, glued
    bolt_and_barrel, ///< a bolt that pulls on a metal cross dowel in the end of a rail
    button,          ///< its one wood screw
    figure_plate,    ///< its one wood screw in either part
};
std::string_view name_of(FastenerKind kind); ///< "wood screw"

/// One fastener in one wood.
struct FastenerAsked {
    FastenerKind kind = FastenerKind::wood_screw;
    Length diameter{};    ///< shank; of a cross dowel its own
    Length penetration{}; ///< threaded length in the part that holds; of a cross dowel its own length in the wood
    bool end_grain = false;
};

/// Distances that keep the wood from splitting, with pilot holes drilled.
struct FastenerDistances {
    Length along{}, across{};   ///< between fasteners, along and across the grain
    Length end_loaded{}, end{}; ///< from an end of the grain that the load pushes towards, and from one that it does not
    Length edge_loaded{}, edge{};
};

struct FastenerCapacity {
    Force withdrawal_ultimate{};  ///< mean
    Force withdrawal_allowable{}; ///< loads of ordinary duration; 0 where it must not be relied on
    std::optional<Force> lateral; ///< allowable across the fastener; for lag screws along the grain; none where nothing is known
    Force
        lateral_shallow{};  ///< what it may bear across where it goes in less than that asks, straight down to nothing: estimated
    double least_depth = 0; ///< diameters that it has to go in to count across; 0 where none are asked
    std::optional<Force> lateral_across; ///< lag screws: pushed across the grain
    Length pilot{};                      ///< hole for the thread, or for a dowel its own
    Length clearance{};                  ///< hole in the part under the head; 0 where there is none
    FastenerDistances distances;
    std::vector<std::string> notes; ///< limits of the figures, one sentence each
};

/// Capacity of one fastener; nothing when the wood lacks what the formula needs (specific gravity; for dowels and cross dowels its strengths).
///
/// Wood screws 108.25 G² D L (ultimate), 19.65 G² D L (allowable); lag screws 125.4 G^1.5 D^0.75 L; nails 54.12 G^2.5 D L; N, mm. Across: three
/// quarters of the proportional limit K D² (lag screws 0.533, nails D^1.5), in full from a penetration of 7 D on, less in proportion, none under 6 D
/// (lag screws and nails 4 D). A button bears 150 N of pull at the most, its tongue being of unstated size.
/// End grain: nothing allowed in withdrawal (lag screws three quarters), two thirds across. Dowels: dowel_withdrawal. Cross dowels: pressing along the grain. Laws: grows with diameter, penetration and density; never more in end grain.
/// Leaves out: the metal's own strength, heads pulled through thin parts, green wood.
/// Sources: Wood Handbook ch. 8, NDS and Civil Engineering Formulas as data/fastenings.toml says.
std::optional<FastenerCapacity> fastener_capacity(const Facts& facts, const WoodState& wood, std::string_view wood_name,
                                                  const FastenerAsked& asked, Working* working = nullptr);

/// The state that the formulas for metal fasteners want: 12 %, with the specific gravity that the table prints for it where there is one
/// (oven-dry mass over the volume at 12 %), else that reckoned from the green one.
WoodState fastened_state(const Facts& facts, const WoodRecord* wood, const OwnStrength& own = {});

/// Which of the six rows of K a wood falls in, "hardwood_dense", and whether its specific gravity lies outside the table.
struct LateralClass {
    std::string row;
    bool outside = false;
};
LateralClass lateral_class(WoodKind kind, double specific_gravity);

FastenerDistances distances_for(const Facts& facts, Length diameter);

/// Pull on the farthest of fasteners where a moment opens the face about a pressed edge [N, for a moment of either sign]: M z/(0.9 Σ z²), each drawn by
/// its distance from that edge (in any order; what lies on it draws nothing). Nothing where no distance is more than 0.
/// Source: mechanics; 0.9 of the lever as for tenons (estimated).
std::optional<Force> pull_of_turning(const Facts& facts, Moment moment, const std::vector<Length>& from_edge);

/// Shank diameter of a wood screw by its number: 0.060 in + number × 0.013 in.
Length screw_of_number(int number);

/// What screws in place of glue have to bear, and where they can go.
struct ScrewsWanted {
    Force lateral{}, withdrawal{};
    Moment moment{}; ///< turned about an edge of the face
    Length lever{};  ///< from that edge to the far screws; for the moment
    LoadDuration duration = LoadDuration::short_term;
    Length under_head{};    ///< thickness of the part that the screws go through
    Length depth{};         ///< wood for the thread beyond it
    bool end_grain = false; ///< the thread ends up in end grain
};
struct ScrewsOffered {
    int count = 0, number = 0; ///< how many, of which number
    Length diameter{}, length{}, pilot{}, clearance{}, end{}, edge{}, along{};
    double use = 0; ///< of what they are allowed
};
/// The fewest screws, of the smallest size that does, that bear it: lateral/allowed + pull/allowed ≤ 1. Nothing where no screw of number 6 to 14 with at
/// least 6 D in the wood does it with up to eight.
std::optional<ScrewsOffered> screws_for(const Facts& facts, const WoodState& holding, const ScrewsWanted& wanted);

} // namespace jointwright
