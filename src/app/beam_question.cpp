// The options of `beam`, read into a beam and its loads.

#include "app/beam_question.hpp"

#include "app/tables.hpp"
#include "measure/text.hpp"
#include "measure/write.hpp"
#include "wood/state.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kShearShare = 16; ///< E/G where the table has no shear modulus: Wood Handbook ch. 9
constexpr double kSameSpot = 1e-6; ///< m

std::vector<std::string> split_at_colons(const std::string& text)
{
    std::vector<std::string> pieces(1);
    for (const char c : text) {
        if (c == ':')
            pieces.emplace_back();
        else
            pieces.back() += c;
    }
    return pieces;
}

Length left_end(const BeamOnSupports& beam) { return -beam.overhang_left; }
Length right_end(const BeamOnSupports& beam) { return beam.span + beam.overhang_right; }

bool lies_on(const BeamOnSupports& beam, Length place)
{
    return in_metres(place) >= in_metres(left_end(beam)) - kSameSpot &&
           in_metres(place) <= in_metres(right_end(beam)) + kSameSpot;
}

Fault beyond_the_beam(const std::string& option, const std::string& text, const BeamOnSupports& beam)
{
    return fault_of("out-of-range", fmt::format("{}: {} reaches beyond the beam, which runs from {} to {} of the left support",
                                                option, in_quotes(text), write_length(left_end(beam), LengthUnit::millimetre),
                                                write_length(right_end(beam), LengthUnit::millimetre)));
}

void read_simple_loads(const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    BeamLoads& loads = asked.simple_loads;
    if (texts.point) loads.point = reader.force("--point", *texts.point);
    if (texts.uniform) loads.uniform = reader.line_load("--uniform", *texts.uniform);
    if (texts.patch) std::tie(loads.patch, loads.patch_length) = reader.patch("--patch", *texts.patch);
    if (!texts.point && !texts.uniform && !texts.patch && texts.loads.empty())
        reader.add(fault_of("missing-option", "a load is needed: --point, --uniform or --patch", "--point \"800 N\"",
                            "--load puts a force at any place of the beam"));
    if (texts.patch && asked.beam.span.value() > 0 && loads.patch_length > asked.beam.span)
        reader.add(fault_of("out-of-range", "--patch: the patch is longer than the span"));
}

/// FORCE:PLACE or FORCE:FROM:TO.
void read_placed_load(const std::string& text, BeamQuestion& asked, ValueReader& reader)
{
    const auto pieces = split_at_colons(text);
    if (pieces.size() < 2 || pieces.size() > 3)
        return reader.add(fault_of(
            "wrong-type", fmt::format("--load: {} is not a force and a place, or two, with colons between them", in_quotes(text)),
            "--load \"800 N:300 mm\"", "FORCE:PLACE is a point, FORCE:FROM:TO is spread evenly"));
    const std::size_t before = reader.faults().size();
    PlacedLoad load{reader.force("--load", pieces[0]), reader.place("--load", pieces[1]), {}};
    load.to = pieces.size() == 3 ? reader.place("--load", pieces[2]) : load.from;
    if (reader.faults().size() != before) return;
    if (load.to < load.from) std::swap(load.from, load.to);
    if (!lies_on(asked.beam, load.from) || !lies_on(asked.beam, load.to))
        return reader.add(beyond_the_beam("--load", text, asked.beam));
    asked.loads.push_back(load);
}

/// SIDE:PLACE:WIDTHxDEPTH.
void read_notch_option(const std::string& text, BeamQuestion& asked, ValueReader& reader)
{
    const auto pieces = split_at_colons(text);
    if (pieces.size() != 3 || (pieces[0] != "top" && pieces[0] != "bottom"))
        return reader.add(fault_of(
            "wrong-type", fmt::format("--notch: {} is not a side, a place and a size with colons between them", in_quotes(text)),
            "--notch \"top:300 mm:20x10mm\"", "side: top or bottom; place: of its middle; size: along the beam × deep"));
    const std::size_t before = reader.faults().size();
    const Length middle = reader.place("--notch", pieces[1]);
    const auto sizes = reader.sizes("--notch", pieces[2], 2, 2, "top:300mm:20x10mm");
    if (reader.faults().size() != before) return;
    const BeamNotch notch{pieces[0] == "top", middle, sizes[0], sizes[1]};
    if (!lies_on(asked.beam, middle - sizes[0] / 2.0) || !lies_on(asked.beam, middle + sizes[0] / 2.0))
        return reader.add(beyond_the_beam("--notch", text, asked.beam));
    asked.beam.notches.push_back(notch);
}

