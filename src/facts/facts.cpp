#include "facts/facts.hpp"

#include "facts/names.hpp"
#include "facts/read_other_tables.hpp"
#include "facts/read_wood_record.hpp"
#include "facts/table_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cstdint>
#include <mutex>
#include <unordered_map>

namespace jointwright {

namespace {

constexpr std::string_view kNumberFiles[] = {"strength.toml", "limits.toml", "loads.toml", "joints.toml", "fastenings.toml"};

/// Numbers in percent are shares in these tables: V = 16 % is 0.16.
void share_of_percent(Datum<double>& datum, const toml::table& entry)
{
    const toml::node* unit = entry.get("unit");
    if (unit && unit->value_or(std::string{}) == "%") datum.value /= 100;
}

/// The head of a wood file: everything before its first table.
std::string_view head_of(std::string_view text)
{
    std::size_t at = 0;
    while (at < text.size()) {
        if (text[at] == '[') return text.substr(0, at);
        const std::size_t end = text.find('\n', at);
        if (end == std::string_view::npos) break;
        at = end + 1;
    }
    return text;
}

struct WoodHead {
    std::string path, name, botanical;
    std::vector<std::string> aliases;
};

} // namespace

struct Facts::Tables {
    DataTexts texts;
    std::map<std::string, std::string, std::less<>> sources; ///< key -> short form
    std::map<std::string, Datum<double>, std::less<>> numbers;

    // Filled when first asked for; guarded so that a Facts can be shared.
    std::recursive_mutex guard;
    std::map<std::string, std::unique_ptr<WoodRecord>, std::less<>> woods; ///< by path
    std::unique_ptr<std::vector<WoodHead>> heads;
    std::unordered_map<std::string, std::string> paths; ///< normal form or compact form -> path
    std::unique_ptr<std::vector<RoomRecord>> rooms;
    std::unique_ptr<std::vector<GlueRecord>> glues;
    std::unique_ptr<std::vector<FinishRecord>> finishes;

    static std::string source_of(const void* self, std::string_view key)
    {
        const auto& sources = static_cast<const Tables*>(self)->sources;
        const auto found = sources.find(key);
        return found == sources.end() ? std::string{} : found->second;
    }
    TableReader reader(std::string_view file) const { return {std::string(file), this, &source_of}; }

    const std::string& required(std::string_view path) const
    {
        const auto found = texts.find(path);
        if (found == texts.end()) throw BrokenData(fmt::format("{}: the table is missing", path));
        return found->second;
    }

    void load_sources()
    {
        const toml::table table = parse_table(required("sources.toml"), "sources.toml");
        for (const auto& [key, node] : table) {
            const toml::table* entry = node.as_table();
            if (!entry) throw BrokenData("sources.toml: every source is a table");
            const TableReader r = reader("sources.toml");
            sources.emplace(std::string(std::string_view(key)), r.required_text(*entry, "short"));
        }
    }

    void load_numbers()
    {
        for (const std::string_view file : kNumberFiles) {
            const TableReader r = reader(file);
            const toml::table table = parse_table(required(file), file);
            for (const auto& [key, node] : table) {
                const toml::table* entry = node.as_table();
                const std::string name{std::string_view(key)};
                if (!entry) r.broken(name, "a table is wanted");
                Datum<double> datum = r.number_of(*entry, name);
                share_of_percent(datum, *entry);
                // A limit of nothing, or below it, would make whatever is held against it vanish.
                if (!(datum.value > 0)) r.broken(name, "a number above 0 is wanted");
                if (!numbers.emplace(name, std::move(datum)).second) r.broken(name, "stands twice");
            }
        }
    }

    const WoodRecord* wood_at(const std::string& path)
    {
        auto& slot = woods[path];
        if (!slot) slot = std::make_unique<WoodRecord>(read_wood_record(reader(path), required(path), path));
        return slot.get();
    }

