#include "piece/read/read_pattern.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"
#include "piece/read/pattern_ground.hpp"
#include "piece/read/pattern_values.hpp"
#include "piece/read/readers.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr std::string_view kDefaultGlue = "PVA";

class PatternReader {
public:
    PatternReader(Reading& reading, const DesignValue& value, const PatternGround& ground)
        : reading_(reading), table_(reading, value, "[pattern]"), ground_(ground)
    {
        order_.units = ground.piece.units;
    }

    /// The pattern that is named; nullptr when none is.
    const Pattern* read()
    {
        const Pattern* pattern = named();
        if (pattern == nullptr) return nullptr;
        for (const PatternMeasure& measure : pattern->measures) read_measure(*pattern, measure);
        for (const std::string_view key : pattern->woods) read_wood_at(key);
        order_.glue = kDefaultGlue;
        if (const DesignValue* glue = table_.may("glue")) {
            const auto name = as_glue(reading_, *glue);
            sound_ = sound_ && name.has_value();
            if (name) order_.glue = *name;
        }
        table_.finish();
        return pattern;
    }

    const PatternOrder& order() const { return order_; }
    bool sound() const { return sound_; }

private:
    const Pattern* named()
    {
        const DesignValue* name = table_.must("name", R"("slatted-bench")");
        std::vector<std::string> names;
        for (const Pattern& pattern : all_patterns()) names.emplace_back(pattern.name);
        const auto choice = name != nullptr ? as_choice(reading_, *name, "name", "pattern", names) : std::nullopt;
        sound_ = choice.has_value();
        return choice ? &all_patterns()[*choice] : nullptr;
    }

    double in_piece_unit(const PatternMeasure& measure, const InchesOrMillimetres& pair) const
    {
        return measure.is_count ? pair.inches : number_in(metres(pair.in(order_.units)), order_.units);
    }

    void read_measure(const Pattern& pattern, const PatternMeasure& measure)
    {
        const std::string example = write_number(in_piece_unit(measure, measure.example), 6);
        const DesignValue* value = measure.required ? table_.must(measure.key, example) : table_.may(measure.key);
        std::optional<double> read;
        // A bare number says nothing until the unit of the piece is known; that fault is reported with [piece].
        if (value != nullptr && ground_.units_known)
            read = measure.is_count ? as_whole(*value, measure.key) : as_size(*value, measure.key);
        const bool in_range = read && within(pattern, measure, *value, *read);
        sound_ = sound_ && (in_range || (value == nullptr && !measure.required));
        if (in_range)
            order_.measures.emplace(measure.key, *read);
        else if (measure.required)
            order_.measures.emplace(measure.key, measure.example.in(order_.units));
    }

    std::optional<double> as_whole(const DesignValue& value, std::string_view key)
    {
        const auto count = as_count(reading_, value, key);
        if (!count) return std::nullopt;
        return static_cast<double>(*count);
    }

    std::optional<double> as_size(const DesignValue& value, std::string_view key)
    {
        const auto size = as_length(reading_, value, key, LengthRule::size);
        if (!size) return std::nullopt;
        return in_metres(*size);
    }

    bool within(const Pattern& pattern, const PatternMeasure& measure, const DesignValue& value, double read)
    {
        const bool count = measure.is_count;
        const double least = count ? measure.least.inches : measure.least.in(order_.units);
        const double most = count ? measure.most.inches : measure.most.in(order_.units);
        constexpr double kRounding = 1e-9;
        if (read >= least - kRounding && read <= most + kRounding) return true;
        const auto words = [&](double size) { return count ? write_number(size) : write_length(metres(size), order_.units); };
        const InchesOrMillimetres& nearest = read < least ? measure.least : measure.most;
        reading_.fault(value.spot, "out-of-range",
                       fmt::format("{} is {}; the pattern {} takes {} to {}", measure.key, words(read), in_quotes(pattern.name),
                                   words(least), words(most)),
                       reading_.fixed(value, write_number(in_piece_unit(measure, nearest), 6)),
                       "its proportions hold in that range; for anything else expand it and change the parts");
        return false;
    }

    void read_wood_at(std::string_view key)
    {
        const auto& woods = ground_.piece.woods;
        const bool first = key == "wood";
        // Which wood is meant needs no saying where there is one.
        const bool must = first && woods.size() > 1;
        const std::string example = woods.empty() ? R"("frame")" : toml_text(woods.front().id);
        const DesignValue* value = must ? table_.must(key, example) : table_.may(key);
        const WoodChoice* chosen = nullptr;
        if (value != nullptr) chosen = wood_named(*value, key);
        if (value == nullptr && !first) {
            order_.woods.emplace(key, order_.wood());
            return;
        }
        sound_ = sound_ && (chosen != nullptr || (value == nullptr && !must));
        if (chosen == nullptr && !woods.empty()) chosen = &woods.front();
        order_.woods.emplace(key, chosen != nullptr ? pattern_wood(*chosen, ground_, reading_.facts) : PatternWood{});
    }

