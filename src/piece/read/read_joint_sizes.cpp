// What a joint may say of its glue and its sizes, by kind.

#include "measure/write.hpp"
#include "piece/read/readers.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <functional>
#include <initializer_list>

namespace jointwright {

namespace {

using Kinds = std::initializer_list<JointKind>;
constexpr double kWidestHingeGap = 0.0501; // m: leaves of hinges bridge less

/// True when all are: unlike `&&`, every reader has run by then and reported its faults.
bool every(std::initializer_list<bool> good) { return std::find(good.begin(), good.end(), false) == good.end(); }

const Length kThickestScrew = millimetres(25.4), kThickestDowel = millimetres(50.8);

/// A size that a maker might have, for the fix of a missing one.
std::string_view usual_inches(std::string_view key)
{
    if (key == "thickness" || key == "diameter" || key == "depth") return "0.375";
    if (key == "width") return "2";
    return "1.25";
}

/// Reads the tables of sizes of one joint; a table that does not fit its kind is reported.
class SizesReader {
public:
    SizesReader(DesignTable& table, Joint& joint, bool kind_known)
        : table_(table), reading_(table.reading()), joint_(joint), kind_known_(kind_known)
    {
    }

    void read()
    {
        using enum JointKind;
        sizes({tenon}, "tenon", R"({ length = 1.25, width = 2, thickness = 0.375 })", [&](DesignTable& t) {
            Joint::Tenon tenon_sizes;
            const bool all = every({length(t, "length", tenon_sizes.length), length(t, "width", tenon_sizes.width),
                                    length(t, "thickness", tenon_sizes.thickness)});
            if (const DesignValue* loose = t.may("loose"))
                if (const auto yes = as_truth(reading_, *loose, "loose")) tenon_sizes.loose = *yes;
            if (const DesignValue* mitred = t.may("mitred"))
                if (const auto yes = as_truth(reading_, *mitred, "mitred")) tenon_sizes.mitred = *yes;
            if (all) joint_.tenon = tenon_sizes;
        });
        sizes({housing, groove, sliding_dovetail}, "groove", "{ depth = 0.4375 }",
              [&](DesignTable& t) { one_length(t, "depth", joint_.groove_depth); });
        sizes({lap}, "lap", "{ first = 0.4 }", [&](DesignTable& t) { one_length(t, "first", joint_.lap_first); });
        sizes({bridle}, "bridle", "{ thickness = 0.25 }",
              [&](DesignTable& t) { one_length(t, "thickness", joint_.bridle_thickness); });
        sizes({dowel, mitre}, "dowels", "{ diameter = 0.375, length = 1.5, count = 2 }", [&](DesignTable& t) {
            Joint::Dowels dowels;
            const bool all =
                every({length(t, "diameter", dowels.diameter), length(t, "length", dowels.length), count(t, dowels.count)});
            dowels.inset = free_length(t, "inset");
            if (all && not_too_thick(t, dowels.diameter, "a dowel", kThickestDowel)) joint_.dowels = dowels;
        });
        sizes({screws, hinge}, "screws", "{ diameter = 0.2, length = 1.5, count = 3 }", [&](DesignTable& t) {
            Joint::Screws screw_sizes;
            const bool all = every({length(t, "diameter", screw_sizes.diameter), length(t, "length", screw_sizes.length),
                                    count(t, screw_sizes.count)});
            screw_sizes.slot = free_length(t, "slot");
            screw_sizes.inset = free_length(t, "inset");
            if (const DesignValue* kind = t.may("kind"))
                if (const auto choice = as_choice(reading_, *kind, "kind", "kind of screw",
                                                  {"wood screw", "pocket screw", "lag screw", "nail", "bolt"}))
                    screw_sizes.kind = static_cast<ScrewKind>(*choice);
            one_free_length(t, "cross_dowel", screw_sizes.cross_dowel);
            if (screw_sizes.cross_dowel && screw_sizes.kind != ScrewKind::bolt)
                reading_.fault(
                    t.key_spot("cross_dowel"), "unknown-key", "only a bolt has a cross dowel", {},
                    fmt::format(R"(screws = {{ kind = "bolt", cross_dowel = {}, ... }})", reading_.lengths_example("0.375")));
            if (all && not_too_thick(t, screw_sizes.diameter, "a screw", kThickestScrew)) joint_.screws = screw_sizes;
        });
        sizes({tenon, bridle, groove, sliding_dovetail}, "pegs", "{ diameter = 0.3125, count = 3 }", [&](DesignTable& t) {
            Joint::Pegs pegs;
            const bool all = every({length(t, "diameter", pegs.diameter), count(t, pegs.count)});
            pegs.slot = free_length(t, "slot");
            pegs.inset = free_length(t, "inset");
            if (all && joint_.tenon && in_metres(pegs.diameter) * std::max(2, pegs.count) > in_metres(joint_.tenon->width)) {
                reading_.fault(t.key_spot("diameter"), "out-of-range",
                               fmt::format("{} of {} will not fit in a tenon {} wide",
                                           pegs.count == 1 ? "a peg" : fmt::format("{} pegs", pegs.count),
                                           write_length(pegs.diameter, reading_.units),
                                           write_length(joint_.tenon->width, reading_.units)),
                               {}, "a third of the tenon's width is common practice, no source");
                return;
            }
            if (all) joint_.pegs = pegs;
        });
        sizes({buttons}, "buttons", "{ count = 4 }", [&](DesignTable& t) {
            Joint::Buttons button_sizes;
            const bool all = count(t, button_sizes.count);
            button_sizes.slot = free_length(t, "slot");
            button_sizes.inset = free_length(t, "inset");
            if (const DesignValue* kind = t.may("kind"))
                if (const auto choice = as_choice(reading_, *kind, "kind", "kind of fastener", {"button", "figure plate"}))
                    button_sizes.plates = *choice == 1;
            if (all) joint_.buttons = button_sizes;
        });
        sizes({dovetail}, "dovetail", "{ tails = 5 }", [&](DesignTable& t) { read_dovetail(t); });
        sizes({mitre}, "key", "{ thickness = 0.125, depth = 1, count = 2 }", [&](DesignTable& t) {
            Joint::MitreKeys keys;
            const bool all =
                every({length(t, "thickness", keys.thickness), length(t, "depth", keys.depth), count(t, keys.count)});
            if (all) joint_.keys = keys;
        });
        sizes({mitre}, "spline", "{ thickness = 0.16, depth = 0.4 }", [&](DesignTable& t) {
            Joint::Spline strip;
            if (every({length(t, "thickness", strip.thickness), length(t, "depth", strip.depth)})) joint_.spline = strip;
        });
        sizes({hinge}, "hinges", "{ count = 2, inset = 3, gap = 0.08 }", [&](DesignTable& t) { read_hinges(t); });
        read_glue();
    }

private:
    /// One table of sizes, if it is there and fits the kind.
    void sizes(Kinds kinds, std::string_view key, std::string_view example, const std::function<void(DesignTable&)>& read)
    {
        const DesignValue* value = table_.may(key);
        if (value == nullptr) return;
        if (!is_kind(reading_, *value, key, DesignValue::Kind::table, reading_.lengths_example(example))) return;
        DesignTable inner(reading_, *value, std::string(key));
        read(inner);
        inner.finish();
        if (!kind_known_ || std::find(kinds.begin(), kinds.end(), joint_.kind) != kinds.end()) return;
        std::string fitting;
        for (const JointKind kind : kinds) fitting += (fitting.empty() ? "" : ", ") + std::string(name_of(kind));
        misfit(key, fmt::format("{} goes with kind {}", key, fitting));
    }

