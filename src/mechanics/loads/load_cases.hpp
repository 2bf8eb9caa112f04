#pragma once
// The loads that a use brings, placed on the parts that carry. SI doubles: metres, newtons.

#include "facts/facts.hpp"
#include "mechanics/given/load_path.hpp"
#include "piece/model/piece.hpp"
#include "wood/resistance.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Loads that act together.
struct LoadCase {
    std::string name;                      ///< "one person standing on slat #5", "2 people side by side"
    DemandKind kind = DemandKind::service; ///< what it is held against
    /// It tries strength alone: neither sag nor standing on its feet is asked of it. All kinds but service loads, and a chair leaned back.
    bool proof = false;
    LoadDuration duration = LoadDuration::sitting;
    double strength_share = 1;     ///< of a proof load that stays on: what is left of the strength for so long
    bool push = false;             ///< sideways: judged by how far the piece sways
    bool lift = false;             ///< the piece taken up by one of its parts
    bool feet_stopped = false;     ///< its feet stand against stops, as the test of that load has them: they do not slide
    std::optional<Side> feet_free; ///< the feet on this side hold nothing: the piece is leaned over onto the others
    bool counts_for_sag = true;    ///< sag is judged under service loads only, never under standing or pushing
    std::vector<CopyLoad> loads;   ///< beside the lasting ones, which act in every case; none in the first case
    std::string source;            ///< where the size of the load comes from
    double total = 0;              ///< N
};

struct LoadCases {
    std::vector<CopyLoad> lasting; ///< own weight and stated lasting loads: in every case
    std::vector<LoadCase> cases;
    std::vector<std::string> assumed; ///< defaults taken, one sentence each
};

/// Cases for the use of the piece and for its stated loads.
/// @param masses  of each copy [kg]
LoadCases load_cases_of(const Piece& piece, const Facts& facts, const std::vector<double>& masses);

/// Seats along the carried length: stated, else the length over one place, rounded down, at least 1.
int seats_of(const Piece& piece, const Facts& facts);

} // namespace jointwright
