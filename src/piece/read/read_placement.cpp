// Where a part stands: at, repeat, copies, mirror.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

constexpr std::array<std::array<std::string_view, 2>, 3> kSides{{{"left", "right"}, {"front", "back"}, {"bottom", "top"}}};
constexpr std::string_view kAtExample = "{ left = 0, front = 0, bottom = 0 }";

/// Reads `at` for a box of those sizes: the corner nearest left, front, bottom.
std::optional<Point> as_corner(Reading& reading, const DesignValue& value, const Point& sizes)
{
    if (value.kind == DesignValue::Kind::list) {
        const auto corner = as_lengths(reading, value, "at", 3, LengthRule::coordinate, "[0, 0, 0]");
        if (!corner) return std::nullopt;
        return Point{(*corner)[0], (*corner)[1], (*corner)[2]};
    }
    if (value.kind != DesignValue::Kind::table) {
        reading.fault(
            value.spot, "wrong-type",
            fmt::format("at is {}, but a list of three coordinates or a table of sides is wanted here", words_for(value.kind)),
            reading.fixed(value, kAtExample));
        return std::nullopt;
    }
    DesignTable table(reading, value, "at");
    Point corner{};
    bool good = true;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto [near, far] = kSides[i];
        const DesignValue* at_near = table.may(near);
        const DesignValue* at_far = table.may(far);
        if (at_near != nullptr && at_far != nullptr) {
            reading.fault(table.key_spot(far), "one-too-many",
                          fmt::format("at gives both {} and {}; one of them is enough", near, far), {},
                          "the other side follows from the part's size");
            good = false;
            continue;
        }
        if (at_near == nullptr && at_far == nullptr) {
            reading.fault(value.spot, "missing-key", fmt::format("at lacks {} or {}", near, far), table.with_key(near, "0"));
            good = false;
            continue;
        }
        const auto read =
            as_length(reading, at_near != nullptr ? *at_near : *at_far, at_near != nullptr ? near : far, LengthRule::coordinate);
        good = good && read.has_value();
        if (read) corner[i] = in_metres(*read) - (at_near != nullptr ? 0.0 : sizes[i]);
    }
    table.finish();
    if (!good) return std::nullopt;
    return corner;
}

/// Reads `repeat` for a part whose placed copy stands at a corner.
class RowReader {
public:
    /// @param placed  corner and sizes are known, so that the room for the row can be checked
    RowReader(Reading& reading, const DesignValue& value, const Point& corner, const Point& sizes, bool placed)
        : reading_(reading), table_(reading, value, "repeat"), corner_(corner), sizes_(sizes), placed_(placed)
    {
    }

    std::optional<Placement::Row> read()
    {
        const DesignValue* count = table_.must("count", "13");
        const DesignValue* along = table_.may("along");
        const DesignValue* gap = table_.may("gap");
        const DesignValue* to = table_.may("to");
        const DesignValue* step = table_.may("step");
        table_.finish();
        const auto number = count != nullptr ? as_count(reading_, *count, "count") : std::nullopt;
        if (!one_of(gap, to, step)) return std::nullopt;
        if (!number) return std::nullopt; // told already, and what hangs on it is not worth a word
        row_.count = *number;
        const bool good = step != nullptr ? by_step(*step, along) : by_axis(along, gap, to);
        if (!good) return std::nullopt;
        return row_;
    }

private:
    bool one_of(const DesignValue* gap, const DesignValue* to, const DesignValue* step)
    {
        const int given = (gap != nullptr) + (to != nullptr) + (step != nullptr);
        if (given == 1) return true;
        if (given == 0)
            reading_.fault(table_.spot(), "missing-key", "repeat lacks gap, to or step",
                           fmt::format(R"(repeat = {{ count = 13, along = "x", gap = {} }})", reading_.lengths_example("0.625")));
        else
            reading_.fault(table_.spot(), "one-too-many", "repeat takes one of gap, to and step, not several");
        return false;
    }

    bool by_step(const DesignValue& value, const DesignValue* along)
    {
        if (along != nullptr) {
            reading_.fault(table_.key_spot("along"), "one-too-many",
                           "repeat takes along with gap or to, but not with step, which has its own direction");
            return false;
        }
        const auto step = as_lengths(reading_, value, "step", 3, LengthRule::coordinate, "[2.875, 0, 0]");
        if (!step) return false;
        row_.step = {(*step)[0], (*step)[1], (*step)[2]};
        if (row_.count == 1 || row_.step != Point{}) return true;
        reading_.fault(value.spot, "out-of-range", "step is 0 along every axis: all copies would stand in one place");
        return false;
    }

