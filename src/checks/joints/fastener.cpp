// Do screws and buttons hold, do they reach, and do they stand far enough from each other and the ends?

#include "bond/fastener.hpp"

#include "checks/joints/hinge.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/fasteners_as_drawn.hpp"
#include "judging/joints/glue_demand.hpp"
#include "judging/joints/joint_demand.hpp"
#include "judging/joints/screw_fallback.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "wood/resistance.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace jointwright {

namespace {

constexpr double kBeyondAllowed =
    4.0 / 3; // the proportional limit over the allowable: Civil Engineering Formulas, eq. 6.38 against table 8-4
constexpr double kNoFastenerForce = 1; // N: less is rounding

double along_of(const Point& v, const Point& d) { return v[0] * d[0] + v[1] * d[1] + v[2] * d[2]; }
Point cross_of(const Point& a, const Point& b)
{
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
double size_of(const Point& v) { return std::sqrt(along_of(v, v)); }

/// A demand held against what the fasteners are allowed. Forces are those of all of them, were they all used like the worst.
struct FastenerUse {
    double shear = 0, pull = 0, shear_allowed = 0, pull_allowed = 0, use = 0;
    double turned = 0;           ///< N m that count, of which the farthest draws or slides the most
    bool shallow = false;        ///< less than 4 D in the wood: codes count nothing, an estimate stands in
    bool end_grain_pull = false; ///< pull on threads in end grain, beyond what is let pass
    bool refused = false;        ///< and it is one that nothing is allowed for
};

/// What turns the joint, as pull and slide of its worst fastener times their number.
struct Turned {
    double pull = 0, slide = 0, moment = 0;
    bool righted = false; ///< what presses the joint is taken off already
};

Turned turned_by(const Prepared& prepared, const DrawnFasteners& drawn, const JointDemand& demand)
{
    Turned t;
    if (drawn.places.empty()) return t;
    const Point& moment = demand.moment;
    const double share = prepared.facts->number("tenon_lever_share").value, n = static_cast<double>(drawn.places.size());
    // What presses the part on rights it, as far as its edge.
    constexpr double edge = 0.96;
    const double pressed = std::max(0.0, -along_of(demand.force, drawn.through));
    t.righted = pressed > 0;
    const auto left = [&](const Point& axis, double size) {
        return std::max(0.0, std::abs(along_of(moment, axis)) - edge * pressed * size / 2);
    };
    const double about_row = left(drawn.along, drawn.face_wide),
                 along_row = left(cross_of(drawn.through, drawn.along), drawn.face_long),
                 twist = std::abs(along_of(moment, drawn.through));
    double levers = 0, farthest = 0, radii = 0, outermost = 0;
    for (const double r : drawn.places) {
        const double z = r + drawn.face_long / 2;
        levers += z * z;
        farthest = std::max(farthest, z);
        radii += r * r;
        outermost = std::max(outermost, std::abs(r));
    }
    if (levers > 0) t.pull += n * along_row * farthest / (share * levers);
    if (drawn.face_wide > 0) t.pull += about_row / (share * drawn.face_wide / 2);
    if (radii > 1e-9) t.slide = n * twist * outermost / radii;
    t.moment = std::hypot(about_row, along_row, radii > 1e-9 ? twist : 0.0);
    return t;
}

FastenerUse use_of_fasteners(const Prepared& prepared, const DrawnFasteners& drawn, const FastenerCapacity& capacity,
                             const JointDemand& demand)
{
    const Facts& facts = *prepared.facts;
    FastenerUse u;
    // The force on the first part against the normal out of it draws it off the second.
    const double along = along_of(demand.force, drawn.through), whole = size_of(demand.force);
    const Turned turned = turned_by(prepared, drawn, demand);
    u.turned = turned.moment;
    u.pull = std::max(0.0, (turned.righted ? std::max(0.0, along) : along) + turned.pull);
    const double across = std::max(0.0, whole * whole - along * along);
    u.shear = std::sqrt(across) + turned.slide;

    const double share = duration_factor(facts, demand.duration).value * drawn.count;
    const bool shallow = capacity.lateral && capacity.lateral->value() == 0;
    // A button's screw is short by nature and only keeps the button where it is.
    u.shallow =
        shallow && drawn.penetration > 0 && drawn.kind != FastenerKind::button && drawn.kind != FastenerKind::figure_plate;
    u.shear_allowed =
        (shallow && drawn.penetration > 0 ? capacity.lateral_shallow : capacity.lateral.value_or(Force{})).value() * share;
    u.pull_allowed = capacity.withdrawal_allowable.value() * share;
    if (u.pull > kNoFastenerForce && u.pull_allowed <= 0) {
        // End grain: what new screws hold there, of which codes count nothing.
        const char* key = drawn.kind == FastenerKind::nail ? "nail" : "screw";
        u.pull_allowed = capacity.withdrawal_ultimate.value() * share *
                         facts.number(fmt::format("{}_withdrawal_allowable", key)).value /
                         facts.number(fmt::format("{}_withdrawal", key)).value;
        u.end_grain_pull = u.pull > facts.number("end_grain_tolerated").value * u.pull_allowed;
        u.refused = u.end_grain_pull && demand.duration == LoadDuration::lasting && !demand.proof;
    }
    if (u.shear > kNoFastenerForce)
        u.use += u.shear_allowed > 0 ? u.shear / u.shear_allowed : std::numeric_limits<double>::infinity();
    if (u.pull > kNoFastenerForce)
        u.use += u.pull_allowed > 0 && !u.refused ? u.pull / u.pull_allowed : std::numeric_limits<double>::infinity();
    return u;
}

std::string counted(const DrawnFasteners& drawn)
{
    if (drawn.kind == FastenerKind::bolt_and_barrel)
        return fmt::format("{} bolt{} with cross dowels", drawn.count, drawn.count == 1 ? "" : "s");
    return fmt::format("{} {}{}", drawn.count, name_of(drawn.kind), drawn.count == 1 ? "" : "s");
}

Verdict verdict_of_fasteners(const DrawnFasteners& drawn, const FastenerUse& u)
{
    // Buttons and plates slip along what they hold before anything breaks: only a pull ends that.
    const bool slips = (drawn.kind == FastenerKind::button || drawn.kind == FastenerKind::figure_plate) &&
                       u.pull <= kBeyondAllowed * u.pull_allowed;
    if (u.use > kBeyondAllowed) return slips ? Verdict::warn : Verdict::fail;
    return u.use > 1 || u.end_grain_pull || (u.shallow && u.shear > 0) ? Verdict::warn : Verdict::pass;
}

/// "a pull of 300 N", "220 N across them, and turned by 12 N m".
std::string asked_words(const Prepared& prepared, const FastenerUse& u)
{
    // A small pull that nothing is allowed for is what fails, not the larger force across.
    const double across = u.shear_allowed > 0 ? u.shear / u.shear_allowed : 0,
                 out = u.pull_allowed > 0 ? u.pull / u.pull_allowed : 0;
    const bool pull_told = u.refused || u.end_grain_pull || out > across;
    std::string words = pull_told ? fmt::format("a pull of {}", write_force(newtons(u.pull), prepared.units))
                                  : fmt::format("{} across them", write_force(newtons(u.shear), prepared.units));
    if (u.turned > 1) words += fmt::format(", counted with {} N m that turn the joint,", write_number(u.turned, 2));
    return words;
}

/// What oak and its like do to plain steel where it is damp.
std::string steel_words(const Prepared& prepared, const DrawnFasteners& drawn)
{
    const double damp = prepared.facts->number("moisture_class_d1").value * 100;
    for (const std::size_t copy : {drawn.head, drawn.holds}) {
        const PartState& state = prepared.state_of(copy);
        if (!state.record || !state.record->extractives.acid || state.dampest.percent() <= damp) continue;
        return fmt::format("; {} eats plain steel where it is damp: stainless steel or bronze", state.species);
    }
    return {};
}

std::string headline_of_fasteners(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn,
                                  const FastenerCapacity& capacity, const JointDemand& demand, const FastenerUse& u,
                                  Verdict verdict)
{
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id,
                      who = fmt::format("{} between {} and {}", counted(drawn), first, second), asked = asked_words(prepared, u);
    const bool one = drawn.count == 1;
    const std::string use =
        std::isfinite(u.use) ? fmt::format("{:.0f} % used", u.use * 100) : std::string("nothing may be relied on that way");
    const std::string holes =
        drawn.kind == FastenerKind::bolt_and_barrel
            ? fmt::format("a hole of {} for the cross dowel", size_words(prepared, in_metres(capacity.pilot)))
            : hole_words(prepared, capacity);
    const std::string tail = "; " + holes + steel_words(prepared, drawn) + ".";
    if (verdict == Verdict::pass)
        return fmt::format("{} bear{} {} with {}: {}{}", who, one ? "s" : "", asked, demand.name, use, tail);
    if (verdict == Verdict::fail)
        return fmt::format("{} {} too weak for {} with {}: {}{}", who, one ? "is" : "are", asked, demand.name, use, tail);
    if (u.use > 1)
        return fmt::format("{} {} loaded beyond what is allowed by {} with {}: {}{}", who, one ? "is" : "are", asked, demand.name,
                           use, tail);
    if (u.end_grain_pull)
        return fmt::format("{} bear{} {} with {} ({}) while new, but their threads lie in end grain, where they loosen and codes "
                           "count nothing against a pull{}",
                           who, one ? "s" : "", asked, demand.name, use, tail);
    return fmt::format(
        "{} bear{} {} with {} ({:.0f} % of an estimate), but they go in less than {:.0f} diameters, where codes count "
        "nothing.",
        who, one ? "s" : "", asked, demand.name, u.use * 100, capacity.least_depth);
}

Remedy remedy_of_fasteners(const DrawnFasteners& drawn, const FastenerUse& u)
{
    if (drawn.kind == FastenerKind::bolt_and_barrel && u.shear * u.pull_allowed > u.pull * u.shear_allowed)
        return "use thicker bolts, or more of them; a ledge under the rail takes the load across off them, since bolts are there "
               "to draw a joint tight";
    if (u.end_grain_pull)
        return "screw into side grain instead, or pull with a bolt on a cross dowel let into the end, or add a tenon or glue "
               "blocks: "
               "end grain holds nothing for long against a pull";
    if (u.use <= 1)
        return Remedy::either({"thinner screws reach deeper in their diameters", "longer ones where the wood is thick enough"});
    if (!std::isfinite(u.use)) return "use longer or thicker ones";
    return fmt::format("use {} of them, or use longer or thicker ones", static_cast<int>(std::ceil(drawn.count * u.use)));
}

Finding judge_fasteners(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn,
                        const FastenerCapacity& capacity, const JointDemand& demand, Working working)
{
    const FastenerUse u = use_of_fasteners(prepared, drawn, capacity, demand);
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name, prepared.state_of(drawn.holds).species);
    f.about.copies = {contact.first, contact.second};
    if (std::isfinite(u.use)) f.utilisation = u.use;
    f.verdict = verdict_of_fasteners(drawn, u);
    f.headline = headline_of_fasteners(prepared, contact, drawn, capacity, demand, u, f.verdict);
    if (f.verdict != Verdict::pass) f.remedy = remedy_of_fasteners(drawn, u);
    f.values = {{"shear", u.shear, "N"},
                {"shear_allowed", u.shear_allowed, "N"},
                {"pull", u.pull, "N"},
                {"pull_allowed", u.refused ? 0 : u.pull_allowed, "N"},
                {"pilot", capacity.pilot.value(), "m"},
                {"penetration", drawn.penetration, "m"}};
    f.working = std::move(working);
    f.working.push_back({fmt::format("Demand: {}", demand.name), "F", demand.sum, size_of(demand.force), "N", demand.source});
    if (u.turned > 0)
        f.working.push_back(
            {"What turns the joint draws its farthest fastener about the pressed edge, or slides it; as if all bore it",
             "N = n M z_max/(0.9 Σ z²), V = n T r_max/Σ r²", fmt::format("{} N m", write_number(u.turned, 3)),
             std::hypot(u.shear, u.pull), "N", "mechanics"});
    if (u.pull > kNoFastenerForce && capacity.withdrawal_allowable.value() <= 0)
        f.working.push_back({"Pull on threads in end grain: three quarters of side grain while new, erratic; codes allow none",
                             "passing pulls up to a tenth of it are let pass, more warns, lasting ones fail", "", u.pull_allowed,
                             "N", prepared.facts->number("end_grain_tolerated").cite.text()});
    const Datum<double> duration = duration_factor(*prepared.facts, demand.duration);
    if (std::isfinite(u.use))
        f.working.push_back(
            {"Share used of what all of them are allowed for that duration", "u = V/(n V_a k_dur) + N/(n N_a k_dur)",
             fmt::format("n = {}, k_dur = {}", drawn.count, write_number(duration.value, 3)), u.use, "1", duration.cite.text()});
    gather_sources(f);
    return f;
}

Finding misplaced(const Prepared& prepared, const Contact& contact, const FastenerCapacity& capacity, const FastenerFault& fault)
{
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.verdict = fault.fails ? Verdict::fail : Verdict::warn;
    f.headline = fmt::format("Between {} and {} {}.", prepared.piece->part_of(contact.first).id,
                             prepared.piece->part_of(contact.second).id, fault.says);
    f.remedy = fault.remedy;
    f.working.push_back({"Distances with pilot holes", "4 D across, 5 D along, 3 D to an edge, 7 D to an end", "",
                         capacity.distances.across.value(), "m", prepared.facts->number("spacing_across").cite.text()});
    gather_sources(f);
    return f;
}

/// A bolt bears across it as a lag screw of its size does in the same grain; the cross dowel takes the pull.
std::optional<FastenerCapacity> capacity_of_drawn(const Prepared& prepared, const DrawnFasteners& drawn,
                                                  const std::string& species, Working& working)
{
    const WoodState wood = holding_wood(prepared, drawn.holds);
    auto capacity = fastener_capacity(*prepared.facts, wood, species,
                                      {drawn.kind, metres(drawn.diameter), metres(drawn.penetration), drawn.end_grain}, &working);
    if (!capacity || drawn.kind != FastenerKind::bolt_and_barrel) return capacity;
    const auto across =
        fastener_capacity(*prepared.facts, wood, species,
                          {FastenerKind::lag_screw, metres(drawn.bolt), metres(drawn.ahead), drawn.end_grain}, nullptr);
    if (across) capacity->lateral = across->lateral;
    return capacity;
}

Finding clamps_only(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn)
{
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.headline =
        fmt::format("{} between {} and {} press{} the glue together while it sets; glue and screws are not added up, the stiffer "
                    "glue carries.",
                    counted(drawn), prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id,
                    drawn.count == 1 ? "es" : "");
    return f;
}

} // namespace

