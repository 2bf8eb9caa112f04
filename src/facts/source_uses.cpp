#include "facts/source_uses.hpp"

#include "facts/table_reader.hpp"

#include <algorithm>
#include <map>

namespace jointwright {

namespace {

constexpr const char* kSourceTable = "sources.toml";

/// Files of data/ that hold facts; designs and starters hold none.
bool holds_facts(std::string_view path)
{
    if (!path.ends_with(".toml") || path == kSourceTable) return false;
    return !path.starts_with("designs/") && !path.starts_with("patterns/");
}

/// Walks one file and hands every entry that cites a source to `take(source key, use)`.
template <class Take>
class Walk {
public:
    Walk(std::string file, const TableReader& reader, Take take) : file_(std::move(file)), reader_(reader), take_(std::move(take))
    {
    }

    void into(const toml::node& node, const std::string& key)
    {
        if (const toml::table* table = node.as_table()) return into_table(*table, key);
        const toml::array* list = node.as_array();
        if (!list) return;
        for (std::size_t i = 0; i < list->size(); ++i) into((*list)[i], joined(key, name_in_list((*list)[i], i)));
    }

private:
    static std::string joined(const std::string& key, const std::string& next) { return key.empty() ? next : key + "." + next; }

    static std::string name_in_list(const toml::node& node, std::size_t index)
    {
        const toml::table* table = node.as_table();
        return table && table->contains("name") ? (*table)["name"].value_or(std::string{}) : std::to_string(index + 1);
    }

    void into_table(const toml::table& table, const std::string& key)
    {
        if (table.contains("source"))
            take_(reader_.text(table, "source"), SourceUse{file_, key, reader_.citation(table, key).provenance});
        for (const auto& [name, node] : table) into(node, joined(key, std::string(name.str())));
    }

    std::string file_;
    const TableReader& reader_;
    Take take_;
};

std::map<std::string, SourceEntry, std::less<>> read_sources(const Facts& facts)
{
    std::map<std::string, SourceEntry, std::less<>> sources;
    const std::string* text = facts.text(kSourceTable);
    if (!text) return sources;
    const TableReader r = reader_of(facts, kSourceTable);
    const toml::table table = parse_table(*text, kSourceTable);
    for (const auto& [key, node] : table) {
        const toml::table* entry = node.as_table();
        const std::string name{key.str()};
        if (!entry) r.broken(name, "every source is a table");
        sources.emplace(name, SourceEntry{name,
                                          r.required_text(*entry, "title"),
                                          r.required_text(*entry, "short"),
                                          r.text(*entry, "note"),
                                          r.text(*entry, "formula"),
                                          {},
                                          {}});
    }
    return sources;
}

} // namespace

void ProvenanceCounts::count(Provenance provenance)
{
    switch (provenance) {
    case Provenance::retrieved: ++retrieved; break;
    case Provenance::memory: ++memory; break;
    case Provenance::computed: ++computed; break;
    case Provenance::estimated: ++estimated; break;
    }
}

std::vector<SourceEntry> source_entries(const Facts& facts)
{
    auto sources = read_sources(facts);
    const auto take = [&](const std::string& key, SourceUse use) {
        SourceEntry& source = sources.find(key)->second; // the citation was read, so the key is there
        source.counts.count(use.provenance);
        source.uses.push_back(std::move(use));
    };
    for (const std::string& path : facts.all_paths()) {
        if (!holds_facts(path)) continue;
        const TableReader r = reader_of(facts, path);
        Walk(path, r, take).into(parse_table(*facts.text(path), path), {});
    }
    std::vector<SourceEntry> all;
    for (auto& [key, source] : sources) all.push_back(std::move(source));
    return all;
}

ProvenanceCounts counts_of_table(const std::vector<SourceEntry>& sources, std::string_view table)
{
    ProvenanceCounts counts;
    const std::string folder = std::string(table) + "/";
    for (const SourceEntry& source : sources)
        for (const SourceUse& use : source.uses)
            if (use.file == table || use.file.starts_with(folder)) counts.count(use.provenance);
    return counts;
}

} // namespace jointwright
