#pragma once
// What a check says: one finding per check and subject. Writers turn findings into text, JSON and HTML and compute nothing.

#include "facts/working.hpp"
#include "judging/tried_remedy.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace jointwright {

/// A number of a finding in SI, under a name of the contract.
struct NamedValue {
    std::string name;
    double value = 0; ///< finite
    std::string unit; ///< "m", "m2", "N", "N m", "Pa", "kg", "kg/m3", "s", "rad", "%", "1"
};

/// What to change, in words: several ways, the nearest first, each without a full stop.
class Remedy {
public:
    Remedy() = default;
    Remedy(std::string way) { add(std::move(way)); }      // NOLINT(google-explicit-constructor): one way is a remedy
    Remedy(const char* way) : Remedy(std::string(way)) {} // NOLINT(google-explicit-constructor)
    /// Any of these.
    static Remedy either(std::initializer_list<std::string> ways);

    /// A further way; an empty one is none.
    void add(std::string way);
    /// What has to be done besides: put behind the last way, "; and ...".
    void besides(const std::string& words);
    /// Put right behind all that is said, such as " (not tried here)".
    void close_with(const std::string& words);
    /// Said behind all ways and not one of them: what a glue-up goes by.
    void note(std::string words) { note_ = std::move(words); }

    explicit operator bool() const { return !ways_.empty(); }
    const std::vector<std::string>& ways() const { return ways_; }
    /// "glue the middle; or use buttons"; empty where there is none.
    std::string words() const;
    bool operator==(const Remedy&) const = default;

private:
    std::vector<std::string> ways_;
    std::string note_;
};

/// Whom a finding is about, by the lists of the piece. What `where` says in words the check gives as indices; the rest is filled in one place for
/// all checks, where the findings are merged.
struct About {
    std::vector<std::size_t> parts;  ///< one, or the two of a joint in the order of the subject; none: the whole piece, or a wood
    std::vector<std::size_t> joints; ///< the stated joints that are judged under that subject
    std::vector<std::size_t> copies; ///< by the check: of the place that it names; none: any
    std::optional<std::size_t> load_case; ///< by the check: the one that asks most
    std::size_t combination = 0;          ///< of woods and ring cuts
};

struct Finding {
    std::string check;   ///< id, for example "cross-grain"
    std::string subject; ///< part id, or "id / id" in the order of the joint
    Verdict verdict = Verdict::pass;
    std::optional<double> utilisation; ///< finite; with it working and sources are never empty
    std::string headline;              ///< one sentence a maker understands, in the maker's units
    std::optional<std::string> where;  ///< worst copy, place, load case, species, ring cut
    Remedy remedy;
    std::vector<NamedValue> values;
    Working working;
    std::vector<std::string> sources;
    std::optional<double> fails_from; ///< utilisation from which a warning turns to a fail, where that is one number; for charts
    bool comes_first = false;         ///< a slip in the drawing on which all else hangs: told before everything; not reported
    double weight = 0;                ///< of findings alike in verdict and utilisation the heavier is kept; not reported
    About about;                      ///< of gathered findings
    std::vector<TriedRemedy> tried;   ///< changes that mend it, each checked again, in the order in which a maker would try them
};

/// True when the piece or a part of it comes away, folds up or falls over: nothing else counts before that is mended.
bool falls(const Finding& finding);

/// A number of a finding by its name.
std::optional<double> finding_value(const Finding& finding, std::string_view name);

/// Sorts what comes first; then fail, cannot-tell, warn, pass; then utilisation falling; then subject; then check.
void sort_findings(std::vector<Finding>& findings);

} // namespace jointwright
