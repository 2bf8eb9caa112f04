// movement: how far one board swells or shrinks across its grain.

#include "wood/movement.hpp"
#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/write.hpp"

#include <fmt/format.h>

#include <cmath>

namespace jointwright {

namespace {

struct Question {
    const WoodRecord* wood = nullptr;
    Length width;
    Angle rings;
    bool rings_stated = false;
    MoistureContent from, to;
    LengthUnit units = LengthUnit::millimetre;
};

std::string rings_words(Angle rings)
{
    const double angle = in_degrees(rings);
    if (angle == 0) return "flat-sawn";
    if (angle == 90) return "quarter-sawn";
    return fmt::format("rings at {} to the wide face", write_angle(rings));
}

std::string change_words(Length change, LengthUnit units)
{
    if (change.value() == 0) return "none";
    const std::string size = write_small_length(metres(std::abs(change.value())), units);
    return size + (change.value() > 0 ? " wider" : " narrower");
}

QuickAnswer answer_to_question(const Question& asked, const MovementLaw& law, const Facts& facts)
{
    // The linear law holds from 6 to 14 %; within it one point of moisture is the coefficient itself.
    const double coefficient = board_strain(law, asked.rings, MoistureContent::percent(9), MoistureContent::percent(10)).width;
    const Length change = asked.width * board_strain(law, asked.rings, asked.from, asked.to).width;
    const Length final_width = asked.width + change;

    QuickAnswer answer;
    answer.units = asked.units;
    answer.title = fmt::format("{}, {}, {} wide, from {} to {} moisture", asked.wood->name, rings_words(asked.rings),
                               write_length(asked.width, asked.units), write_moisture(asked.from), write_moisture(asked.to));
    answer.values.push_back({"species", asked.wood->name, {}, "wood", {}});
    answer.values.push_back({"coefficient_per_pct", coefficient, "1", "movement for each point of moisture, 6 to 14 %",
                             write_number(coefficient, 4) + " of the width"});
    answer.values.push_back({"change_m", change.value(), "m", "change of width", change_words(change, asked.units)});
    answer.values.push_back({"final_width_m", final_width.value(), "m", "final width", write_length(final_width, asked.units)});
    if (!asked.wood->note.empty()) answer.values.push_back({"note", asked.wood->note, {}, "note", {}});
    answer.working = movement_working(facts, law, asked.rings, asked.width, asked.from, asked.to);

    if (!asked.rings_stated) answer.assumed.push_back("rings flat: a flat-sawn board (--rings flat)");
    for (const MoistureContent moisture : {asked.from, asked.to})
        if (moisture > law.fibre_saturation)
            answer.assumed.push_back(fmt::format("wood moves only below fibre saturation: {} counts as {}",
                                                 write_moisture(moisture), write_moisture(law.fibre_saturation)));
    return answer;
}

} // namespace

Answer movement(const Arguments& arguments)
{
    std::optional<std::string> species_text, width_text, rings_text, from_text, to_text;
    QuickOptions quick;
    OptionSet options(
        "movement",
        "--species NAME --width LENGTH [--rings flat|rift|quarter|DEGREES] --from MC --to MC [--format text|json] [--data DIR]",
        "How far one board swells or shrinks across its grain.");
    options.value("--species", species_text, "NAME", "the wood; \"jointwright species\" lists them");
    options.value("--width", width_text, "LENGTH", "width of the board at the first moisture content: 12 1/2 in, 305mm");
    options.value("--rings", rings_text, "ANGLE", "flat, rift, quarter, or degrees between the rings and the wide face; flat");
    options.value("--from", from_text, "MC", "moisture content in percent when it was that wide");
    options.value("--to", to_text, "MC", "moisture content in percent that it comes to");
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        Question asked;
        asked.wood = wood_for(facts, "--species", species_text, reader);
        asked.width = reader.length("--width", width_text);
        asked.rings_stated = rings_text.has_value();
        asked.rings = reader.rings("--rings", rings_text.value_or("flat"));
        asked.from = reader.moisture("--from", from_text);
        asked.to = reader.moisture("--to", to_text);
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());

        asked.units = answer_units(quick, width_text);
        const auto law = movement_law(facts, asked.wood);
        if (const std::string* missing = std::get_if<std::string>(&law))
            return wrong_command_line({fault_of("cannot-tell", "no table we hold gives the " + *missing)});
        return written(answer_to_question(asked, std::get<MovementLaw>(law), facts), quick);
    });
}

} // namespace jointwright
