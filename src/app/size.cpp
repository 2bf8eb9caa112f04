// size: how thin, how narrow, how long may one part be, and of which woods?

#include "review/search/size_search.hpp"

#include "app/design.hpp"
#include "app/option_set.hpp"
#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/text.hpp"
#include "measure/write.hpp"
#include "piece/model/part_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

const std::vector<std::string> kVaried = {"thickness", "width", "length", "species"};

struct SizeTexts {
    std::optional<std::string> design, part, vary;
};

VariedSize varied_size(const std::string& word)
{
    if (word == "length") return VariedSize::length;
    return word == "width" ? VariedSize::width : VariedSize::thickness;
}

/// The part that --part names, or the answer that there is none such.
std::variant<std::size_t, Answer> part_named_by(const std::string& typed, const Piece& piece)
{
    const PartName name = part_name(typed);
    std::vector<std::string> ids;
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        ids.push_back(piece.parts[p].id);
        if (ids.back() != name.id) continue;
        if (!name.number) return p;
        return wrong_command_line({fault_of(
            "unknown-part", fmt::format("--part: {} names one copy; all copies of a part are varied together", in_quotes(typed)),
            "--part \"" + name.id + "\"")});
    }
    const auto near = nearest_spellings(typed, ids, 1);
    return wrong_command_line({fault_of("unknown-part", fmt::format("--part: no part has the id {}", in_quotes(typed)),
                                        near.empty() ? std::string() : "--part \"" + near.front() + "\"",
                                        fmt::format("the parts are: {}", fmt::join(ids, ", ")))});
}

std::string verdict_sentence(const Finding& finding)
{
    const std::string share = finding.utilisation ? fmt::format(" at {:.3f} of its limit", *finding.utilisation) : std::string();
    const std::string where = finding.where ? fmt::format(" ({})", *finding.where) : std::string();
    return fmt::format("{}, {}{}: {}{}", finding.check, word_of(finding.verdict), share, finding.headline, where);
}

std::vector<std::string> sentences(const std::vector<Finding>& findings)
{
    std::vector<std::string> lines;
    for (const Finding& f : findings) lines.push_back(fmt::format("{}: {}", f.subject, verdict_sentence(f)));
    return lines;
}

std::string check_of(const std::optional<Finding>& finding) { return finding ? finding->check : std::string(); }

void add_text(QuickAnswer& answer, const char* name, std::string text, std::string says)
{
    if (!text.empty()) answer.values.push_back({name, std::move(text), {}, std::move(says), {}});
}

/// Findings that are no answer to the question, each a line of its own.
void name_aside(QuickAnswer& answer, const std::vector<Finding>& aside, const std::vector<Finding>& advice,
                std::string_view varied)
{
    answer.values.push_back({"left_aside", sentences(aside), {}, "left aside", aside.empty() ? "nothing" : "see below"});
    answer.values.push_back(
        {"advice", sentences(advice), {}, "advice against it as drawn", advice.empty() ? "none" : "see below"});
    for (const std::string& line : sentences(aside))
        answer.assumed.push_back(fmt::format("left aside, since no {} cures it: {}", varied, line));
    for (const std::string& line : sentences(advice))
        answer.assumed.push_back(
            fmt::format("advice that holds as drawn too, within its limit; it would count if it got worse: {}", line));
}

/// One side of the border: its size, the check that governs there and its numbers.
void add_side(QuickAnswer& answer, const SizeSide& side, bool passing, LengthUnit units)
{
    const std::string end = passing ? "_passing" : "_failing";
    const std::string size = write_length(side.size, units);
    answer.values.push_back({"size" + end + "_m", in_metres(side.size), "m", passing ? "passes at" : "no longer at", size});
    if (!side.why_not.empty()) {
        answer.values.push_back({"why" + end, side.why_not, {}, "there", {}});
        return;
    }
    if (!side.governs) return;
    const Finding& f = *side.governs;
    answer.values.push_back({"governing" + end, f.check + " of " + f.subject, {}, "there governs", verdict_sentence(f)});
    if (f.utilisation) answer.values.push_back({"utilisation" + end, *f.utilisation, "1", "share of the limit used there", {}});
    answer.working.push_back(
        {fmt::format("{} at {} {}: {}", f.check, passing ? "the passing size," : "the failing size,", size, f.headline),
         "utilisation of the whole check", "", f.utilisation.value_or(0), "1", "the whole check made with that size"});
    for (const WorkingStep& step : f.working) answer.working.push_back(step);
}

