#include "measure/amount.hpp"
#include "measure/read.hpp"
#include "measure/refusal.hpp"
#include "measure/unit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kInch = kMetresPerInch;
constexpr double kFoot = 12 * kMetresPerInch;

double metres_per(LengthUnit unit)
{
    switch (unit) {
    case LengthUnit::inch: return kInch;
    case LengthUnit::millimetre: return 1e-3;
    case LengthUnit::centimetre: return 1e-2;
    }
    return 1;
}

/// A length in metres, and the unit that may serve other numbers: its own if it has just one.
struct LengthRead {
    double metres = 0;
    std::optional<double> own_unit; ///< metres per unit
};

Misreading left_over(MeasureCursor at)
{
    at.skip_spaces();
    return {"wrong-type",
            fmt::format("{} is not a length: {} is left over at its end", in_quotes(at.written()), in_quotes(to_utf8(at.rest()))),
            {}};
}

/// Takes the letters or the mark of a unit; a point behind letters belongs to them ("in.").
std::string take_unit_text(MeasureCursor& at)
{
    at.skip_spaces();
    const std::size_t from = at.place();
    if (at.take(U'\'') || at.take(U'"')) return at.since(from);
    if (!at.take_letters().empty()) at.take(U'.');
    return at.since(from);
}

/// The whole rest begins with a unit of another kind (kg/m3, N/m, %, °) or with an unknown one.
Misreading other_unit(const MeasureCursor& at, const Amount& amount, std::size_t unit_from)
{
    MeasureCursor back = at;
    back.go_to(unit_from);
    std::u32string rest(back.rest());
    std::replace(rest.begin(), rest.end(), U'²', U'2');
    std::replace(rest.begin(), rest.end(), U'³', U'3');
    const std::string whole = to_utf8(std::u32string_view(rest).substr(0, rest.find(U' ')));
    return wrong_unit(at.written(), amount.text, amount.value, whole, MeasureKind::length);
}

/// Takes a unit of length. A factor of 0: there is no unit, the text ends or goes on with something else.
Outcome<double> take_length_unit(MeasureCursor& at, const Amount& amount)
{
    at.skip_spaces();
    const std::size_t from = at.place();
    const std::string text = take_unit_text(at);
    const bool other_sign = at.peek() == U'%' || at.peek() == U'°' || at.peek() == U'℃' || at.peek() == U'℉';
    if (text.empty()) return other_sign ? Outcome<double>(other_unit(at, amount, from)) : Outcome<double>(0.0);
    const UnitFound found = find_unit(text);
    const bool compound = at.peek() == U'/' || at.peek() == U'^' || at.peek() == U'²' || at.peek() == U'³';
    if (compound || found.unit == nullptr || found.unclear || found.unit->kind != MeasureKind::length)
        return other_unit(at, amount, from);
    return found.unit->factor;
}

/// Moves over what may stand between feet and inches: nothing, spaces, or a hyphen with or without spaces on both its sides.
/// False for a sign: a hyphen against the number alone (`3' -6"`) or a second one.
bool step_to_inches(MeasureCursor& at)
{
    const bool space_before = at.peek() == U' ';
    at.skip_spaces();
    const bool hyphen = at.take(U'-');
    const bool space_behind = at.peek() == U' ';
    at.skip_spaces();
    return (!hyphen || space_before == space_behind) && at.peek() != U'-' && at.peek() != U'+';
}

Misreading mixed_units(const MeasureCursor& at, double metres)
{
    return {"wrong-unit", fmt::format("{} mixes units; only feet and inches go together", in_quotes(at.written())),
            fmt::format("{:.6g} mm", metres * 1e3)};
}

/// Why feet and inches do not go together as written, or nothing.
std::optional<Misreading> refuse_inches(const MeasureCursor& at, const Amount& feet, const Amount& inches, double total)
{
    const std::string text = in_quotes(at.written());
    if (!feet.whole)
        return Misreading{"wrong-type", fmt::format("the feet in {} must be a whole number, as inches follow", text), {}};
    if (inches.value < 12) return std::nullopt;
    return Misreading{"out-of-range", fmt::format("the inches in {} are 12 or more; behind feet they are fewer", text),
                      std::isfinite(total) ? fmt::format("{:.6g} in", total / kInch) : ""};
}

/// Reads the inches behind feet.
Outcome<LengthRead> read_inches_after(MeasureCursor& at, const Amount& feet, std::optional<LengthUnit> bare)
{
    const std::size_t from = at.place();
    if (!step_to_inches(at)) {
        at.go_to(from);
        return left_over(at);
    }
    const Outcome<Amount> inches = read_amount(at);
    if (!inches) return inches.why();
    const Outcome<double> unit = take_length_unit(at, *inches);
    if (!unit) return unit.why();
    if (!at.at_end()) return left_over(at);
    const double sign = feet.negative ? -1 : 1;
    if (*unit != 0 && *unit != kInch) return mixed_units(at, feet.value * kFoot + sign * inches->value * *unit);
    const double total = feet.value * kFoot + sign * inches->value * kInch;
    if (auto refusal = refuse_inches(at, feet, *inches, total)) return *refusal;
    if (*unit == 0 && bare != LengthUnit::inch)
        return Misreading{"wrong-unit", fmt::format("the last number in {} has no unit", in_quotes(at.written())),
                          at.since(0) + " in"};
    return LengthRead{total, std::nullopt};
}

