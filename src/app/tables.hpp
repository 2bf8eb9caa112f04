#pragma once
// The tables a verb works with, and the words for a name that is not in them.

#include "app/answer.hpp"
#include "app/option_set.hpp"
#include "app/values.hpp"
#include "facts/facts.hpp"

#include <functional>
#include <optional>
#include <string>

namespace jointwright {

/// Runs with the tables inside the program, or with those of a folder (--data).
/// A folder that cannot be read or is broken: status 2 and its name; broken tables inside the program: status 3.
Answer with_facts(const std::optional<std::string>& folder, const std::function<Answer(const Facts&)>& run);

/// Adds --data.
void add_data_option(OptionSet& options, std::optional<std::string>& data);

/// The kinds of names that the tables list.
struct NameKind {
    const char* verb;   ///< that lists them: "species"
    const char* word;   ///< one of them: "wood"
    const char* plural; ///< "woods"
    const char* id;     ///< of the fault: "unknown-wood"
    std::vector<Listing> (*list)(const Facts&);
    std::vector<std::string> (*suggest)(const Facts&, std::string_view name);
};

const NameKind& wood_names();
const NameKind& room_names();
const NameKind& glue_names();
const NameKind& finish_names();
const NameKind& check_names();
const NameKind& starter_names(); ///< of `new`

/// A name that is not there: `no wood is named "whit oak" [unknown-wood]`, the nearest one behind `before` as the fix.
/// @param before  what stands before the name on the command line, "--species" or "jointwright species"
Fault unknown_name(const Facts& facts, const NameKind& kind, const std::string& typed, const std::string& before);

/// The wood that an option names, or nullptr with a fault in the reader.
const WoodRecord* wood_for(const Facts& facts, const std::string& option, const std::optional<std::string>& name,
                           ValueReader& reader);
/// The glue that an option names, or nullptr with a fault in the reader.
const GlueRecord* glue_for(const Facts& facts, const std::string& option, const std::string& name, ValueReader& reader);

} // namespace jointwright
