// expand: the design with every pattern, repeat, copy and mirror written out.

#include "app/design.hpp"
#include "app/option_set.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "piece/read/read_design.hpp"

namespace jointwright {

Answer expand(const Arguments& arguments)
{
    std::optional<std::string> path, data;
    OptionSet options(
        "expand", "DESIGN.toml [--data DIR]",
        "The design with every pattern, repeat, copy and mirror written out as single copies, itself a valid design.");
    options.file(path, "DESIGN.toml", "the design; - reads standard input");
    add_data_option(options, data);
    if (auto instead = options.take(arguments)) return *instead;
    if (!path) return wrong_command_line({missing_design("expand")});

    return with_facts(data, [&](const Facts& facts) {
        auto opened = open_design(*path, facts);
        if (Answer* wrong = std::get_if<Answer>(&opened)) return std::move(*wrong);
        const Design& design = std::get<Design>(opened);
        return results(expand_design(design.piece, design.text, facts));
    });
}

} // namespace jointwright
