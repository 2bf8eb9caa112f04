// Does every joint bear what turns, pulls and shears it?

#include "bond/joints/joint_capacity.hpp"

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/joint_as_drawn.hpp"
#include "judging/joints/joint_demand.hpp"
#include "judging/joints/joint_told.hpp"
#include "judging/joints/joint_use.hpp"
#include "judging/joints/screw_fallback.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kTwentieths = 20;  // areas asked for are rounded up to a twentieth
constexpr double kUnheldPull = 100; // N: more than this on end-grain glue alone is told

JointWoods woods_of(const Prepared& prepared, const Contact& contact)
{
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const PartState &a = prepared.state_of(contact.first), &b = prepared.state_of(contact.second);
    return {&a.loaded, &b.loaded, a.species, b.species, joint.glue ? prepared.facts->find_glue(*joint.glue) : nullptr};
}

std::string percent_words(double use)
{
    return std::isfinite(use) ? fmt::format("{:.0f} %", use * 100) : std::string("more than there is");
}

std::string governing_words(const JointUse& u)
{
    if (u.twists) return fmt::format("twisted by {} N m about the rail's length", write_number(u.torsion, 3));
    if (u.turned) return fmt::format("turned by {} N m", write_number(std::max(u.moment, u.flat), 3));
    return fmt::format("loaded with {} N", write_number(std::hypot(u.pull, u.shear), 3));
}

/// The pull that a let-in end takes by the glue on its end grain alone: more of it warns.
bool pulls_on_end_grain(const Joint& joint, const DrawnJoint& drawn, const JointUse& u)
{
    return joint.glue && u.unheld && drawn.directed && u.pull > kUnheldPull;
}

Verdict verdict_of_joint(const JointUse& u, bool pulled, bool untested)
{
    if (u.use <= 1) return pulled || untested ? Verdict::warn : Verdict::pass;
    // Wood that is pressed in gives without breaking: the rest of the piece takes over, or sways.
    return u.use <= u.warns_to || u.works_loose ? Verdict::warn : Verdict::fail;
}

bool is_mitred(const DrawnJoint& joint)
{
    return joint.form == JointForm::mitre || joint.form == JointForm::splined_mitre || joint.form == JointForm::keyed_mitre;
}

/// "The dry tenon of rail in leg", "The mitre of stile and rail", and whether it is one thing or several.
struct JointWords {
    std::string what;
    bool one = true;
};
JointWords words_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint)
{
    const bool dry = !prepared.piece->joints[*contact.joint].glue;
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    if (joint.form == JointForm::dowels && prepared.piece->joints[*contact.joint].kind == JointKind::mitre)
        return {fmt::format("The dowels in the mitre of {} and {}", first, second), false};
    const bool comb = joint.form == JointForm::dovetail && joint.sizes.slope == 0;
    return {fmt::format("The {}{} of {} {} {}", dry ? "dry " : "", comb ? "comb joint" : name_of(joint.form), first,
                        is_mitred(joint) ? "and" : "in", second),
            joint.form != JointForm::dowels};
}

std::string headline_of(const Prepared& prepared, const JointWords& words, const JointCapacity& capacity,
                        const JointDemand& demand, const JointUse& u, Verdict verdict, bool pulled)
{
    const std::string asked = fmt::format("{} with {}, {} used", governing_words(u), demand.name, percent_words(u.use));
    std::string line;
    if (verdict == Verdict::fail)
        line = fmt::format("{} {} too weak: {}", words.what, words.one ? "is" : "are", asked);
    else if (u.works_loose)
        line = fmt::format("{} {} loose in time, its walls pressed in: {}", words.what, words.one ? "works" : "work", asked);
    else if (u.use > 1)
        line = fmt::format("{} {} loaded beyond the customary margin: {}", words.what, words.one ? "is" : "are", asked);
    else
        line = fmt::format("{} {}: {}", words.what, words.one ? "holds" : "hold", asked);
    if (pulled)
        line +=
            fmt::format("; but nothing except glue on end grain keeps it from being drawn out by {} N", write_number(u.pull, 3));
    for (const UntestedSize& size : capacity.untested)
        line +=
            fmt::format("; a tenon {} {} lies outside the published tests ({} to {})", size_words(prepared, in_metres(size.size)),
                        size.what, size_words(prepared, in_metres(size.least)), size_words(prepared, in_metres(size.most)));
    for (const std::string& advice : capacity.advice) line += "; " + advice;
    return line + ".";
}