    const WoodChoice* wood_named(const DesignValue& value, std::string_view key)
    {
        const auto id = as_text(reading_, value, key);
        if (!id) return nullptr;
        std::vector<std::string> ids;
        for (const WoodChoice& wood : ground_.piece.woods) {
            if (wood.id == *id) return &wood;
            ids.push_back(wood.id);
        }
        reading_.unknown_name(value, "unknown-wood", fmt::format("no [[wood]] has the id {}", in_quotes(*id)),
                              nearest_spellings(*id, ids), "woods are named by the id of their [[wood]]");
        return nullptr;
    }

    Reading& reading_;
    DesignTable table_;
    const PatternGround& ground_;
    PatternOrder order_;
    bool sound_ = true;
};

/// Puts tables ahead of those of a list of the design; a new list stands where [pattern] stood.
void put_ahead(DesignValue& root, std::size_t place, std::string_view key, std::vector<DesignValue> tables, Spot spot)
{
    if (tables.empty()) return;
    for (DesignEntry& entry : root.entries) {
        if (entry.key != key) continue;
        // A list of another kind has a fault of its own.
        if (entry.value.kind != DesignValue::Kind::list) return;
        entry.value.items.insert(entry.value.items.begin(), tables.begin(), tables.end());
        return;
    }
    DesignEntry entry{std::string(key), spot, {}};
    entry.value.kind = DesignValue::Kind::list;
    entry.value.spot = spot;
    entry.value.items = std::move(tables);
    root.entries.insert(root.entries.begin() + static_cast<std::ptrdiff_t>(place), std::move(entry));
}

/// Gives [piece] what it does not state.
void fill_in_head(DesignValue& root, const PatternDraft& draft, const Piece& piece, Spot spot)
{
    for (DesignEntry& entry : root.entries) {
        if (entry.key != "piece" || entry.value.kind != DesignValue::Kind::table) continue;
        DesignValue& head = entry.value;
        const auto add = [&](std::string_view key, DesignValue value) {
            if (head.find(key) == nullptr) head.entries.push_back({std::string(key), spot, std::move(value)});
        };
        const bool bears = bears_something(piece.use);
        if (bears && !draft.carries.empty()) add("carries", texts_value(draft.carries, spot));
        add("size", point_value(draft.size, piece.units, spot));
        if (!draft.wall.empty()) add("wall", texts_value(draft.wall, spot));
    }
}

} // namespace

PatternRead write_out_pattern(Reading& reading, DesignValue& root, std::string_view text)
{
    PatternRead result;
    const auto found =
        std::find_if(root.entries.begin(), root.entries.end(), [](const DesignEntry& entry) { return entry.key == "pattern"; });
    if (found == root.entries.end()) return result;
    const DesignValue value = found->value;
    const auto place = static_cast<std::size_t>(found - root.entries.begin());
    root.entries.erase(found);
    result.stated = true;

    const PatternGround ground = pattern_ground(root, text, reading.facts);
    reading.units = ground.piece.units;
    if (!is_kind(reading, value, "pattern", DesignValue::Kind::table, value.kind == DesignValue::Kind::list ? "[pattern]" : ""))
        return {true, false, false};
    PatternReader reader(reading, value, ground);
    const Pattern* pattern = reader.read();
    result.sound = reader.sound();
    result.written_out = pattern != nullptr && !ground.piece.woods.empty(); // a design without any wood has a fault of its own
    result.sound = result.sound && result.written_out;
    if (!result.written_out) return result;

    const PatternDraft draft = pattern->make(reader.order());
    std::vector<DesignValue> parts, joints;
    for (const PatternPart& part : draft.parts) parts.push_back(part_value(part, reader.order(), value.spot));
    for (const Joint& joint : draft.joints) joints.push_back(joint_value(joint, reader.order().units, value.spot));
    put_ahead(root, place, "joint", std::move(joints), value.spot);
    put_ahead(root, place, "part", std::move(parts), value.spot);
    reading.size_by_pattern = !ground.piece.size;
    fill_in_head(root, draft, ground.piece, value.spot);
    return result;
}

} // namespace jointwright