std::string question(const std::string& part, const std::string& vary)
{
    if (vary == "species") return fmt::format("Of which woods may {} be?", part);
    if (vary == "length") return fmt::format("How long may {} be?", part);
    return fmt::format("How {} may {} be?", vary == "width" ? "narrow" : "thin", part);
}

/// What became of the search, in the words of the shop.
std::string size_verdict(const SizeSearch& search, const std::string& vary, LengthUnit units)
{
    const char* most = vary == "length" ? "longest" : vary == "width" ? "narrowest" : "thinnest";
    if (!search.passes_at) return fmt::format("no {} near the drawn one passes", vary);
    const std::string exact = write_small_length(*search.passes_at, units);
    if (search.end_of_search)
        return fmt::format("{} and every size between it and the drawn one; nothing beyond was tried", exact);
    return fmt::format("{}, the {} that passes", exact, most);
}

QuickAnswer answer_for_size(const SizeSearch& search, const Piece& piece, const std::string& part, const std::string& vary,
                            LengthUnit units)
{
    QuickAnswer answer;
    answer.units = units;
    answer.title = fmt::format("{}: {}", piece.name, question(part, vary));
    answer.values.push_back({"part", part, {}, "part", {}});
    answer.values.push_back({"vary", vary, {}, "varied", {}});
    answer.values.push_back(
        {"as_drawn_m", in_metres(search.as_drawn), "m", "as drawn",
         fmt::format("{}, which {}", write_length(search.as_drawn, units), search.passes_as_drawn ? "passes" : "does not pass")});
    const double edge = search.passes_at ? in_metres(*search.passes_at) : std::numeric_limits<double>::quiet_NaN();
    answer.values.push_back({"passes_at_m", edge, "m", "border", size_verdict(search, vary, units)});
    std::string governs = search.failing ? check_of(search.failing->governs) : std::string();
    if (governs.empty() && search.passing) governs = check_of(search.passing->governs);
    if (governs.empty() && !search.in_the_way.empty()) governs = search.in_the_way.front().check;
    add_text(answer, "governing_check", governs, "governing check");
    if (search.passing) add_side(answer, *search.passing, true, units);
    if (search.failing) add_side(answer, *search.failing, false, units);
    if (!search.in_the_way.empty()) {
        const auto lines = sentences(search.in_the_way);
        answer.values.push_back({"in_the_way", lines, {}, "in the way", fmt::format("{}", fmt::join(lines, " "))});
    }
    for (const SizeSide& side : search.no_further)
        if (!search.passes_at)
            add_text(answer, side.size > search.as_drawn ? "no_larger" : "no_smaller",
                     fmt::format("{} at {}", side.why_not, write_length(side.size, units)),
                     side.size > search.as_drawn ? "no larger" : "no smaller");
    add_text(answer, "stays", search.held, "meanwhile");
    name_aside(answer, search.aside, search.advice, vary);
    answer.assumed.push_back(fmt::format("tried were {} sizes, from the drawn one outwards", search.worked_out));
    return answer;
}

Answer answer_size(const Design& design, const Facts& facts, std::size_t part, const std::string& vary, const QuickOptions& quick)
{
    const Piece& piece = design.piece;
    const std::string& id = piece.parts[part].id;
    const LengthUnit units = quick.units ? answer_units(quick, {}) : piece.units;
    const SizeSearch search = search_size(design.text, piece, facts, part, varied_size(vary), units);
    if (search.hindrance)
        return wrong_command_line(
            {fault_of("cannot-vary", fmt::format("the {} of {} cannot be varied: {}", vary, in_quotes(id), *search.hindrance))});
    QuickAnswer answer = answer_for_size(search, piece, id, vary, units);
    Answer result = written(std::move(answer), quick);
    if (!search.passes_at) result.status = ExitStatus::failed;
    return result;
}

std::vector<std::string> woods_with(const WoodSearch& search, bool (*wanted)(Verdict))
{
    std::vector<std::string> names;
    for (const WoodTrial& wood : search.woods)
        if (wanted(wood.verdict)) names.push_back(wood.name);
    return names;
}

/// Names of woods hold commas.
std::string named(const std::vector<std::string>& woods)
{
    return woods.empty() ? "none" : fmt::format("{}", fmt::join(woods, "; "));
}