Remedy remedy_of(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointDemand& demand,
                 const JointUse& u)
{
    Remedy remedy;
    switch (joint.form) {
    case JointForm::tenon:
        if (u.sheared || u.twists) {
            remedy = fmt::format(
                "make the tenon thicker or wider: its section, {} × {}, wants {} times the {}",
                size_words(prepared, in_metres(joint.sizes.thickness)), size_words(prepared, in_metres(joint.sizes.width)),
                write_number(std::ceil(u.use * kTwentieths) / kTwentieths), u.twists ? "strength against twisting" : "area");
            break;
        }
        remedy =
            fmt::format("make the tenon longer or wider: its cheeks, {} × {}, want at least {} times the area",
                        size_words(prepared, in_metres(joint.sizes.length)), size_words(prepared, in_metres(joint.sizes.width)),
                        write_number(std::ceil(u.use * kTwentieths) / kTwentieths));
        remedy.add("use a deeper rail");
        break;
    case JointForm::dowels: remedy = "use longer, thicker or more dowels, or a tenon"; break;
    case JointForm::housing:
    case JointForm::groove:
        remedy = u.works_loose ? "keep the piece square by a back, or by a rail tenoned or screwed in"
                 : u.use > 1   ? "let it in deeper, leave more wood beside the recess, or put a cleat under it"
                               : "screw it from outside, slide it in by a dovetail, or let a back hold the sides together";
        if (u.works_loose) remedy.add("let it in deeper");
        break;
    case JointForm::sliding_dovetail: remedy = "make the tail deeper or longer, or screw it as well"; break;
    case JointForm::mitre: remedy = "key, spline or dowel the mitre, or use a bridle or a tenon"; break;
    case JointForm::splined_mitre:
    case JointForm::keyed_mitre: remedy = "make the slip deeper, use more of them, or use a bridle or a tenon"; break;
    default: remedy = "make the glued faces larger, or add a stretcher or corner blocks"; break;
    }
    if (joint.sizes.pegs.count > 0 && !prepared.piece->joints[*contact.joint].glue)
        remedy = "use thicker pegs or more of them, a longer tenon so that more wood stays behind them, or glue it";
    if (u.use <= 1) return remedy; // it is only drawn out
    if (demand.moment != Point{}) remedy.besides("a stretcher low down takes much of the push");
    offer_screws(remedy, prepared, contact, {u.shear, u.pull, std::max(u.moment, u.flat), demand.duration, joint.into});
    return remedy;
}

/// People bear on a joint of sizes that nobody published a test of, and neither would the largest tested sizes do in place of larger ones, nor does
/// enough remain where it is smaller. A longer or thicker tenon is no weaker.
bool relies_on_untested(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                        const JointDemand& demand)
{
    if (capacity.untested.empty() || prepared.piece->use != Use::seat) return false;
    if (demand.lift || (!demand.proof && demand.duration == LoadDuration::lasting)) return false;
    const JointSizes tested = within_tested(*prepared.facts, joint.sizes);
    const auto known = joint_capacity(*prepared.facts, joint.form, tested, woods_of(prepared, contact));
    return !known || use_of_joint(prepared, contact, joint, *known, demand).use > sure_share(*known);
}

/// What brings a tenon back to what has been tested.
std::string tested_sizes_words(const Prepared& prepared, const JointCapacity& capacity)
{
    std::string words;
    for (const UntestedSize& size : capacity.untested) {
        if (!words.empty()) words += "; ";
        words += size.size < size.least
                     ? fmt::format("make the tenon at least {} {}", size_words(prepared, in_metres(size.least)), size.what)
                     : fmt::format("a tenon more than {} {} has not been tested: make it wider, or use a deeper rail, instead",
                                   size_words(prepared, in_metres(size.most)), size.what);
    }
    return words;
}

Finding judge_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                    const JointDemand& demand, Working strength)
{
    const std::string &species = prepared.state_of(contact.first).species, &other = prepared.state_of(contact.second).species;
    const JointUse u = use_of_joint(prepared, contact, joint, capacity, demand);
    Finding f;
    f.check = "joint-capacity";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name,
                          species == other ? species : species + " in " + other);
    f.about.copies = {contact.first, contact.second};
    if (std::isfinite(u.use)) f.utilisation = u.use;
    const bool pulled = pulls_on_end_grain(prepared.piece->joints[*contact.joint], joint, u);
    const bool untested = relies_on_untested(prepared, contact, joint, capacity, demand);
    f.verdict = verdict_of_joint(u, pulled, untested);
    f.headline = headline_of(prepared, words_of_joint(prepared, contact, joint), capacity, demand, u, f.verdict, pulled);
    if (f.verdict != Verdict::pass)
        f.remedy = untested && u.use <= 1 && !pulled ? Remedy(tested_sizes_words(prepared, capacity))
                                                     : remedy_of(prepared, contact, joint, demand, u);
    f.values = values_of_joint(capacity, u);
    f.working = working_of_joint(*prepared.facts, joint.form, name_of(prepared.piece->limits.level), capacity, demand, u,
                                 std::move(strength));
    gather_sources(f);
    return f;
}