    const std::vector<WoodHead>& wood_heads()
    {
        if (heads) return *heads;
        auto found = std::make_unique<std::vector<WoodHead>>();
        for (auto it = texts.lower_bound("woods/"); it != texts.end() && it->first.starts_with("woods/"); ++it) {
            if (!it->first.ends_with(".toml")) continue;
            const TableReader r = reader(it->first);
            const toml::table head = parse_table(head_of(it->second), it->first);
            found->push_back({it->first, r.required_text(head, "name"), r.text(head, "botanical"), r.texts(head, "aliases")});
        }
        for (const WoodHead& head : *found) add_name(head.path, head.name);
        for (const WoodHead& head : *found)
            for (const std::string& alias : head.aliases) add_name(head.path, alias);
        for (const WoodHead& head : *found)
            if (!head.botanical.empty()) add_name(head.path, head.botanical);
        heads = std::move(found);
        return *heads;
    }

    void add_name(const std::string& path, std::string_view name)
    {
        paths.emplace(normal_form(name), path);
        paths.emplace(compact_form(name), path);
    }

    const WoodRecord* find_wood(std::string_view name)
    {
        const std::string normal = normal_form(name);
        if (normal.empty()) return nullptr;
        const std::string direct = "woods/" + slug_of(name) + ".toml";
        if (texts.contains(direct)) {
            const WoodRecord* record = wood_at(direct);
            if (normal_form(record->name) == normal) return record;
        }
        wood_heads();
        auto found = paths.find(normal);
        if (found == paths.end()) found = paths.find(compact_form(name));
        return found == paths.end() ? nullptr : wood_at(found->second);
    }

