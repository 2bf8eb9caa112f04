#include "judging/finding.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

/// A finding without a utilisation stands behind those that have one.
double utilisation_for_order(const Finding& finding)
{
    constexpr double kLast = -std::numeric_limits<double>::infinity();
    return finding.utilisation && !std::isnan(*finding.utilisation) ? *finding.utilisation : kLast;
}

/// Rounded to what is worth telling, ten figures: copies that mirror each other differ by rounding alone and stand by their names.
double as_told(double utilisation)
{
    if (!std::isfinite(utilisation) || utilisation == 0) return utilisation;
    const double steps = std::pow(10.0, 9 - std::floor(std::log10(std::abs(utilisation))));
    return std::isfinite(steps) ? std::round(utilisation * steps) / steps : utilisation;
}

bool comes_before(const Finding& a, const Finding& b)
{
    if (a.comes_first != b.comes_first) return a.comes_first;
    if (falls(a) != falls(b)) return falls(a);
    if (a.verdict != b.verdict) return a.verdict > b.verdict; // Verdict is listed from mild to grave
    const double of_a = utilisation_for_order(a), of_b = utilisation_for_order(b);
    if (of_a != of_b) return of_a > of_b;
    if (a.subject != b.subject) return a.subject < b.subject;
    return a.check < b.check;
}

} // namespace

Remedy Remedy::either(std::initializer_list<std::string> ways)
{
    Remedy remedy;
    for (const std::string& way : ways) remedy.add(way);
    return remedy;
}

void Remedy::add(std::string way)
{
    if (!way.empty()) ways_.push_back(std::move(way));
}

void Remedy::besides(const std::string& words)
{
    if (words.empty()) return;
    if (ways_.empty())
        ways_.push_back(words);
    else
        ways_.back() += "; " + words;
}

void Remedy::close_with(const std::string& words)
{
    if (!note_.empty())
        note_ += words;
    else if (!ways_.empty())
        ways_.back() += words;
}

std::string Remedy::words() const
{
    std::string list;
    for (const std::string& way : ways_) list += (list.empty() ? "" : "; or ") + way;
    return note_.empty() ? list : list + "; " + note_;
}

bool falls(const Finding& finding) { return finding.check == "stands" && finding.verdict == Verdict::fail; }

std::string_view word_of(Verdict verdict)
{
    switch (verdict) {
    case Verdict::pass: return "pass";
    case Verdict::warn: return "warn";
    case Verdict::cannot_tell: return "cannot-tell";
    case Verdict::fail: return "fail";
    }
    return {};
}

std::optional<double> finding_value(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name) return v.value;
    return std::nullopt;
}

void sort_findings(std::vector<Finding>& findings)
{
    // Ordered by what is told: what a reader gets never rises by a last digit.
    for (Finding& f : findings)
        if (f.utilisation) f.utilisation = as_told(*f.utilisation);
    static_assert(Verdict::fail > Verdict::cannot_tell && Verdict::cannot_tell > Verdict::warn && Verdict::warn > Verdict::pass);
    std::stable_sort(findings.begin(), findings.end(), comes_before);
}

} // namespace jointwright
