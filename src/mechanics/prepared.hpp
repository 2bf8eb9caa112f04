#pragma once
// A piece made ready for its checks: one for each combination of woods and ring cuts that the design leaves open.

#include "facts/facts.hpp"
#include "mechanics/cuts.hpp"
#include "mechanics/statics.hpp"
#include "piece/contact.hpp"
#include "piece/let_ins.hpp"
#include "piece/piece.hpp"
#include "wood/movement.hpp"
#include "wood/state.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace jointwright {

/// What depends on geometry alone.
struct Layout {
    std::vector<Contact> contacts;
    std::vector<std::vector<Cut>> cuts; ///< by copy
    std::vector<double> volumes;        ///< by copy, let-ins taken off [m³]
    LetIns let_ins;                     ///< what is let into each copy, and where that meets
    std::vector<Point> centres;         ///< by copy: of that volume, where its weight acts [m]
};
Layout layout_of(const Piece& piece);

/// Which of the listed species and ring cuts are taken.
struct Combination {
    std::vector<std::size_t> species;    ///< by wood; 0 where there is one or none
    std::vector<std::size_t> wood_rings; ///< by wood
    std::vector<std::size_t> part_rings; ///< by part with rings of its own
    std::string words;                   ///< "red maple, rift", only what the design leaves open; else empty
};
std::vector<Combination> combinations_of(const Piece& piece);

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

struct Prepared {
    const Piece* piece = nullptr;
    const Facts* facts = nullptr;
    const Layout* layout = nullptr;
    LengthUnit units = LengthUnit::millimetre; ///< of what people read
    Combination combination;
    std::vector<PartState> parts;   ///< by part
    std::vector<double> masses;     ///< by copy [kg]
    std::vector<bool> carried;      ///< by copy: people or goods bear on it
    std::vector<bool> part_carries; ///< by part: some copy of it does
    Statics statics;

    const PartState& state_of(std::size_t copy) const { return parts[piece->copies[copy].part]; }
    double whole_mass() const;
    bool masses_known() const; ///< false: some part's density is not known, and its mass counts as nothing
};

Prepared prepare(const Piece& piece, const Facts& facts, const Layout& layout, const Combination& combination, LengthUnit units);

} // namespace jointwright
