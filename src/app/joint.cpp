// joint: mean and lower strength of one joint.

#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "app/words.hpp"
#include "bond/joints/joint_capacity.hpp"
#include "measure/write.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <tuple>

namespace jointwright {

namespace {

const Length kLargestJoint = metres(1); ///< longer tenons and deeper laps are not cut

constexpr double kTableState = 12; // percent moisture: the state of the tables

/// A kind as it is typed, what its sizes are, and an example of them.
struct KindOnCommandLine {
    const char* word;
    JointForm form;
    const char* sizes;
    const char* example;
};
constexpr KindOnCommandLine kKinds[] = {
    {"tenon", JointForm::tenon, "THICKNESSxWIDTHxLENGTH", "10x50x40mm"},
    {"loose-tenon", JointForm::loose_tenon, "THICKNESSxWIDTHxLENGTH, the length in each part", "10x50x40mm"},
    {"bridle", JointForm::bridle, "THICKNESSxWIDTHxLENGTH", "10x50x50mm"},
    {"lap", JointForm::lap, "WIDTHxLENGTH", "50x50mm"},
    {"dowels", JointForm::dowels, "DIAMETERxLENGTHxCOUNT, the dowel's own length, half of it in each part", "10mm x 50mm x 2"},
    {"housing", JointForm::housing, "WIDTHxDEPTH", "200x8mm"},
    {"dovetail", JointForm::dovetail, "TAILS' THICKNESSxPINS' THICKNESSxTAILS", "15mm x 18mm x 4"},
    {"sliding-dovetail", JointForm::sliding_dovetail, "WIDTHxDEPTH", "70x10mm"},
    {"mitre", JointForm::mitre, "none: the rail's section says it", ""},
    {"splined-mitre", JointForm::splined_mitre, "SPLINE'S THICKNESSxDEPTH IN EITHER PART", "4x10mm"},
    {"finger-joint", JointForm::finger, "LENGTHxPITCH of the fingers", "10x3.8mm"},
    {"keyed-mitre", JointForm::keyed_mitre, "KEY'S THICKNESSxDEPTH FROM THE CORNERxCOUNT", "3mm x 30mm x 2"},
};

struct JointTexts {
    std::optional<std::string> kind, species, post, rail, size, glue, clearance;
};

struct JointAsked {
    const KindOnCommandLine* kind = nullptr;
    const WoodRecord *rail_wood = nullptr, *post_wood = nullptr;
    const GlueRecord* glue = nullptr;
    JointSizes sizes;
    LengthUnit units = LengthUnit::millimetre;
    std::vector<std::string> assumed;
};

const KindOnCommandLine* read_kind(const std::optional<std::string>& text, ValueReader& reader)
{
    if (!text) {
        reader.missing("--kind", "tenon");
        return nullptr;
    }
    std::string word = small_letters(*text);
    std::replace(word.begin(), word.end(), ' ', '-');
    std::vector<std::string> words;
    for (const KindOnCommandLine& kind : kKinds) words.emplace_back(kind.word);
    const auto found = std::find(words.begin(), words.end(), word);
    if (found != words.end()) return &kKinds[found - words.begin()];
    reader.one_of("--kind", *text, words);
    return nullptr;
}

void read_joint_size(const JointTexts& texts, JointAsked& asked, ValueReader& reader)
{
    JointSizes& s = asked.sizes;
    const std::string option = "--size";
    switch (asked.kind->form) {
    case JointForm::tenon:
    case JointForm::loose_tenon:
    case JointForm::bridle: {
        const auto sizes = reader.sizes(option, texts.size, 3, asked.kind->example, kLargestJoint);
        std::tie(s.thickness, s.width, s.length) = std::tuple(sizes[0], sizes[1], sizes[2]);
        break;
    }
    case JointForm::lap:
    case JointForm::housing:
    case JointForm::groove:
    case JointForm::sliding_dovetail: {
        const auto sizes = reader.sizes(option, texts.size, 2, asked.kind->example, kLargestJoint);
        std::tie(s.width, s.length) = std::tuple(sizes[0], sizes[1]);
        break;
    }
    case JointForm::mitre:
        if (texts.size) reader.add(fault_of("unknown-key", "--size: a plain mitre has no sizes but those of the rail"));
        break;
    case JointForm::splined_mitre: {
        const auto sizes = reader.sizes(option, texts.size, 2, asked.kind->example, kLargestJoint);
        std::tie(s.thickness, s.length) = std::tuple(sizes[0], sizes[1]);
        break;
    }
    case JointForm::finger: {
        const auto sizes = reader.sizes(option, texts.size, 2, asked.kind->example, kLargestJoint);
        std::tie(s.length, s.width) = std::tuple(sizes[0], sizes[1]);
        break;
    }
    case JointForm::dowels: {
        const auto [sizes, count] = reader.sizes_and_count(option, texts.size, 2, asked.kind->example, kLargestJoint);
        std::tie(s.diameter, s.length, s.count) = std::tuple(sizes[0], sizes[1], count);
        break;
    }
    case JointForm::dovetail:
    case JointForm::keyed_mitre: {
        const auto [sizes, count] = reader.sizes_and_count(option, texts.size, 2, asked.kind->example, kLargestJoint);
        std::tie(s.thickness, s.length, s.count) = std::tuple(sizes[0], sizes[1], count);
        break;
    }
    }
}

/// Joints larger than the rail that they are cut on.
void look_at_sizes(const JointAsked& asked, ValueReader& reader)
{
    const JointSizes& s = asked.sizes;
    const auto too_large = [&](const char* what, Length size, const char* room, Length limit) {
        if (size > limit + metres(1e-9))
            reader.add(
                fault_of("out-of-range", fmt::format("--size: the {} of {} is more than the {} of {}", what,
                                                     write_length(size, asked.units), room, write_length(limit, asked.units))));
    };
    const JointForm form = asked.kind->form;
    if (form == JointForm::tenon || form == JointForm::loose_tenon || form == JointForm::bridle)
        too_large("thickness", s.thickness, "rail's thickness", s.rail_thickness);
    if (form == JointForm::tenon || form == JointForm::loose_tenon || form == JointForm::bridle || form == JointForm::lap)
        too_large("width", s.width, "rail's depth", s.rail_depth);
    if (form == JointForm::dowels) {
        too_large("dowels' diameter", s.diameter, "rail's thickness", s.rail_thickness);
        too_large("room that the dowels take side by side", s.diameter * static_cast<double>(s.count), "rail's depth",
                  s.rail_depth);
    }
    if (form == JointForm::keyed_mitre) too_large("key's depth", s.length, "rail's depth", s.rail_depth);
}

JointAsked read_joint_question(const Facts& facts, const JointTexts& texts, const QuickOptions& quick, ValueReader& reader)
{
    JointAsked asked;
    asked.units = answer_units(quick, texts.rail);
    asked.kind = read_kind(texts.kind, reader);
    asked.rail_wood = wood_for(facts, "--species", texts.species, reader);
    asked.post_wood = texts.post ? wood_for(facts, "--post", texts.post, reader) : asked.rail_wood;
    asked.glue = glue_for(facts, "--glue", texts.glue.value_or("PVA"), reader);
    const auto rail = reader.sizes("--rail", texts.rail, 2, "22x63mm");
    asked.sizes.rail_thickness = rail[0];
    asked.sizes.rail_depth = rail[1];
    if (texts.clearance) asked.sizes.clearance = reader.length_or_none("--clearance", *texts.clearance);
    if (asked.kind != nullptr) read_joint_size(texts, asked, reader);
    if (reader.faults().empty()) look_at_sizes(asked, reader);
    if (!texts.post) asked.assumed.push_back("the post is of the same wood as the rail (--post)");
    if (!texts.glue) asked.assumed.push_back("glue PVA (--glue PVA)");
    if (!texts.clearance) asked.assumed.push_back("a close fit without clearance (--clearance 0mm)");
    asked.assumed.push_back("wood at 12 %, straight-grained; glue on both faces of the joint");
    if (asked.kind != nullptr && (asked.kind->form == JointForm::housing || asked.kind->form == JointForm::sliding_dovetail))
        asked.assumed.push_back(
            "the end of the rail goes into a recess across the post, far from the post's end; tails slope 1 in 8");
    if (asked.kind != nullptr && asked.kind->form == JointForm::dowels)
        asked.assumed.push_back(
            "half of each dowel's length goes into each part; the dowels, of the weaker of the two woods, stand evenly "
            "over the rail's depth");
    return asked;
}

/// What breaks, or what is pressed in first.
Moment twist_of(const JointCapacity& c)
{
    return c.torsion_pressed.value() > 0 ? std::min(c.torsion, c.torsion_pressed) : c.torsion;
}

void add_capacity(const Facts& facts, JointForm form, const JointCapacity& c, WoodKind kind, QuickAnswer& answer)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    const auto put = [&](const char* name, double value, const char* unit, const char* says) {
        answer.values.push_back({name, value, unit, says, {}});
    };
    put("moment_mean_Nm", c.mean.value(), "N m", "moment it bears, mean");
    put("moment_lower_Nm", c.lower.value(), "N m", "one joint in twenty is weaker than");
    put("withdrawal_mean_N", c.withdrawal.value(), "N", "pull straight out that it bears, mean");
    put("published_moment_Nm", c.published ? c.published->value() : none, "N m", "mean moment by the published expression");
    put("glue_line_moment_Nm", c.glue_line.value(), "N m", "mean moment by the mechanics of the glue line");
    if (c.tongue.value() > 0) put("own_section_moment_Nm", c.tongue.value(), "N m", "mean moment that breaks its own section");
    answer.values.push_back({"governs", c.governs, {}, "what governs", {}});
    if (c.flat.value() > 0) put("flat_moment_Nm", c.flat.value(), "N m", "mean moment over the rail's thickness");
    if (c.torsion.value() > 0) put("torsion_moment_Nm", twist_of(c).value(), "N m", "mean moment about the rail's length");
    if (c.twist.value() > 0) put("twist_moment_Nm", c.twist.value(), "N m", "of it by twisting of the glued faces alone");
    if (c.corner.value() > 0)
        put("corner_moment_Nm", c.corner.value(), "N m", "elastic stress in a corner reaches the strength at (shown only)");
    if (c.pressed.value() > 0)
        put("bearing_mean_N", c.pressed.value(), "N", "load on the wall of the recess that presses it in, mean");
    if (c.wedge.value() > 0) put("wedge_mean_N", c.wedge.value(), "N", "of the pull by the slopes alone, without glue");
    const double own = c.lower_share / facts.number("joint_lower_share").value,
                 sitting = own * joint_service_factor(facts, kind, LoadDuration::sitting),
                 proof = own * joint_proof_factor(facts);
    put("moment_sitting_allowed_Nm", c.mean.value() * sitting, "N m", "allowed under people sitting");
    put("moment_proof_allowed_Nm", c.mean.value() * proof, "N m", "allowed under proof loads");
    const double lasts = own * joint_durability_factor(facts, form, "home");
    put("moment_durability_allowed_Nm", c.mean.value() * lasts, "N m", "allowed 25,000 times, as at home");
    answer.working.push_back({"Moment allowed under people sitting", "M × share × k_dur/k",
                              fmt::format("share {}", write_number(c.lower_share, 3)), c.mean.value() * sitting, "N m",
                              duration_and_safety_divisor(facts, StrengthKind::shear, kind).cite.text()});
    for (const auto& [says, demand, factor] : {std::tuple{"Moment allowed under proof loads", DemandKind::proof, proof},
                                               std::tuple{"Moment allowed 25,000 times", DemandKind::durability, lasts}})
        answer.working.push_back({says, "M × " + joint_factor_formula(facts, form, demand, "home", c.lower_share), "",
                                  c.mean.value() * factor, "N m", joint_factor_source(facts, form, demand, "home")});
    if (!c.range.empty()) answer.values.push_back({"range", c.range, {}, "range", fmt::format("{}", fmt::join(c.range, "; "))});
    if (!c.advice.empty())
        answer.values.push_back({"advice", c.advice, {}, "advice", fmt::format("{}", fmt::join(c.advice, "; "))});
}

Answer answer_to_joint(const Facts& facts, JointAsked asked, const QuickOptions& quick)
{
    const MoistureContent moisture = MoistureContent::percent(kTableState);
    const WoodState rail = wood_state(facts, asked.rail_wood, {}, moisture),
                    post = wood_state(facts, asked.post_wood, {}, moisture);
    QuickAnswer answer;
    const auto capacity =
        joint_capacity(facts, asked.kind->form, asked.sizes,
                       {&rail, &post, asked.rail_wood->name, asked.post_wood->name, asked.glue}, &answer.working);
    if (!capacity)
        return wrong_command_line(
            {fault_of("cannot-tell", fmt::format("no table we hold gives the strengths of {} that this joint needs",
                                                 (rail.shear ? asked.post_wood : asked.rail_wood)->name))});
    answer.units = asked.units;
    answer.title = fmt::format("{} of {} in {}, rail {} × {}, glued with {}", name_of(asked.kind->form), asked.rail_wood->name,
                               asked.post_wood->name, write_length(asked.sizes.rail_thickness, asked.units),
                               write_length(asked.sizes.rail_depth, asked.units), asked.glue->name);
    answer.title.front() = static_cast<char>(answer.title.front() - 'a' + 'A');
    add_capacity(facts, asked.kind->form, *capacity,
                 rail.kind == WoodKind::softwood && post.kind == WoodKind::softwood ? WoodKind::softwood : WoodKind::hardwood,
                 answer);
    if (rail.shear->estimated || post.shear->estimated)
        asked.assumed.push_back("a shear strength is an estimate from specific gravity");
    answer.assumed = std::move(asked.assumed);
    return written(std::move(answer), quick);
}

std::string kinds_words()
{
    std::string words;
    for (const KindOnCommandLine& kind : kKinds) words += (words.empty() ? "" : "|") + std::string(kind.word);
    return words;
}

std::string sizes_words()
{
    std::string words;
    for (const KindOnCommandLine& kind : kKinds)
        words += fmt::format("{}{} {}", words.empty() ? "" : "; ", kind.word, kind.sizes);
    return words;
}

} // namespace

