#include "report/compose.hpp"

#include "report/cautions.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace jointwright {

namespace {

/// Finishes that heat as they cure, by the words of their names.
bool is_drying_oil(const std::string& finish)
{
    return finish.find("oil") != std::string::npos || finish.find("linseed") != std::string::npos;
}

/// What is known of the glue beside food, where people may eat from the piece.
std::string near_food(const GlueRecord& glue, const std::string& use)
{
    return use == "table" && glue.food ? fmt::format(" Near food: {}.", glue.food->says) : std::string{};
}

} // namespace

void add_cautions(ReportContent& content, const Piece& piece, const Facts& facts)
{
    CautionInputs inputs;
    inputs.use = content.use;
    std::set<std::string> glues;
    for (const Joint& joint : piece.joints)
        if (joint.glue) glues.insert(*joint.glue);
    for (const Part& part : piece.parts) {
        if (part.glued_up && part.glued_up->glue) glues.insert(*part.glued_up->glue);
        const auto& finish = part.finish ? part.finish : piece.woods[part.wood].finish;
        if (finish && is_drying_oil(finish->name)) inputs.oil_finish = true;
    }
    for (const std::string& name : glues)
        if (const GlueRecord* glue = facts.find_glue(name); glue && glue->hazard)
            inputs.glue_hazards.push_back(fmt::format("{}: {}{}", glue->name, glue->hazard->says, near_food(*glue, content.use)));
    std::set<std::string> species;
    for (const WoodChoice& wood : piece.woods) species.insert(wood.species.begin(), wood.species.end());
    for (const std::string& name : species) {
        const WoodRecord* record = facts.find_wood(name);
        if (!record || record->dust.empty()) continue;
        std::string effects;
        for (const DustHazard& d : record->dust) effects += (effects.empty() ? "" : "; ") + d.effect;
        inputs.dust_hazards.push_back(fmt::format("{}: {}", name, effects));
    }
    content.cautions = general_cautions(facts, inputs);
}

} // namespace jointwright
