#include "mechanics/given/given.hpp"

#include "wood/moisture_balance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <numeric>
#include <utility>

namespace jointwright {

namespace {

constexpr MoistureContent kUsual = MoistureContent::percent(12);

PartState state_of_part(const Piece& piece, const Facts& facts, const Combination& combination, std::size_t index)
{
    const Part& part = piece.parts[index];
    const WoodChoice& wood = piece.woods[part.wood];
    PartState state;
    if (!wood.species.empty()) {
        state.species = wood.species[combination.species[part.wood]];
        state.record = facts.find_wood(state.species);
    } else {
        state.species = fmt::format("wood \"{}\" by its own test values", wood.id);
    }
    state.rings = part.own_rings ? part.rings[combination.part_rings[index]] : wood.rings[combination.wood_rings[part.wood]];
    state.made = part.moisture ? *part.moisture : wood.moisture ? *wood.moisture : piece.room.at_glue_up;
    state.driest = moisture_in(piece.room.driest);
    state.dampest = moisture_in(piece.room.dampest);
    state.movement = movement_law(facts, state.record, wood.own_movement);
    if (const auto* law = std::get_if<MovementLaw>(&state.movement)) {
        state.dry = board_strain(*law, state.rings, state.made, state.driest);
        state.damp = board_strain(*law, state.rings, state.made, state.dampest);
    }
    state.usual = wood_state(facts, state.record, wood.own_strength, kUsual);
    state.loaded = wood_state(facts, state.record, wood.own_strength, state.dampest);
    return state;
}

} // namespace

bool Given::masses_known() const
{
    return std::all_of(parts.begin(), parts.end(), [](const PartState& state) { return state.loaded.density.has_value(); });
}

double Given::whole_mass() const { return std::accumulate(masses.begin(), masses.end(), 0.0); }

Given given(LaidOut laid, const Facts& facts, const Combination& combination, LengthUnit units)
{
    Given given;
    static_cast<LaidOut&>(given) = std::move(laid);
    const Piece& piece = *given.piece;
    given.facts = &facts;
    given.units = units;
    given.combination = combination;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) given.parts.push_back(state_of_part(piece, facts, combination, i));
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const PartState& state = given.state_of(i);
        given.masses.push_back(state.loaded.density ? given.layout->volumes[i] * state.loaded.density->value.value() : 0.0);
    }
    given.carried.assign(piece.copies.size(), false);
    given.part_carries.assign(piece.parts.size(), false);
    for (const std::size_t i : piece.carried_copies()) {
        given.carried[i] = true;
        given.part_carries[piece.copies[i].part] = true;
    }
    return given;
}

} // namespace jointwright
