#include "mechanics/prepared.hpp"

#include "measure/write.hpp"
#include "piece/solid.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <numeric>

namespace jointwright {

namespace {

constexpr MoistureContent kUsual = MoistureContent::percent(12);

std::string rings_words(Angle rings)
{
    const double d = in_degrees(rings);
    if (d < 1) return "flat-sawn";
    if (d > 89) return "quarter-sawn";
    if (d > 44 && d < 46) return "rift";
    return fmt::format("rings at {}", write_angle(rings));
}

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

/// Where tenons meet in a part neither has the cheeks that it is drawn with.
void lessen_cheeks(Layout& layout)
{
    for (std::size_t c = 0; c < layout.contacts.size(); ++c) {
        const double kept = layout.let_ins.kept[c];
        if (kept >= 1) continue;
        auto& patches = layout.contacts[c].patches;
        for (Patch& p : patches)
            if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) p.area *= kept;
        std::stable_sort(patches.begin(), patches.end(),
                         [](const Patch& a, const Patch& b) { return a.area > b.area + 1e-12; }); // largest first, as ever
    }
}

} // namespace

Layout layout_of(const Piece& piece)
{
    Layout layout;
    layout.contacts = find_contacts(piece).contacts;
    layout.let_ins = meet_let_ins(piece, layout.contacts);
    lessen_cheeks(layout);
    layout.cuts = cuts_of(piece, layout.contacts);
    const std::vector<JointLoss> lost = joint_losses(piece, layout.contacts);
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const Solid solid = solid_of(piece.part_of(i), piece.copies[i]);
        const double volume = solid.volume() - lost[i].volume;
        Point centre = solid.first_moment();
        for (std::size_t k = 0; k < 3; ++k) centre[k] = (centre[k] - lost[i].moment[k]) / std::max(volume, 1e-12);
        layout.volumes.push_back(volume);
        layout.centres.push_back(centre);
    }
    return layout;
}

std::vector<Combination> combinations_of(const Piece& piece)
{
    Combination first;
    first.species.assign(piece.woods.size(), 0);
    first.wood_rings.assign(piece.woods.size(), 0);
    first.part_rings.assign(piece.parts.size(), 0);
    std::vector<Combination> all{first};
    const auto multiply = [&](std::size_t choices, auto set, auto words) {
        if (choices < 2) return;
        std::vector<Combination> grown;
        for (const Combination& c : all)
            for (std::size_t k = 0; k < choices; ++k) {
                Combination next = c;
                set(next, k);
                if (!next.words.empty()) next.words += ", ";
                next.words += words(k);
                grown.push_back(std::move(next));
            }
        all = std::move(grown);
    };
    for (std::size_t w = 0; w < piece.woods.size(); ++w) {
        const WoodChoice& wood = piece.woods[w];
        multiply(
            wood.species.size(), [w](Combination& c, std::size_t k) { c.species[w] = k; },
            [&](std::size_t k) { return wood.species[k]; });
        multiply(
            wood.rings.size(), [w](Combination& c, std::size_t k) { c.wood_rings[w] = k; },
            [&](std::size_t k) { return fmt::format("{} {}", wood.id, rings_words(wood.rings[k])); });
    }
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        if (!part.own_rings) continue;
        multiply(
            part.rings.size(), [p](Combination& c, std::size_t k) { c.part_rings[p] = k; },
            [&](std::size_t k) { return fmt::format("{} {}", part.id, rings_words(part.rings[k])); });
    }
    return all;
}

bool Prepared::masses_known() const
{
    return std::all_of(parts.begin(), parts.end(), [](const PartState& state) { return state.loaded.density.has_value(); });
}

double Prepared::whole_mass() const { return std::accumulate(masses.begin(), masses.end(), 0.0); }

Prepared prepare(const Piece& piece, const Facts& facts, const Layout& layout, const Combination& combination, LengthUnit units)
{
    Prepared prepared;
    prepared.piece = &piece;
    prepared.facts = &facts;
    prepared.layout = &layout;
    prepared.units = units;
    prepared.combination = combination;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) prepared.parts.push_back(state_of_part(piece, facts, combination, i));
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const PartState& state = prepared.state_of(i);
        prepared.masses.push_back(state.loaded.density ? layout.volumes[i] * state.loaded.density->value.value() : 0.0);
    }
    prepared.carried.assign(piece.copies.size(), false);
    prepared.part_carries.assign(piece.parts.size(), false);
    for (const std::size_t i : carried_copies(piece)) {
        prepared.carried[i] = true;
        prepared.part_carries[piece.copies[i].part] = true;
    }
    prepared.statics = statics_of(piece, facts, layout.contacts, layout.cuts, prepared.masses);
    solve_statics(prepared, prepared.statics);
    return prepared;
}

} // namespace jointwright
