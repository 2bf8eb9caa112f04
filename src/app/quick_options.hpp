#pragma once
// What the quick verbs have in common: their options and how an answer becomes text or JSON.

#include "app/option_set.hpp"
#include "app/values.hpp"
#include "report/text/quick.hpp"

#include <optional>
#include <string>

namespace jointwright {

struct QuickOptions {
    std::optional<std::string> data, format, units;
    bool working = false;
};

/// Adds --format, --working and --data, and --units for answers with lengths in them.
void add_quick_options(OptionSet& options, QuickOptions& into, bool lengths);

/// Unit of the answer for people: as asked, else that of the first length as it was typed.
LengthUnit answer_units(const QuickOptions& options, const std::optional<std::string>& typed);

/// Looks at --format and --units for what they may not be.
void validate(const QuickOptions& options, ValueReader& reader);

/// The answer as text or JSON; the sources of the working, each once, are added to its own.
Answer written(QuickAnswer answer, const QuickOptions& options);

} // namespace jointwright