/// A dry joint without pegs carries by its shape alone. What that does not bear, wedges may, whose strength nothing published tells.
Finding judge_dry(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                  const JointDemand& demand, const Working& strength)
{
    Finding f = judge_joint(prepared, contact, joint, capacity, demand, strength);
    const std::string what = words_of_joint(prepared, contact, joint).what;
    if (f.verdict == Verdict::pass) {
        f.headline.pop_back();
        f.headline += joint.form == JointForm::groove ? "."
                      : joint.sizes.wedge.count > 0   ? "; its wedge alone keeps it from being drawn out."
                      : capacity.wedge.value() > 0    ? "; its tails alone keep it from being drawn out."
                                                      : "; nothing in it keeps it from being drawn out.";
        return f;
    }
    const double turned = finding_value(f, "moment").value_or(0), borne = finding_value(f, "moment_resistance").value_or(0);
    if (turned <= borne) return f;
    return cannot_tell("joint-capacity", f.subject,
                       fmt::format("{} is turned by {} N m with {}, of which its shape alone bears {} N m; whether wedges in it "
                                   "bear the rest cannot be told: no published strength of them is known.",
                                   what, write_number(turned, 3), demand.name, write_number(borne, 2)),
                       Remedy::either({"peg it, and state pegs = { diameter = ..., count = ... }", "glue it"}));
}

std::optional<Finding> missing_for_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint)
{
    const PartState &a = prepared.state_of(contact.first), &b = prepared.state_of(contact.second);
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    if (!joint.missing.empty())
        return cannot_tell(
            "joint-capacity", pair_subject(prepared, contact),
            fmt::format("The {} of {} in {} cannot be judged: its sizes are missing.", name_of(joint.form), first, second),
            joint.missing);
    if (!a.loaded.shear || !b.loaded.shear)
        return cannot_tell("joint-capacity", pair_subject(prepared, contact),
                           fmt::format("The {} of {} in {} cannot be judged: no shear strength is known for {}.",
                                       name_of(joint.form), first, second, a.loaded.shear ? b.species : a.species),
                           "give [[wood]] properties with shear_strength");
    return std::nullopt;
}

/// A panel that floats in its groove and carries next to nothing is no joint to be judged.
bool carries_little(const DrawnJoint& joint, const JointDemand& demand)
{
    constexpr double little = 20; // N
    const auto size = [](const Point& p) { return std::hypot(p[0], p[1], p[2]); };
    return joint.form == JointForm::groove && size(demand.force) < little && size(demand.moment) < kTakenByFit;
}

void judge_all(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const std::vector<JointDemand>& demands,
               std::vector<Finding>& findings)
{
    const Joint& stated = prepared.piece->joints[*contact.joint];
    const JointWoods woods = woods_of(prepared, contact);
    Working working;
    auto capacity = joint_capacity(*prepared.facts, joint.form, joint.sizes, woods, &working);
    if (!capacity) {
        keep_worst(findings, cannot_tell("joint-capacity", pair_subject(prepared, contact),
                                         words_of_joint(prepared, contact, joint).what +
                                             " cannot be judged: a strength of its wood is not known.",
                                         "give [[wood]] properties with shear_strength, bending_strength and tension_across"));
        return;
    }
    if (stated.kind == JointKind::mitre) capacity->advice.clear(); // of dowels in a rail's end
    for (const JointDemand& demand : demands) {
        if (carries_little(joint, demand)) continue;
        const bool by_shape = !woods.glue && joint.sizes.pegs.count == 0;
        keep_worst(findings, by_shape ? judge_dry(prepared, contact, joint, *capacity, demand, working)
                                      : judge_joint(prepared, contact, joint, *capacity, demand, working));
    }
}

} // namespace

std::vector<Finding> check_joint_capacity(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        const auto joint = drawn_joint(prepared, contact);
        if (!joint) continue;
        const std::vector<JointDemand> demands = joint_demand(prepared, c);
        if (demands.empty()) continue;
        if (auto missing = missing_for_joint(prepared, contact, *joint)) {
            keep_worst(findings, *std::move(missing));
            continue;
        }
        judge_all(prepared, contact, *joint, demands, findings);
    }
    return findings;
}

} // namespace jointwright
