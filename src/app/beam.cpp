// beam: sag and stress of one straight beam between two supports.

#include "mechanics/beam.hpp"

#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/write.hpp"
#include "wood/state.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kShearShare = 16;      ///< E/G where the table has no shear modulus: Wood Handbook ch. 9
constexpr double kSmallDeflection = 10; ///< span over deflection below which beam theory is off

struct BeamTexts {
    std::optional<std::string> span, width, depth, species, modulus, moisture, point, uniform, patch, ends;
};

struct Question {
    SimpleBeam beam{};
    BeamLoads loads;
    std::string material;
    Working working; ///< how the moduli came about
    std::vector<std::string> assumed;
};

void add_options(OptionSet& options, BeamTexts& texts)
{
    options.value("--span", texts.span, "L", "between the supports: 900mm, 36in");
    options.value("--width", texts.width, "B", "of the section, level");
    options.value("--depth", texts.depth, "H", "of the section, upright");
    options.value("--species", texts.species, "NAME", "the wood; its modulus comes from the tables");
    options.value("--modulus", texts.modulus, "E", "modulus along the grain instead of a wood, free of shear: 12.5GPa, 1.8e6psi");
    options.value("--moisture", texts.moisture, "MC", "of the wood, in percent; 12");
    options.value("--point", texts.point, "F", "force at mid-span: 800N, 180lbf");
    options.value("--uniform", texts.uniform, "W", "force per length along the whole span: 1500N/m, 25lbf/ft");
    options.value("--patch", texts.patch, "F:LENGTH", "force spread over a length about mid-span: 800N:100mm");
    options.value("--ends", texts.ends, "pinned|fixed", "pinned");
}

void read_loads(const BeamTexts& texts, Question& asked, ValueReader& reader)
{
    if (texts.point) asked.loads.point = reader.force("--point", *texts.point);
    if (texts.uniform) asked.loads.uniform = reader.line_load("--uniform", *texts.uniform);
    if (texts.patch) std::tie(asked.loads.patch, asked.loads.patch_length) = reader.patch("--patch", *texts.patch);
    if (!texts.point && !texts.uniform && !texts.patch)
        reader.add(fault_of("missing-option", "a load is needed: --point, --uniform or --patch", "--point \"800 N\""));
    if (texts.patch && asked.beam.span.value() > 0 && asked.loads.patch_length > asked.beam.span)
        reader.add(fault_of("out-of-range", "--patch: the patch is longer than the span"));
}

void use_given_modulus(const std::string& text, const BeamTexts& texts, Question& asked, ValueReader& reader)
{
    asked.beam.modulus_along = reader.stress("--modulus", text);
    asked.beam.shear_modulus = asked.beam.modulus_along / kShearShare;
    asked.material = "E " + write_stress(asked.beam.modulus_along);
    asked.assumed.push_back("shear modulus: a sixteenth of the modulus along the grain");
    if (texts.moisture) asked.assumed.push_back("a modulus that is given counts as it is, at any moisture");
}

/// The softer of the wood's own two shear moduli, since the ring cut is not given; else E/16.
void choose_shear_modulus(const WoodState& state, Question& asked)
{
    const Property<Stress>* softer = nullptr;
    for (const auto* plane : {&state.shear_modulus_lr, &state.shear_modulus_lt})
        if (*plane && !(*plane)->estimated && (softer == nullptr || (*plane)->value < softer->value)) softer = &**plane;
    asked.beam.shear_modulus = softer != nullptr ? softer->value : asked.beam.modulus_along / kShearShare;
    if (softer != nullptr)
        asked.working.push_back({"Shear modulus", "G = ratio × E", softer->note, softer->value.value(), "Pa", softer->source});
    else
        asked.assumed.push_back(
            "shear modulus: a sixteenth of the modulus along the grain, as the tables have none for this wood");
}