    const std::vector<RoomRecord>& all_rooms()
    {
        if (!rooms)
            rooms =
                std::make_unique<std::vector<RoomRecord>>(read_rooms(reader("rooms.toml"), required("rooms.toml"), "rooms.toml"));
        return *rooms;
    }
    const std::vector<GlueRecord>& all_glues()
    {
        if (!glues)
            glues =
                std::make_unique<std::vector<GlueRecord>>(read_glues(reader("glues.toml"), required("glues.toml"), "glues.toml"));
        return *glues;
    }
    const std::vector<FinishRecord>& all_finishes()
    {
        if (!finishes)
            finishes = std::make_unique<std::vector<FinishRecord>>(
                read_finishes(reader("finishes.toml"), required("finishes.toml"), "finishes.toml"));
        return *finishes;
    }
};

namespace {

template <class Record>
const Record* find_in(const std::vector<Record>& records, std::string_view name)
{
    // Most ask with the table's own spelling, checks once for every contact: no name is a forgiving form of another entry's.
    for (const Record& record : records)
        if (record.name == name) return &record;
    const std::string normal = normal_form(name), compact = compact_form(name);
    if (normal.empty()) return nullptr;
    for (const Record& record : records) {
        if (normal_form(record.name) == normal || compact_form(record.name) == compact) return &record;
        if constexpr (requires { record.aliases; })
            for (const std::string& alias : record.aliases)
                if (normal_form(alias) == normal || compact_form(alias) == compact) return &record;
    }
    return nullptr;
}

template <class Record>
std::vector<std::string> suggest_in(const std::vector<Record>& records, std::string_view name, std::size_t most)
{
    std::vector<std::string> names;
    for (const Record& record : records) {
        names.push_back(record.name);
        if constexpr (requires { record.aliases; }) names.insert(names.end(), record.aliases.begin(), record.aliases.end());
    }
    return nearest_spellings(name, names, most);
}

} // namespace

Facts::Facts(DataTexts texts) : tables_(std::make_unique<Tables>())
{
    tables_->texts = std::move(texts);
    tables_->load_sources();
    tables_->load_numbers();
}

Facts::~Facts() = default;
Facts::Facts(Facts&&) noexcept = default;
Facts& Facts::operator=(Facts&&) noexcept = default;

const WoodRecord* Facts::find_wood(std::string_view name) const
{
    const std::lock_guard lock(tables_->guard);
    return tables_->find_wood(name);
}

const RoomRecord* Facts::find_room(std::string_view name) const
{
    const std::lock_guard lock(tables_->guard);
    return find_in(tables_->all_rooms(), name);
}

const GlueRecord* Facts::find_glue(std::string_view name) const
{
    const std::lock_guard lock(tables_->guard);
    return find_in(tables_->all_glues(), name);
}

const FinishRecord* Facts::find_finish(std::string_view name) const
{
    const std::lock_guard lock(tables_->guard);
    return find_in(tables_->all_finishes(), name);
}

std::vector<std::string> Facts::suggest_woods(std::string_view name, std::size_t most) const
{
    const std::lock_guard lock(tables_->guard);
    return suggest_in(tables_->wood_heads(), name, most);
}

std::vector<std::string> Facts::suggest_rooms(std::string_view name, std::size_t most) const
{
    const std::lock_guard lock(tables_->guard);
    return suggest_in(tables_->all_rooms(), name, most);
}

std::vector<std::string> Facts::suggest_glues(std::string_view name, std::size_t most) const
{
    const std::lock_guard lock(tables_->guard);
    return suggest_in(tables_->all_glues(), name, most);
}

std::vector<std::string> Facts::suggest_finishes(std::string_view name, std::size_t most) const
{
    const std::lock_guard lock(tables_->guard);
    return suggest_in(tables_->all_finishes(), name, most);
}

std::vector<Listing> Facts::woods() const
{
    const std::lock_guard lock(tables_->guard);
    std::vector<Listing> list;
    for (const WoodHead& head : tables_->wood_heads()) list.push_back({head.name, head.botanical});
    std::sort(list.begin(), list.end(),
              [](const Listing& a, const Listing& b) { return compact_form(a.name) < compact_form(b.name); });
    return list;
}

std::vector<Listing> Facts::rooms() const
{
    const std::lock_guard lock(tables_->guard);
    std::vector<Listing> list;
    for (const RoomRecord& room : tables_->all_rooms()) list.push_back({room.name, room.says});
    return list;
}

std::vector<Listing> Facts::glues() const
{
    const std::lock_guard lock(tables_->guard);
    std::vector<Listing> list;
    for (const GlueRecord& glue : tables_->all_glues()) list.push_back({glue.name, glue.says});
    return list;
}

std::vector<Listing> Facts::finishes() const
{
    const std::lock_guard lock(tables_->guard);
    std::vector<Listing> list;
    for (const FinishRecord& finish : tables_->all_finishes()) {
        std::string coats;
        for (const FinishCoats& c : finish.coats) coats += (coats.empty() ? "" : ", ") + std::to_string(c.coats);
        list.push_back({finish.name, "coats: " + coats});
    }
    return list;
}

const Datum<double>& Facts::number(std::string_view key) const
{
    const auto found = tables_->numbers.find(key);
    if (found == tables_->numbers.end())
        throw BrokenData(
            fmt::format("limits.toml, loads.toml, strength.toml, joints.toml, fastenings.toml: there is no \"{}\"", key));
    return found->second;
}

const std::string* Facts::find_source(std::string_view key) const
{
    const auto found = tables_->sources.find(key);
    return found == tables_->sources.end() ? nullptr : &found->second;
}

const std::string& Facts::source(std::string_view key) const
{
    const std::string* found = find_source(key);
    if (!found) throw BrokenData(fmt::format("sources.toml: there is no \"{}\"", key));
    return *found;
}

std::string Facts::cite(std::string_view source_key, std::string_view where) const
{
    const std::string& name = source(source_key);
    return where.empty() ? name : fmt::format("{}, {}", name, where);
}

const std::string* Facts::text(std::string_view path) const
{
    const auto found = tables_->texts.find(path);
    return found == tables_->texts.end() ? nullptr : &found->second;
}

std::vector<std::string> Facts::all_paths() const
{
    std::vector<std::string> paths;
    for (const auto& [path, text] : tables_->texts) paths.push_back(path);
    return paths;
}

std::vector<std::string> Facts::paths_under(std::string_view folder) const
{
    std::vector<std::string> paths;
    const std::string prefix = std::string(folder) + "/";
    for (auto it = tables_->texts.lower_bound(prefix); it != tables_->texts.end() && it->first.starts_with(prefix); ++it)
        paths.push_back(it->first);
    return paths;
}

std::string Facts::fingerprint() const
{
    // FNV-1a, 64 bits: tells two versions of the tables apart, no more.
    std::uint64_t hash = 14695981039346656037ull;
    const auto mix = [&](std::string_view text) {
        for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ull;
        hash = (hash ^ 0xffu) * 1099511628211ull;
    };
    for (const auto& [path, text] : tables_->texts) {
        if (path.starts_with("designs/") || path.starts_with("schema/") || path.starts_with("patterns/")) continue;
        mix(path);
        mix(text);
    }
    return fmt::format("{:012x}", hash >> 16);
}

} // namespace jointwright
