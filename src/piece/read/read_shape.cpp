// The shape of a part: notches, taper, rounded edges, boards glued up, bare sides.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr int kMostNotches = 1000; // in one row
const Length kLeastBoard = millimetres(5), kLeastRingRadius = millimetres(5);

/// What the readers of shapes share.
struct ShapeReader {
    Reading& reading;
    Part& part;
    bool sound; ///< sizes and axes of the part are known

    std::string text(Length length) const { return write_length(length, reading.units); }
    /// Size of the section along an axis other than the grain.
    Length section(Axis axis) const { return axis == part.face ? part.thickness : part.width; }
    std::string_view section_word(Axis axis) const { return axis == part.face ? "thickness" : "width"; }

    bool is_long_side(const DesignValue& value, Side side, std::string_view what) const
    {
        if (!sound || axis_of(side) != part.grain) return true;
        reading.fault(value.spot, "wrong-side",
                      fmt::format("{} is {}, an end of the part: its grain runs along {}", what, in_quotes(name_of(side)),
                                  name_of(part.grain)),
                      {}, "the four long sides lie along the grain");
        return false;
    }

    /// Reports a length over its limit.
    bool at_most(const DesignValue& value, Length length, Length most, std::string_view what, std::string_view limit) const
    {
        if (!sound || in_metres(length) <= in_metres(most) + 1e-9) return true;
        reading.fault(value.spot, "out-of-range",
                      fmt::format("{} is {}, more than {}, {}", what, text(length), limit, text(most)));
        return false;
    }

    void read_notches(const DesignValue& value);
    void read_taper(const DesignValue& value);
    void read_round_over(const DesignValue& value);
    void read_glued_up(const DesignValue& value);
    void read_sides(DesignTable& table);

private:
    bool boards_fit(const DesignValue& value, int count);
    void read_notch_row(const DesignValue& value);
    void check_notch_row(const DesignValue& value, const Notches& notches);
    void check_taper(const DesignValue& value, const Taper& taper);
};

void ShapeReader::read_notches(const DesignValue& value)
{
    if (!is_kind(reading, value, "notches", DesignValue::Kind::list,
                 reading.lengths_example(R"([{ from = "top", depth = 0.4, width = 1.75, first = 0.5 }])")))
        return;
    for (const DesignValue& row : value.items) read_notch_row(row);
}

void ShapeReader::read_notch_row(const DesignValue& value)
{
    if (!is_kind(reading, value, "an entry of notches", DesignValue::Kind::table)) return;
    DesignTable table(reading, value, "notches");
    Notches notches;
    bool good = true;
    const auto length = [&](std::string_view key, std::string_view example, LengthRule rule, Length& into) {
        const DesignValue* given = table.must(key, reading.lengths_example(example));
        const auto read = given != nullptr ? as_length(reading, *given, key, rule) : std::nullopt;
        if (read) into = *read;
        good = good && read.has_value();
    };
    const DesignValue* from = table.must("from", R"("top")");
    const auto side = from != nullptr ? as_side(reading, *from, "from") : std::nullopt;
    if (side && is_long_side(*from, *side, "from"))
        notches.from = *side;
    else
        good = false;
    length("depth", "0.4", LengthRule::size, notches.depth);
    length("width", "1.75", LengthRule::size, notches.width);
    length("first", "0.5", LengthRule::space, notches.first);
    if (const DesignValue* count = table.may("count")) {
        const auto read = as_count(reading, *count, "count", kMostNotches);
        notches.count = read.value_or(1);
        good = good && read.has_value();
    }
    if (notches.count > 1 || table.has("step")) length("step", "2.625", LengthRule::size, notches.step);
    table.may("step");
    table.finish();
    if (!good) return;
    check_notch_row(value, notches);
    part.notches.push_back(notches);
}

void ShapeReader::check_notch_row(const DesignValue& value, const Notches& notches)
{
    if (!sound) return;
    const Length deep = section(axis_of(notches.from));
    if (in_metres(notches.depth) >= in_metres(deep) - 1e-9)
        reading.fault(value.find("depth")->spot, "out-of-range",
                      fmt::format("depth is {}, but the part is only {} from that side: a notch must leave some wood",
                                  text(notches.depth), text(deep)));
    if (notches.count > 1 && in_metres(notches.step) < in_metres(notches.width) - 1e-9)
        reading.fault(value.find("step")->spot, "out-of-range",
                      fmt::format("step is {}, less than the width of a notch, {}: they would run into each other",
                                  text(notches.step), text(notches.width)));
    const Length end = notches.first + static_cast<double>(notches.count - 1) * notches.step + notches.width;
    if (in_metres(end) > in_metres(part.length) + kTouch)
        reading.fault(
            value.find("first")->spot, "out-of-range",
            fmt::format("the last notch ends {} from the part's end, but the part is {} long", text(end), text(part.length)));
}

