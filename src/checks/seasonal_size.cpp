// How wide and thick every part is when made, at the driest and at the dampest.

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"

#include <fmt/core.h>

#include <cmath>

namespace jointwright {

std::vector<Finding> check_seasonal_size(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < prepared.piece->parts.size(); ++i) {
        const Part& part = prepared.piece->parts[i];
        const PartState& state = prepared.parts[i];
        if (!state.moves()) {
            findings.push_back(cannot_tell("seasonal-size", part.id, fmt::format("How far {} moves cannot be told: {}.", part.id, state.missing_movement()),
                                           "give [[wood]] properties = { tangential = ..., radial = ... } from a test of your own"));
            continue;
        }
        const double width = in_metres(part.width), thickness = in_metres(part.thickness);
        Finding f;
        f.check = "seasonal-size";
        f.subject = part.id;
        f.headline = fmt::format("{} is {} wide as made at {}: {} at the driest ({}), {} at the dampest ({}).", part.id, size_words(prepared, width), moisture_words(state.made),
                                 small_words(prepared, width * (1 + state.dry.width)), moisture_words(state.driest), small_words(prepared, width * (1 + state.damp.width)), moisture_words(state.dampest));
        f.where = state.species;
        f.weight = std::abs(state.dry.width) + std::abs(state.damp.width);
        f.values = {{"size_made", width, "m"},
                    {"size_driest", width * (1 + state.dry.width), "m"},
                    {"size_dampest", width * (1 + state.damp.width), "m"},
                    {"thickness_made", thickness, "m"},
                    {"thickness_driest", thickness * (1 + state.dry.thickness), "m"},
                    {"thickness_dampest", thickness * (1 + state.damp.thickness), "m"},
                    {"length_change_driest", in_metres(part.length) * state.dry.along, "m"},
                    {"length_change_dampest", in_metres(part.length) * state.damp.along, "m"},
                    {"moisture_made", state.made.percent(), "%"},
                    {"moisture_driest", state.driest.percent(), "%"},
                    {"moisture_dampest", state.dampest.percent(), "%"}};
        const MovementLaw& law = std::get<MovementLaw>(state.movement);
        f.working = movement_working(*prepared.facts, law, state.rings, part.width, state.made, state.driest);
        for (WorkingStep& step : movement_working(*prepared.facts, law, state.rings, part.width, state.made, state.dampest)) f.working.push_back(std::move(step));
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    return findings;
}

} // namespace jointwright
