// beam: sag and stress of one straight beam, and a drawing of its forces.

#include "app/beam_question.hpp"
#include "app/files.hpp"
#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/write.hpp"
#include "report/charts/beam_chart.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kSmallDeflection = 10; ///< span over deflection below which beam theory is off

std::string section_words(Length width, Length depth, LengthUnit units)
{
    return fmt::format("{} × {}", write_length(width, units), write_length(depth, units));
}

std::string title_of(const BeamQuestion& asked, LengthUnit units)
{
    const BeamOnSupports& beam = asked.beam;
    std::string title = fmt::format("Beam {} (depth)", section_words(beam.width, beam.depth, units));
    if (beam.far_depth != beam.depth || beam.far_width != beam.width)
        title += fmt::format(" tapering to {}", section_words(beam.far_width, beam.far_depth, units));
    title += fmt::format(", span {}, {}", write_length(beam.span, units), asked.material);
    return title;
}

std::string place_words(Length place, LengthUnit units)
{
    return fmt::format("{} from the left support", write_length(place, units));
}

void add_named(QuickAnswer& answer, const char* name, double value, const char* unit, std::string says, std::string people = {})
{
    answer.values.push_back({name, value, unit, std::move(says), std::move(people)});
}

/// Deflection and stresses of the closed forms: two supports, loads about mid-span.
void add_plain_values(QuickAnswer& answer, const BeamAnswer& sums, LengthUnit units)
{
    add_named(answer, "deflection_m", sums.deflection.value(), "m", "deflection at mid-span",
              write_small_length(sums.deflection, units));
    add_named(answer, "bending_stress_Pa", sums.bending_stress.value(), "Pa", "largest bending stress");
    add_named(answer, "shear_stress_Pa", sums.shear_stress.value(), "Pa", "largest shear stress");
    add_named(answer, "span_ratio", sums.span_ratio, "1", "deflection as a share of the span",
              "span/" + write_number(sums.span_ratio, 3));
}

void add_supported_values(QuickAnswer& answer, const SupportedBeamAnswer& solved, LengthUnit units)
{
    const bool up = solved.deflection.value() < 0;
    add_named(answer, "deflection_m", solved.deflection.value(), "m", "largest deflection",
              fmt::format("{}{}, {}", write_small_length(up ? -solved.deflection : solved.deflection, units),
                          up ? " upwards" : "", place_words(solved.deflection_at, units)));
    add_named(answer, "bending_stress_Pa", solved.bending_stress.value(), "Pa", "largest bending stress",
              fmt::format("{}, {}", write_stress(solved.bending_stress), place_words(solved.bending_at, units)));
    add_named(answer, "shear_stress_Pa", solved.shear_stress.value(), "Pa", "largest shear stress",
              fmt::format("{}, {}", write_stress(solved.shear_stress), place_words(solved.shear_at, units)));
    add_named(answer, "span_ratio", solved.span_ratio, "1", "deflection as a share of the bay or overhang that bends so",
              fmt::format("1/{} of {}", write_number(solved.span_ratio, 3), write_length(solved.bay, units)));
}

void add_forces(QuickAnswer& answer, const SupportedBeamAnswer& solved, LengthUnit units)
{
    std::vector<double> supports, reactions;
    std::string people;
    for (std::size_t i = 0; i < solved.supports.size(); ++i) {
        supports.push_back(solved.supports[i].value());
        reactions.push_back(solved.reactions[i].value());
        people += fmt::format("{}{} at {}", i == 0 ? "" : "; ", write_force(solved.reactions[i], units),
                              write_length(solved.supports[i], units));
    }
    add_named(answer, "bay_m", solved.bay.value(), "m", "the bay between supports, or the overhang, that bends so",
              write_length(solved.bay, units));
    add_named(answer, "deflection_at_m", solved.deflection_at.value(), "m", "place of the largest deflection",
              place_words(solved.deflection_at, units));
    add_named(answer, "moment_Nm", solved.moment.value(), "N m", "largest bending moment (positive: stretched below)",
              fmt::format("{} N m, {}", write_number(solved.moment.value(), 4), place_words(solved.moment_at, units)));
    add_named(answer, "moment_at_m", solved.moment_at.value(), "m", "place of that moment", place_words(solved.moment_at, units));
    add_named(answer, "shear_N", solved.shear.value(), "N", "largest shear force",
              fmt::format("{}, {}", write_force(solved.shear, units), place_words(solved.shear_force_at, units)));
    answer.values.push_back({"supports_m", supports, "m", "supports", {}});
    answer.values.push_back({"reactions_N", reactions, "N", "supports push up with", people});
}