/// Something of the section must be left wherever notches lie, those of both sides together.
void check_depth_left(const BeamOnSupports& beam, ValueReader& reader)
{
    double top = 0, bottom = 0;
    for (const BeamNotch& n : beam.notches) (n.from_top ? top : bottom) = std::max(n.from_top ? top : bottom, in_metres(n.depth));
    const double least = std::min(in_metres(beam.depth), in_metres(beam.far_depth));
    if (beam.notches.empty() || top + bottom < least) return;
    reader.add(
        fault_of("out-of-range",
                 fmt::format("--notch: the deepest notches of top and bottom take {}, but the beam is {} deep at its shallowest",
                             write_length(metres(top + bottom), LengthUnit::millimetre),
                             write_length(metres(least), LengthUnit::millimetre))));
}

void read_supports(const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    BeamOnSupports& beam = asked.beam;
    for (const std::string& text : texts.supports) {
        const std::size_t before = reader.faults().size();
        const Length place = reader.place("--support", text);
        if (reader.faults().size() != before || beam.span.value() <= 0) continue;
        const double at = in_metres(place), span = in_metres(beam.span);
        const bool taken = std::any_of(beam.inner_supports.begin(), beam.inner_supports.end(),
                                       [&](Length other) { return std::abs(in_metres(other) - at) < kSameSpot; });
        const bool free_end = beam.ends == BeamEnds::cantilever;
        if (at < kSameSpot || at > span + (free_end ? kSameSpot : -kSameSpot) || taken) {
            reader.add(fault_of("out-of-range",
                                taken ? fmt::format("--support: {} is given twice", in_quotes(text))
                                      : fmt::format("--support: {} is not between the ends of the span", in_quotes(text)),
                                {}, "places are measured from the left support, which stands at 0"));
            continue;
        }
        beam.inner_supports.push_back(place);
    }
    std::sort(beam.inner_supports.begin(), beam.inner_supports.end());
}

void read_overhangs(const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    BeamOnSupports& beam = asked.beam;
    if (texts.overhang_left) beam.overhang_left = reader.length("--overhang-left", texts.overhang_left);
    if (texts.overhang_right) beam.overhang_right = reader.length("--overhang-right", texts.overhang_right);
    const bool left_built_in = beam.ends != BeamEnds::pinned;
    const bool right_not_resting = beam.ends == BeamEnds::fixed || beam.ends == BeamEnds::cantilever;
    for (const auto& [given, hindered, option] :
         {std::tuple(texts.overhang_left.has_value(), left_built_in, "--overhang-left"),
          std::tuple(texts.overhang_right.has_value(), right_not_resting, "--overhang-right")})
        if (given && hindered)
            reader.add(fault_of("conflict", fmt::format("{} goes with an end that rests on its support, not with --ends {}",
                                                        option, texts.ends.value_or("pinned"))));
}

void read_shape_options(const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    BeamOnSupports& beam = asked.beam;
    beam.far_width = beam.width;
    beam.far_depth = beam.depth;
    if (texts.taper) {
        const auto far = reader.sizes("--taper", *texts.taper, 1, 2, "30mmx12mm");
        if (!far.empty()) beam.far_depth = far.back();
        if (far.size() == 2) beam.far_width = far.front();
        asked.assumed.push_back(
            "taper: straight from end to end; the shear stress at the slanting edge is that of the section there");
    }
    for (const std::string& text : texts.notches) read_notch_option(text, asked, reader);
    if (reader.faults().empty()) check_depth_left(beam, reader);
}

void use_given_modulus(const std::string& text, const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    asked.simple.modulus_along = reader.stress("--modulus", text);
    asked.simple.shear_modulus = asked.simple.modulus_along / kShearShare;
    asked.material = "E " + write_stress(asked.simple.modulus_along);
    asked.assumed.push_back("shear modulus: a sixteenth of the modulus along the grain");
    if (texts.moisture) asked.assumed.push_back("a modulus that is given counts as it is, at any moisture");
}

/// The softer of the wood's own two shear moduli, since the ring cut is not given; else E/16.
void choose_shear_modulus(const WoodState& state, BeamQuestion& asked)
{
    const Property<Stress>* softer = nullptr;
    for (const auto* plane : {&state.shear_modulus_lr, &state.shear_modulus_lt})
        if (*plane && !(*plane)->estimated && (softer == nullptr || (*plane)->value < softer->value)) softer = &**plane;
    asked.simple.shear_modulus = softer != nullptr ? softer->value : asked.simple.modulus_along / kShearShare;
    if (softer != nullptr)
        asked.working.push_back({"Shear modulus", "G = ratio × E", softer->note, softer->value.value(), "Pa", softer->source});
    else
        asked.assumed.push_back(
            "shear modulus: a sixteenth of the modulus along the grain, as the tables have none for this wood");
}

void use_wood(const Facts& facts, const WoodRecord& wood, const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
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
    asked.simple.modulus_along = modulus.value;
    asked.material = fmt::format("{} at {}", wood.name, write_moisture(moisture));
    asked.working.push_back({"Modulus along the grain, free of shear", "E = 1.10 × the table's value from bending", modulus.note,
                             modulus.value.value(), "Pa", modulus.source});
    if (modulus.estimated) asked.assumed.push_back(fmt::format("the modulus of {} is an estimate", wood.name));
    if (!texts.moisture) asked.assumed.push_back("moisture 12 % (--moisture 12)");
    choose_shear_modulus(state, asked);
}

