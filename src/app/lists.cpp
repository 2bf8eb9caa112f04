// species, rooms, glues, finishes, checks, new: the list of names, or one entry.

#include "app/entry.hpp"
#include "app/files.hpp"
#include "app/tables.hpp"
#include "app/values.hpp"
#include "app/verbs.hpp"
#include "app/words.hpp"
#include "piece/patterns/pattern.hpp"
#include "report/json/json_values.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"

#include <algorithm>

namespace jointwright {

namespace {

struct ListOptions {
    std::optional<std::string> name, format, data;
    bool json() const { return format == "json"; }
};

/// One entry of the tables by its name, written out; nothing when there is none.
using EntryWriter = std::optional<std::string> (*)(const Facts&, const std::string& name, bool json);

/// The words that fit into so many columns, cut at a space.
std::string shortened(const std::string& words, int columns)
{
    if (columns_of(words) <= columns) return words;
    std::string cut = words;
    while (columns_of(cut) + 1 > columns) {
        const std::size_t space = cut.rfind(' ');
        if (space == std::string::npos) return cut;
        cut.resize(space);
    }
    return cut + "…";
}

std::string list_text(const std::vector<Listing>& list)
{
    constexpr int kWidestName = 36, kGap = 2;
    int column = 0;
    for (const Listing& entry : list) column = std::max(column, std::min(columns_of(entry.name), kWidestName));
    std::string out;
    for (const Listing& entry : list) {
        const std::string name = safe_text(entry.name), words = safe_text(entry.words);
        // Words that would not fit in their column start nearer to the name; what still does not fit is cut.
        const int room = kLineWidth - columns_of(name);
        const int gap = std::max(kGap, std::min(column + kGap - columns_of(name), room - columns_of(words)));
        out += name + std::string(static_cast<std::size_t>(gap), ' ') + shortened(words, room - gap) + "\n";
    }
    return out;
}

std::string list_json(const std::vector<Listing>& list)
{
    OrderedJson json = OrderedJson::array();
    for (const Listing& entry : list) json.push_back({{"name", entry.name}, {"words", entry.words}});
    return json_bytes(json);
}

Answer list_or_entry(const Facts& facts, const NameKind& kind, const ListOptions& given, EntryWriter entry)
{
    if (!given.name) {
        const std::vector<Listing> list = kind.list(facts);
        return results(given.json() ? list_json(list) : list_text(list));
    }
    if (auto text = entry(facts, *given.name, given.json())) return results(std::move(*text));
    return wrong_command_line({unknown_name(facts, kind, *given.name, std::string("jointwright ") + kind.verb)});
}

Answer list_verb(const NameKind& kind, const Arguments& arguments, const char* placeholder, const char* says, EntryWriter entry,
                 bool formats = true, void (*more_help)(OptionSet&) = nullptr)
{
    ListOptions given;
    const std::string usage = std::string("[") + placeholder + "]" + (formats ? " [--format text|json]" : "") + " [--data DIR]";
    OptionSet options(kind.verb, usage, says);
    options.name(given.name, placeholder, std::string("one ") + kind.word + "; without it the list");
    if (formats) options.value("--format", given.format, "text|json", "form of the answer; text");
    add_data_option(options, given.data);
    if (more_help != nullptr) more_help(options);
    if (auto instead = options.take(arguments)) return *instead;

    ValueReader reader;
    if (given.format) reader.one_of("--format", *given.format, {"text", "json"});
    if (!reader.faults().empty()) return wrong_command_line(reader.faults());
    return with_facts(given.data, [&](const Facts& facts) { return list_or_entry(facts, kind, given, entry); });
}

std::string write_entry(const Entry& entry, bool json) { return json ? write_entry_json(entry) : write_entry_text(entry); }

const Listing* listed(const std::vector<Listing>& list, const std::string& name)
{
    const auto found = std::find_if(list.begin(), list.end(),
                                    [&](const Listing& entry) { return small_letters(entry.name) == small_letters(name); });
    return found == list.end() ? nullptr : &*found;
}

std::optional<std::string> explanation(const Facts& facts, const std::string& id, bool json)
{
    const std::vector<Listing> list = check_names().list(facts);
    const Listing* check = listed(list, id);
    if (check == nullptr) return std::nullopt;
    const std::string* text = facts.text("checks/" + check->name + ".md");
    if (text == nullptr) throw BrokenData("checks/" + check->name + ".md is missing: the check has no explanation");
    if (!json) return wrapped_markdown(valid_utf8(*text));
    return json_bytes(OrderedJson{{"name", check->name}, {"words", check->words}, {"explanation", *text}});
}

std::optional<std::string> starter(const Facts& facts, const std::string& name, bool)
{
    const std::vector<Listing> list = starter_names().list(facts);
    const Listing* found = listed(list, name);
    if (found == nullptr) return std::nullopt;
    return valid_utf8(*facts.text("patterns/" + found->name + ".toml"));
}

} // namespace

Answer species(const Arguments& arguments)
{
    return list_verb(wood_names(), arguments, "NAME",
                     "The woods, or one of them with every number, its source, and what no table gives.",
                     [](const Facts& facts, const std::string& name, bool json) -> std::optional<std::string> {
                         const WoodRecord* wood = facts.find_wood(name);
                         if (wood == nullptr) return std::nullopt;
                         return write_entry(entry_of(facts, *wood), json);
                     });
}

Answer rooms(const Arguments& arguments)
{
    return list_verb(room_names(), arguments, "NAME",
                     "The rooms a piece may live in and the places whose air is known, or one of them with its figures.",
                     [](const Facts& facts, const std::string& name, bool json) -> std::optional<std::string> {
                         const RoomRecord* room = facts.find_room(name);
                         if (room != nullptr) return write_entry(entry_of(facts, *room), json);
                         const auto place = find_place(facts, name);
                         if (!place) return std::nullopt;
                         return write_entry(entry_of(facts, *place), json);
                     });
}

Answer glues(const Arguments& arguments)
{
    return list_verb(glue_names(), arguments, "NAME",
                     "The glues, or one of them with its strength, where it serves, and its hazards.",
                     [](const Facts& facts, const std::string& name, bool json) -> std::optional<std::string> {
                         const GlueRecord* glue = facts.find_glue(name);
                         if (glue == nullptr) return std::nullopt;
                         return write_entry(entry_of(*glue), json);
                     });
}

Answer finishes(const Arguments& arguments)
{
    return list_verb(finish_names(), arguments, "NAME", "The finishes, or one of them with how much moisture it keeps out.",
                     [](const Facts& facts, const std::string& name, bool json) -> std::optional<std::string> {
                         const FinishRecord* finish = facts.find_finish(name);
                         if (finish == nullptr) return std::nullopt;
                         return write_entry(entry_of(*finish), json);
                     });
}

Answer checks(const Arguments& arguments)
{
    return list_verb(check_names(), arguments, "ID",
                     "The checks, or one of them: what it does, why it matters, its limit, what it leaves out, its sources.",
                     explanation);
}

Answer new_design(const Arguments& arguments)
{
    return list_verb(starter_names(), arguments, "PATTERN",
                     "A commented starter design to fill in; without a name the list of them.", starter, false,
                     [](OptionSet& options) {
                         for (const Pattern& pattern : all_patterns())
                             options.further("what [pattern] takes in place of parts and joints, in inches",
                                             std::string(pattern.name), keys_of(pattern, LengthUnit::inch));
                     });
}

} // namespace jointwright