Answer joint(const Arguments& arguments)
{
    JointTexts texts;
    QuickOptions quick;
    OptionSet options(
        "joint",
        "--kind KIND --species RAIL [--post SPECIES] --rail THICKNESSxDEPTH --size SIZES [--glue NAME] [--clearance C] "
        "[--format text|json] [--data DIR]",
        "Mean and lower strength of one joint: the published expression beside the mechanics of its glue line; the "
        "lowest of them counts, its own section too.");
    const std::string kinds = kinds_words();
    options.value("--kind", texts.kind, "KIND", kinds);
    options.value("--species", texts.species, "RAIL", "wood of the rail");
    options.value("--post", texts.post, "SPECIES", "wood of the post; as the rail");
    options.value("--rail", texts.rail, "THICKNESSxDEPTH",
                  "section of the rail; the depth lies in the plane in which the joint is bent");
    options.value("--size", texts.size, "SIZES", sizes_words());
    options.value("--glue", texts.glue, "NAME", "\"jointwright glues\" lists them; PVA");
    options.value("--clearance", texts.clearance, "C", "of the fit, on each side; 0");
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    return with_facts(quick.data, [&](const Facts& facts) {
        ValueReader reader;
        validate(quick, reader);
        JointAsked asked = read_joint_question(facts, texts, quick, reader);
        if (!reader.faults().empty()) return wrong_command_line(reader.faults());
        return answer_to_joint(facts, std::move(asked), quick);
    });
}

} // namespace jointwright
