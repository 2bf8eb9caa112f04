// [limits]: what the maker wants held, beside or instead of the usual limits.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

constexpr std::string_view kSpan = "span";

constexpr double kMostSag = 0.05;  // m: more than this limits nothing
constexpr double kLeastShare = 30; // of the span over the sag

std::string without_spaces(std::string text)
{
    std::erase(text, ' ');
    return text;
}

std::optional<SagLimit> as_sag(Reading& reading, const DesignValue& value)
{
    const std::string text = value.kind == DesignValue::Kind::text ? without_spaces(value.text) : std::string{};
    if (text.rfind(kSpan, 0) != 0) {
        const auto length = as_length(reading, value, "sag", LengthRule::size);
        if (!length) return std::nullopt;
        if (in_metres(*length) > kMostSag) {
            reading.fault(value.spot, "out-of-range",
                          fmt::format("sag is {}; a limit is at most {}", write_length(*length, reading.units),
                                      write_length(metres(kMostSag), reading.units)),
                          value.is_number() ? reading.fixed(value, fmt::format(R"("span/{:g}")", value.number)) : std::string{},
                          "a share of the span is written span/300");
            return std::nullopt;
        }
        return SagLimit{std::nullopt, *length};
    }
    const bool slash = text.size() > kSpan.size() && text[kSpan.size()] == '/';
    const auto number = slash ? read_number(text.substr(kSpan.size() + 1)) : read_number("");
    if (number && *number >= kLeastShare && *number <= 100000) return SagLimit{*number, std::nullopt};
    reading.fault(value.spot, number ? "out-of-range" : "wrong-type",
                  fmt::format("sag is {}; a share of the span is written span/300{}", in_quotes(value.text),
                              number ? fmt::format(", and is span/{:g} at most", kLeastShare) : std::string{}),
                  reading.fixed(value, R"("span/300")"));
    return std::nullopt;
}

/// One who sits: no lighter than a child of five, no heavier than anyone.
std::optional<Mass> as_sitter(Reading& reading, const DesignValue& value)
{
    constexpr double least = 15, most = 500; // kg
    const auto mass = as_mass(reading, value, "sitter");
    if (!mass || (mass->value() >= least && mass->value() <= most)) return mass;
    reading.fault(value.spot, "out-of-range",
                  fmt::format("sitter is {}; one person weighs from 15 to 500 kg", in_quotes(value.text)),
                  reading.fixed(value, R"("100 kg")"));
    return std::nullopt;
}

void read_gaps(DesignTable& table, Limits& limits)
{
    Reading& reading = table.reading();
    const DesignValue* least = table.may("gap_min");
    const DesignValue* most = table.may("gap_max");
    if (least != nullptr) limits.gap_min = as_length(reading, *least, "gap_min", LengthRule::space);
    if (most != nullptr) limits.gap_max = as_length(reading, *most, "gap_max", LengthRule::space);
    if (!limits.gap_min || !limits.gap_max || in_metres(*limits.gap_min) <= in_metres(*limits.gap_max)) return;
    reading.fault(least->spot, "out-of-range",
                  fmt::format("gap_min is {}, more than gap_max, {}", write_length(*limits.gap_min, reading.units),
                              write_length(*limits.gap_max, reading.units)));
}

} // namespace

void read_limits(DesignTable& table, Limits& limits)
{
    Reading& reading = table.reading();
    if (const DesignValue* sag = table.may("sag")) limits.sag = as_sag(reading, *sag);
    read_gaps(table, limits);
    if (const DesignValue* sitter = table.may("sitter")) limits.sitter = as_sitter(reading, *sitter);
    if (const DesignValue* seats = table.may("seats")) limits.seats = as_count(reading, *seats, "seats", 100);
    if (const DesignValue* level = table.may("level")) {
        limits.level_stated = true;
        if (const auto choice = as_choice(reading, *level, "level", "level", {"home", "contract", "severe"}))
            limits.level = static_cast<ProofLevel>(*choice);
    }
    if (const DesignValue* load = table.may("shelf_load")) limits.shelf_load = as_line_load(reading, *load, "shelf_load");
    if (const DesignValue* kept = table.may("relaxation"))
        limits.relaxation = as_number(reading, *kept, "relaxation",
                                      {0, 1, false, {}, "the share of stress kept under slow movement: 1 is all of it"});
    table.finish();
}

} // namespace jointwright
