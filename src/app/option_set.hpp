#pragma once
// The options of one verb: what the command line may hold, the help about it, and the words for what it may not.

#include "app/answer.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

class OptionSet {
public:
    /// @param verb   as typed, for example "movement"
    /// @param usage  what follows the verb, one line
    /// @param says   what the verb is for, one sentence
    OptionSet(std::string verb, std::string usage, std::string says);
    ~OptionSet();
    OptionSet(const OptionSet&) = delete;
    OptionSet& operator=(const OptionSet&) = delete;

    /// An option with a value, "--width" or "-o": `kind` names the value in the help. The text goes into `into`, which must outlive this.
    void value(const std::string& name, std::optional<std::string>& into, const std::string& kind, const std::string& says);
    /// An option with a value that may be given several times; each goes to the end of `into`.
    void values(const std::string& name, std::vector<std::string>& into, const std::string& kind, const std::string& says);
    /// An option without a value.
    void flag(const std::string& name, bool& into, const std::string& says);
    /// A name without an option; several words without quotes are one name.
    void name(std::optional<std::string>& into, const std::string& kind, const std::string& says);
    /// One file without an option.
    void file(std::optional<std::string>& into, const std::string& kind, const std::string& says);

    /// One more line of the help, under a heading of its own after the options.
    void further(const std::string& heading, const std::string& what, const std::string& says);

    /// Takes the arguments of the verb. Nothing when all went into place; else what to answer instead: the help, or faults
    /// [unknown-option], [missing-value], [given-twice] or [unexpected-argument].
    std::optional<Answer> take(const Arguments& arguments);

    /// The help about this verb, at most 80 characters wide.
    std::string help() const;

private:
    struct Parser;
    std::unique_ptr<Parser> parser_;
};

} // namespace jointwright
