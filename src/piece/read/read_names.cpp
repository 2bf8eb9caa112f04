// Ids, part names and names of the tables.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "piece/model/part_name.hpp"

#include <boost/algorithm/string/case_conv.hpp>
#include <boost/algorithm/string/trim.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <charconv>

namespace jointwright {

namespace {

/// Characters that take no room and change nothing: two names that differ by one of them look alike. Joiners, which scripts and emoji need, stay, soft
/// hyphens too, and marks that turn the direction of writing, which reports show.
bool is_unseen(char32_t c)
{
    constexpr std::u32string_view single = U"\u180E\u200B\uFEFF";
    return single.find(c) != std::u32string_view::npos || (c >= 0x2060 && c <= 0x2064) || (c >= 0xE0000 && c <= 0xE007F);
}

std::string without_unseen(const std::string& id)
{
    std::u32string kept;
    for (const char32_t c : characters_of(id))
        if (!is_unseen(c)) kept += c;
    return to_utf8(kept);
}

std::string without_marks(std::string id)
{
    for (char& c : id)
        if (c == '#' || c == '/' || static_cast<unsigned char>(c) < 0x20) c = ' ';
    return id;
}

/// "urethane varnish, 2 coats" -> name and number; no number when there is none.
struct FinishText {
    std::string name;
    std::optional<int> coats;
    bool readable = true; ///< false: the words after the comma are no number of coats
};

FinishText finish_text(const std::string& text)
{
    const std::size_t comma = text.rfind(',');
    if (comma == std::string::npos) return {text, std::nullopt, true};
    const std::string tail = text.substr(comma + 1);
    const std::size_t first = tail.find_first_not_of(' ');
    int coats = 0;
    if (first == std::string::npos) return {text, std::nullopt, false};
    const auto [stop, error] = std::from_chars(tail.data() + first, tail.data() + tail.size(), coats);
    std::string word = boost::algorithm::to_lower_copy(std::string(stop, tail.data() + tail.size()));
    std::erase(word, ' ');
    const bool good = error == std::errc{} && (word == "coat" || word == "coats");
    return {text.substr(0, comma), good ? std::optional(coats) : std::nullopt, good};
}

std::string in_coats(const std::string& name, int coats)
{
    return fmt::format("{}, {} {}", name, coats, coats == 1 ? "coat" : "coats");
}

std::string coats_words(const FinishRecord& record)
{
    std::string words;
    for (const FinishCoats& row : record.coats) words += (words.empty() ? "" : ", ") + fmt::format("{}", row.coats);
    return words;
}

bool has_coats(const FinishRecord& record, int coats)
{
    return std::any_of(record.coats.begin(), record.coats.end(), [&](const FinishCoats& row) { return row.coats == coats; });
}

int nearest_coats(const FinishRecord& record, int coats)
{
    int best = record.coats.empty() ? 1 : record.coats.front().coats;
    for (const FinishCoats& row : record.coats)
        if (std::abs(row.coats - coats) < std::abs(best - coats)) best = row.coats;
    return best;
}

} // namespace

std::vector<const DesignValue*> tables_of(Reading& reading, const DesignValue& list, std::string_view name)
{
    if (list.kind == DesignValue::Kind::table) {
        reading.fault(list.spot, "wrong-type",
                      fmt::format("[{}] is one table, but a design may have several, each under [[{}]]", name, name),
                      fmt::format("[[{}]]", name));
        return {};
    }
    if (!is_kind(reading, list, name, DesignValue::Kind::list)) return {};
    std::vector<const DesignValue*> tables;
    for (const DesignValue& item : list.items)
        if (is_kind(reading, item, fmt::format("an entry of {}", name), DesignValue::Kind::table)) tables.push_back(&item);
    return tables;
}

std::optional<std::string> as_id(Reading& reading, const DesignValue& value, std::string_view what)
{
    const auto text = as_text(reading, value, what);
    if (!text) return std::nullopt;
    const bool blank = text->find_first_not_of(" \t") == std::string::npos;
    const std::string seen = without_unseen(*text), clean = without_marks(seen);
    if (!blank && clean == *text) return text;
    const std::string why = blank           ? "it must not be empty"
                            : seen != *text ? "it holds characters that nobody sees, so that two names may look alike"
                                            : "it must not hold # or / or control characters";
    reading.fault(value.spot, "bad-id", fmt::format("{} is {}; {}", what, in_quotes(*text), why),
                  blank ? std::string{} : reading.fixed(value, toml_text(boost::algorithm::trim_copy(clean))),
                  "\"slat #3\" names a copy of the part \"slat\", and reports write \"slat / rail\"");
    return std::nullopt;
}

std::optional<std::string> as_glue(Reading& reading, const DesignValue& value)
{
    const NotAboutShapes scope(reading);
    const auto text = as_text(reading, value, "glue");
    if (!text) return std::nullopt;
    if (const GlueRecord* glue = reading.facts.find_glue(*text)) return glue->name;
    reading.unknown_name(value, "unknown-name", fmt::format("no glue is named {}", in_quotes(*text)),
                         reading.facts.suggest_glues(*text), "`jointwright glues` lists them all");
    return std::nullopt;
}

bool read_finish(Reading& reading, const DesignValue& value, std::optional<Finish>& finish)
{
    const NotAboutShapes scope(reading);
    finish.reset();
    const auto text = as_text(reading, value, "finish");
    if (!text) return false;
    const std::string small = boost::algorithm::to_lower_copy(*text);
    if (small == "bare" || small == "bare wood") return true;
    FinishText parts = finish_text(*text);
    const FinishRecord* record = reading.facts.find_finish(*text);
    if (record != nullptr) parts = {*text, std::nullopt, true};
    if (record == nullptr) record = reading.facts.find_finish(parts.name);
    if (record == nullptr) {
        const auto nearest = reading.facts.suggest_finishes(parts.name);
        std::vector<std::string> with_coats;
        for (const std::string& name : nearest) with_coats.push_back(parts.coats ? in_coats(name, *parts.coats) : name);
        reading.unknown_name(value, "unknown-name", fmt::format("no finish is named {}", in_quotes(parts.name)), with_coats,
                             "`jointwright finishes` lists them all");
        return false;
    }
    const int coats = parts.coats.value_or(1);
    if (parts.readable && has_coats(*record, coats)) {
        finish = Finish{record->name, coats};
        return true;
    }
    const int best = nearest_coats(*record, coats);
    const std::string says = parts.readable
                                 ? fmt::format("{} is not tabled for {} {}", record->name, coats, coats == 1 ? "coat" : "coats")
                                 : fmt::format("the coats of {} cannot be read", in_quotes(*text));
    reading.fault(value.spot, "out-of-range", says, reading.fixed(value, toml_text(in_coats(record->name, best))),
                  fmt::format("coats in the table: {}", coats_words(*record)));
    return false;
}

std::optional<MoistureContent> as_moisture(Reading& reading, const DesignValue& value, std::string_view what)
{
    const auto percent = as_number(
        reading, value, what,
        {0, 30, false, "%",
         "at about 30 % wood is full of water and moves no more; a figure above that is often the humidity of the air"});
    if (!percent) return std::nullopt;
    return MoistureContent::percent(*percent);
}

std::optional<std::string> as_part_name(Reading& reading, const DesignValue& value, std::string_view what, const PartIds& ids)
{
    const auto text = as_text(reading, value, what);
    if (!text) return std::nullopt;
    const PartName name = part_name(*text);
    const auto found = ids.find(name.id);
    if (found == ids.end()) {
        std::vector<std::string> known;
        for (const auto& [id, copies] : ids) known.push_back(id);
        auto nearest = nearest_spellings(name.id, known, 3);
        if (name.number && *name.number > 0)
            for (std::string& id : nearest) id = fmt::format("{} #{}", id, *name.number);
        reading.unknown_name(value, "unknown-part", fmt::format("no part is named {}", in_quotes(name.id)), nearest,
                             "parts are named by the id of their [[part]]");
        return std::nullopt;
    }
    if (!name.number) return name.id;
    const std::optional<int> copies = found->second;
    if (*name.number == 0 || (copies && *name.number > *copies)) {
        const std::string count =
            copies ? fmt::format("; {} has {} {}", in_quotes(name.id), *copies, *copies == 1 ? "copy" : "copies") : std::string{};
        const std::string fix =
            copies ? reading.fixed(value, toml_text(fmt::format("{} #{}", name.id, *name.number == 0 ? 1 : *copies)))
                   : std::string{};
        reading.fault(value.spot, "unknown-part", fmt::format("no copy is named {}{}", in_quotes(*text), count), fix,
                      "copies are numbered from 1 in the order in which they are made");
        return std::nullopt;
    }
    return name.text();
}

std::optional<std::vector<std::string>> as_part_names(Reading& reading, const DesignValue& value, std::string_view what,
                                                      const PartIds& ids)
{
    const std::string example = value.kind == DesignValue::Kind::text ? "[" + toml_text(value.text) + "]" : std::string{};
    if (!is_kind(reading, value, what, DesignValue::Kind::list, example)) return std::nullopt;
    std::vector<std::string> names;
    bool good = true;
    for (const DesignValue& item : value.items) {
        auto name = as_part_name(reading, item, what, ids);
        good = good && name.has_value();
        if (name && std::find(names.begin(), names.end(), *name) == names.end()) names.push_back(std::move(*name));
    }
    if (!good) return std::nullopt;
    return names;
}

} // namespace jointwright
