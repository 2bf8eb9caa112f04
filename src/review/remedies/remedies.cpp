#include "review/remedies/remedies.hpp"

#include "judging/finding_tools.hpp"
#include "measure/write.hpp"
#include "review/remedies/remedy_trials.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr int kMostForOne = 12, kMostForAll = 60; // pieces worked out
constexpr int kMostForWay = 7;
constexpr std::size_t kMostTold = 3; // for one finding
/// Copies times combinations of woods that may be worked out in all: a large piece gets fewer trials, so that it is not waited for.
constexpr double kMostWork = 6000;

int trials_for(const Piece& piece)
{
    double combinations = 1;
    for (const WoodChoice& wood : piece.woods)
        combinations *= static_cast<double>(std::max<std::size_t>(wood.species.size(), 1) * wood.rings.size());
    const double work = combinations * static_cast<double>(piece.copies.size());
    return std::min(static_cast<int>(kMostWork / work), kMostForAll); // none where one alone is waited for
}

/// A number of steps that mends, with what the trial said.
struct Mended {
    int steps = 0;
    const RemedyTrial* trial = nullptr;
};

/// Looks along one way: from the guess by doubling until it mends, then by halving for the least that does.
class WaySearch {
public:
    WaySearch(RemedyTrials& trials, const RemedyWay& way, const Finding& finding, int& left_for_finding)
        : trials_(trials), way_(way), finding_(finding), left_(left_for_finding)
    {
    }

    std::optional<Mended> run()
    {
        int next = std::clamp(way_.guess, 1, way_.most);
        for (int tries = 0; tries < kMostForWay && next > too_little_ && next < too_much_; ++tries) {
            if (!look_at(next)) break;
            next = next_after(next);
        }
        return best_;
    }

private:
    /// False where no more may be worked out.
    bool look_at(int steps)
    {
        const std::vector<DesignEdit> edits = way_.edits(steps);
        const int before = trials_.left();
        const RemedyTrial* trial = left_ > 0 && !edits.empty() ? trials_.at(edits) : nullptr;
        if (trial == nullptr) return false;
        left_ -= before - trials_.left();
        if (std::getenv("JWDBG")) { //DBG
            fprintf(stderr, "DBG %s %s | %s | %s\n", finding_.check.c_str(), finding_.subject.c_str(), way_.says(steps).c_str(),
                    trial->possible ? "" : "refused"); //DBG
            trials_.dbg(*trial, finding_);
        } //DBG
        switch (trials_.effect_of(*trial, finding_, way_.may_end)) {
        case Effect::mended:
            best_ = Mended{steps, trial};
            too_much_ = steps;
            break;
        case Effect::not_yet: too_little_ = steps; break;
        case Effect::harms: too_much_ = steps; break;
        }
        return true;
    }

    /// Doubling up while nothing bounds it; down by 1, 2, 4 … from a first guess that mends; else half way between.
    int next_after(int last)
    {
        const bool bounded = too_much_ <= way_.most;
        if (!bounded) return std::min(2 * last, way_.most);
        if (best_ && too_little_ == 0) {
            const int down = std::max(1, too_much_ - stride_);
            stride_ *= 2;
            return down;
        }
        return too_little_ + (too_much_ - too_little_) / 2;
    }

    RemedyTrials& trials_;
    const RemedyWay& way_;
    const Finding& finding_;
    int& left_;
    int too_little_ = 0, too_much_ = 1 << 20, stride_ = 1;
    std::optional<Mended> best_;
};

TriedRemedy told(const RemedyWay& way, const Mended& mended, const Finding& finding)
{
    TriedRemedy remedy;
    remedy.says = way.says(mended.steps);
    remedy.edit = way.edits(mended.steps);
    remedy.then = mended.trial->whole;
    for (const Finding& f : mended.trial->findings)
        if (f.check == finding.check && f.subject == finding.subject) remedy.share = f.utilisation;
    return remedy;
}

std::vector<TriedRemedy> remedies_for(const RemedyBench& bench, RemedyTrials& trials, const Finding& finding)
{
    std::vector<TriedRemedy> remedies;
    int left = kMostForOne;
    for (const RemedyWay& way : ways_to_mend(bench, finding)) {
        if (remedies.size() == kMostTold || left <= 0) break;
        if (const auto mended = WaySearch(trials, way, finding, left).run()) remedies.push_back(told(way, *mended, finding));
    }
    return remedies;
}

bool has_digit(const std::string& words)
{
    return std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::string with_share(const TriedRemedy& remedy)
{
    return remedy.share ? fmt::format("{}: then {:.2f}", remedy.says, *remedy.share)
                        : fmt::format("{}: then it holds", remedy.says);
}

/// What was tried takes the place of words with a size; words without one stand last.
void write_remedy(Finding& finding)
{
    const Remedy said = finding.remedy;
    const bool has_size = has_digit(said.words());
    if (finding.tried.empty()) {
        if (has_size) finding.remedy.close_with(" (not tried here)");
        return;
    }
    Remedy list;
    for (const TriedRemedy& remedy : finding.tried) list.add(with_share(remedy));
    if (finding.tried.size() == 1 && keeps_its_words(finding) && !has_size) list.add(said.words());
    finding.remedy = std::move(list);
}

} // namespace

void try_remedies(std::string_view text, const Piece& piece, const Facts& facts, const Layout& layout, LengthUnit units,
                  std::vector<Finding>& findings)
{
    const bool any = std::any_of(findings.begin(), findings.end(),
                                 [](const Finding& f) { return f.verdict == Verdict::fail || f.verdict == Verdict::warn; });
    if (!any) return;
    const EditableDesign design(text, piece, facts);
    const RemedyBench bench(design, facts, layout, units);
    RemedyTrials trials(bench, findings, trials_for(piece));
    for (Finding& finding : findings) {
        const bool bad = finding.verdict == Verdict::fail || finding.verdict == Verdict::warn;
        if (!bad || finding.comes_first) continue; // a slip in the drawing is mended by hand
        finding.tried = remedies_for(bench, trials, finding);
        write_remedy(finding);
    }
}

std::vector<FirstStep> first_steps(const std::vector<Finding>& findings)
{
    std::vector<FirstStep> steps;
    for (const Finding& finding : findings) {
        if (finding.verdict == Verdict::pass || !finding.remedy) continue;
        FirstStep step{finding.check, finding.subject, finding.remedy.words(), {}, std::nullopt};
        if (!finding.tried.empty()) {
            const TriedRemedy& first = finding.tried.front();
            step.says = first.says;
            step.edit = first.edit;
            step.then = first.then;
        }
        const bool known = std::any_of(steps.begin(), steps.end(), [&](const FirstStep& s) { return s.says == step.says; });
        if (!known) steps.push_back(std::move(step));
    }
    return steps;
}

} // namespace jointwright
