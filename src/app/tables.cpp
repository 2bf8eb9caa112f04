#include "app/tables.hpp"

#include "app/files.hpp"
#include "app/words.hpp"
#include "checks/registry.hpp"
#include "facts/meanings.hpp"
#include "facts/places.hpp"
#include "measure/text.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <filesystem>

namespace jointwright {

namespace {

std::vector<Listing> list_checks(const Facts&)
{
    std::vector<Listing> list;
    for (const CheckInfo& check : all_checks()) list.push_back({std::string(check.id), std::string(check.words)});
    return list;
}

/// The rooms of the tables, then the places that a room may be worked out for.
std::vector<Listing> list_rooms(const Facts& facts)
{
    std::vector<Listing> list = facts.rooms();
    for (const PlaceRecord& place : all_places(facts)) list.push_back({place.name, "a place, month by month"});
    return list;
}

std::vector<std::string> suggest_rooms_and_places(const Facts& facts, std::string_view name)
{
    std::vector<std::string> known;
    for (const Listing& entry : list_rooms(facts)) known.push_back(entry.name);
    for (const PlaceRecord& place : all_places(facts)) known.insert(known.end(), place.aliases.begin(), place.aliases.end());
    return nearest_spellings(name, known);
}

/// The starter designs of data/patterns/; what each one is stands in its first line, a comment.
std::vector<Listing> list_starters(const Facts& facts)
{
    std::vector<Listing> list;
    for (const std::string& path : facts.paths_under("patterns")) {
        const std::string& text = *facts.text(path);
        std::string line = text.substr(0, text.find('\n'));
        line.erase(0, line.find_first_not_of("# "));
        list.push_back({std::filesystem::path(path).stem().string(), line});
    }
    return list;
}

std::vector<std::string> nearest_of(const std::vector<Listing>& list, std::string_view name)
{
    std::vector<std::string> names;
    for (const Listing& entry : list) names.push_back(entry.name);
    return nearest_spellings(name, names);
}

} // namespace

Answer with_facts(const std::optional<std::string>& folder, const std::function<Answer(const Facts&)>& run)
{
    DataTexts texts;
    if (folder) {
        auto read = read_data_folder(*folder);
        if (Answer* answer = std::get_if<Answer>(&read)) return std::move(*answer);
        texts = std::move(std::get<DataTexts>(read));
    }
    try {
        const Facts facts(folder ? std::move(texts) : embedded_data());
        return run(facts);
    } catch (const BrokenData& broken) {
        if (folder) return wrong_file(*folder, fault_of("broken-data", broken.what()));
        return {ExitStatus::broken,
                {},
                fmt::format("jointwright: error: the tables inside the program are broken: {}\n", safe_text(broken.what())),
                {}};
    }
}

void add_data_option(OptionSet& options, std::optional<std::string>& data)
{
    options.value("--data", data, "DIR", "use the tables in this folder instead of those inside the program");
}

const NameKind& wood_names()
{
    static const NameKind kind{"species",
                               "wood",
                               "woods",
                               "unknown-wood",
                               [](const Facts& facts) { return facts.woods(); },
                               [](const Facts& facts, std::string_view name) { return facts.suggest_woods(name); }};
    return kind;
}

const NameKind& room_names()
{
    static const NameKind kind{"rooms", "room", "rooms", "unknown-name", list_rooms, suggest_rooms_and_places};
    return kind;
}

const NameKind& glue_names()
{
    static const NameKind kind{"glues",
                               "glue",
                               "glues",
                               "unknown-name",
                               [](const Facts& facts) { return facts.glues(); },
                               [](const Facts& facts, std::string_view name) { return facts.suggest_glues(name); }};
    return kind;
}

const NameKind& finish_names()
{
    static const NameKind kind{"finishes",
                               "finish",
                               "finishes",
                               "unknown-name",
                               [](const Facts& facts) { return facts.finishes(); },
                               [](const Facts& facts, std::string_view name) { return facts.suggest_finishes(name); }};
    return kind;
}

const NameKind& check_names()
{
    static const NameKind kind{
        "checks",    "check",
        "checks",    "unknown-name",
        list_checks, [](const Facts& facts, std::string_view name) { return nearest_of(list_checks(facts), name); }};
    return kind;
}

const NameKind& starter_names()
{
    static const NameKind kind{
        "new", "starter design", "starter designs", "unknown-name", list_starters, [](const Facts& facts, std::string_view name) {
            return nearest_of(list_starters(facts), name);
        }};
    return kind;
}

namespace {

/// One wood of each place: the first to type, the others after a mark that a shell leaves unread.
std::string one_of_each_place(const Facts& facts, const NameMeanings& meanings)
{
    const std::vector<std::string> woods = likeliest_woods(facts, meanings);
    std::string words = as_typed(woods.front());
    for (std::size_t i = 1; i < woods.size(); ++i) words += (i == 1 ? "   # or " : ", ") + as_typed(woods[i]);
    return words;
}

} // namespace

Fault unknown_name(const Facts& facts, const NameKind& kind, const std::string& typed, const std::string& before)
{
    if (const auto meanings = &kind == &wood_names() ? meanings_of(facts, typed) : std::nullopt)
        return fault_of(kind.id, fmt::format("{} means different woods in different places", in_quotes(typed)),
                        before + " " + one_of_each_place(facts, *meanings), meanings->words());
    const std::vector<std::string> near = kind.suggest(facts, typed);
    const std::string lists = fmt::format("\"jointwright {}\" lists the {} {}", kind.verb, kind.list(facts).size(), kind.plural);
    std::string note =
        near.size() < 2 ? lists : fmt::format("also near: {}; {}", fmt::join(near.begin() + 1, near.end(), ", "), lists);
    return fault_of(kind.id, fmt::format("no {} is named {}", kind.word, in_quotes(typed)),
                    near.empty() ? std::string() : before + " " + as_typed(near.front()), std::move(note));
}

const WoodRecord* wood_for(const Facts& facts, const std::string& option, const std::optional<std::string>& name,
                           ValueReader& reader)
{
    if (!name) {
        reader.missing(option, "white oak");
        return nullptr;
    }
    const WoodRecord* wood = facts.find_wood(*name);
    if (wood == nullptr) reader.add(unknown_name(facts, wood_names(), *name, option));
    return wood;
}

const GlueRecord* glue_for(const Facts& facts, const std::string& option, const std::string& name, ValueReader& reader)
{
    const GlueRecord* glue = facts.find_glue(name);
    if (glue == nullptr) reader.add(unknown_name(facts, glue_names(), name, option));
    return glue;
}

} // namespace jointwright