std::vector<Finding> check_fastener(const Prepared& prepared)
{
    std::vector<Finding> findings = hinge_findings(prepared);
    const auto& contacts = prepared.layout->contacts;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const auto drawn = drawn_fasteners(prepared, c);
        if (!drawn) continue;
        const Contact& contact = contacts[c];
        const std::string subject = pair_subject(prepared, contact);
        if (!drawn->missing.empty()) {
            keep_worst(findings,
                       cannot_tell("fastener", subject,
                                   fmt::format("The fasteners of {} cannot be judged: their sizes are missing.", subject),
                                   drawn->missing));
            continue;
        }
        Working working;
        const std::string& species = prepared.state_of(drawn->holds).species;
        const auto capacity = capacity_of_drawn(prepared, *drawn, species, working);
        if (!capacity) {
            keep_worst(findings, cannot_tell("fastener", subject,
                                             fmt::format("The fasteners of {} cannot be judged: no density is known for {}.",
                                                         subject, species),
                                             "give [[wood]] properties with density"));
            continue;
        }
        if (const auto fault = placed_wrong(prepared, contact, *drawn, *capacity))
            keep_worst(findings, misplaced(prepared, contact, *capacity, *fault));
        const Joint& joint = prepared.piece->joints[*contact.joint];
        // Glue on end grain counts as nothing: there the fasteners carry.
        if (joint.glue && glued_area(contact, joint).area > 0) {
            keep_worst(findings, clamps_only(prepared, contact, *drawn));
            continue;
        }
        for (const JointDemand& demand : joint_demand(prepared, c))
            keep_worst(findings, judge_fasteners(prepared, contact, *drawn, *capacity, demand, working));
    }
    return findings;
}

} // namespace jointwright