void read_material(const Facts& facts, const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    if (texts.species && texts.modulus)
        return reader.add(fault_of("conflict", "--species and --modulus are both given; one of them is enough"));
    if (texts.modulus) return use_given_modulus(*texts.modulus, texts, asked, reader);
    if (!texts.species)
        return reader.add(fault_of("missing-option", "--species or --modulus is needed", "--species \"white oak\""));
    const WoodRecord* wood = wood_for(facts, "--species", texts.species, reader);
    if (wood != nullptr) use_wood(facts, *wood, texts, asked, reader);
}

BeamEnds read_ends(const BeamTexts& texts, BeamQuestion& asked, ValueReader& reader)
{
    const std::string word = reader.one_of("--ends", texts.ends.value_or("pinned"), {"pinned", "fixed", "propped", "cantilever"});
    if (!texts.ends) asked.assumed.push_back("ends pinned: free to turn on their supports (--ends pinned)");
    if (word == "fixed") return BeamEnds::fixed;
    if (word == "propped") return BeamEnds::propped;
    return word == "cantilever" ? BeamEnds::cantilever : BeamEnds::pinned;
}

} // namespace

bool BeamTexts::is_plain() const
{
    return supports.empty() && notches.empty() && loads.empty() && !overhang_left && !overhang_right && !taper &&
           ends != "propped" && ends != "cantilever";
}

void add_beam_options(OptionSet& options, BeamTexts& texts)
{
    options.value("--span", texts.span, "L", "between the outer supports: 900mm, 36in; of a cantilever its free length");
    options.value("--width", texts.width, "B", "of the section, level");
    options.value("--depth", texts.depth, "H", "of the section, upright; at the left end where the beam tapers");
    options.value("--species", texts.species, "NAME", "the wood; its modulus comes from the tables");
    options.value("--modulus", texts.modulus, "E", "modulus along the grain instead of a wood, free of shear: 12.5GPa, 1.8e6psi");
    options.value("--moisture", texts.moisture, "MC", "of the wood, in percent; 12");
    options.value("--point", texts.point, "F", "force at mid-span: 800N, 180lbf");
    options.value("--uniform", texts.uniform, "W", "force per length along the whole span, overhangs too: 1500N/m, 25lbf/ft");
    options.value("--patch", texts.patch, "F:LENGTH", "force spread over a length about mid-span: 800N:100mm");
    options.values("--load", texts.loads, "F:PLACE[:TO]",
                   "force at a place, or spread from one place to another: 800N:300mm, "
                   "200N:0mm:450mm; may be given several times");
    options.value("--ends", texts.ends, "HOW",
                  "pinned (rests), fixed (built in at both ends), propped (built in at the left, "
                  "rests at the right) or cantilever (built in at the left, free at the right); pinned");
    options.values("--support", texts.supports, "PLACE", "a further support within the span; may be given several times");
    options.value("--overhang-left", texts.overhang_left, "L", "how far the beam runs on beyond the left support");
    options.value("--overhang-right", texts.overhang_right, "L", "and beyond the right one");
    options.value("--taper", texts.taper, "H|BxH", "depth, or width and depth, at the right end of the beam: 12mm, 30x12mm");
    options.values(
        "--notch", texts.notches, "SIDE:PLACE:BxH",
        "recess cut square across from top or bottom, its middle at a place: top:300mm:20x10mm is 20 mm along the beam and "
        "10 mm deep; may be given several times");
    options.value("--draw", texts.draw, "FILE",
                  "write a drawing of shear, moment and deflection as SVG; - prints it instead of the numbers");
}

BeamQuestion read_beam_question(const Facts& facts, const BeamTexts& texts, ValueReader& reader)
{
    BeamQuestion asked;
    BeamOnSupports& beam = asked.beam;
    beam.span = asked.simple.span = reader.length("--span", texts.span);
    beam.width = asked.simple.width = reader.length("--width", texts.width);
    beam.depth = asked.simple.depth = reader.length("--depth", texts.depth);
    beam.ends = read_ends(texts, asked, reader);
    asked.simple.fixed_ends = beam.ends == BeamEnds::fixed;
    read_supports(texts, asked, reader);
    read_overhangs(texts, asked, reader);
    read_shape_options(texts, asked, reader);
    read_simple_loads(texts, asked, reader);
    for (const std::string& text : texts.loads) read_placed_load(text, asked, reader);
    read_material(facts, texts, asked, reader);
    beam.modulus_along = asked.simple.modulus_along;
    beam.shear_modulus = asked.simple.shear_modulus;
    if (reader.faults().empty())
        for (const PlacedLoad& load : placed_loads(beam, asked.simple_loads)) asked.loads.push_back(load);
    asked.assumed.push_back("the beam's own weight is left out");
    return asked;
}

} // namespace jointwright
