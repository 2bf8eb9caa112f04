#include "app/values.hpp"

#include "app/words.hpp"
#include "facts/facts.hpp"
#include "measure/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kLongestMetres = 20;
constexpr double kLeastMetres = 1e-5;
// Range of the table behind the moisture equation: 30 to 212 °F.
constexpr Temperature kColdest = Temperature::fahrenheit(30);
constexpr Temperature kHottest = Temperature::fahrenheit(212);
constexpr double kSlack = 0.05; ///< °C: the range's ends as printed, −1.1 and 100, are inside

std::string option_with(const std::string& option, std::string_view value) { return option + " " + as_typed(value); }

constexpr double kLargestForce = 1e6;    ///< N, 100 t
constexpr double kLargestLineLoad = 1e6; ///< N/m
constexpr double kLargestStress = 1e12;  ///< Pa: nothing known is as stiff

bool within(double value, double most) { return std::isfinite(value) && value > 0 && value <= most; }

} // namespace

void ValueReader::missing(const std::string& option, std::string_view example)
{
    add(fault_of("missing-option", option + " is needed", option_with(option, example)));
}

void ValueReader::out_of_range(const std::string& option, const std::string& text, std::string_view wanted, std::string note)
{
    add(fault_of("out-of-range", fmt::format("{}: {} is out of range; {}", option, in_quotes(text), wanted), {},
                 std::move(note)));
}

template <class T>
std::optional<T> ValueReader::taken(const std::string& option, const Outcome<T>& outcome)
{
    if (outcome) return *outcome;
    const Misreading& why = outcome.why();
    add(fault_of(why.id, option + ": " + why.says, why.fix.empty() ? std::string() : option_with(option, why.fix)));
    return std::nullopt;
}

Length ValueReader::length(const std::string& option, const std::optional<std::string>& text, Length most)
{
    if (!text) {
        missing(option, "12 1/2 in");
        return {};
    }
    const auto read = taken(option, read_length(*text));
    return read && is_size(option, *text, *read, most) ? *read : Length{};
}

bool ValueReader::is_size(const std::string& option, const std::string& text, Length length, Length most)
{
    if (in_metres(length) >= kLeastMetres && length <= most) return true;
    const double m = in_metres(most);
    out_of_range(
        option, text,
        fmt::format("a size here is from 0.01 mm to {}", m < 1 ? fmt::format("{:g} mm", m * 1e3) : fmt::format("{:g} m", m)));
    return false;
}

std::vector<Length> ValueReader::sizes(const std::string& option, const std::string& text, std::size_t least, std::size_t most,
                                       std::string_view example)
{
    const auto read = taken(option, read_lengths(text));
    if (!read) return {};
    if (read->size() < least || read->size() > most) {
        const std::string wanted = least == most ? fmt::format("{}", most) : fmt::format("{} or {}", least, most);
        add(fault_of(
            "wrong-type",
            fmt::format("{}: {} is not {} {} with x between them", option, in_quotes(text), wanted, most == 1 ? "size" : "sizes"),
            option_with(option, example)));
        return {};
    }
    for (const Length& one : *read)
        if (!is_size(option, text, one)) return {};
    return *read;
}

Length ValueReader::place(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_length(text));
    if (!read) return {};
    if (std::isfinite(in_metres(*read)) && std::abs(in_metres(*read)) <= kLongestMetres) return *read;
    out_of_range(option, text, "a place is at most 20 m away");
    return {};
}

Length ValueReader::length_or_none(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_length(text));
    if (!read) return {};
    if (std::isfinite(in_metres(*read)) && in_metres(*read) >= 0 && in_metres(*read) <= kLongestMetres) return *read;
    out_of_range(option, text, "it is 0 or more and at most 20 m");
    return {};
}

std::vector<Length> ValueReader::sizes(const std::string& option, const std::optional<std::string>& text, std::size_t count,
                                       std::string_view example, Length most)
{
    std::vector<Length> none(count, Length{});
    if (!text) {
        missing(option, example);
        return none;
    }
    const auto read = taken(option, read_lengths(*text));
    if (!read) return none;
    if (read->size() != count) {
        add(fault_of("wrong-type",
                     fmt::format("{}: {} sizes are wanted with x between them, not {}", option, count, in_quotes(*text)),
                     option_with(option, example)));
        return none;
    }
    for (const Length& size : *read)
        if (!is_size(option, *text, size, most)) return none;
    return *read;
}

std::pair<std::vector<Length>, int> ValueReader::sizes_and_count(const std::string& option,
                                                                 const std::optional<std::string>& text, std::size_t count,
                                                                 std::string_view example, Length most)
{
    if (!text) return {sizes(option, text, count, example, most), 1};
    const std::size_t last = text->find_last_of("xX"), times = text->rfind("×");
    const std::size_t cut = times != std::string::npos && (last == std::string::npos || times > last) ? times : last;
    const std::size_t mark = cut == times && times != std::string::npos ? std::string_view("×").size() : 1;
    const std::optional<std::string> lengths = cut == std::string::npos ? *text : text->substr(0, cut);
    const Outcome<double> number =
        cut == std::string::npos ? Outcome<double>(Misreading{"wrong-type", "", ""}) : read_number(text->substr(cut + mark));
    constexpr double kMostOfThem = 1000;
    if (!number || *number != std::floor(*number) || *number < 1 || *number > kMostOfThem) {
        add(fault_of("wrong-type",
                     fmt::format("{}: {} does not end in a whole number from 1 on, how many there are", option, in_quotes(*text)),
                     option_with(option, example)));
        return {std::vector<Length>(count, Length{}), 1};
    }
    return {sizes(option, lengths, count, example, most), static_cast<int>(*number)};
}

