#include "app/quick_options.hpp"

#include "app/tables.hpp"

#include <algorithm>

namespace jointwright {

namespace {

const std::vector<std::string> kFormats = {"text", "json"};
const std::vector<std::string> kUnits = {"in", "mm"};

} // namespace

void add_quick_options(OptionSet& options, QuickOptions& into, bool lengths)
{
    options.value("--format", into.format, "text|json", "form of the answer; text");
    if (lengths) options.value("--units", into.units, "in|mm", "unit of lengths in text; as typed");
    options.flag("--working", into.working, "show the sums with their sources");
    add_data_option(options, into.data);
}

void validate(const QuickOptions& options, ValueReader& reader)
{
    if (options.format) reader.one_of("--format", *options.format, kFormats);
    if (options.units) reader.one_of("--units", *options.units, kUnits);
}

LengthUnit answer_units(const QuickOptions& options, const std::optional<std::string>& typed)
{
    if (options.units) return *options.units == "in" ? LengthUnit::inch : LengthUnit::millimetre;
    return typed ? unit_written(*typed) : LengthUnit::millimetre;
}

Answer written(QuickAnswer answer, const QuickOptions& options)
{
    for (const WorkingStep& step : answer.working)
        if (!step.source.empty() && std::find(answer.sources.begin(), answer.sources.end(), step.source) == answer.sources.end())
            answer.sources.push_back(step.source);
    if (options.format == "json") return results(write_quick_json(answer));
    TextOptions text;
    text.working = options.working;
    return results(write_quick_text(answer, text));
}

} // namespace jointwright