void ShapeReader::read_taper(const DesignValue& value)
{
    if (!is_kind(reading, value, "taper", DesignValue::Kind::table,
                 reading.lengths_example(R"({ end = "bottom", width = 1.25, thickness = 1.25 })")))
        return;
    DesignTable table(reading, value, "taper");
    Taper taper;
    taper.over = part.length;
    bool good = true;
    const auto length = [&](const DesignValue* given, std::string_view key, Length& into) {
        const auto read = given != nullptr ? as_length(reading, *given, key, LengthRule::size) : std::nullopt;
        if (read) into = *read;
        good = good && read.has_value();
    };
    const DesignValue* end = table.must("end", R"("bottom")");
    const auto side = end != nullptr ? as_side(reading, *end, "end") : std::nullopt;
    good = side.has_value();
    if (side) taper.end = *side;
    length(table.must("width", reading.lengths_example("1.25")), "width", taper.width);
    length(table.must("thickness", reading.lengths_example("1.25")), "thickness", taper.thickness);
    if (const DesignValue* over = table.may("over")) length(over, "over", taper.over);
    if (const DesignValue* flat = table.may("flat")) {
        auto sides = as_sides(reading, *flat, "flat");
        good = good && sides.has_value();
        if (sides) taper.flat = std::move(*sides);
    }
    table.finish();
    if (!good) return;
    if (sound) check_taper(value, taper);
    part.taper = std::move(taper);
}

void ShapeReader::check_taper(const DesignValue& value, const Taper& taper)
{
    if (axis_of(taper.end) != part.grain)
        reading.fault(value.find("end")->spot, "wrong-side",
                      fmt::format("end is {}, but the part's ends lie along its grain, {}", in_quotes(name_of(taper.end)),
                                  name_of(part.grain)));
    at_most(*value.find("width"), taper.width, part.width, "width of the taper", "the part's width");
    at_most(*value.find("thickness"), taper.thickness, part.thickness, "thickness of the taper", "the part's thickness");
    if (const DesignValue* over = value.find("over")) at_most(*over, taper.over, part.length, "over", "the part's length");
    for (const Side side : taper.flat) is_long_side(*value.find("flat"), side, "flat");
    for (const Axis axis : {part.width_axis(), part.face}) {
        const auto flats = std::count_if(taper.flat.begin(), taper.flat.end(), [&](Side side) { return axis_of(side) == axis; });
        const Length at_end = axis == part.face ? taper.thickness : taper.width;
        if (flats == 2 && in_metres(at_end) < in_metres(section(axis)) - 1e-9)
            reading.fault(value.find("flat")->spot, "out-of-range",
                          fmt::format("both sides along {} are flat, so the {} cannot become less there", name_of(axis),
                                      section_word(axis)));
    }
}

void ShapeReader::read_round_over(const DesignValue& value)
{
    const auto radius = as_length(reading, value, "round_over", LengthRule::size);
    if (!radius) return;
    part.round_over = *radius;
    const Length half = std::min(part.width, part.thickness) / 2.0;
    if (sound && in_metres(*radius) >= in_metres(half) - 1e-9)
        reading.fault(
            value.spot, "out-of-range",
            fmt::format("round_over is {}; it must be less than half of the smaller side, {}", text(*radius), text(half)));
}

/// Boards that are glued up side by side are so wide at least.
bool ShapeReader::boards_fit(const DesignValue& value, int count)
{
    if (!sound) return true;
    const Length each = part.width / static_cast<double>(count);
    if (each >= kLeastBoard) return true;
    const int most = std::max(1, static_cast<int>(part.width / kLeastBoard));
    reading.fault(value.spot, "out-of-range",
                  fmt::format("{} boards side by side in a width of {} are {} wide each; a board is at least {}", count,
                              write_length(part.width, reading.units), write_small_length(each, reading.units),
                              write_length(kLeastBoard, reading.units)),
                  reading.fixed(value, std::to_string(most)), "narrower strips are not glued up (common practice, no source)");
    return false;
}

void ShapeReader::read_glued_up(const DesignValue& value)
{
    if (!is_kind(reading, value, "glued_up", DesignValue::Kind::table, R"({ boards = 5, glue = "PVA" })")) return;
    DesignTable table(reading, value, "glued_up");
    GluedUp glued;
    if (const DesignValue* boards = table.must("boards", "5"))
        if (const auto count = as_count(reading, *boards, "boards", 1000); count && boards_fit(*boards, *count))
            glued.boards = *count;
    if (const DesignValue* glue = table.may("glue")) glued.glue = as_glue(reading, *glue);
    table.finish();
    part.glued_up = std::move(glued);
}

void ShapeReader::read_sides(DesignTable& table)
{
    const NotAboutShapes scope(reading);
    if (const DesignValue* bare = table.may("bare"))
        if (auto sides = as_sides(reading, *bare, "bare")) part.bare = std::move(*sides);
    if (const DesignValue* bark = table.may("bark_side")) {
        const auto side = as_side(reading, *bark, "bark_side");
        if (side && is_long_side(*bark, *side, "bark_side")) part.bark_side = *side;
    }
    if (const DesignValue* radius = table.may("ring_radius"))
        if (const auto length = as_length(reading, *radius, "ring_radius", LengthRule::size)) {
            if (*length >= kLeastRingRadius)
                part.ring_radius = *length;
            else
                reading.fault(radius->spot, "out-of-range",
                              fmt::format("ring_radius is {}; the rings at the middle of a board are at least {} from the pith",
                                          write_small_length(*length, reading.units),
                                          write_length(kLeastRingRadius, reading.units)),
                              {}, "measure from the pith to the middle of the board's face (common practice, no source)");
        }
}

} // namespace

void read_shape(DesignTable& table, Part& part, bool sound)
{
    ShapeReader shape{table.reading(), part, sound};
    if (const DesignValue* notches = table.may("notches")) shape.read_notches(*notches);
    if (const DesignValue* taper = table.may("taper")) shape.read_taper(*taper);
    if (const DesignValue* radius = table.may("round_over")) shape.read_round_over(*radius);
    if (const DesignValue* boards = table.may("glued_up")) shape.read_glued_up(*boards);
    shape.read_sides(table);
}

} // namespace jointwright