    bool by_axis(const DesignValue* along, const DesignValue* gap, const DesignValue* to)
    {
        if (along == nullptr) {
            reading_.fault(table_.spot(), "missing-key", "repeat lacks along", R"(along = "x")",
                           "gap and to run along an axis: x, y or z");
            return false;
        }
        const auto axis = as_axis(reading_, *along, "along");
        if (!axis) return false;
        const std::size_t i = index_of(*axis);
        if (gap != nullptr) {
            const auto clear = as_length(reading_, *gap, "gap", LengthRule::space);
            if (clear) row_.step[i] = sizes_[i] + in_metres(*clear);
            return clear.has_value();
        }
        const auto end = as_length(reading_, *to, "to", LengthRule::coordinate);
        return end && by_end(*to, *axis, in_metres(*end));
    }

    bool by_end(const DesignValue& value, Axis axis, double end)
    {
        const std::size_t i = index_of(axis);
        if (row_.count < 2) {
            reading_.fault(value.spot, "out-of-range", "to needs a count of at least 2: one copy alone ends where it stands");
            return false;
        }
        const double room = end - corner_[i];
        const double needed = sizes_[i] * row_.count;
        row_.step[i] = (room - sizes_[i]) / (row_.count - 1);
        if (!placed_ || room >= needed - kTouch) return true;
        reading_.fault(value.spot, "out-of-range",
                       fmt::format("{} copies take {} along {}, but from the first one's near side to here there are only {}",
                                   row_.count, write_length(metres(needed), reading_.units), name_of(axis),
                                   write_length(metres(room), reading_.units)));
        return false;
    }

    Reading& reading_;
    DesignTable table_;
    Point corner_, sizes_;
    bool placed_;
    Placement::Row row_;
};

bool read_mirrored(DesignTable& table, Placement::Single& single)
{
    const DesignValue* value = table.may("mirrored");
    if (value == nullptr) return true;
    const auto axes = as_axes(table.reading(), *value, "mirrored");
    if (!axes) return false;
    for (const Axis axis : *axes) single.mirrored[index_of(axis)] = true;
    return true;
}

std::optional<Placement::Single> as_single(Reading& reading, const DesignValue& value, const Point& sizes)
{
    if (!is_kind(reading, value, "an entry of copies", DesignValue::Kind::table, fmt::format("{{ at = {} }}", kAtExample)))
        return std::nullopt;
    DesignTable table(reading, value, "copies");
    Placement::Single single;
    const DesignValue* at = table.must("at", kAtExample);
    const auto corner = at != nullptr ? as_corner(reading, *at, sizes) : std::nullopt;
    const bool good = read_mirrored(table, single);
    table.finish();
    if (!corner || !good) return std::nullopt;
    single.corner = *corner;
    return single;
}

bool read_singles(Reading& reading, const DesignValue& value, const Point& sizes, Placement& placement)
{
    if (!is_kind(reading, value, "copies", DesignValue::Kind::list, fmt::format("[{{ at = {} }}]", kAtExample))) return false;
    bool good = true;
    for (const DesignValue& item : value.items) {
        const auto single = as_single(reading, item, sizes);
        good = good && single.has_value();
        if (single) placement.singles.push_back(*single);
    }
    return good;
}

bool read_mirror(DesignTable& table, const DesignValue& value, const Piece& piece, Placement& placement)
{
    Reading& reading = table.reading();
    const auto axes = as_axes(reading, value, "mirror");
    if (!axes) return false;
    placement.mirror = *axes;
    if (piece.size || axes->empty()) return true;
    // A stated size that could not be read has its own fault.
    if (!reading.size_stated)
        reading.fault(table.key_spot("mirror"), "missing-key",
                      "mirror works about the middle of the piece, but [piece] has no size",
                      "size = " + reading.lengths_example("[42, 14, 17.5]"), "size in [piece] is over all along x, y and z");
    return false;
}

} // namespace

std::optional<Placement> read_placement(DesignTable& table, const Part& part, bool sound, const Piece& piece)
{
    Reading& reading = table.reading();
    const Point sizes = box_sizes(part);
    Placement placement;
    const DesignValue* at = table.must("at", kAtExample);
    const auto corner = at != nullptr ? as_corner(reading, *at, sizes) : std::nullopt;
    bool good = corner.has_value();
    if (corner) placement.placed.corner = *corner;
    good = read_mirrored(table, placement.placed) && good;
    if (const DesignValue* repeat = table.may("repeat"); repeat != nullptr) {
        const bool is_table =
            is_kind(reading, *repeat, "repeat", DesignValue::Kind::table, R"({ count = 13, along = "x", gap = 0.625 })");
        if (is_table) placement.row = RowReader(reading, *repeat, corner.value_or(Point{}), sizes, sound && corner).read();
        good = good && placement.row.has_value();
    }
    if (const DesignValue* copies = table.may("copies")) good = read_singles(reading, *copies, sizes, placement) && good;
    if (const DesignValue* mirror = table.may("mirror")) good = read_mirror(table, *mirror, piece, placement) && good;
    if (!good || !sound) return std::nullopt;
    return placement;
}

} // namespace jointwright
