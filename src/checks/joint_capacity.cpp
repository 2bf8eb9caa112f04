// Does every joint bear what turns, pulls and shears it?

#include "bond/joint_capacity.hpp"

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "checks/joint_demand.hpp"
#include "checks/joint_sizes.hpp"
#include "checks/screw_fallback.hpp"
#include "measure/write.hpp"
#include "wood/resistance.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

double along_of(const Point& v, const Point& direction)
{
    return v[0] * direction[0] + v[1] * direction[1] + v[2] * direction[2];
}

/// A demand held against what the joint resists.
struct JointUse {
    double moment = 0, flat = 0, pull = 0, shear = 0; ///< N m, N m, N, N
    double factor = 0;                                ///< from a mean to what is allowed
    double use = 0, warns_to = 1;
    bool turned = false; ///< the moment uses the most of it
};

/// Demand over resistance; what a joint has no strength for cannot be asked of it.
double used(double demand, double resistance)
{
    if (std::abs(demand) < 1e-9) return 0;
    return resistance > 0 ? std::abs(demand) / resistance : std::numeric_limits<double>::infinity();
}

JointUse use_of_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointCapacity& capacity,
                      const JointDemand& demand)
{
    const Facts& facts = *prepared.facts;
    const WoodState &a = prepared.state_of(contact.first).loaded, &b = prepared.state_of(contact.second).loaded;
    const WoodKind kind = a.shear->value <= b.shear->value ? a.kind : b.kind;
    JointUse u;
    u.factor = demand.proof ? joint_proof_factor(facts) : joint_service_factor(facts, kind, demand.duration);
    u.warns_to = demand.proof ? proof_warn_limit(facts) : service_warn_limit(facts, StrengthKind::shear, kind);
    u.moment = std::abs(along_of(demand.moment, joint.main));
    u.flat = std::abs(along_of(demand.moment, joint.flat));
    const double along = along_of(demand.force, joint.into);
    // What presses the parts together needs no glue.
    u.pull = joint.directed ? std::max(0.0, along) : std::abs(along);
    u.shear = std::sqrt(std::max(0.0, along_of(demand.force, demand.force) - along * along));
    // Shape hands down the shear where there is a section to do it; else the glue must.
    const double shear_mean = capacity.section_shear.value() > 0 ? capacity.section_shear.value() : capacity.withdrawal.value();
    const double flat_mean = capacity.flat.value() > 0 ? capacity.flat.value() : capacity.mean.value();
    const double m = used(u.moment, capacity.mean.value() * u.factor), f = used(u.flat, flat_mean * u.factor),
                 p = used(u.pull, capacity.withdrawal.value() * u.factor), v = used(u.shear, shear_mean * u.factor);
    u.use = std::sqrt(m * m + f * f + p * p + v * v);
    u.turned = std::hypot(m, f) > std::hypot(p, v);
    return u;
}

std::string percent_words(double use)
{
    return std::isfinite(use) ? fmt::format("{:.0f} %", use * 100) : std::string("more than there is");
}

std::string governing_words(const JointUse& u)
{
    if (u.turned) return fmt::format("turned by {} N m", write_number(std::max(u.moment, u.flat), 3));
    return fmt::format("loaded with {} N", write_number(std::hypot(u.pull, u.shear), 3));
}

Verdict verdict_of_joint(const JointUse& u)
{
    if (u.use <= 1) return Verdict::pass;
    if (u.use <= u.warns_to) return Verdict::warn;
    return Verdict::fail;
}

std::string headline_of(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointDemand& demand,
                        const JointUse& u, Verdict verdict)
{
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    const std::string what = fmt::format("The {} of {} in {}", name_of(joint.form), first, second);
    if (verdict == Verdict::pass)
        return fmt::format("{} holds with {}: {}, {} used.", what, demand.name, governing_words(u), percent_words(u.use));
    if (verdict == Verdict::fail)
        return fmt::format("{} is too weak: {} with {}, {} used.", what, governing_words(u), demand.name, percent_words(u.use));
    return fmt::format("{} is loaded beyond the customary margin: {} with {}, {} used.", what, governing_words(u), demand.name,
                       percent_words(u.use));
}

std::string remedy_of(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, const JointDemand& demand,
                      const JointUse& u)
{
    std::string remedy;
    switch (joint.form) {
    case JointForm::tenon:
        remedy = fmt::format(
            "make the tenon longer or wider: its cheeks, {} × {}, want {:.1f} times the area; or use a deeper rail",
            size_words(prepared, in_metres(joint.sizes.length)), size_words(prepared, in_metres(joint.sizes.width)), u.use);
        break;
    case JointForm::dowels: remedy = "use longer, thicker or more dowels, or a tenon"; break;
    default: remedy = "make the glued faces larger, or add a stretcher or corner blocks"; break;
    }
    if (demand.moment != Point{}) remedy += "; a stretcher low down takes much of the push";
    const auto screws =
        screwed_instead(prepared, contact, {u.shear, u.pull, std::max(u.moment, u.flat), demand.duration, joint.into});
    return screws.empty() ? remedy : remedy + "; " + screws;
}

