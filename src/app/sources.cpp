// sources: what the figures rest on, and how many of them were read in their source.

#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/values.hpp"
#include "app/verbs.hpp"
#include "app/words.hpp"
#include "facts/source_uses.hpp"
#include "report/json/json_values.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace jointwright {

namespace {

struct SourceOptions {
    std::optional<std::string> key, format, data;
    bool weak = false;
    bool json() const { return format == "json"; }
};

/// "4500: 2690 retrieved, 1760 from memory, 50 computed"; kinds that do not occur are left out.
std::string count_words(const ProvenanceCounts& counts)
{
    std::string words;
    for (const auto& [count, kind] : {std::pair{counts.retrieved, "retrieved"}, std::pair{counts.memory, "from memory"},
                                      std::pair{counts.computed, "computed"}, std::pair{counts.estimated, "estimated"}})
        if (count > 0) words += fmt::format("{}{} {}", words.empty() ? "" : ", ", count, kind);
    return fmt::format("{}: {}", counts.all(), words);
}

/// What hangs on one source: figures, or a formula of the program.
std::string source_words(const SourceEntry& source)
{
    if (source.counts.all() == 0) return "a formula: " + source.formula;
    return count_words(source.counts) + (source.formula.empty() ? "" : "; a formula: " + source.formula);
}

void take_counts(OrderedJson& json, const ProvenanceCounts& counts)
{
    json["values"] = counts.all();
    json["retrieved"] = counts.retrieved;
    json["memory"] = counts.memory;
    json["computed"] = counts.computed;
    json["estimated"] = counts.estimated;
}

OrderedJson source_json(const SourceEntry& source)
{
    OrderedJson json = {{"key", source.key}, {"title", source.title}, {"short", source.short_form}};
    if (!source.note.empty()) json["note"] = source.note;
    if (!source.formula.empty()) json["formula"] = source.formula;
    take_counts(json, source.counts);
    json["uses"] = OrderedJson::array();
    for (const SourceUse& use : source.uses)
        json["uses"].push_back({{"file", use.file}, {"key", use.key}, {"provenance", std::string(word_of(use.provenance))}});
    return json;
}

/// Folders and files of the tables in which something cites a source.
std::vector<std::string> tables_of(const std::vector<SourceEntry>& sources)
{
    std::set<std::string> tables;
    for (const SourceEntry& source : sources)
        for (const SourceUse& use : source.uses) tables.insert(use.file.substr(0, use.file.find('/')));
    return {tables.begin(), tables.end()};
}

ProvenanceCounts counts_of_all(const std::vector<SourceEntry>& sources)
{
    ProvenanceCounts all;
    for (const SourceEntry& source : sources)
        for (const SourceUse& use : source.uses) all.count(use.provenance);
    return all;
}

std::string list_json(const std::vector<SourceEntry>& sources)
{
    OrderedJson json = OrderedJson::object();
    json["sources"] = OrderedJson::array();
    for (const SourceEntry& source : sources) json["sources"].push_back(source_json(source));
    json["tables"] = OrderedJson::array();
    for (const std::string& table : tables_of(sources)) {
        OrderedJson item = {{"table", table}};
        take_counts(item, counts_of_table(sources, table));
        json["tables"].push_back(std::move(item));
    }
    json["totals"] = OrderedJson::object();
    take_counts(json["totals"], counts_of_all(sources));
    return json_bytes(json);
}

std::string padded(const std::string& name)
{
    constexpr std::size_t kColumn = 30;
    return name + std::string(name.size() < kColumn ? kColumn - name.size() : 2, ' ');
}

std::string list_text(const std::vector<SourceEntry>& sources)
{
    std::string out;
    for (const SourceEntry& source : sources) out += wrapped_after(padded(source.key), source_words(source));
    out += "\nby table\n";
    for (const std::string& table : tables_of(sources))
        out += wrapped_after(padded("  " + table), count_words(counts_of_table(sources, table)));
    const ProvenanceCounts all = counts_of_all(sources);
    out += wrapped_after(padded("  all"), count_words(all));
    return out + "\n" +
           wrapped_after({}, fmt::format("Weak are the {} that no source was read for: from memory or estimated. \"jointwright "
                                         "sources --weak\" lists them, \"jointwright sources KEY\" all that hangs on one source.",
                                         all.weak()));
}

/// The keys of one file that came in one way.
void add_uses(std::string& out, const SourceEntry& source, Provenance provenance, const char* heading)
{
    std::map<std::string, std::vector<std::string>> keys;
    for (const SourceUse& use : source.uses)
        if (use.provenance == provenance) keys[use.file].push_back(use.key.empty() ? "the entry" : use.key);
    if (keys.empty()) return;
    out += fmt::format("\n{}\n", heading);
    for (const auto& [file, list] : keys)
        out += wrapped_after("  " + safe_text(file) + ": ", fmt::format("{}", fmt::join(list, ", ")));
}

std::string entry_text(const SourceEntry& source)
{
    std::string out = wrapped_after({}, source.title) + wrapped_after("in reports: ", source.short_form);
    if (!source.note.empty()) out += wrapped_after({}, source.note);
    out += wrapped_after("hangs on it: ", source_words(source));
    add_uses(out, source, Provenance::memory, "from memory: recalled, not checked against the page");
    add_uses(out, source, Provenance::estimated, "estimated: the judgement of this project");
    add_uses(out, source, Provenance::computed, "computed from other figures");
    add_uses(out, source, Provenance::retrieved, "retrieved: read in it, or in a text that quotes it");
    return out;
}

/// Everything that no source was read for, source by source.
std::string weak_text(const std::vector<SourceEntry>& sources)
{
    std::string out;
    for (const SourceEntry& source : sources) {
        if (source.counts.weak() == 0) continue;
        out += (out.empty() ? "" : "\n") + wrapped_after(source.key + ": ", source.title);
        add_uses(out, source, Provenance::memory, "from memory: recalled, not checked against the page");
        add_uses(out, source, Provenance::estimated, "estimated: the judgement of this project");
    }
    return out;
}

/// Sources as they are but for what was read or worked out.
std::vector<SourceEntry> weak_of(std::vector<SourceEntry> sources)
{
    for (SourceEntry& source : sources)
        std::erase_if(source.uses, [](const SourceUse& use) {
            return use.provenance != Provenance::memory && use.provenance != Provenance::estimated;
        });
    std::erase_if(sources, [](const SourceEntry& source) { return source.uses.empty(); });
    return sources;
}

Fault unknown_source(const std::vector<SourceEntry>& sources, const std::string& typed)
{
    std::vector<std::string> keys;
    for (const SourceEntry& source : sources) keys.push_back(source.key);
    const std::vector<std::string> near = nearest_spellings(typed, keys);
    return fault_of("unknown-name", fmt::format("no source is named {}", in_quotes(typed)),
                    near.empty() ? std::string() : "jointwright sources " + as_typed(near.front()),
                    fmt::format("\"jointwright sources\" lists the {} sources", keys.size()));
}

Answer answer_for(const Facts& facts, const SourceOptions& given)
{
    const std::vector<SourceEntry> sources = source_entries(facts);
    if (given.weak) return results(given.json() ? list_json(weak_of(sources)) : weak_text(sources));
    if (!given.key) return results(given.json() ? list_json(sources) : list_text(sources));
    const auto found = std::find_if(sources.begin(), sources.end(),
                                    [&](const SourceEntry& source) { return source.key == small_letters(*given.key); });
    if (found == sources.end()) return wrong_command_line({unknown_source(sources, *given.key)});
    return results(given.json() ? json_bytes(source_json(*found)) : entry_text(*found));
}

} // namespace

Answer sources(const Arguments& arguments)
{
    SourceOptions given;
    OptionSet options("sources", "[KEY | --weak] [--format text|json] [--data DIR]",
                      "The sources of the tables: how many figures hang on each, and how many of them were read in it. Of one "
                      "source everything that hangs on it, the weak ones first.");
    options.name(given.key, "KEY", "one source; without it the list");
    options.flag("--weak", given.weak, "only what no source was read for: from memory or estimated");
    options.value("--format", given.format, "text|json", "form of the answer; text");
    add_data_option(options, given.data);
    if (auto instead = options.take(arguments)) return *instead;
    ValueReader reader;
    if (given.format) reader.one_of("--format", *given.format, {"text", "json"});
    if (given.key && given.weak)
        reader.add(fault_of("one-too-many", "a source and --weak do not go together",
                            "jointwright sources " + as_typed(*given.key), "of one source the weak figures come first"));
    if (!reader.faults().empty()) return wrong_command_line(reader.faults());
    return with_facts(given.data, [&](const Facts& facts) { return answer_for(facts, given); });
}

} // namespace jointwright
