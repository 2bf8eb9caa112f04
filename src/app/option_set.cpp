#include "app/option_set.hpp"

#include "app/words.hpp"
#include "facts/facts.hpp"
#include "measure/text.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

struct HelpLine {
    std::string what, says;
};

std::string help_section(const std::string& heading, const std::vector<HelpLine>& lines)
{
    constexpr int kIndent = 28;
    if (lines.empty()) return {};
    std::string out = "\n" + heading + ":\n";
    for (const HelpLine& line : lines) {
        std::string first = "  " + line.what;
        if (columns_of(first) + 2 > kIndent) {
            out += first + "\n";
            first.clear();
        }
        first.append(static_cast<std::size_t>(kIndent - columns_of(first)), ' ');
        out += wrapped_after(first, line.says);
    }
    return out;
}

/// A value such as `-.5in` or `-½in` would pass for an option; behind `=` it cannot.
Arguments with_values_attached(const Arguments& arguments, const std::vector<std::string>& options)
{
    Arguments result;
    for (const std::string& argument : arguments) {
        const bool negative = argument.size() > 1 && argument[0] == '-' && argument[1] != '-' &&
                              (static_cast<unsigned char>(argument[1]) & 0x80U || argument[1] == '.');
        const bool after_option = !result.empty() && std::find(options.begin(), options.end(), result.back()) != options.end();
        if (negative && after_option)
            result.back() += "=" + argument;
        else
            result.push_back(argument);
    }
    return result;
}

} // namespace

struct OptionSet::Parser {
    std::string verb, usage, says;
    CLI::App app;
    std::vector<std::string> options, valued; ///< names as typed
    std::vector<std::pair<std::string, std::optional<std::string>*>> values;
    std::vector<std::pair<std::string, std::vector<std::string>*>> repeated;
    std::vector<HelpLine> option_help, positional_help, further_help;
    std::string further_heading;
    std::optional<std::string>* positional = nullptr;
    bool joins_words = false;
    Arguments free_words;

    Fault unknown_option(const std::string& argument) const
    {
        const std::string typed = argument.substr(0, argument.find('='));
        const auto near = nearest_spellings(typed, options, 1);
        return fault_of("unknown-option", fmt::format("{} has no option {}", verb, in_quotes(typed)),
                        near.empty() ? std::string() : near.front(),
                        fmt::format("\"jointwright {} --help\" lists the options", verb));
    }

    /// The option a message of the parser speaks of: it begins "--width: ".
    Fault mismatch(const std::string& message) const
    {
        const std::string option = message.substr(0, message.find(':'));
        if (std::find(options.begin(), options.end(), option) == options.end()) return fault_of("syntax", safe_text(message));
        const CLI::Option* found = app.get_option_no_throw(option);
        const bool once = std::none_of(repeated.begin(), repeated.end(), [&](const auto& list) { return list.first == option; });
        if (found != nullptr && found->count() > 1 && once)
            return fault_of("given-twice", fmt::format("{} is given more than once", option));
        return fault_of("missing-value", fmt::format("{} has no value", option));
    }

    std::optional<Fault> leftover()
    {
        Arguments words = std::move(free_words);
        for (const std::string& extra : app.remaining())
            if (extra.size() > 1 && extra.front() == '-') return unknown_option(extra);
        const auto extras = app.remaining();
        words.insert(words.end(), extras.begin(), extras.end());
        if (words.empty()) return std::nullopt;
        if (positional == nullptr || (!joins_words && words.size() > 1))
            return fault_of("unexpected-argument",
                            fmt::format("{} does not take {}", verb, in_quotes(words[positional == nullptr ? 0 : 1])), {},
                            fmt::format("usage: jointwright {} {}", verb, usage));
        std::string joined;
        for (const std::string& word : words) joined += (joined.empty() ? "" : " ") + word;
        *positional = joined;
        return std::nullopt;
    }
};

OptionSet::OptionSet(std::string verb, std::string usage, std::string says) : parser_(std::make_unique<Parser>())
{
    parser_->verb = std::move(verb);
    parser_->usage = std::move(usage);
    parser_->says = std::move(says);
    parser_->app.set_help_flag();
    parser_->app.allow_extras();
}

OptionSet::~OptionSet() = default;

void OptionSet::value(const std::string& name, std::optional<std::string>& into, const std::string& kind, const std::string& says)
{
    parser_->app.add_option_function<std::string>(name, [&into](const std::string& text) { into = text; })
        ->allow_extra_args(false);
    parser_->options.push_back(name);
    parser_->valued.push_back(name);
    parser_->values.emplace_back(name, &into);
    parser_->option_help.push_back({name + " " + kind, says});
}

void OptionSet::values(const std::string& name, std::vector<std::string>& into, const std::string& kind, const std::string& says)
{
    parser_->app.add_option(name, into)->allow_extra_args(false)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    parser_->options.push_back(name);
    parser_->valued.push_back(name);
    parser_->repeated.emplace_back(name, &into);
    parser_->option_help.push_back({name + " " + kind, says});
}

void OptionSet::flag(const std::string& name, bool& into, const std::string& says)
{
    parser_->app.add_flag(name, into);
    parser_->options.push_back(name);
    parser_->option_help.push_back({name, says});
}

void OptionSet::name(std::optional<std::string>& into, const std::string& kind, const std::string& says)
{
    file(into, kind, says);
    parser_->joins_words = true;
}

void OptionSet::file(std::optional<std::string>& into, const std::string& kind, const std::string& says)
{
    parser_->positional = &into;
    parser_->positional_help.push_back({kind, says});
}

void OptionSet::further(const std::string& heading, const std::string& what, const std::string& says)
{
    parser_->further_heading = heading;
    parser_->further_help.push_back({what, says});
}

std::optional<Answer> OptionSet::take(const Arguments& arguments)
{
    const auto end_of_options = std::find(arguments.begin(), arguments.end(), "--");
    for (auto at = arguments.begin(); at != end_of_options; ++at)
        if (*at == "--help" || *at == "-h") return results(help());

    parser_->free_words.assign(end_of_options == arguments.end() ? arguments.end() : end_of_options + 1, arguments.end());
    Arguments given = with_values_attached({arguments.begin(), end_of_options}, parser_->valued);
    std::reverse(given.begin(), given.end()); // the parser takes them from the back
    try {
        parser_->app.parse(given);
    } catch (const CLI::ParseError& error) {
        return wrong_command_line({parser_->mismatch(error.what())});
    }
    const auto is_option = [&](const std::string& text) {
        return std::find(parser_->options.begin(), parser_->options.end(), text) != parser_->options.end();
    };
    for (const auto& [name, text] : parser_->values)
        if (*text && is_option(**text))
            return wrong_command_line({fault_of("missing-value", fmt::format("{} has no value", name))});
    for (const auto& [name, texts] : parser_->repeated)
        if (std::any_of(texts->begin(), texts->end(), is_option))
            return wrong_command_line({fault_of("missing-value", fmt::format("{} has no value", name))});
    if (const auto fault = parser_->leftover()) return wrong_command_line({*fault});
    return std::nullopt;
}

std::string OptionSet::help() const
{
    std::string out = wrapped_after("usage: ", "jointwright " + parser_->verb + " " + parser_->usage);
    out += "\n" + wrapped_after({}, parser_->says);
    out += help_section("names and files", parser_->positional_help);
    std::vector<HelpLine> options = parser_->option_help;
    options.push_back({"--help", "this text"});
    return out + help_section("options", options) + help_section(parser_->further_heading, parser_->further_help);
}

} // namespace jointwright