void use_wood(const Facts& facts, const WoodRecord& wood, const BeamTexts& texts, Question& asked, ValueReader& reader)
{
    const MoistureContent moisture = reader.moisture("--moisture", texts.moisture.value_or("12"));
    if (!reader.faults().empty()) return;
    const WoodState state = wood_state(facts, &wood, {}, moisture);
    if (!state.modulus_along) {
        reader.add(fault_of("cannot-tell", fmt::format("no table we hold gives a modulus of elasticity of {}", wood.name),
                            "--modulus \"10 GPa\""));
        return;
    }
    const Property<Stress>& modulus = *state.modulus_along;
    asked.beam.modulus_along = modulus.value;
    asked.material = fmt::format("{} at {}", wood.name, write_moisture(moisture));
    asked.working.push_back({"Modulus along the grain, free of shear", "E = 1.10 × the table's value from bending", modulus.note,
                             modulus.value.value(), "Pa", modulus.source});
    if (modulus.estimated) asked.assumed.push_back(fmt::format("the modulus of {} is an estimate", wood.name));
    if (!texts.moisture) asked.assumed.push_back("moisture 12 % (--moisture 12)");
    choose_shear_modulus(state, asked);
}

void read_material(const Facts& facts, const BeamTexts& texts, Question& asked, ValueReader& reader)
{
    if (texts.species && texts.modulus)
        return reader.add(fault_of("conflict", "--species and --modulus are both given; one of them is enough"));
    if (texts.modulus) return use_given_modulus(*texts.modulus, texts, asked, reader);
    if (!texts.species)
        return reader.add(fault_of("missing-option", "--species or --modulus is needed", "--species \"white oak\""));
    const WoodRecord* wood = wood_for(facts, "--species", texts.species, reader);
    if (wood != nullptr) use_wood(facts, *wood, texts, asked, reader);
}

Question read_question(const Facts& facts, const BeamTexts& texts, ValueReader& reader)
{
    Question asked;
    asked.beam.span = reader.length("--span", texts.span);
    asked.beam.width = reader.length("--width", texts.width);
    asked.beam.depth = reader.length("--depth", texts.depth);
    asked.beam.fixed_ends = reader.one_of("--ends", texts.ends.value_or("pinned"), {"pinned", "fixed"}) == "fixed";
    if (!texts.ends) asked.assumed.push_back("ends pinned: free to turn on their supports (--ends pinned)");
    read_loads(texts, asked, reader);
    read_material(facts, texts, asked, reader);
    asked.assumed.push_back("the beam's own weight is left out");
    return asked;
}

QuickAnswer answer_to_question(Question asked, LengthUnit units, const Facts& facts)
{
    QuickAnswer answer;
    const BeamAnswer sums = beam_answer(asked.beam, asked.loads, facts, &asked.working);
    answer.units = units;
    answer.title = fmt::format("Beam {} × {} (depth), span {}, {}", write_length(asked.beam.width, units),
                               write_length(asked.beam.depth, units), write_length(asked.beam.span, units), asked.material);
    answer.values.push_back(
        {"deflection_m", sums.deflection.value(), "m", "deflection at mid-span", write_small_length(sums.deflection, units)});
    answer.values.push_back({"bending_stress_Pa", sums.bending_stress.value(), "Pa", "largest bending stress", {}});
    answer.values.push_back({"shear_stress_Pa", sums.shear_stress.value(), "Pa", "largest shear stress", {}});
    answer.values.push_back(
        {"span_ratio", sums.span_ratio, "1", "deflection as a share of the span", "span/" + write_number(sums.span_ratio, 3)});
    if (sums.span_ratio < kSmallDeflection)
        asked.assumed.push_back("small deflections: beyond a tenth of the span these sums no longer hold");
    answer.working = std::move(asked.working);
    answer.assumed = std::move(asked.assumed);
    return answer;
}

} // namespace

Answer beam(const Arguments& arguments)
{
    BeamTexts texts;
    QuickOptions quick;
    OptionSet options("beam",
                      "--span L --width B --depth H (--species NAME | --modulus E) [--moisture MC] [--point F] [--uniform W] "
                      "[--patch F:LENGTH] "
                      "[--ends pinned|fixed] [--format text|json] [--data DIR]",
                      "Sag and stress of one beam between two supports. Shear deflection is added, own weight left out; loads "
                      "given together act together.");
    add_options(options, texts);
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        Question asked = read_question(facts, texts, reader);
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());
        return written(answer_to_question(std::move(asked), answer_units(quick, texts.span), facts), quick);
    });
}

} // namespace jointwright
