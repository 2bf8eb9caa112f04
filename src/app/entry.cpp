#include "app/entry.hpp"

#include "app/words.hpp"
#include "measure/write.hpp"
#include "report/json/json_values.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"
#include "report/words/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

std::string shown_temperature(Temperature temperature)
{
    return fmt::format("{} °C ({} °F)", write_number(temperature.celsius(), 3), write_number(temperature.fahrenheit(), 3));
}

/// A number in the unit that people use for it.
std::string shown(double value, const std::string& unit)
{
    struct Scale {
        const char* unit;
        double least; ///< from this size on
        double factor;
        const char* shown;
    };
    static constexpr Scale kScales[] = {{"Pa", 1e9, 1e-9, "GPa"},   {"Pa", 0, 1e-6, "MPa"},    {"m", 0, 1e3, "mm"},
                                        {"J/m3", 0, 1e-3, "kJ/m3"}, {"kg/m2", 0, 1e3, "g/m2"}, {"s", 7200, 1.0 / 3600, "h"},
                                        {"s", 60, 1.0 / 60, "min"}, {"1/%", 0, 1, "per point"}};
    for (const Scale& scale : kScales)
        if (unit == scale.unit && value >= scale.least) return write_number(value * scale.factor, 5) + " " + scale.shown;
    if (unit == "1") return write_number(value, 5);
    if (unit == "%") return write_number(value, 3) + " %";
    if (unit == "K") return shown_temperature(Temperature::celsius(value - kKelvinAtZeroCelsius));
    return write_number(value, 5) + " " + unit;
}

std::string source_of(const Citation& cite) { return cite.where.empty() ? cite.source : cite.source + ", " + cite.where; }

/// With the provenance in words, also where it is the usual one, and the note.
std::string footnote_of(const Citation& cite)
{
    const bool memory = cite.provenance == Provenance::memory;
    const std::string text = fmt::format("{} ({})", source_of(cite), memory ? "from memory" : word_of(cite.provenance));
    return cite.note.empty() ? text : text + "; " + cite.note;
}

/// Sources in the order in which they are first named.
class SourceList {
public:
    std::size_t number_of(const Citation& cite)
    {
        const std::string text = footnote_of(cite);
        const auto found = std::find(texts_.begin(), texts_.end(), text);
        if (found != texts_.end()) return static_cast<std::size_t>(found - texts_.begin()) + 1;
        texts_.push_back(text);
        return texts_.size();
    }
    std::string write() const
    {
        if (texts_.empty()) return {};
        std::string out = "\nsources\n";
        for (std::size_t i = 0; i < texts_.size(); ++i) out += wrapped_after(fmt::format("  [{}] ", i + 1), texts_[i]);
        return out;
    }

private:
    std::vector<std::string> texts_;
};

std::string value_line(const EntryValue& value, std::size_t source)
{
    constexpr int kNameWidth = 46, kValueWidth = 20;
    const auto padded = [](std::string text, int width) {
        text.append(static_cast<std::size_t>(std::max(1, width - columns_of(text))), ' ');
        return text;
    };
    return padded("  " + safe_text(value.words), kNameWidth) + padded(shown(value.value, value.unit), kValueWidth) +
           fmt::format("[{}]\n", source);
}

void take_citation(OrderedJson& json, const Citation& cite)
{
    json["source"] = source_of(cite);
    json["provenance"] = std::string(word_of(cite.provenance));
}

OrderedJson value_json(const EntryValue& value)
{
    OrderedJson json = {{"name", value.name},
                        {"value", json_number(value.value)},
                        {"unit", value.unit},
                        {"moisture_pct", json_number(value.moisture_pct)}};
    if (!value.state.empty()) json["state"] = value.state;
    take_citation(json, value.cite);
    if (!value.cite.note.empty()) json["note"] = value.cite.note;
    return json;
}

} // namespace

std::string write_entry_text(const Entry& entry)
{
    std::string out = wrapped_after({}, entry.botanical.empty() ? entry.name : entry.name + " (" + entry.botanical + ")");
    if (!entry.aliases.empty()) out += wrapped_after("also: ", fmt::format("{}", fmt::join(entry.aliases, ", ")));

    SourceList sources;
    for (const EntryGroup& group : entry.groups) {
        if (group.values.empty()) continue;
        out += "\n" + wrapped_after({}, group.heading);
        for (const EntryValue& value : group.values) out += value_line(value, sources.number_of(value.cite));
    }
    if (!entry.texts.empty()) out += "\n";
    for (const EntryText& text : entry.texts) {
        const std::string says = text.cite ? fmt::format("{} [{}]", text.says, sources.number_of(*text.cite)) : text.says;
        out += wrapped(text.heading + ": " + says, kLineWidth, {}, 4);
    }
    if (!entry.missing.empty())
        out += "\n" + wrapped(fmt::format("no table we hold gives: {}", fmt::join(entry.missing, ", ")), kLineWidth, {}, 4);
    return out + sources.write();
}

std::string write_entry_json(const Entry& entry)
{
    OrderedJson json = {{"name", entry.name}};
    if (!entry.botanical.empty()) json["botanical"] = entry.botanical;
    json["aliases"] = entry.aliases;
    std::vector<std::string> sources;
    const auto take_source = [&](const Citation& cite) {
        if (std::find(sources.begin(), sources.end(), source_of(cite)) == sources.end()) sources.push_back(source_of(cite));
    };

    json["values"] = OrderedJson::array();
    for (const EntryGroup& group : entry.groups)
        for (const EntryValue& value : group.values) {
            json["values"].push_back(value_json(value));
            take_source(value.cite);
        }
    json["texts"] = OrderedJson::array();
    for (const EntryText& text : entry.texts) {
        OrderedJson item = {{"name", text.name}, {"says", text.says}};
        if (text.cite) {
            take_citation(item, *text.cite);
            take_source(*text.cite);
        }
        json["texts"].push_back(std::move(item));
    }
    json["missing"] = entry.missing;
    json["working"] = OrderedJson::array();
    json["sources"] = sources;
    json["assumed"] = OrderedJson::array();
    return json_bytes(json);
}

} // namespace jointwright
