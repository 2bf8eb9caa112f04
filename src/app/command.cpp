// From the command line to a verb.

#include "app/verbs.hpp"
#include "app/words.hpp"
#include "facts/facts.hpp"
#include "measure/text.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <new>

namespace jointwright {

namespace {

struct Verb {
    const char* name;
    const char* takes;
    const char* words;
    Answer (*run)(const Arguments&);
};

constexpr std::array kVerbs{
    Verb{"check", "DESIGN.toml", "what will move, bind, sag or break, and what to change", check},
    Verb{"movement", "--species NAME --width LENGTH --from MC --to MC", "how far a board swells or shrinks", movement},
    Verb{"emc", "--temperature T --humidity RH", "moisture that wood settles at in that air", emc},
    Verb{"beam", "--span L --width B --depth H ...", "sag and stress of one beam", beam},
    Verb{"size", "DESIGN.toml --part ID --vary WHAT", "how thin, narrow or long a part may be, or of which woods", size},
    Verb{"glue-line", "--species A --length L --width W ...", "shear strength of one glued face, wood and glue apart", glue_line},
    Verb{"joint", "--kind KIND --species NAME --rail TxD --size S ...", "strength of one joint", joint},
    Verb{"fastener", "--kind KIND --species NAME --diameter D ...", "what one screw, nail or dowel holds", fastener},
    Verb{"species", "[NAME]", "the woods, or one with every number and its source", species},
    Verb{"rooms", "[NAME]", "the rooms a piece may live in", rooms},
    Verb{"glues", "[NAME]", "the glues", glues},
    Verb{"finishes", "[NAME]", "the finishes", finishes},
    Verb{"sources", "[KEY]", "what the figures rest on, and how many were read in their source", sources},
    Verb{"checks", "[ID]", "what each check does, its limits, its sources", checks},
    Verb{"new", "[PATTERN]", "a commented starter design, or the list of them", new_design},
    Verb{"expand", "DESIGN.toml", "the design with every copy written out", expand},
};

std::string usage()
{
    std::string out = "usage: jointwright VERB ...\n"
                      "       jointwright --version | --help | VERB --help\n\n"
                      "Checks a piece of solid-wood furniture before any glue is spread.\n\nverbs:\n";
    for (const Verb& verb : kVerbs)
        out += fmt::format("  {} {}\n", verb.name, verb.takes) + wrapped_after(std::string(14, ' '), verb.words);
    return out + "\n" +
           wrapped_after({}, "A DESIGN of - is read from standard input. Exit status: 0 nothing failed, 1 a check failed, 2 the "
                             "input or the command line "
                             "is wrong, 3 the program could not finish.");
}

bool looks_like_a_design(const std::string& word) { return word.size() > 5 && word.substr(word.size() - 5) == ".toml"; }

Answer unknown_verb(const Arguments& arguments)
{
    const std::string& typed = arguments.front();
    const std::string note = "\"jointwright --help\" lists the verbs";
    if (looks_like_a_design(typed))
        return wrong_command_line(
            {fault_of("unknown-verb", fmt::format("{} is no verb; the verb comes before the design", in_quotes(typed)),
                      "jointwright check " + as_typed(typed), note)});
    if (typed.size() > 1 && typed.front() == '-')
        return wrong_command_line(
            {fault_of("unknown-option", fmt::format("the first word is a verb, not the option {}", in_quotes(typed)), {}, note)});
    std::vector<std::string> verbs;
    for (const Verb& verb : kVerbs) verbs.emplace_back(verb.name);
    const auto near = nearest_spellings(typed, verbs, 1);
    return wrong_command_line({fault_of("unknown-verb", fmt::format("there is no verb {}", in_quotes(typed)),
                                        near.empty() ? std::string() : "jointwright " + near.front(), note)});
}

Answer ask(const Arguments& arguments)
{
    if (arguments.empty()) return {ExitStatus::wrong_input, {}, usage(), {}};
    const std::string& first = arguments.front();
    if (first == "--help" || first == "-h" || first == "help") return results(usage());
    if (first == "--version") return results("jointwright " JOINTWRIGHT_VERSION "\n");
    const auto* verb = std::find_if(kVerbs.begin(), kVerbs.end(), [&](const Verb& known) { return first == known.name; });
    if (verb == kVerbs.end()) return unknown_verb(arguments);
    return verb->run({arguments.begin() + 1, arguments.end()});
}

Answer could_not_finish(const std::string& why)
{
    return {ExitStatus::broken, {}, fmt::format("jointwright: error: the program could not finish: {}\n", why), {}};
}

} // namespace

Answer answer_to(const Arguments& arguments)
{
    try {
        return ask(arguments);
    } catch (const std::bad_alloc&) {
        return could_not_finish("there is not enough memory");
    } catch (const std::exception& error) {
        return could_not_finish(fmt::format("{}. This is a fault of the program, not of the design.", safe_text(error.what())));
    }
}

} // namespace jointwright