    void misfit(std::string_view key, std::string note)
    {
        reading_.fault(table_.key_spot(key), "unknown-key",
                       fmt::format("a joint of kind \"{}\" takes no {}", name_of(joint_.kind), key), {}, std::move(note));
    }

    bool not_too_thick(DesignTable& table, Length diameter, std::string_view what, Length most)
    {
        if (diameter <= most) return true;
        reading_.fault(table.key_spot("diameter"), "out-of-range",
                       fmt::format("{} of {}: none is thicker than {}", what, write_length(diameter, reading_.units),
                                   write_length(most, reading_.units)),
                       {}, "a length and not the diameter, or another unit, may be meant (common practice, no source)");
        return false;
    }

    bool length(DesignTable& table, std::string_view key, Length& into)
    {
        const DesignValue* value = table.must(key, reading_.lengths_example(usual_inches(key)));
        const auto read = value != nullptr ? as_length(reading_, *value, key, LengthRule::size) : std::nullopt;
        if (read) into = *read;
        return read.has_value();
    }

    void one_length(DesignTable& table, std::string_view key, std::optional<Length>& into)
    {
        Length read{};
        if (length(table, key, read)) into = read;
    }

    void one_free_length(DesignTable& table, std::string_view key, std::optional<Length>& into)
    {
        const DesignValue* value = table.may(key);
        if (value != nullptr) into = as_length(reading_, *value, key, LengthRule::size);
    }