/// What a maker should know beside the numbers.
void add_remarks(QuickAnswer& answer, const SupportedBeamAnswer& solved, LengthUnit units)
{
    double largest = 0;
    for (const Force& r : solved.reactions) largest = std::max(largest, std::abs(r.value()));
    for (std::size_t i = 0; i < solved.reactions.size(); ++i)
        if (solved.reactions[i].value() < -1e-9 * largest)
            answer.assumed.push_back(
                fmt::format("the support at {} holds the beam down with {}: one that only bears would let it lift",
                            write_length(solved.supports[i], units), write_force(-solved.reactions[i], units)));
    if (solved.cut_on_stretched_side)
        answer.assumed.push_back(
            "a notch on the stretched side can start a crack along the grain long before the stress of its net "
            "section is reached; the check named notch of a whole design works that out");
}

SupportedBeamAnswer fill_answer(QuickAnswer& answer, BeamQuestion& asked, bool plain, LengthUnit units, const Facts& facts)
{
    SupportedBeamAnswer solved = solve_on_supports(asked.beam, asked.loads, facts, plain ? nullptr : &asked.working);
    double ratio = solved.span_ratio;
    if (plain) {
        const BeamAnswer sums = beam_answer(asked.simple, asked.simple_loads, facts, &asked.working);
        add_plain_values(answer, sums, units);
        ratio = sums.span_ratio;
    } else {
        add_supported_values(answer, solved, units);
    }
    add_forces(answer, solved, units);
    answer.units = units;
    answer.title = title_of(asked, units);
    answer.working = std::move(asked.working);
    answer.assumed = std::move(asked.assumed);
    add_remarks(answer, solved, units);
    if (ratio > 0 && ratio < kSmallDeflection)
        answer.assumed.push_back("small deflections: beyond a tenth of the span these sums no longer hold");
    return solved;
}

Answer answer_to_beam(BeamQuestion asked, const BeamTexts& texts, const QuickOptions& quick, const Facts& facts)
{
    const LengthUnit units = answer_units(quick, texts.span);
    QuickAnswer quick_answer;
    const SupportedBeamAnswer solved = fill_answer(quick_answer, asked, texts.is_plain(), units, facts);
    if (!texts.draw) return written(std::move(quick_answer), quick);
    const std::string drawing = beam_chart(quick_answer.title, asked.beam, asked.loads, solved, units);
    if (*texts.draw == "-") return results(drawing);
    Answer answer = written(std::move(quick_answer), quick);
    answer.files.push_back({*texts.draw, drawing});
    return answer;
}

} // namespace

Answer beam(const Arguments& arguments)
{
    BeamTexts texts;
    QuickOptions quick;
    OptionSet options("beam",
                      "--span L --width B --depth H (--species NAME | --modulus E) [--moisture MC] [--point F] [--uniform W] "
                      "[--patch F:LENGTH] [--load F:PLACE[:TO]]... [--ends pinned|fixed|propped|cantilever] [--support PLACE]... "
                      "[--overhang-left L] [--overhang-right L] [--taper H|BxH] [--notch SIDE:PLACE:BxH]... [--draw FILE] "
                      "[--format text|json] [--data DIR]",
                      "Sag and stress of one beam on two supports or more. Shear deflection is added, own weight left out; loads "
                      "given together act together. Places are measured from the left support, where the span begins; a negative "
                      "one lies on the left overhang.");
    add_beam_options(options, texts);
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        if (texts.draw && texts.draw->empty())
            reader.add(fault_of("file", "--draw: the name of the file is empty", "--draw beam.svg"));
        else if (texts.draw)
            if (auto fault = design_at_risk("--draw", *texts.draw, "beam.svg")) reader.add(*std::move(fault));
        BeamQuestion asked = read_beam_question(facts, texts, reader);
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());
        return answer_to_beam(std::move(asked), texts, quick, facts);
    });
}

} // namespace jointwright
