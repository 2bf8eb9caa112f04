// Where one part presses on the long grain of another: does it dent?

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace jointwright {

namespace {

constexpr double kNoForce = 1; // N: less is rounding

constexpr double kFade =
    0.0254; // m: over the last inch what a bearing counts as longer fades out, so that no hair's breadth decides

/// The level faces on which one part presses the other, and the part that is pressed across its grain.
struct PressedFace {
    double area = 0;
    double counts_as = 0;    ///< with the wood beside it that helps to bear [m²]
    std::size_t pressed = 0; ///< the copy whose grain lies in the face; of two such the one that bears less
};

/// Where a face lies along the grain of a copy, from its lower end.
std::pair<double, double> along_grain(const MemberLine& line, const Patch& patch)
{
    double from = std::numeric_limits<double>::infinity(), to = -from;
    for (const Point& p : patch.outline) {
        const double s = line.along(kernel::Vec3(p[0], p[1], p[2]));
        from = std::min(from, s);
        to = std::max(to, s);
    }
    return {from, to};
}

/// What a face of a bearing counts as, over its area: the wood beside it along the grain hangs on to it.
double counted_share(const Facts& facts, const MemberLine& pressed, const Patch& patch)
{
    const auto [from, to] = along_grain(pressed, patch);
    if (to - from < kTouch) return 1;
    const double from_end = std::min(from, pressed.length - to);
    const double fades = std::clamp((from_end - facts.number("bearing_more_from_end").value) / kFade, 0.0, 1.0) *
                         std::clamp((facts.number("bearing_more_below").value - (to - from)) / kFade, 0.0, 1.0);
    return 1 + fades * facts.number("bearing_more_length").value / (to - from);
}

/// The level faces as they press one of the two copies across its grain; nothing where they show its end grain.
std::optional<PressedFace> face_on(const Prepared& prepared, const Contact& contact, std::size_t copy)
{
    PressedFace face;
    face.pressed = copy;
    const MemberLine& line = prepared.statics.frame->lines()[copy];
    bool across = false;
    for (const Patch& p : contact.patches) {
        if (std::abs(p.normal[2]) < 0.9 || p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
        const bool end_grain = copy == contact.first ? p.end_grain_first : p.end_grain_second;
        if (p.bears <= 0) continue;
        const double area = p.area; // all of it: what a narrow face takes grows from nothing, and so does the stress on it
        across = across || !end_grain;
        face.area += area;
        face.counts_as += end_grain ? area : area * counted_share(*prepared.facts, line, p);
    }
    if (!across || face.area <= 0) return std::nullopt;
    return face;
}

std::optional<PressedFace> pressed_face_of(const Prepared& prepared, const Contact& contact)
{
    const auto first = face_on(prepared, contact, contact.first), second = face_on(prepared, contact, contact.second);
    if (!first || !second) return first ? first : second;
    const auto bears = [&](const PressedFace& face) {
        const auto& s = prepared.state_of(face.pressed).loaded.compression_across;
        return s ? s->value.value() * face.counts_as : 0.0;
    };
    return bears(*first) <= bears(*second) ? first : second;
}

Finding judge_bearing(const Prepared& prepared, const Contact& contact, const PressedFace& face, const BearingForce& force)
{
    const Facts& facts = *prepared.facts;
    const LoadCase& load_case = prepared.statics.cases.cases[force.load_case];
    const PartState& state = prepared.state_of(face.pressed);
    Finding f;
    f.check = "bearing";
    f.subject = pair_subject(prepared, contact);
    const auto& strength = state.loaded.compression_across;
    if (!strength)
        return cannot_tell("bearing", f.subject,
                           fmt::format("Whether {} dents cannot be told: no strength across the grain is known for {}.",
                                       prepared.piece->label(face.pressed, true), state.species),
                           name_another_wood(state));
    const Datum<double>& divisor = facts.number("bearing_pass_divisor");
    const double mean = strength->value.value(), resistance = load_case.proof ? mean : mean / divisor.value;
    const double stress = force.force / face.counts_as, use = stress / resistance;
    f.utilisation = use;
    f.verdict = use <= 1 ? Verdict::pass : stress <= mean ? Verdict::warn : Verdict::fail;
    f.fails_from = mean / resistance;
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), load_case.name, state.species);
    f.about.copies = {contact.first, contact.second};
    const char* words = f.verdict == Verdict::pass   ? "does not dent"
                        : f.verdict == Verdict::warn ? "may dent a little"
                                                     : "is crushed";
    f.headline = fmt::format("{} {} where {} presses on it: {} across its grain, {} allowed, with {}.",
                             prepared.piece->label(face.pressed, true), words,
                             prepared.piece->label(face.pressed == contact.first ? contact.second : contact.first, true),
                             write_stress(pascals(stress)), write_stress(pascals(resistance)), load_case.name);
    if (f.verdict != Verdict::pass)
        f.remedy = fmt::format("make the face {} times as large, or take a denser wood for {}", write_number(use, 2),
                               prepared.piece->part_of(face.pressed).id);
    f.values = {{"stress", stress, "Pa"},
                {"resistance", resistance, "Pa"},
                {"force", force.force, "N"},
                {"area", face.area, "m2"},
                {"area_counted", face.counts_as, "m2"}};
    f.working.push_back({"Force pressed on it", "F", load_case.name, force.force, "N", load_case.source});
    f.working.push_back(
        {"Level faces that press, end grain of what stands on it included", "A", "", face.area, "m2", "geometry"});
    if (face.counts_as > face.area * (1 + 1e-6))
        f.working.push_back({"Counts as, short along the grain and far from its ends: the wood beside it helps",
                             "A' = A (ℓ + 3/8 in)/ℓ", "", face.counts_as, "m2", facts.number("bearing_more_length").cite.text()});
    f.working.push_back({"Stress across the grain", face.counts_as > face.area * (1 + 1e-6) ? "σ = F/A'" : "σ = F/A", "", stress,
                         "Pa", facts.cite("mechanics", "even pressure")});
    f.working.push_back(
        {fmt::format("Mean stress of {} at the proportional limit{}", state.species, strength->estimated ? ", estimated" : ""),
         "f", strength->note, mean, "Pa", strength->source});
    f.working.push_back({load_case.proof ? "Proof loads are held against the mean" : "Allowed without a dent",
                         load_case.proof ? "f" : "f/1.67", "", resistance, "Pa", divisor.cite.text()});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_bearing(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const auto& contacts = prepared.layout->contacts;
    if (!prepared.statics.frame) return findings;
    std::vector<std::optional<PressedFace>> faces(contacts.size());
    for (std::size_t c = 0; c < contacts.size(); ++c) faces[c] = pressed_face_of(prepared, contacts[c]);
    // Of each contact only the largest service and the largest proof force can govern.
    std::vector<std::array<const BearingForce*, 2>> largest(contacts.size(), {nullptr, nullptr});
    for (const BearingForce& force : prepared.statics.forces) {
        if (!faces[force.contact] || force.force < kNoForce || !prepared.statics.settled[force.load_case]) continue;
        if (!asks_members(prepared.statics.cases.cases[force.load_case].kind)) continue;
        const BearingForce*& kept = largest[force.contact][prepared.statics.cases.cases[force.load_case].proof ? 1 : 0];
        if (!kept || force.force > kept->force * (1 + 1e-9)) kept = &force;
    }
    for (std::size_t c = 0; c < contacts.size(); ++c)
        for (const BearingForce* force : largest[c])
            if (force) keep_worst(findings, judge_bearing(prepared, contacts[c], *faces[c], *force));
    return findings;
}

} // namespace jointwright
