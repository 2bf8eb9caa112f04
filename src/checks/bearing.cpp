// Where one part presses on the long grain of another: does it dent?

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "measure/write.hpp"
#include "mechanics/structure.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kNoForce = 1; // N: less is rounding

/// The level faces on which one part presses the other, and the part that is pressed across its grain.
struct PressedFace {
    double area = 0;
    std::size_t pressed = 0; ///< the copy whose grain lies in the face; of two such the weaker wood
};

std::optional<PressedFace> pressed_face_of(const Prepared& prepared, const Contact& contact)
{
    PressedFace face;
    bool first = false, second = false; // pressed across its grain
    for (const Patch& p : contact.patches) {
        if (std::abs(p.normal[2]) < 0.9 || p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
        face.area += p.area;
        first = first || !p.end_grain_first;
        second = second || !p.end_grain_second;
    }
    if (face.area <= 0 || (!first && !second)) return std::nullopt;
    const auto strength = [&](std::size_t copy) {
        const auto& s = prepared.state_of(copy).loaded.compression_across;
        return s ? s->value.value() : 0.0;
    };
    const bool take_first = first && (!second || strength(contact.first) <= strength(contact.second));
    face.pressed = take_first ? contact.first : contact.second;
    return face;
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
                           "name a species of the table");
    const Datum<double>& divisor = facts.number("bearing_pass_divisor");
    const double mean = strength->value.value(), resistance = load_case.proof ? mean : mean / divisor.value;
    const double stress = force.force / face.area, use = stress / resistance;
    f.utilisation = use;
    f.verdict = use <= 1 ? Verdict::pass : stress <= mean ? Verdict::warn : Verdict::fail;
    f.fails_from = mean / resistance;
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), load_case.name, state.species);
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
    f.values = {
        {"stress", stress, "Pa"}, {"resistance", resistance, "Pa"}, {"force", force.force, "N"}, {"area", face.area, "m2"}};
    f.working.push_back({"Force pressed on it", "F", load_case.name, force.force, "N", load_case.source});
    f.working.push_back(
        {"Level faces that press, end grain of what stands on it included", "A", "", face.area, "m2", "geometry"});
    f.working.push_back({"Stress across the grain", "σ = F/A", "", stress, "Pa", facts.cite("mechanics", "even pressure")});
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
