#include "review/search/size_trials.hpp"

#include "judging/finding_tools.hpp"
#include "measure/text.hpp"
#include "review/content/run_checks.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kSameUse = 1e-6;     // relative change of a utilisation that is none
constexpr double kTrialStep = 0.5e-3; // m, well above what still counts as touching

bool same_use(const Finding& a, const Finding& b)
{
    const double u = a.utilisation.value_or(-1), v = b.utilisation.value_or(-1);
    return a.verdict == b.verdict && std::abs(u - v) <= kSameUse * (1 + std::abs(u));
}

/// "slat / long rail" speaks of "slat"; a wood's finding has the id of the wood.
bool speaks_of(const Finding& finding, const std::string& part)
{
    const std::string& subject = finding.subject;
    for (std::size_t from = 0; from <= subject.size();) {
        const std::size_t slash = std::min(subject.find(" / ", from), subject.size());
        if (subject.compare(from, slash - from, part) == 0) return true;
        from = slash + 3;
    }
    return false;
}

std::pair<std::size_t, std::size_t> pair_of(const Contact& contact) { return std::minmax(contact.first, contact.second); }

} // namespace

FindingKey key_of(const Finding& finding) { return {finding.check, finding.subject}; }

const Finding* Trial::find(const FindingKey& key) const
{
    for (const Finding& f : findings)
        if (key_of(f) == key) return &f;
    return nullptr;
}

bool Yardstick::allows(const Finding& finding) const
{
    if (finding.verdict == Verdict::pass || !counts(finding)) return true;
    const auto known = advice.find(key_of(finding));
    return known != advice.end() && severity(finding.verdict) <= severity(known->second) && finding.utilisation.value_or(0) <= 1;
}

Yardstick yardstick_of(const Trial& drawn)
{
    Yardstick yardstick;
    for (const Finding& f : drawn.findings)
        if (f.verdict == Verdict::warn && f.utilisation && *f.utilisation <= 1) yardstick.advice.emplace(key_of(f), f.verdict);
    return yardstick;
}

void set_aside_what_stays(Yardstick& yardstick, const Trial& drawn, const std::vector<const Trial*>& all, const std::string& part)
{
    std::set<FindingKey> stay;
    for (const Finding& f : drawn.findings) {
        if (yardstick.allows(f) || falls(f)) continue; // of what comes apart little else is told: it passes at no size
        bool ever_passes = false, changes = false;
        for (const Trial* trial : all) {
            if (!trial->possible) continue;
            const Finding* there = trial->find(key_of(f));
            ever_passes = ever_passes || there == nullptr || yardstick.allows(*there);
            changes = changes || there == nullptr || !same_use(f, *there);
        }
        if (!ever_passes && (!changes || !speaks_of(f, part))) stay.insert(key_of(f));
    }
    yardstick.aside.merge(stay);
}

bool passes(const Trial& trial, const Yardstick& yardstick)
{
    return trial.possible &&
           std::all_of(trial.findings.begin(), trial.findings.end(), [&](const Finding& f) { return yardstick.allows(f); });
}

double margin(const Trial& trial, const Yardstick& yardstick)
{
    constexpr double kJustOver = 1e-9, kPlainly = 0.5;
    if (!trial.possible) return kPlainly;
    double most = -1;
    for (const Finding& f : trial.findings) {
        if (!yardstick.counts(f)) continue;
        // A verdict may be stricter than its utilisation (practice advises against it): the verdict decides the sign.
        const bool good = yardstick.allows(f);
        const double beyond = f.utilisation ? *f.utilisation - 1 : (good ? -1 : kPlainly);
        most = std::max(most, good ? std::min(beyond, -kJustOver) : std::max(beyond, kJustOver));
    }
    return most;
}

const Finding* governing(const Trial& trial, const Trial& other, const Yardstick& yardstick)
{
    const auto worse = [&](const Finding& a, const Finding& b) {
        const bool a_good = yardstick.allows(a), b_good = yardstick.allows(b);
        if (a_good != b_good) return b_good;
        if (!a_good && a.verdict != b.verdict) return severity(a.verdict) > severity(b.verdict);
        return a.utilisation.value_or(0) > b.utilisation.value_or(0);
    };
    const Finding* worst = nullptr;
    bool worst_changes = false;
    for (const Finding& f : trial.findings) {
        if (!yardstick.counts(f)) continue;
        const Finding* there = other.find(key_of(f));
        const bool changes = there == nullptr || !same_use(f, *there);
        if (worst != nullptr && (worst_changes != changes ? worst_changes : !worse(f, *worst))) continue;
        worst = &f;
        worst_changes = changes;
    }
    return worst;
}

SizeTrials::SizeTrials(const Variation& variation, const Piece& piece, const Facts& facts, LengthUnit units)
    : variation_(variation), piece_(piece), facts_(facts), units_(units)
{
    for (const Contact& contact : find_contacts(piece).contacts) touching_.insert(pair_of(contact));
    choose_held_side();
}

/// The stated side, unless a little more or less of the part would then pull something apart and with the other side it would not.
void SizeTrials::choose_held_side()
{
    const Length now = variation_.as_drawn();
    const auto keeps_together = [&](HeldSide held, double step) {
        return work_out(metres(std::max(in_metres(now) + step, in_metres(now) / 2)), held).possible;
    };
    const bool thinner = keeps_together(HeldSide::stated, -kTrialStep), thicker = keeps_together(HeldSide::stated, kTrialStep);
    if (thinner && thicker) return;
    const bool other_thinner = keeps_together(HeldSide::other, -kTrialStep),
               other_thicker = keeps_together(HeldSide::other, kTrialStep);
    if ((other_thinner && other_thicker) || (other_thinner && !thinner)) held_ = HeldSide::other;
}

const Trial& SizeTrials::at(Length size)
{
    const auto [found, fresh] = trials_.try_emplace(in_metres(size));
    if (fresh) found->second = work_out(size, held_);
    return found->second;
}

std::vector<const Trial*> SizeTrials::all() const
{
    std::vector<const Trial*> list;
    for (const auto& [size, trial] : trials_) list.push_back(&trial);
    return list;
}

Trial SizeTrials::work_out(Length size, HeldSide held) const
{
    Trial trial;
    const DesignRead read = variation_.with_size(size, held);
    if (!read.piece) {
        trial.why = read.faults.front().says;
        trial.fault_id = read.faults.front().id;
        return trial;
    }
    const LaidOut laid = lay_out(*read.piece);
    std::set<std::pair<std::size_t, std::size_t>> touching;
    for (const Contact& contact : laid.layout->contacts) touching.insert(pair_of(contact));
    for (const auto& [a, b] : touching_) {
        if (touching.count({a, b}) > 0) continue;
        trial.why = fmt::format("{} and {} no longer touch", in_quotes(piece_.label(a, true)), in_quotes(piece_.label(b, true)));
        trial.fault_id = "apart";
        return trial;
    }
    trial.possible = true;
    trial.findings = findings_of(laid, facts_, units_);
    return trial;
}

} // namespace jointwright
