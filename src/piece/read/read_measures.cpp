// Lengths, numbers and measures with units out of a design.

#include "piece/read/read_values.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <cmath>

namespace jointwright {

namespace {

void misread(Reading& reading, const DesignValue& value, std::string_view what, const Misreading& why)
{
    const std::string fix = why.fix.empty() ? std::string{} : reading.fixed(value, toml_text(why.fix));
    reading.fault(value.spot, why.id, fmt::format("{}: {}", what, why.says), fix);
}

void not_finite(Reading& reading, const DesignValue& value, std::string_view what)
{
    reading.fault(value.spot, "out-of-range",
                  fmt::format("{} is {}, which is no finite number", what, reading.source.at(value.spot)));
}

/// What to write in place of a negative value: the same without the sign.
std::string without_sign(Reading& reading, const DesignValue& value)
{
    std::string written = reading.source.at(value.spot);
    const std::size_t sign = written.find('-');
    const bool leading = sign != std::string::npos && written.find_first_not_of("\"' ") == sign;
    if (!leading) return {};
    written.erase(sign, 1);
    return reading.fixed(value, written);
}

/// A value in a sentence: as the maker wrote it, without quotes of TOML.
std::string as_written(Reading& reading, const DesignValue& value)
{
    if (value.kind == DesignValue::Kind::text) return in_quotes(value.text);
    return reading.source.at(value.spot);
}

bool in_range(Reading& reading, const DesignValue& value, std::string_view what, double metres_long, LengthRule rule)
{
    const std::string most =
        write_length(metres(rule == LengthRule::coordinate ? kFarthestCoordinate : kLargestSize), reading.units);
    if (rule == LengthRule::coordinate) {
        if (std::abs(metres_long) <= kFarthestCoordinate) return true;
        reading.fault(value.spot, "out-of-range",
                      fmt::format("{} is {}; a coordinate lies within {} of the origin", what, as_written(reading, value), most));
        return false;
    }
    if (rule == LengthRule::size && metres_long > 0 && metres_long < kLeastSize) {
        reading.fault(value.spot, "out-of-range",
                      fmt::format("{} is {}; a size is at least {}", what, as_written(reading, value),
                                  write_small_length(metres(kLeastSize), reading.units)),
                      {}, "thinner things are not sawn, and what is nearer than that counts as touching");
        return false;
    }
    const bool too_small = rule == LengthRule::size ? metres_long <= 0 : metres_long < 0;
    if (too_small) {
        const std::string_view least = rule == LengthRule::size ? "it must be above 0" : "it must be 0 or above";
        reading.fault(value.spot, "out-of-range", fmt::format("{} is {}; {}", what, as_written(reading, value), least),
                      without_sign(reading, value));
        return false;
    }
    if (metres_long <= kLargestSize) return true;
    reading.fault(value.spot, "out-of-range",
                  fmt::format("{} is {}; a size is at most {}", what, as_written(reading, value), most), {},
                  "sizes of furniture end at 20 m");
    return false;
}

/// Reads a measure that brings its unit, above 0 and at most `most` (in SI).
template <class Q>
std::optional<Q> as_measure(Reading& reading, const DesignValue& value, std::string_view what,
                            Outcome<Q> (*read)(std::string_view), double most, std::string_view most_text)
{
    if (value.kind != DesignValue::Kind::text && !value.is_number()) {
        is_kind(reading, value, what, DesignValue::Kind::text);
        return std::nullopt;
    }
    if (value.is_number() && !std::isfinite(value.number)) {
        not_finite(reading, value, what);
        return std::nullopt;
    }
    const Outcome<Q> measure = read(value.is_number() ? reading.source.at(value.spot) : value.text);
    if (!measure) {
        misread(reading, value, what, measure.why());
        return std::nullopt;
    }
    const double size = measure->value();
    if (size > 0 && size <= most) return *measure;
    reading.fault(value.spot, "out-of-range",
                  fmt::format("{} is {}; it must be above 0 and at most {}", what, as_written(reading, value), most_text),
                  size < 0 ? without_sign(reading, value) : std::string{});
    return std::nullopt;
}

std::string range_words(const NumberRange& range)
{
    const std::string unit = range.unit.empty() ? std::string{} : fmt::format(" {}", range.unit);
    if (range.lo_itself) return fmt::format("from {} to {}{}", write_number(range.lo), write_number(range.hi), unit);
    return fmt::format("above {} and at most {}{}", write_number(range.lo), write_number(range.hi), unit);
}

/// What to write for a bare number that came as a text, "62 %": the number alone.
std::string number_alone(Reading& reading, const DesignValue& value)
{
    if (value.kind != DesignValue::Kind::text) return {};
    if (const auto percent = read_percent(value.text)) return reading.fixed(value, fmt::format("{}", *percent));
    if (const auto angle = read_angle(value.text)) return reading.fixed(value, write_number(in_degrees(*angle), 6));
    return {};
}

} // namespace

std::optional<Length> as_length(Reading& reading, const DesignValue& value, std::string_view what, LengthRule rule)
{
    if (value.is_number()) {
        if (!std::isfinite(value.number)) {
            not_finite(reading, value, what);
            return std::nullopt;
        }
        const Length length = length_in(value.number, reading.units);
        if (!in_range(reading, value, what, in_metres(length), rule)) return std::nullopt;
        return length;
    }
    if (value.kind != DesignValue::Kind::text) {
        reading.fault(value.spot, "wrong-type",
                      fmt::format("{} is {}, but a length is wanted here", what, words_for(value.kind)));
        return std::nullopt;
    }
    const auto length = read_length(value.text, reading.units);
    if (!length) {
        misread(reading, value, what, length.why());
        return std::nullopt;
    }
    if (!in_range(reading, value, what, in_metres(*length), rule)) return std::nullopt;
    return *length;
}

std::optional<std::vector<double>> as_lengths(Reading& reading, const DesignValue& value, std::string_view what,
                                              std::size_t count, LengthRule rule, std::string_view shape)
{
    const std::string example = reading.lengths_example(shape);
    if (!is_kind(reading, value, what, DesignValue::Kind::list, example)) return std::nullopt;
    if (value.items.size() != count) {
        reading.fault(value.spot, "wrong-type", fmt::format("{} has {} numbers; it takes {}", what, value.items.size(), count),
                      reading.fixed(value, example));
        return std::nullopt;
    }
    std::vector<double> result;
    for (const DesignValue& item : value.items)
        if (const auto length = as_length(reading, item, what, rule)) result.push_back(in_metres(*length));
    if (result.size() != count) return std::nullopt;
    return result;
}

std::optional<double> as_number(Reading& reading, const DesignValue& value, std::string_view what, const NumberRange& range)
{
    if (!value.is_number()) {
        reading.fault(value.spot, "wrong-type",
                      fmt::format("{} is {}, but a bare number is wanted here", what, words_for(value.kind)),
                      number_alone(reading, value));
        return std::nullopt;
    }
    if (!std::isfinite(value.number)) {
        not_finite(reading, value, what);
        return std::nullopt;
    }
    // A share of one where percent is wanted, 0.35 for 35 %: no room and no wood is so dry, and every check of movement would pass.
    if (range.unit == "%" && value.number > 0 && value.number < 1) {
        reading.fault(value.spot, "out-of-range",
                      fmt::format("{} is {}, but percent is wanted here", what, as_written(reading, value)),
                      reading.fixed(value, fmt::format("{:g}", value.number * 100)));
        return std::nullopt;
    }
    const bool high_enough = range.lo_itself ? value.number >= range.lo : value.number > range.lo;
    if (high_enough && value.number <= range.hi) return value.number;
    reading.fault(
        value.spot, "out-of-range", fmt::format("{} is {}; it must be {}", what, as_written(reading, value), range_words(range)),
        value.number < 0 && -value.number <= range.hi ? without_sign(reading, value) : std::string{}, std::string(range.note));
    return std::nullopt;
}

std::optional<int> as_count(Reading& reading, const DesignValue& value, std::string_view what, int most)
{
    const auto number = as_number(reading, value, what, {1, static_cast<double>(most), true});
    if (!number) return std::nullopt;
    if (std::floor(*number) == *number) return static_cast<int>(*number);
    reading.fault(value.spot, "out-of-range",
                  fmt::format("{} is {}; it must be a whole number", what, as_written(reading, value)),
                  reading.fixed(value, fmt::format("{:.0f}", std::round(*number))));
    return std::nullopt;
}

std::optional<Force> as_force(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_measure<Force>(reading, value, what, read_force, 1e6, "1000 kN");
}

std::optional<LineLoad> as_line_load(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_measure<LineLoad>(reading, value, what, read_line_load, 1e6, "1000 kN/m");
}

std::optional<Mass> as_mass(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_measure<Mass>(reading, value, what, read_mass, 1000, "1000 kg");
}

std::optional<Density> as_density(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_measure<Density>(reading, value, what, read_density, 2000, "2000 kg/m3");
}

std::optional<Stress> as_stress(Reading& reading, const DesignValue& value, std::string_view what, Stress most)
{
    return as_measure<Stress>(reading, value, what, read_stress, most.value(), fmt::format("{:.0f} MPa", in_megapascals(most)));
}

namespace {

/// A temperature in a range of °C; `range` tells it, `why` where it comes from.
std::optional<Temperature> as_temperature_within(Reading& reading, const DesignValue& value, std::string_view what, double least,
                                                 double most, std::string_view range, std::string_view why)
{
    if (value.kind != DesignValue::Kind::text && !value.is_number()) {
        is_kind(reading, value, what, DesignValue::Kind::text, R"("20 C")");
        return std::nullopt;
    }
    if (value.is_number() && !std::isfinite(value.number)) {
        not_finite(reading, value, what);
        return std::nullopt;
    }
    const auto temperature = read_temperature(value.is_number() ? reading.source.at(value.spot) : value.text);
    if (!temperature) {
        misread(reading, value, what, temperature.why());
        return std::nullopt;
    }
    if (temperature->celsius() >= least && temperature->celsius() <= most) return *temperature;
    reading.fault(value.spot, "out-of-range", fmt::format("{} is {}; it must be {}", what, as_written(reading, value), range), {},
                  std::string(why));
    return std::nullopt;
}

} // namespace

std::optional<Temperature> as_temperature(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_temperature_within(reading, value, what, -1.1, 100, "from -1.1 C to 100 C (30 F to 212 F)",
                                 "the table of equilibrium moisture ends there (Wood Handbook, table 4-2)");
}

std::optional<Temperature> as_air_temperature(Reading& reading, const DesignValue& value, std::string_view what)
{
    return as_temperature_within(reading, value, what, -60, 60, "from -60 C to 60 C (-76 F to 140 F)",
                                 "weather on earth lies between; wood in frost is taken to settle as in ice-free air at -1 C");
}

} // namespace jointwright
