#include "review/pictures/sag_by_thickness.hpp"

#include "measure/write.hpp"
#include "review/pictures/drawn_load.hpp"
#include "review/search/size_trials.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr std::size_t kMostCopies = 100;
constexpr double kShares[] = {0.6, 0.75, 0.88, 1.2, 1.5}; // of the chosen thickness
constexpr double kSameThickness = 1e-7;                   // m

std::optional<double> number_of(const Finding& finding, std::string_view name)
{
    for (const NamedValue& v : finding.values)
        if (v.name == name && std::isfinite(v.value)) return v.value;
    return std::nullopt;
}

bool fails_newly(const std::vector<Finding>& there, const std::vector<Finding>& drawn, const std::string& part)
{
    return std::any_of(there.begin(), there.end(), [&](const Finding& f) {
        if (f.verdict != Verdict::fail || (f.check == "sag" && f.subject == part)) return false;
        return std::none_of(drawn.begin(), drawn.end(), [&](const Finding& d) {
            return d.verdict == Verdict::fail && d.check == f.check && d.subject == f.subject;
        });
    });
}

std::optional<SagAtThickness> sag_in(const std::vector<Finding>& findings, const std::string& part, double thickness)
{
    for (const Finding& f : findings) {
        if (f.check != "sag" || f.subject != part) continue;
        const auto sag = number_of(f, "deflection"), limit = number_of(f, "limit");
        if (!sag || !limit || !(*sag > 0) || !(*limit > 0)) return std::nullopt;
        SagAtThickness at;
        at.thickness = thickness;
        at.sag = *sag;
        at.limit = *limit;
        at.sag_verdict = f.verdict;
        return at;
    }
    return std::nullopt;
}

/// Thicknesses around the chosen one, each a step that a planer can be set to.
std::vector<double> thicknesses(double chosen, LengthUnit units)
{
    const double step = in_metres(round_up_to_milling_step(metres(1e-6), units));
    std::vector<double> list;
    for (const double share : kShares) {
        const double steps = std::max(1.0, std::round(share * chosen / step));
        const double at = steps * step;
        if (std::abs(at - chosen) > step / 2 && (list.empty() || at - list.back() > kSameThickness)) list.push_back(at);
    }
    return list;
}

/// Sag falls with a power of the thickness: straight between two sizes when both are taken as logarithms.
std::optional<double> crossing(const std::vector<SagAtThickness>& sizes)
{
    for (std::size_t i = 1; i < sizes.size(); ++i) {
        const double a = std::log(sizes[i - 1].sag / sizes[i - 1].limit), b = std::log(sizes[i].sag / sizes[i].limit);
        if (!(a > 0) || b > 0) continue;
        const double x = std::log(sizes[i - 1].thickness), y = std::log(sizes[i].thickness);
        return std::exp(x + (y - x) * a / (a - b));
    }
    return std::nullopt;
}

} // namespace

std::optional<SagByThickness> sag_by_thickness(std::string_view text, const Piece& piece, const Facts& facts,
                                               const std::vector<Finding>& findings, LengthUnit units)
{
    if (text.empty() || piece.copies.size() > kMostCopies) return std::nullopt;
    const auto governing = governing_load_finding(findings);
    if (!governing || findings[*governing].check != "sag") return std::nullopt;
    SagByThickness result;
    result.part = findings[*governing].subject;
    const auto part = std::find_if(piece.parts.begin(), piece.parts.end(), [&](const Part& p) { return p.id == result.part; });
    if (part == piece.parts.end()) return std::nullopt;
    const double chosen = in_metres(part->thickness);
    auto as_drawn = sag_in(findings, result.part, chosen);
    if (!as_drawn) return std::nullopt;
    as_drawn->chosen = true;
    result.sizes.push_back(*as_drawn);
    const Variation variation(text, piece, facts, static_cast<std::size_t>(part - piece.parts.begin()), VariedSize::thickness);
    if (variation.hindrance()) return std::nullopt;
    SizeTrials trials(variation, piece, facts, units);
    for (const double thickness : thicknesses(chosen, units)) {
        const Trial& trial = trials.at(metres(thickness));
        if (!trial.possible) continue;
        if (auto at = sag_in(trial.findings, result.part, thickness)) {
            at->others_fail = fails_newly(trial.findings, findings, result.part);
            result.sizes.push_back(*at);
        }
    }
    if (result.sizes.size() < 3) return std::nullopt;
    std::sort(result.sizes.begin(), result.sizes.end(),
              [](const SagAtThickness& a, const SagAtThickness& b) { return a.thickness < b.thickness; });
    result.meets_limit_at = crossing(result.sizes);
    return result;
}

} // namespace jointwright