Force ValueReader::force(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_force(text));
    if (!read) return {};
    if (within(read->value(), kLargestForce)) return *read;
    out_of_range(option, text, "a load is above 0 and at most 1000 kN");
    return {};
}

LineLoad ValueReader::line_load(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_line_load(text));
    if (!read) return {};
    if (within(read->value(), kLargestLineLoad)) return *read;
    out_of_range(option, text, "a load is above 0 and at most 1000 kN/m");
    return {};
}

Stress ValueReader::stress(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_stress(text));
    if (!read) return {};
    if (within(read->value(), kLargestStress)) return *read;
    out_of_range(option, text, "a modulus is above 0 and at most 1000 GPa");
    return {};
}

std::pair<Force, Length> ValueReader::patch(const std::string& option, const std::string& text)
{
    const std::size_t colon = text.find(':');
    if (colon == std::string::npos) {
        add(fault_of("wrong-type",
                     fmt::format("{}: {} is not a force and a length with a colon between them", option, in_quotes(text)),
                     option_with(option, "800 N:100 mm")));
        return {};
    }
    const Force load = force(option, text.substr(0, colon));
    return {load, length(option, text.substr(colon + 1))};
}

double ValueReader::percent(const std::string& option, const std::optional<std::string>& text, double most,
                            std::string_view example, std::string_view wanted)
{
    if (!text) {
        missing(option, example);
        return 0;
    }
    const auto read = taken(option, read_percent(*text));
    if (!read) return 0;
    if (*read > 0 && *read < 1) {
        add(fault_of("out-of-range",
                     fmt::format("{}: {} is less than one percent, but percent is wanted", option, in_quotes(*text)),
                     option_with(option, fmt::format("{:g}", *read * 100))));
        return 0;
    }
    if (std::isfinite(*read) && *read >= 0 && *read <= most) return *read;
    out_of_range(option, *text, wanted);
    return 0;
}

MoistureContent ValueReader::moisture(const std::string& option, const std::optional<std::string>& text)
{
    return MoistureContent::percent(
        percent(option, text, kWettest, "8", "a moisture content is from 0 to 300 percent of the oven-dry mass"));
}

RelativeHumidity ValueReader::humidity(const std::string& option, const std::optional<std::string>& text)
{
    return RelativeHumidity::percent(percent(option, text, 100, "50", "a relative humidity is from 0 to 100 percent"));
}

Temperature ValueReader::temperature(const std::string& option, const std::optional<std::string>& text)
{
    const Temperature none = Temperature::celsius(20);
    if (!text) {
        missing(option, "20 C");
        return none;
    }
    const auto read = taken(option, read_temperature(*text));
    if (!read) return none;
    const double celsius = read->celsius();
    if (celsius >= kColdest.celsius() - kSlack && celsius <= kHottest.celsius() + kSlack) return *read;
    out_of_range(option, *text, "the equation holds from -1.1 C (30 F) to 100 C (212 F)",
                 "range of the table behind Wood Handbook eq. 4-5");
    return none;
}

Angle ValueReader::rings(const std::string& option, const std::string& text)
{
    static const std::vector<std::string> kWords = {"flat", "rift", "quarter"};
    static constexpr double kDegrees[] = {0, 45, 90};
    const auto word = std::find(kWords.begin(), kWords.end(), small_letters(text));
    if (word != kWords.end()) return degrees(kDegrees[word - kWords.begin()]);
    const Outcome<Angle> angle = read_angle(text);
    if (!angle) {
        const auto near = nearest_spellings(text, kWords, 1);
        add(fault_of("wrong-type",
                     fmt::format("{}: {} is not flat, rift, quarter or an angle in degrees", option, in_quotes(text)),
                     option_with(option, near.empty() ? "flat" : near.front())));
        return {};
    }
    const double in_deg = in_degrees(*angle);
    if (in_deg >= 0 && in_deg <= 90) return *angle;
    out_of_range(option, text,
                 "the angle between the rings and the wide face is from 0 (flat-sawn) to 90 degrees (quarter-sawn)");
    return {};
}

Angle ValueReader::grain_angle(const std::string& option, const std::string& text)
{
    const auto read = taken(option, read_angle(text));
    if (!read) return {};
    const double in_deg = in_degrees(*read);
    if (in_deg >= 0 && in_deg <= 90) return *read;
    out_of_range(option, text, "the angle between two grains is from 0 to 90 degrees");
    return {};
}

std::string ValueReader::one_of(const std::string& option, const std::string& text, const std::vector<std::string>& words)
{
    if (std::find(words.begin(), words.end(), text) != words.end()) return text;
    const auto near = nearest_spellings(text, words, 1);
    add(fault_of("unknown-name", fmt::format("{}: {} is not one of {}", option, in_quotes(text), fmt::join(words, ", ")),
                 option_with(option, near.empty() ? words.front() : near.front())));
    return words.front();
}

LengthUnit unit_written(std::string_view text)
{
    const std::string plain = small_letters(to_utf8(folded(text)));
    for (const char* mark : {"in", "\"", "'", "ft", "foot", "feet"})
        if (plain.find(mark) != std::string::npos) return LengthUnit::inch;
    return LengthUnit::millimetre;
}

} // namespace jointwright
