#include "judging/finding_tools.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kAlike = 1e-9; // relative difference of utilisations that is rounding

} // namespace

int severity(Verdict verdict)
{
    switch (verdict) {
    case Verdict::pass: return 0;
    case Verdict::warn: return 1;
    case Verdict::cannot_tell: return 2;
    case Verdict::fail: return 3;
    }
    return 0;
}

bool is_worse(const Finding& a, const Finding& b)
{
    if (severity(a.verdict) != severity(b.verdict)) return severity(a.verdict) > severity(b.verdict);
    const double use_a = a.utilisation.value_or(-1), use_b = b.utilisation.value_or(-1);
    // Of copies alike but for rounding the first stays, so that turning or mirroring a piece names the same one.
    if (std::abs(use_a - use_b) > kAlike * (1 + std::abs(use_a))) return use_a > use_b;
    return a.weight > b.weight + kAlike;
}

void keep_worst(std::vector<Finding>& findings, Finding finding)
{
    for (Finding& kept : findings)
        if (kept.subject == finding.subject && kept.check == finding.check) {
            if (is_worse(finding, kept)) kept = std::move(finding);
            return;
        }
    findings.push_back(std::move(finding));
}

std::string pair_subject(const Prepared& prepared, const Contact& contact)
{
    return prepared.piece->part_of(contact.first).id + " / " + prepared.piece->part_of(contact.second).id;
}

std::string pair_place(const Prepared& prepared, const Contact& contact)
{
    return fmt::format("{} on {}", prepared.piece->label(contact.first, true), prepared.piece->label(contact.second, true));
}

static double shop_step(const Prepared& prepared) { return prepared.units == LengthUnit::inch ? kMetresPerInch / 64 : 0.0005; }

double shop_size_below(const Prepared& prepared, double metres)
{
    const double step = shop_step(prepared);
    return std::floor(metres / step + 1e-6) * step;
}

double shop_size_above(const Prepared& prepared, double metres)
{
    const double step = shop_step(prepared);
    return std::ceil(metres / step - 1e-6) * step;
}

std::string size_words(const Prepared& prepared, double length) { return write_length(metres(length), prepared.units); }

std::string small_words(const Prepared& prepared, double length) { return write_small_length(metres(length), prepared.units); }

std::string moisture_words(MoistureContent moisture) { return write_moisture(moisture); }

void gather_sources(Finding& finding)
{
    for (const WorkingStep& step : finding.working)
        if (!step.source.empty() &&
            std::find(finding.sources.begin(), finding.sources.end(), step.source) == finding.sources.end())
            finding.sources.push_back(step.source);
}

std::string name_another_wood(const PartState& state)
{
    std::string words = "name a wood whose figures are held";
    if (state.record && !state.record->nearest.empty()) words += ", such as its nearest relative " + state.record->nearest;
    return words;
}

Finding cannot_tell(std::string check, std::string subject, std::string headline, Remedy remedy)
{
    Finding finding;
    finding.check = std::move(check);
    finding.subject = std::move(subject);
    finding.verdict = Verdict::cannot_tell;
    finding.headline = std::move(headline);
    finding.remedy = std::move(remedy);
    return finding;
}

double strain_along(const Part& part, const BoardStrain& strain, Axis axis)
{
    if (axis == part.grain) return strain.along;
    return axis == part.face ? strain.thickness : strain.width;
}

std::string direction_words(const Part& part, Axis axis)
{
    if (axis == part.grain) return "along its grain";
    return axis == part.face ? "through its thickness" : "across its width";
}

Axis main_axis_of(const Point& normal)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (std::abs(normal[i]) > std::abs(normal[best])) best = i;
    return static_cast<Axis>(best);
}

std::string way_words(const Point& direction)
{
    constexpr std::array<std::string_view, 3> ways{"left to right", "front to back", "up and down"};
    std::array<std::size_t, 3> order{0, 1, 2};
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return std::abs(direction[a]) > std::abs(direction[b]) + 1e-9; });
    const double most = std::abs(direction[order[0]]);
    if (most > 0.9998) return std::string(ways[order[0]]);
    return fmt::format("slanting, {:.0f}° from {} towards {}", in_degrees(radians(std::acos(std::min(1.0, most)))),
                       ways[order[0]], ways[order[1]]);
}

bool has_glue(const Prepared& prepared, const Contact& contact)
{
    return contact.joint && prepared.piece->joints[*contact.joint].glue.has_value();
}

bool in_line(const Box& a, const Box& b, Axis along)
{
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        if (axis == along) continue;
        const std::size_t i = index_of(axis);
        if (std::abs(a.lo[i] - b.lo[i]) > kTouch || std::abs(a.hi[i] - b.hi[i]) > kTouch) return false;
    }
    return true;
}

} // namespace jointwright
