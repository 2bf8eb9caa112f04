#pragma once
// Changed pieces checked again, each once, and what came of it.

#include "review/remedies/remedy_way.hpp"

#include <cstdio> //DBG
#include <map>
#include <string>
#include <vector>

namespace jointwright {

/// What came of a change, seen from one finding.
enum class Effect {
    mended,  ///< the finding passes, and nothing else is worse
    not_yet, ///< nothing else is worse, but the finding does not pass
    harms,   ///< something else is worse, or the format refuses it
};

struct RemedyTrial {
    bool possible = false;
    std::vector<Finding> findings; ///< check, subject, verdict and utilisation alone
    CheckedAgain whole;
};

class RemedyTrials {
public:
    /// @param drawn  the findings of the piece as drawn
    /// @param most   pieces that may be worked out
    RemedyTrials(const RemedyBench& bench, const std::vector<Finding>& drawn, int most);

    /// The changed piece checked again, or what was found the last time; nullptr when no more may be worked out.
    const RemedyTrial* at(const std::vector<DesignEdit>& edits);
    /// What it means for a finding. @param may_end  mended too when the finding is not there any more
    Effect effect_of(const RemedyTrial& trial, const Finding& of, bool may_end) const;
    void dbg(const RemedyTrial& trial, const Finding& of) const
    {
        for (const auto& f : trial.findings) {
            if ((f.check != of.check || f.subject != of.subject) && is_worse_than_drawn(f, f.check == of.check))
                fprintf(stderr, "    worse: %s %s %s %f\n", f.check.c_str(), f.subject.c_str(),
                        std::string(word_of(f.verdict)).c_str(), f.utilisation.value_or(-1));
            if (f.check == of.check && f.subject == of.subject)
                fprintf(stderr, "    itself: %s %f\n", std::string(word_of(f.verdict)).c_str(), f.utilisation.value_or(-1));
        }
    } //DBG
    int left() const { return left_; }

private:
    /// @param mind_advice  instructions for gluing and the like count as well
    bool is_worse_than_drawn(const Finding& there, bool mind_advice) const;

    const RemedyBench& bench_;
    const std::vector<Finding>& drawn_;
    int left_;
    std::map<std::string, RemedyTrial> tried_;
};

/// True for findings whose utilisation is a share of a limit of load, movement or stability; the others are advice.
bool has_share(const Finding& finding);

} // namespace jointwright
