#include "report/words/compose.hpp"

#include "judging/dust_words.hpp"
#include "report/words/cautions.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace jointwright {

namespace {

/// What is known of the glue beside food, where people may eat from the piece.
std::string near_food(const GlueRecord& glue, const std::string& use)
{
    return use == "table" && glue.food ? fmt::format(" Near food: {}.", glue.food->says) : std::string{};
}

/// A sentence for each wood that the piece may be of: oak and beech first, then by name; at last those of which nothing is listed.
std::vector<std::string> dust_of_woods(const Piece& piece, const Facts& facts)
{
    std::set<std::string> species;
    for (const WoodChoice& wood : piece.woods) species.insert(wood.species.begin(), wood.species.end());
    std::vector<const WoodRecord*> records;
    for (const std::string& name : species)
        if (const WoodRecord* record = facts.find_wood(name)) records.push_back(record);
    const auto rank = [](const WoodRecord* wood) { return is_oak_or_beech(*wood) ? 0 : wood->dust.empty() ? 2 : 1; };
    std::stable_sort(records.begin(), records.end(), [&](const WoodRecord* a, const WoodRecord* b) { return rank(a) < rank(b); });
    std::vector<std::string> sentences;
    for (const WoodRecord* record : records) sentences.push_back(dust_of(*record));
    return sentences;
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
        const FinishRecord* record = finish ? facts.find_finish(finish->name) : nullptr;
        if (record && record->drying_oil) inputs.oil_finish = true;
    }
    for (const std::string& name : glues)
        if (const GlueRecord* glue = facts.find_glue(name); glue && glue->hazard)
            inputs.glue_hazards.push_back(fmt::format("{}: {}{}", glue->name, glue->hazard->says, near_food(*glue, content.use)));
    inputs.dust = dust_of_woods(piece, facts);
    content.cautions = general_cautions(facts, inputs);
}

} // namespace jointwright