/// A second number behind a length that is not in feet.
Misreading more_than_one(MeasureCursor& at, double first)
{
    MeasureCursor ahead = at;
    const Outcome<Amount> second = read_amount(ahead);
    if (!second) return left_over(at);
    const Outcome<double> unit = take_length_unit(ahead, *second);
    if (!unit || *unit == 0 || !ahead.at_end() || second->negative) return left_over(at);
    return mixed_units(at, first + std::copysign(second->value * *unit, first));
}

Outcome<LengthRead> read_one(std::string_view text, std::optional<double> serving_unit, std::optional<LengthUnit> bare)
{
    if (auto refusal = refuse_at_sight(text, name_of(MeasureKind::length), examples_of(MeasureKind::length))) return *refusal;
    MeasureCursor at(text);
    const Outcome<Amount> amount = read_amount(at);
    if (!amount) return amount.why();
    const Outcome<double> unit = take_length_unit(at, *amount);
    if (!unit) return unit.why();
    if (*unit == 0 && !at.at_end()) return left_over(at);
    if (*unit == 0 && serving_unit) return LengthRead{amount->value * *serving_unit, std::nullopt};
    if (*unit == 0 && bare) return LengthRead{amount->value * metres_per(*bare), std::nullopt};
    if (*unit == 0) return no_unit(amount->text, amount->fraction, MeasureKind::length);
    if (at.at_end()) return LengthRead{amount->value * *unit, *unit};
    if (*unit == kFoot) return read_inches_after(at, *amount, bare);
    return more_than_one(at, amount->value * *unit);
}

Outcome<LengthRead> read_finite(std::string_view text, std::optional<double> serving_unit, std::optional<LengthUnit> bare)
{
    Outcome<LengthRead> read = read_one(text, serving_unit, bare);
    if (read && !std::isfinite(read->metres))
        return Misreading{"out-of-range", fmt::format("{} is too large", in_quotes(text)), {}};
    return read;
}

} // namespace

std::string_view short_name(LengthUnit unit)
{
    switch (unit) {
    case LengthUnit::inch: return "in";
    case LengthUnit::millimetre: return "mm";
    case LengthUnit::centimetre: return "cm";
    }
    return "";
}

std::optional<LengthUnit> length_unit_named(std::string_view name)
{
    for (const LengthUnit unit : {LengthUnit::inch, LengthUnit::millimetre, LengthUnit::centimetre})
        if (short_name(unit) == name) return unit;
    return std::nullopt;
}

Length length_in(double number, LengthUnit unit) { return metres(number * metres_per(unit)); }

double number_in(Length length, LengthUnit unit) { return in_metres(length) / metres_per(unit); }

Outcome<Length> read_length(std::string_view text, std::optional<LengthUnit> bare)
{
    const Outcome<LengthRead> read = read_finite(text, std::nullopt, bare);
    if (!read) return read.why();
    return metres(read->metres);
}

std::vector<std::string_view> split_sizes(std::string_view text)
{
    std::vector<std::string_view> sizes;
    std::size_t from = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        constexpr std::string_view kTimes = "×";
        const bool sign = text.substr(i, kTimes.size()) == kTimes;
        if (!sign && text[i] != 'x' && text[i] != 'X') continue;
        sizes.push_back(text.substr(from, i - from));
        if (sign) i += kTimes.size() - 1;
        from = i + 1;
    }
    sizes.push_back(text.substr(from));
    return sizes;
}

Outcome<std::vector<Length>> read_lengths(std::string_view text, std::optional<LengthUnit> bare)
{
    if (auto refusal = refuse_at_sight(text, "a row of sizes", "1/2in x 2in x 38mm")) return *refusal;
    const std::vector<std::string_view> sizes = split_sizes(text);
    for (const std::string_view size : sizes)
        if (folded(size).empty())
            return Misreading{"wrong-type", fmt::format("{} lacks a size beside one of its \"x\"", in_quotes(text)), {}};
    const Outcome<LengthRead> last = read_finite(sizes.back(), std::nullopt, bare);
    if (!last) return last.why();
    std::vector<Length> lengths;
    for (std::size_t i = 0; i + 1 < sizes.size(); ++i) {
        const Outcome<LengthRead> read = read_finite(sizes[i], last->own_unit, bare);
        if (!read) return read.why();
        lengths.push_back(metres(read->metres));
    }
    lengths.push_back(metres(last->metres));
    return lengths;
}

} // namespace jointwright
