#include "measure/amount.hpp"
#include "measure/read.hpp"
#include "measure/refusal.hpp"
#include "measure/unit.hpp"

#include <fmt/format.h>

#include <cmath>

namespace jointwright {

namespace {

using Kind = MeasureKind;

/// A unit as the table spells it: no spaces round the slash or behind a degree sign, powers as plain digits.
std::u32string plain_unit(std::u32string_view text)
{
    std::u32string unit;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char32_t c = text[i];
        if (c == U'^') continue;
        if (c == U'/')
            while (!unit.empty() && unit.back() == U' ') unit.pop_back();
        if (c == U' ' && !unit.empty() && unit.back() == U'/') continue;
        const bool degrees_of_air = unit == U"°" && c == U' ' && i + 1 < text.size() && is_letter(text[i + 1]);
        if (degrees_of_air) continue;
        unit.push_back(c == U'²' ? U'2' : c == U'³' ? U'3' : c);
    }
    return unit;
}

Misreading left_over(std::string_view text, std::string_view rest, Kind wanted)
{
    return {"wrong-type",
            fmt::format("{} is not {}: {} is left over at its end", in_quotes(text), name_of(wanted), in_quotes(rest)),
            {}};
}

/// The misreading for what stands behind a number and is not a unit of the kind that is wanted.
Misreading refuse_unit(std::string_view text, const Amount& amount, const std::string& unit, Kind wanted)
{
    const bool like_a_unit = is_letter(static_cast<unsigned char>(unit.front())) || find_unit(unit).unit != nullptr;
    if (!like_a_unit) return left_over(text, unit, wanted);
    const std::size_t space = unit.find(' ');
    const bool unit_first = space != std::string::npos && find_unit(unit.substr(0, space)).unit != nullptr;
    if (unit_first) return left_over(text, unit.substr(space + 1), wanted);
    return wrong_unit(text, amount.text, amount.value, unit, wanted);
}

bool may_be_bare(Kind kind) { return kind == Kind::percent || kind == Kind::angle || kind == Kind::plain_number; }

/// The value in SI, °C, percent or degrees.
Outcome<double> read_measure(std::string_view text, Kind wanted)
{
    if (auto refusal = refuse_at_sight(text, name_of(wanted), examples_of(wanted))) return *refusal;
    MeasureCursor at(text);
    const Outcome<Amount> amount = read_amount(at);
    if (!amount) return amount.why();
    at.skip_spaces();
    const std::string unit = to_utf8(plain_unit(at.rest()));
    if (unit.empty() && may_be_bare(wanted)) return amount->value;
    if (unit.empty()) return no_unit(amount->text, amount->fraction, wanted);
    const UnitFound found = find_unit(unit);
    if (found.unit == nullptr || found.unclear || found.unit->kind != wanted) return refuse_unit(text, *amount, unit, wanted);
    const double value = (amount->value - found.unit->offset) * found.unit->factor;
    if (!std::isfinite(value)) return Misreading{"out-of-range", fmt::format("{} is too large", in_quotes(text)), {}};
    return value;
}

template <class Result, class Make>
Outcome<Result> read_as(std::string_view text, Kind kind, Make make)
{
    const Outcome<double> value = read_measure(text, kind);
    if (!value) return value.why();
    return make(*value);
}

} // namespace

Outcome<Force> read_force(std::string_view text) { return read_as<Force>(text, Kind::force, newtons); }

Outcome<LineLoad> read_line_load(std::string_view text) { return read_as<LineLoad>(text, Kind::line_load, newtons_per_metre); }

Outcome<Mass> read_mass(std::string_view text) { return read_as<Mass>(text, Kind::mass, kilograms); }

Outcome<Density> read_density(std::string_view text) { return read_as<Density>(text, Kind::density, kilograms_per_cubic_metre); }

Outcome<Stress> read_stress(std::string_view text) { return read_as<Stress>(text, Kind::stress, pascals); }

Outcome<Temperature> read_temperature(std::string_view text)
{
    return read_as<Temperature>(text, Kind::temperature, [](double celsius) { return Temperature::celsius(celsius); });
}

Outcome<double> read_percent(std::string_view text) { return read_measure(text, Kind::percent); }

Outcome<Angle> read_angle(std::string_view text) { return read_as<Angle>(text, Kind::angle, degrees); }

Outcome<double> read_number(std::string_view text) { return read_measure(text, Kind::plain_number); }

} // namespace jointwright
