// fastener: what one screw, nail, dowel or bolt holds, and the holes it wants.

#include "bond/fastener.hpp"
#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "app/words.hpp"
#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace jointwright {

namespace {

constexpr std::pair<const char*, FastenerKind> kFastenerWords[] = {
    {"wood-screw", FastenerKind::wood_screw},
    {"lag-screw", FastenerKind::lag_screw},
    {"nail", FastenerKind::nail},
    {"dowel", FastenerKind::dowel},
    {"pocket-screw", FastenerKind::pocket_screw},
    {"cross-dowel", FastenerKind::bolt_and_barrel},
    {"button", FastenerKind::button},
    {"figure-plate", FastenerKind::figure_plate},
};

std::vector<std::string> fastener_words()
{
    std::vector<std::string> words;
    for (const auto& [word, kind] : kFastenerWords) words.emplace_back(word);
    return words;
}

FastenerKind read_fastener_kind(const std::optional<std::string>& text, ValueReader& reader)
{
    if (!text) {
        reader.missing("--kind", "wood-screw");
        return FastenerKind::wood_screw;
    }
    std::string word = small_letters(*text);
    std::replace(word.begin(), word.end(), ' ', '-');
    for (const auto& [known, kind] : kFastenerWords)
        if (word == known) return kind;
    reader.one_of("--kind", *text, fastener_words());
    return FastenerKind::wood_screw;
}

void add_hold(const FastenerCapacity& c, QuickAnswer& answer)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    const auto put = [&](const char* name, double value, const char* unit, const char* says) {
        answer.values.push_back({name, value, unit, says, {}});
    };
    put("withdrawal_ultimate_N", c.withdrawal_ultimate.value(), "N", "pull at which it comes out, mean");
    put("withdrawal_allowable_N", c.withdrawal_allowable.value(), "N", "pull allowed");
    put("lateral_allowable_N", c.lateral ? c.lateral->value() : none, "N", "load allowed across it");
    if (c.lateral_across)
        put("lateral_across_grain_allowable_N", c.lateral_across->value(), "N", "the same, pushed across the grain");
    put("pilot_m", c.pilot.value(), "m", "hole for the thread, or for the dowel");
    if (c.clearance.value() > 0) put("clearance_hole_m", c.clearance.value(), "m", "hole in the part under the head");
    put("spacing_along_grain_m", c.distances.along.value(), "m", "to the next one along the grain, at least");
    put("spacing_across_grain_m", c.distances.across.value(), "m", "to the next one across the grain, at least");
    put("end_distance_m", c.distances.end.value(), "m", "to the end of the wood, at least");
    put("end_distance_loaded_m", c.distances.end_loaded.value(), "m", "to an end that the load pushes towards");
    put("edge_distance_m", c.distances.edge.value(), "m", "to the edge of the wood, at least");
    put("edge_distance_loaded_m", c.distances.edge_loaded.value(), "m", "to an edge that the load pushes towards");
    if (!c.notes.empty()) answer.values.push_back({"notes", c.notes, {}, "mind", fmt::format("{}", fmt::join(c.notes, "; "))});
}

Answer answer_to_fastener(const Facts& facts, const WoodRecord& wood, const FastenerAsked& asked, LengthUnit units,
                          std::vector<std::string> assumed, const QuickOptions& quick)
{
    const WoodState state = fastened_state(facts, &wood);
    QuickAnswer answer;
    const auto capacity = fastener_capacity(facts, state, wood.name, asked, &answer.working);
    if (!capacity)
        return wrong_command_line({fault_of("cannot-tell", fmt::format("no table we hold gives the figures of {} that a {} needs",
                                                                       wood.name, name_of(asked.kind)))});
    answer.units = units;
    answer.title = fmt::format("{} {} in {} grain of {}, {} deep", name_of(asked.kind), write_small_length(asked.diameter, units),
                               asked.end_grain ? "end" : "side", wood.name, write_length(asked.penetration, units));
    answer.title.front() = static_cast<char>(answer.title.front() - 'a' + 'A');
    add_hold(*capacity, answer);
    answer.working.push_back({"Distances with pilot holes", "5 and 4 D to the next, 12 or 7 D to an end, 7 or 3 D to an edge", "",
                              capacity->distances.along.value(), "m", facts.number("spacing_along").cite.text()});
    answer.assumed = std::move(assumed);
    return written(std::move(answer), quick);
}

} // namespace

Answer fastener(const Arguments& arguments)
{
    std::optional<std::string> kind, species, diameter, penetration, grain;
    QuickOptions quick;
    OptionSet options(
        "fastener",
        "--kind KIND --species NAME --diameter D --penetration L [--grain side|end] [--format text|json] [--data DIR]",
        "What one screw, nail, dowel or bolt holds in a wood, the holes it wants, and its distance from ends and edges.");
    options.value("--kind", kind, "KIND", fmt::format("{}", fmt::join(fastener_words(), "|")));
    options.value("--species", species, "NAME", "wood that holds the thread or the dowel");
    options.value("--diameter", diameter, "D", "of the shank, the dowel or the cross dowel: 5mm, 0.19in");
    options.value("--penetration", penetration, "L", "length of thread or dowel in that wood; of a cross dowel its length");
    options.value("--grain", grain, "side|end", "grain that it goes into; side");
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        FastenerAsked asked;
        asked.kind = read_fastener_kind(kind, reader);
        const WoodRecord* wood = wood_for(facts, "--species", species, reader);
        asked.diameter = reader.length("--diameter", diameter, millimetres(50));
        asked.penetration = reader.length("--penetration", penetration, metres(1));
        asked.end_grain = reader.one_of("--grain", grain.value_or("side"), {"side", "end"}) == "end";
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());
        std::vector<std::string> assumed;
        if (!grain) assumed.push_back("side grain: driven across the fibres (--grain side)");
        assumed.push_back(
            "wood at 12 %; a pilot hole; loads of ordinary duration (× 1.6 for short ones, × 0.9 for lasting ones)");
        if (asked.kind == FastenerKind::dowel) assumed.push_back("glued all round with a thin glue line");
        return answer_to_fastener(facts, *wood, asked, answer_units(quick, penetration), std::move(assumed), quick);
    });
}

} // namespace jointwright