void add_wood(QuickAnswer& answer, const WoodSearch& search, const std::optional<std::size_t>& place, bool passing)
{
    if (!place) return;
    const WoodTrial& wood = search.woods[*place];
    const std::string end = passing ? "_passing" : "_failing";
    answer.values.push_back({"wood" + end, wood.name, {}, passing ? "passes with least to spare" : "misses by least", {}});
    answer.values.push_back({"governing" + end,
                             wood.governs->check + " of " + wood.governs->subject,
                             {},
                             "there governs",
                             verdict_sentence(*wood.governs)});
    answer.values.push_back({"utilisation" + end, *wood.governs->utilisation, "1", "share of the limit used there", {}});
}

Answer answer_woods(const Design& design, const Facts& facts, std::size_t part, const QuickOptions& quick)
{
    const Piece& piece = design.piece;
    const LengthUnit units = quick.units ? answer_units(quick, {}) : piece.units;
    const WoodSearch search = search_woods(piece, facts, part, units);
    const auto passing = woods_with(search, [](Verdict v) { return v == Verdict::pass; });
    const auto missing = woods_with(search, [](Verdict v) { return v == Verdict::cannot_tell; });
    QuickAnswer answer;
    answer.units = units;
    answer.title = fmt::format("{}: {}", piece.name, question(piece.parts[part].id, "species"));
    answer.values.push_back({"part", piece.parts[part].id, {}, "part", {}});
    answer.values.push_back({"vary", std::string("species"), {}, "varied", {}});
    answer.values.push_back(
        {"passes", passing, {}, fmt::format("{} of {} woods pass", passing.size(), search.woods.size()), named(passing)});
    const std::optional<std::size_t> edge = search.just_misses ? search.just_misses : search.just_passes;
    add_text(answer, "governing_check", edge ? search.woods[*edge].governs->check : std::string(), "governing check");
    add_wood(answer, search, search.just_passes, true);
    add_wood(answer, search, search.just_misses, false);
    answer.values.push_back({"cannot_tell", missing, {}, "for want of a table value it cannot be told of", named(missing)});
    name_aside(answer, search.aside, search.advice, "wood");
    answer.assumed.push_back(
        "ring cut, finish and moisture of the part stay as the design has them; other parts keep their woods");
    Answer result = written(std::move(answer), quick);
    if (passing.empty()) result.status = ExitStatus::failed;
    return result;
}

} // namespace

Answer size(const Arguments& arguments)
{
    SizeTexts texts;
    QuickOptions quick;
    OptionSet options(
        "size",
        "DESIGN.toml --part ID --vary thickness|width|length|species [--format text|json] [--units in|mm] [--working] "
        "[--data DIR]",
        "Sweeps one part of a design and finds the smallest thickness or width, the longest length, or all the woods with "
        "which the whole check has nothing to say against it, and what governs on either side of that border.");
    options.file(texts.design, "DESIGN.toml", "the design; - reads standard input");
    options.value("--part", texts.part, "ID", "the part that is varied, with all its copies");
    options.value(
        "--vary", texts.vary, "WHAT",
        "thickness or width: the part alone, the side that at states stays put; length: the piece is drawn out with it; "
        "species: every wood of the tables");
    add_quick_options(options, quick, true);
    if (auto instead = options.take(arguments)) return *instead;

    ValueReader reader;
    if (!texts.design) reader.add(missing_design("size"));
    if (!texts.part) reader.missing("--part", "long rail");
    if (!texts.vary) reader.missing("--vary", "thickness");
    if (texts.vary) reader.one_of("--vary", *texts.vary, kVaried);
    validate(quick, reader);
    if (!reader.faults().empty()) return wrong_command_line(reader.faults());

    return with_facts(quick.data, [&](const Facts& facts) {
        auto opened = open_design(*texts.design, facts);
        if (Answer* wrong = std::get_if<Answer>(&opened)) return std::move(*wrong);
        const Design& design = std::get<Design>(opened);
        auto part = part_named_by(*texts.part, design.piece);
        if (Answer* wrong = std::get_if<Answer>(&part)) return std::move(*wrong);
        const std::size_t index = std::get<std::size_t>(part);
        if (*texts.vary == "species") return answer_woods(design, facts, index, quick);
        return answer_size(design, facts, index, *texts.vary, quick);
    });
}

} // namespace jointwright