    std::optional<Length> free_length(DesignTable& table, std::string_view key)
    {
        const DesignValue* value = table.may(key);
        if (value == nullptr) return std::nullopt;
        return as_length(reading_, *value, key, LengthRule::space);
    }

    bool count(DesignTable& table, int& into)
    {
        const DesignValue* value = table.must("count", "2");
        const auto read = value != nullptr ? as_count(reading_, *value, "count", 1000) : std::nullopt;
        if (read) into = *read;
        return read.has_value();
    }

    void read_dovetail(DesignTable& table)
    {
        Joint::DovetailSizes dovetail;
        const DesignValue* tails = table.must("tails", "5");
        const DesignValue* slope = table.may("slope");
        const auto tail_count = tails != nullptr ? as_count(reading_, *tails, "tails", 1000) : std::nullopt;
        const bool straight = slope != nullptr && slope->is_number() && slope->number == 0; // a comb joint
        if (straight) dovetail.slope = 0;
        if (slope != nullptr && !straight) {
            const auto number =
                as_number(reading_, *slope, "slope", {2, 20, true, {}, "1 in 8 is written 8; 0 for a comb joint"});
            if (!number) return;
            dovetail.slope = *number;
        }
        if (!tail_count) return;
        dovetail.tails = *tail_count;
        joint_.dovetail = dovetail;
    }

    void read_hinges(DesignTable& table)
    {
        Joint::Hinges hinge;
        bool good = true;
        if (const DesignValue* value = table.may("count")) {
            const auto read = as_count(reading_, *value, "count", 20);
            good = read.has_value();
            if (read) hinge.count = *read;
        }
        hinge.inset = free_length(table, "inset");
        if (const auto gap = free_length(table, "gap")) hinge.gap = *gap;
        if (const DesignValue* pin = table.may("pin"))
            if (const auto choice = as_choice(reading_, *pin, "pin", "side", {"left", "right", "front", "back", "bottom", "top"}))
                hinge.pin = static_cast<Side>(*choice);
        if (in_metres(hinge.gap) > kWidestHingeGap) {
            reading_.fault(table.key_spot("gap"), "out-of-range", "parts that hang on hinges stand at most 50 mm (2 in) apart",
                           "gap = \"3 mm\"");
            good = false;
        }
        if (good) joint_.hinges = hinge;
    }

    void read_glue()
    {
        const DesignValue* glue = table_.may("glue");
        const DesignValue* glued = table_.may("glued");
        const DesignValue* clearance = table_.may("clearance");
        const bool buttoned = kind_known_ && joint_.kind == JointKind::buttons,
                   hinged = kind_known_ && joint_.kind == JointKind::hinge;
        const bool never = buttoned || hinged;
        for (const std::string_view key : {"glue", "glued", "clearance"})
            if (never && table_.has(key))
                misfit(key, buttoned
                                ? "buttons hold without glue and leave the wood free to move"
                                : "hinges hold without glue and turn; hinges = { gap = ... } is the room between the two parts");
        if (never) return;
        if (glue != nullptr) joint_.glue = as_glue(reading_, *glue);
        if (glued != nullptr) read_glued(*glued, glue != nullptr);
        if (clearance == nullptr) return;
        if (const auto fit = as_length(reading_, *clearance, "clearance", LengthRule::space)) joint_.clearance = *fit;
    }

    void read_glued(const DesignValue& value, bool has_glue)
    {
        if (!is_kind(reading_, value, "glued", DesignValue::Kind::table,
                     reading_.lengths_example(R"({ length = 3, at = "middle" })")))
            return;
        DesignTable table(reading_, value, "glued");
        GluedShare share;
        const bool good = length(table, "length", share.length);
        if (const DesignValue* at = table.may("at"))
            if (const auto place =
                    as_choice(reading_, *at, "at", "place", {"middle", "left", "right", "front", "back", "bottom", "top"}))
                share.at = static_cast<GluedAt>(*place);
        table.finish();
        if (!has_glue)
            reading_.fault(table_.key_spot("glued"), "missing-key",
                           fmt::format("{} says where it is glued, but lacks glue", table_.name()), R"(glue = "PVA")");
        if (good) joint_.glued = share;
    }

    DesignTable& table_;
    Reading& reading_;
    Joint& joint_;
    bool kind_known_;
};

} // namespace

void read_joint_sizes(DesignTable& table, Joint& joint, bool kind_known) { SizesReader(table, joint, kind_known).read(); }

} // namespace jointwright