std::vector<NamedValue> values_of_joint(const JointCapacity& c, const JointUse& u)
{
    std::vector<NamedValue> values = {
        {"moment", std::max(u.moment, u.flat), "N m"},
        {"moment_resistance", (u.flat > u.moment && c.flat.value() > 0 ? c.flat : c.mean).value() * u.factor, "N m"},
        {"moment_mean", c.mean.value(), "N m"},
        {"pull", u.pull, "N"},
        {"withdrawal_resistance", c.withdrawal.value() * u.factor, "N"},
        {"shear", u.shear, "N"},
        {"glue_line_moment", c.glue_line.value(), "N m"}};
    if (c.published) values.push_back({"published_moment", c.published->value(), "N m"});
    return values;
}

Working working_of_joint(const Facts& facts, const JointCapacity& c, const JointDemand& demand, const JointUse& u,
                         Working strength)
{
    Working w = std::move(strength);
    w.push_back({fmt::format("Demand: {}", demand.name), "M", demand.sum, std::max(u.moment, u.flat), "N m", demand.source});
    w.push_back(
        {demand.proof ? "From the mean to what proof loads may ask, repeated use" : "From the mean to what is allowed in service",
         demand.proof ? "0.75 × (2/3)/1.15" : "0.75 k_dur/k", "", u.factor, "1",
         facts.number(demand.proof ? "repeated_use_share" : "joint_lower_share").cite.text()});
    if (c.section_shear.value() > 0 && u.shear > 0)
        w.push_back(
            {"Shear that its own section hands down (mean)", "V = 2/3 f_v t w", "", c.section_shear.value(), "N", "mechanics"});
    if (std::isfinite(u.use))
        w.push_back({"Together", "u = √((M/M_r)² + (N/N_r)² + (V/V_r)²)",
                     fmt::format("M = {} N m, N = {} N, V = {} N", write_number(std::max(u.moment, u.flat), 3),
                                 write_number(u.pull, 3), write_number(u.shear, 3)),
                     u.use, "1", "interaction of strengths (engineering estimate)"});
    for (const std::string& line : c.range)
        w.push_back({"Range: " + line, "", "", c.mean.value(), "N m", "see the strength above"});
    return w;
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
    if (std::isfinite(u.use)) f.utilisation = u.use;
    f.verdict = verdict_of_joint(u);
    f.headline = headline_of(prepared, contact, joint, demand, u, f.verdict);
    if (f.verdict != Verdict::pass) f.remedy = remedy_of(prepared, contact, joint, demand, u);
    f.values = values_of_joint(capacity, u);
    f.working = working_of_joint(*prepared.facts, capacity, demand, u, std::move(strength));
    gather_sources(f);
    return f;
}

/// A dry joint carries by its shape alone; where a push must be borne, the pegs or wedges that do it are not reckoned.
Finding dry_joint(const Prepared& prepared, const Contact& contact, const DrawnJoint& joint, bool pushed)
{
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    if (pushed)
        return cannot_tell(
            "joint-capacity", pair_subject(prepared, contact),
            fmt::format("Whether the dry {} of {} in {} keeps the piece from racking cannot be told: no published strength of "
                        "pegged or wedged joints is held here.",
                        name_of(joint.form), first, second),
            "glue it, or test-load the piece with a sideways push");
    Finding f;
    f.check = "joint-capacity";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.headline =
        fmt::format("The dry {} of {} in {} hands its load down by its shape; it holds nothing against being pulled out.",
                    name_of(joint.form), first, second);
    return f;
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
        const Joint& stated = prepared.piece->joints[*contact.joint];
        if (!stated.glue) {
            constexpr double turned = 5; // N m: less is what its fit takes
            const bool pushed = std::any_of(demands.begin(), demands.end(), [](const JointDemand& d) {
                return d.push && std::hypot(d.moment[0], d.moment[1], d.moment[2]) > turned;
            });
            keep_worst(findings, dry_joint(prepared, contact, *joint, pushed));
            continue;
        }
        const PartState &a = prepared.state_of(contact.first), &b = prepared.state_of(contact.second);
        Working working;
        const auto capacity =
            joint_capacity(*prepared.facts, joint->form, joint->sizes,
                           {&a.loaded, &b.loaded, a.species, b.species, prepared.facts->find_glue(*stated.glue)}, &working);
        for (const JointDemand& demand : demands)
            keep_worst(findings, judge_joint(prepared, contact, *joint, *capacity, demand, working));
    }
    return findings;
}

} // namespace jointwright
