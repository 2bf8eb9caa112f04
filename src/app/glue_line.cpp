// glue-line: shear strength of one glued face, the wood and the glue shown apart.

#include "bond/glue/glue_line.hpp"
#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/write.hpp"
#include "wood/resistance.hpp"

#include <fmt/format.h>

#include <limits>

namespace jointwright {

namespace {

constexpr double kTableMoisture = 12; // percent: the state of the tables

struct GluedFace {
    const WoodRecord *first = nullptr, *second = nullptr;
    const GlueRecord* glue = nullptr;
    Length length{}, width{};
    Angle angle{};
    LengthUnit units = LengthUnit::millimetre;
    std::vector<std::string> assumed;
};

GluedFace read_face(const Facts& facts, const std::vector<std::string>& species, const std::optional<std::string>& length,
                    const std::optional<std::string>& width, const std::optional<std::string>& angle,
                    const std::optional<std::string>& glue, ValueReader& reader)
{
    GluedFace face;
    const auto named = [&](std::size_t i) { return i < species.size() ? std::optional<std::string>(species[i]) : std::nullopt; };
    face.first = wood_for(facts, "--species", named(0), reader);
    face.second = species.size() < 2 ? face.first : wood_for(facts, "--species", named(1), reader);
    if (species.size() > 2) reader.add(fault_of("given-twice", "--species is given more than twice: a glue line has two sides"));
    face.length = reader.length("--length", length);
    face.width = reader.length("--width", width);
    face.angle = reader.grain_angle("--angle", angle.value_or("0"));
    face.glue = glue_for(facts, "--glue", glue.value_or("PVA"), reader);
    if (species.size() == 1) face.assumed.push_back("the same wood on both sides (a second --species for the other)");
    if (!angle) face.assumed.push_back("the grains run the same way: angle 0 (--angle 0)");
    if (!glue) face.assumed.push_back("glue PVA (--glue PVA)");
    face.assumed.push_back("side grain on both faces: end grain counts as nothing; wood at 12 %; a thin, full, well pressed glue "
                           "line on fresh faces: for "
                           "starved lines and aged faces no published factor is known");
    return face;
}

void add_forces(const Facts& facts, const GluedFace& face, const GlueStrength& strength, WoodKind kind, QuickAnswer& answer)
{
    const double area = (face.length * face.width).value();
    const Datum<double> variation = glue_variation(facts);
    const Datum<double> divisor = duration_and_safety_divisor(facts, StrengthKind::shear, kind);
    const double mean = strength.mean.value() * area,
                 lower = lower_strength(facts, StrengthKind::shear, strength.mean).value() * area,
                 allowable = lower / divisor.value;
    const double glue = strength.glue ? strength.glue->value() * area : std::numeric_limits<double>::quiet_NaN();
    answer.values.push_back({"area_m2", area, "m2", "glued area", {}});
    answer.values.push_back({"wood_shear_mean_N", strength.wood.value() * area, "N", "shear the wood bears, mean", {}});
    answer.values.push_back(
        {"glue_shear_mean_N", glue, "N", "shear the glue bears, mean", strength.glue ? "" : "no figure known: the wood decides"});
    answer.values.push_back({"shear_mean_N", mean, "N", "the lower of the two", {}});
    answer.values.push_back({"shear_lower_N", lower, "N", "one glue line in twenty is weaker than", {}});
    answer.values.push_back({"shear_allowable_N", allowable, "N", "allowable, ten years", {}});
    answer.working.push_back(
        {"Glued area", "A = l w",
         fmt::format("{} × {} mm", write_number(in_millimetres(face.length), 5), write_number(in_millimetres(face.width), 5)),
         area, "m2", "geometry"});
    answer.working.push_back(
        {"Shear that the glued face bears (mean)", "F = f A", "the lower of wood and glue", mean, "N", "mechanics"});
    answer.working.push_back({"Lower value", "F05 = F (1 − 1.645 V)",
                              fmt::format("V = {} %", write_number(variation.value * 100, 3)), lower, "N",
                              variation.cite.text()});
    answer.working.push_back({"Allowable for ten years", "F05/k", fmt::format("k = {}", write_number(divisor.value, 3)),
                              allowable, "N", divisor.cite.text()});
}

Answer answer_to_face(const Facts& facts, GluedFace face, const QuickOptions& quick)
{
    const MoistureContent moisture = MoistureContent::percent(kTableMoisture);
    const WoodState a = wood_state(facts, face.first, {}, moisture), b = wood_state(facts, face.second, {}, moisture);
    QuickAnswer answer;
    const auto strength = glue_strength(facts, a, face.first->name, b, face.second->name, face.glue, GlueFace::side_grain,
                                        face.angle.value(), &answer.working);
    if (!strength)
        return wrong_command_line({fault_of("cannot-tell", fmt::format("no table we hold gives a shear strength of {}",
                                                                       (a.shear ? face.second : face.first)->name))});
    answer.units = face.units;
    answer.title =
        fmt::format("{}{} glued with {}, {} × {}, grains at {}", face.first->name,
                    face.first == face.second ? "" : " and " + face.second->name, face.glue->name,
                    write_length(face.length, face.units), write_length(face.width, face.units), write_angle(face.angle));
    add_forces(facts, face, *strength, strength->weaker_wood == face.first->name ? a.kind : b.kind, answer);
    if (strength->estimated)
        face.assumed.push_back(fmt::format("the shear strength of {} is an estimate", strength->weaker_wood));
    answer.assumed = std::move(face.assumed);
    return written(std::move(answer), quick);
}

} // namespace

Answer glue_line(const Arguments& arguments)
{
    std::vector<std::string> species;
    std::optional<std::string> length, width, angle, glue;
    QuickOptions quick;
    OptionSet options(
        "glue-line",
        "--species A [--species B] --length L --width W [--angle DEGREES] [--glue NAME] [--format text|json] [--data DIR]",
        "Shear strength of one glued face of side grain; what the wood bears and what the glue bears apart.");
    options.values("--species", species, "NAME", "the wood; given twice, the woods of the two sides");
    options.value("--length", length, "L", "of the glued face");
    options.value("--width", width, "W", "of the glued face");
    options.value("--angle", angle, "DEGREES", "between the two grains, 0 to 90; 0");
    options.value("--glue", glue, "NAME", "\"jointwright glues\" lists them; PVA");
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        GluedFace face = read_face(facts, species, length, width, angle, glue, reader);
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());
        face.units = answer_units(quick, length);
        return answer_to_face(facts, std::move(face), quick);
    });
}

} // namespace jointwright
