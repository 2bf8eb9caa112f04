#pragma once
// A piece as it is given to the sums: its layout, and of every part the wood, its moisture and what it weighs. Nothing is solved yet.

#include "facts/facts.hpp"
#include "mechanics/given/combination.hpp"
#include "mechanics/given/layout.hpp"
#include "piece/model/piece.hpp"
#include "wood/movement.hpp"
#include "wood/state.hpp"

#include <string>
#include <variant>
#include <vector>

namespace jointwright {

/// One part's wood in this combination and this room.
struct PartState {
    const WoodRecord* record = nullptr; ///< none: own properties alone
    std::string species;                ///< in words
    Angle rings{};
    MoistureContent made, driest, dampest;
    std::variant<MovementLaw, std::string> movement; ///< the law, or what is missing
    BoardStrain dry, damp;                           ///< from made to the driest and the dampest; zero without a law
    WoodState usual;                                 ///< at 12 %: for restraint
    WoodState loaded;                                ///< at the dampest: for loads
    bool moves() const { return movement.index() == 0; }
    const std::string& missing_movement() const { return std::get<1>(movement); }
};

/// One combination of the woods and ring cuts that the design leaves open.
struct Given : LaidOut {
    const Facts* facts = nullptr;              ///< outlives all pieces
    LengthUnit units = LengthUnit::millimetre; ///< of what people read
    Combination combination;
    std::vector<PartState> parts;   ///< by part
    std::vector<double> masses;     ///< by copy [kg]
    std::vector<bool> carried;      ///< by copy: people or goods bear on it
    std::vector<bool> part_carries; ///< by part: some copy of it does

    const PartState& state_of(std::size_t copy) const { return parts[piece->copies[copy].part]; }
    double whole_mass() const;
    bool masses_known() const; ///< false: some part's density is not known, and its mass counts as nothing
};

Given given(LaidOut laid, const Facts& facts, const Combination& combination, LengthUnit units);

} // namespace jointwright
