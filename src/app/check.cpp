// check: the whole way from a design to a verdict.

#include "review/review.hpp"

#include "app/design.hpp"
#include "app/files.hpp"
#include "app/option_set.hpp"
#include "app/streams.hpp"
#include "app/tables.hpp"
#include "app/values.hpp"
#include "app/verbs.hpp"
#include "report/json/json.hpp"
#include "report/page/html.hpp"
#include "report/text/markdown.hpp"
#include "report/text/text.hpp"
#include "report/words/compose.hpp"

#include <ctime>

namespace jointwright {

namespace {

struct CheckOptionTexts {
    std::optional<std::string> design, format, target, units, data, colour, remedies;
    bool working = false, strict = false, date = false;
};

void add_options(OptionSet& options, CheckOptionTexts& given)
{
    options.file(given.design, "DESIGN.toml", "the design; - reads standard input");
    options.value("--format", given.format, "FORMAT", "text, json, html or markdown; text");
    options.value("-o", given.target, "FILE", "write the report to this file, whole or not at all");
    options.value("--units", given.units, "in|mm", "lengths of the report; those of the design");
    options.flag("--working", given.working, "show the sums of every finding with their sources");
    options.value("--remedies", given.remedies, "tried|none",
                  "tried: changes that mend what fails are looked for and checked again; none: not, which is quicker; tried");
    options.flag("--strict", given.strict, "exit status 1 for a warn or cannot-tell too");
    options.flag("--date", given.date, "put today's date on the report");
    options.value("--color", given.colour, "WHEN", "auto, always or never; auto: only on a terminal");
    add_data_option(options, given.data);
}

Faults faults_of(const CheckOptionTexts& given)
{
    ValueReader reader;
    if (!given.design) reader.add(missing_design("check"));
    if (given.format) reader.one_of("--format", *given.format, {"text", "json", "html", "markdown"});
    if (given.units) reader.one_of("--units", *given.units, {"in", "mm"});
    if (given.remedies) reader.one_of("--remedies", *given.remedies, {"tried", "none"});
    if (given.colour) reader.one_of("--color", *given.colour, {"auto", "always", "never"});
    if (given.design && given.target && same_file(*given.design, *given.target))
        reader.add(fault_of("file", "-o: the report would overwrite the design", "-o report.txt"));
    else if (given.target)
        if (auto fault = design_at_risk("-o", *given.target, "report.txt")) reader.add(*std::move(fault));
    return reader.faults();
}

/// Today where the maker is, "2024-03-09". The program looks at the clock nowhere else.
std::string today()
{
    const std::time_t now = std::time(nullptr);
    std::tm local = {};
    char text[sizeof "9999-12-31"] = {};
    if (localtime_r(&now, &local) == nullptr || std::strftime(text, sizeof text, "%Y-%m-%d", &local) == 0) return {};
    return text;
}

TextOptions text_options(const CheckOptionTexts& given)
{
    TextOptions options;
    options.working = given.working;
    const bool automatic = !given.colour || given.colour == "auto";
    options.colour = automatic ? !given.target && terminal_takes_colour() : given.colour == "always";
    return options;
}

std::string write_report(const ReportContent& content, const CheckOptionTexts& given)
{
    if (given.format == "json") return write_json(content);
    if (given.format == "html") return write_html(content, given.working);
    if (given.format == "markdown") return write_markdown(content, given.working);
    return write_text(content, text_options(given));
}

ExitStatus status_of(const ReportContent& content, bool strict)
{
    const VerdictCounts counts = count_verdicts(content.findings);
    if (counts.fail > 0) return ExitStatus::failed;
    return strict && counts.warn + counts.cannot_tell > 0 ? ExitStatus::failed : ExitStatus::fine;
}

Answer report_on(const Design& design, const Facts& facts, const CheckOptionTexts& given)
{
    CheckOptions options;
    if (given.units) options.units = length_unit_named(*given.units);
    options.drawn = given.format == "html";
    options.remedies_tried = given.remedies != "none";
    options.text = design.text;
    ReportContent content = check_piece(design.piece, facts, options);
    add_cautions(content, design.piece, facts);
    if (given.date) content.date = today();
    Answer answer = results(write_report(content, given));
    answer.status = status_of(content, given.strict);
    answer.target = given.target;
    return answer;
}

} // namespace

Answer check(const Arguments& arguments)
{
    CheckOptionTexts given;
    OptionSet options(
        "check",
        "DESIGN.toml [--format text|json|html|markdown] [-o FILE] [--units in|mm] [--working] [--remedies tried|none] [--strict] "
        "[--date] [--data DIR] [--color auto|always|never]",
        "Does the mechanics of one piece and says what passes, what to watch and what will fail, with the sums behind it.");
    add_options(options, given);
    if (auto instead = options.take(arguments)) return *instead;
    const Faults faults = faults_of(given);
    if (!faults.empty()) return wrong_command_line(faults);

    return with_facts(given.data, [&](const Facts& facts) {
        auto opened = open_design(*given.design, facts);
        if (Answer* wrong = std::get_if<Answer>(&opened)) return std::move(*wrong);
        return report_on(std::get<Design>(opened), facts, given);
    });
}

} // namespace jointwright
