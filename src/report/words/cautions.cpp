#include "report/words/cautions.hpp"

#include "judging/dust_words.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

bool carries_people(std::string_view use) { return use == "seat" || use == "table"; }

void add_about_use(std::vector<std::string>& cautions, std::string_view use)
{
    if (carries_people(use)) {
        cautions.push_back(
            "People will sit, lean or climb on this piece. A pass worked out on paper is no proof that it will carry them.");
        cautions.push_back("Load it on trial before anyone uses it, with dead weight, away from people, and look for cracks, "
                           "open joints and lasting sag afterwards.");
    } else {
        cautions.push_back("Furniture gets leaned on and climbed on, whatever it was made for. A pass worked out on paper is no "
                           "proof that it will carry people.");
        cautions.push_back("Load it on trial before it is used, with dead weight and away from people.");
    }
    cautions.push_back("Arithmetic does not see knots, short grain, hidden cracks, a starved or dirty glue line, a loose fit, or "
                       "wear. Look over every board and every joint yourself.");
    cautions.push_back(
        use == "seat"
            ? "Local codes and the judgement of licensed engineers come before this report, for seats in public places above all."
            : "Local codes and the judgement of licensed engineers come before this report, above all where the public sits or "
              "walks beneath.");
    cautions.push_back(
        "Loads here are calculated. They are not a test, a certificate or a claim that any furniture standard is met.");
}

void add_about_dust(std::vector<std::string>& cautions, const Facts& facts, const std::vector<std::string>& dust)
{
    const auto milligrams = [&](std::string_view key) { return write_number(facts.number(key).value * 1e6, 3); };
    const auto grams = [&](std::string_view key) { return write_number(facts.number(key).value * 1e3, 3); };
    cautions.push_back(fmt::format(
        "{}; cancers of the nose and its sinuses come from it, and it harms the lungs. Collect it where it is made, wear a "
        "fitted mask, "
        "and aim for less than "
        "{} mg in a cubic metre of air over eight hours, the figure that NIOSH advises; US law (OSHA) limits nuisance dust to {} "
        "mg/m3 "
        "({} mg/m3 respirable), EU law hardwood dust to {} mg/m3 (NIOSH and OSHA on wood dust; Directive (EU) 2017/2398).",
        dust_of_all_woods(facts), milligrams("dust_niosh"), milligrams("dust_osha_total"), milligrams("dust_osha_respirable"),
        milligrams("dust_eu_hardwood")));
    cautions.insert(cautions.end(), dust.begin(), dust.end());
    cautions.push_back(
        fmt::format("Fine dust in the air can explode (about {} to {} g/m3 and more, from memory). Do not let it lie in "
                    "layers, and keep flames and sparks away.",
                    grams("dust_explodes_from"), grams("dust_explodes_to")));
}

void add_about_glue_and_finish(std::vector<std::string>& cautions, const CautionInputs& inputs)
{
    for (const std::string& hazard : inputs.glue_hazards) cautions.push_back("Glue, " + hazard);
    if (inputs.oil_finish)
        cautions.push_back("Rags wet with a drying oil heat up by themselves and can start a fire within hours. Hang them singly "
                           "or spread them flat outdoors until they are hard, or seal "
                           "them in a metal can full of water; never crumple them into a bin. Oily sanding dust does the same "
                           "(fire service and workshop advice).");
    cautions.push_back("Read the maker's label and safety sheet of each glue and finish before opening it.");
}

void add_about_machines(std::vector<std::string>& cautions)
{
    cautions.push_back("Narrow strips and short pieces bring hands close to blades. Use guards, push blocks and a crosscut sled, "
                       "cut small parts from larger stock, and wear eye and ear protection.");
}

} // namespace

std::vector<std::string> general_cautions(const Facts& facts, const CautionInputs& inputs)
{
    std::vector<std::string> cautions;
    add_about_use(cautions, inputs.use);
    add_about_dust(cautions, facts, inputs.dust);
    add_about_glue_and_finish(cautions, inputs);
    add_about_machines(cautions);
    return cautions;
}

} // namespace jointwright
