#include "review/remedies/remedy_trials.hpp"

#include "judging/finding_tools.hpp"
#include "review/content/report_content.hpp"
#include "review/content/run_checks.hpp"

#include <algorithm>
#include <array>

namespace jointwright {

namespace {

/// A finding that does not pass may use so much more before it counts as worse: a shelf 4 mm thicker weighs on everything below it.
constexpr double kHardlyMore = 0.01;

/// Instructions for the day of gluing and the like: they may come and go with a change, as long as none fails.
bool is_advice(const Finding& finding)
{
    constexpr std::array<std::string_view, 4> kAdvice{"clamping", "assembly-time", "seasonal-size", "dust"};
    return std::find(kAdvice.begin(), kAdvice.end(), finding.check) != kAdvice.end();
}

const Finding* same_in(const std::vector<Finding>& findings, const Finding& wanted)
{
    for (const Finding& f : findings)
        if (f.check == wanted.check && f.subject == wanted.subject) return &f;
    return nullptr;
}

/// What is compared; words and sums are long, and there are dozens of trials.
Finding bones_of(const Finding& finding)
{
    Finding bones;
    bones.check = finding.check;
    bones.subject = finding.subject;
    bones.verdict = finding.verdict;
    bones.utilisation = finding.utilisation;
    return bones;
}

CheckedAgain checked_again(const std::vector<Finding>& findings)
{
    CheckedAgain again{overall_verdict(findings), std::nullopt};
    for (const Finding& f : findings)
        if (has_share(f) && f.utilisation) again.utilisation = std::max(again.utilisation.value_or(0), *f.utilisation);
    return again;
}

} // namespace

bool has_share(const Finding& finding)
{
    if (is_advice(finding)) return false;
    return finding.check != "glue-suits" || finding.verdict == Verdict::fail;
}

RemedyTrials::RemedyTrials(const RemedyBench& bench, const std::vector<Finding>& drawn, int most)
    : bench_(bench), drawn_(drawn), left_(most)
{
}

const RemedyTrial* RemedyTrials::at(const std::vector<DesignEdit>& edits)
{
    const std::string words = words_of(edits);
    if (const auto known = tried_.find(words); known != tried_.end()) return &known->second;
    if (left_ <= 0) return nullptr;
    RemedyTrial& trial = tried_[words];
    const std::optional<LaidOut> laid = bench_.changed(edits);
    if (!laid) return &trial; // what the format refuses costs next to nothing
    --left_;
    trial.possible = true;
    const std::vector<Finding> findings = findings_of(*laid, bench_.facts, bench_.units);
    trial.whole = checked_again(findings);
    for (const Finding& f : findings) trial.findings.push_back(bones_of(f));
    return &trial;
}

bool RemedyTrials::is_worse_than_drawn(const Finding& there, bool mind_advice) const
{
    if (there.verdict == Verdict::pass) return false;
    const Finding* drawn = same_in(drawn_, there);
    const int before = drawn != nullptr ? severity(drawn->verdict) : 0, now = severity(there.verdict);
    const bool minded = mind_advice || !is_advice(there);
    if (now > before) return minded || there.verdict == Verdict::fail;
    if (now < before || !minded || drawn == nullptr) return false;
    return there.utilisation.value_or(0) > drawn->utilisation.value_or(0) + kHardlyMore;
}

Effect RemedyTrials::effect_of(const RemedyTrial& trial, const Finding& of, bool may_end) const
{
    if (!trial.possible) return Effect::harms;
    for (const Finding& f : trial.findings)
        if ((f.check != of.check || f.subject != of.subject) && is_worse_than_drawn(f, f.check == of.check)) return Effect::harms;
    const Finding* there = same_in(trial.findings, of);
    const bool mended = there != nullptr ? there->verdict == Verdict::pass : may_end;
    return mended ? Effect::mended : Effect::not_yet;
}

} // namespace jointwright
