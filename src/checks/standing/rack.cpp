// How far the piece sways when it is pushed, against what feels firm and what works its joints loose.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joint_bounds.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

/// The joint that a push turns most.
struct TurnedJoint {
    std::size_t contact = 0;
    double moment = 0;
};

std::optional<TurnedJoint> most_turned(const Prepared& prepared, std::size_t load_case)
{
    std::optional<TurnedJoint> most;
    for (const JointForce& j : prepared.statics.joints) {
        if (j.load_case != load_case) continue;
        const double moment = std::hypot(j.moment[0], j.moment[1], j.moment[2]);
        if (!most || moment > most->moment * (1 + 1e-9)) most = TurnedJoint{j.contact, moment};
    }
    return most;
}

bool all_stiffness_known(const Prepared& prepared)
{
    return std::all_of(prepared.parts.begin(), prepared.parts.end(),
                       [](const PartState& state) { return state.loaded.modulus_along.has_value(); });
}

} // namespace

std::vector<Finding> check_rack(const Prepared& prepared)
{
    const auto& cases = prepared.statics.cases.cases;
    const Facts& facts = *prepared.facts;
    std::optional<std::size_t> worst;
    double use = 0, limit = 0;
    const Datum<double>& share = facts.number("sway_pass");
    for (std::size_t k = 0; k < cases.size(); ++k) {
        if (!cases[k].push || !prepared.statics.settled[k]) continue;
        const SwayResult& s = prepared.statics.sways[k];
        if (s.height <= 0) continue;
        const double u = s.sway / (s.height / share.value);
        if (worst && u <= use * (1 + 1e-9)) continue;
        worst = k;
        use = u;
        limit = s.height / share.value;
    }
    if (!worst) return {};
    if (!all_stiffness_known(prepared))
        return {cannot_tell("rack", prepared.piece->name,
                            "How far the piece sways cannot be told: the modulus of elasticity of some part is not known.",
                            "give [[wood]] properties with modulus")};
    const SwayResult& s = prepared.statics.sways[*worst];
    const Datum<double>& warn = facts.number("sway_warn_factor");
    Finding f;
    f.check = "rack";
    f.subject = prepared.piece->name;
    f.utilisation = use;
    f.fails_from = warn.value;
    f.verdict = use <= 1 ? Verdict::pass : use <= warn.value ? Verdict::warn : Verdict::fail;
    f.where = fmt::format("{}, {}", prepared.piece->label(s.copy, true), cases[*worst].name);
    f.about.copies = {s.copy};
    const char* words = f.verdict == Verdict::pass ? "stands firm" : f.verdict == Verdict::warn ? "is shaky" : "racks";
    f.headline = fmt::format("The piece {}: it sways {} at a height of {}, where {} is felt as firm, with {}.", words,
                             small_words(prepared, s.sway), size_words(prepared, s.height), small_words(prepared, limit),
                             cases[*worst].name);
    if (s.sway > 0.1 * s.height)
        f.headline = fmt::format("The piece folds up with {}: its joints do not hold it upright.", cases[*worst].name);
    if (f.verdict != Verdict::pass)
        f.remedy = "deepen the rails and their tenons, add low stretchers, a back or braces across the corners";
    f.values = {{"sway", s.sway, "m"}, {"limit", limit, "m"}, {"height", s.height, "m"}};
    f.working.push_back(
        {"Load on top that goes with the push", "", cases[*worst].name, cases[*worst].total, "N", cases[*worst].source});
    f.working.push_back({"Sway, the piece solved as one frame", "", "joints as springs, feet that do not slide", s.sway, "m",
                         "mechanics of frames (Timoshenko beams and plates)"});
    f.working.push_back({"Frames of centrelines sway less than solid joints would, by about this share", "", "",
                         facts.number("frame_sway_low").value, "1", facts.number("frame_sway_low").cite.text()});
    if (s.play > 0) {
        f.values.push_back({"play", s.play, "m"});
        f.working.push_back({"Of it, what the clearance of its joints lets it lean before their walls press", "θ = 2c/e", "",
                             s.play, "m", "geometry of the joints"});
    }
    add_joint_bounds(prepared, f, {"sway", s.soft, s.stiff, std::nullopt, "m", small_words(prepared, s.stiff)});
    warn_of_bounds(f, s.soft, warn.value * limit,
                   fmt::format("with joints a third as stiff it would sway {}", small_words(prepared, s.soft)));
    f.working.push_back({"Felt as firm", "h/100", size_words(prepared, s.height), limit, "m", share.cite.text()});
    if (const auto joint = most_turned(prepared, *worst)) {
        f.values.push_back({"largest_joint_moment", joint->moment, "N m"});
        f.working.push_back({fmt::format("Largest moment on a joint under this push: {}",
                                         pair_place(prepared, prepared.layout->contacts[joint->contact])),
                             "M", "", joint->moment, "N m", "mechanics of frames (Timoshenko beams and plates)"});
    }
    gather_sources(f);
    return {f};
}

} // namespace jointwright
