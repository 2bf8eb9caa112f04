// Do screws and buttons hold, do they reach, and do they stand far enough from each other and the ends?

#include "bond/fastener.hpp"

#include "checks/check_tools.hpp"
#include "checks/checks.hpp"
#include "checks/joint_demand.hpp"
#include "checks/screw_fallback.hpp"
#include "measure/write.hpp"
#include "mechanics/ties.hpp"
#include "piece/turn.hpp"
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
constexpr int kButtonScrew = 8;        // number of the screw that holds a button or a plate
constexpr double kButtonDepth = 0.016; // m of thread in the top

/// The fasteners of one contact.
struct DrawnFasteners {
    FastenerKind kind = FastenerKind::wood_screw;
    double diameter = 0, penetration = 0; ///< m
    int count = 1;
    std::size_t holds = 0; ///< copy with the threads
    bool end_grain = false;
    Point through{};                ///< unit vector
    double spacing = 0, to_end = 0; ///< along the row; 0 where unknown
    double beyond = 0;              ///< the tip stands out by so much
    std::string missing;
};

double size_along(const Prepared& prepared, std::size_t copy, const Point& direction)
{
    const PartAxes axes = axes_of(prepared.piece->part_of(copy), prepared.piece->copies[copy]);
    const Part& part = prepared.piece->part_of(copy);
    const auto share = [&](const Point& axis) {
        return std::abs(axis[0] * direction[0] + axis[1] * direction[1] + axis[2] * direction[2]);
    };
    if (share(axes.grain) > 0.7) return in_metres(part.length);
    return share(axes.width) > share(axes.face) ? in_metres(part.width) : in_metres(part.thickness);
}

void take_row(const Prepared& prepared, std::size_t c, DrawnFasteners& drawn)
{
    const auto row = fastener_row(prepared, c);
    if (!row || row->fasteners.empty()) return;
    const std::size_t i = index_of(row->along);
    const Patch& face = prepared.layout->contacts[c].patches.front();
    drawn.to_end = row->fasteners.front().at[i] - face.bounds.lo[i];
    if (row->fasteners.size() > 1) drawn.spacing = row->fasteners[1].at[i] - row->fasteners[0].at[i];
}

std::optional<DrawnFasteners> drawn_fasteners(const Prepared& prepared, std::size_t c)
{
    const Contact& contact = prepared.layout->contacts[c];
    if (!contact.joint) return std::nullopt;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const Patch& face = contact.patches.front();
    DrawnFasteners drawn;
    drawn.through = face.normal;
    drawn.holds = contact.second;
    drawn.end_grain = face.end_grain_second;
    if (joint.kind == JointKind::screws) {
        if (!joint.screws) {
            drawn.missing = "screws = { diameter = ..., length = ..., count = ... }";
            return drawn;
        }
        drawn.diameter = in_metres(joint.screws->diameter);
        drawn.count = joint.screws->count;
        const double room = size_along(prepared, contact.second, face.normal);
        const double in_wood = in_metres(joint.screws->length) - size_along(prepared, contact.first, face.normal);
        drawn.penetration = std::clamp(in_wood, 0.0, room);
        drawn.beyond = std::max(0.0, in_wood - room);
    } else if (joint.kind == JointKind::buttons) {
        if (!joint.buttons) {
            drawn.missing = "buttons = { count = ... }";
            return drawn;
        }
        drawn.kind = FastenerKind::button;
        drawn.diameter = in_metres(screw_of_number(kButtonScrew));
        drawn.count = joint.buttons->count;
        // The screw goes up into what lies on top.
        const bool first_on_top = prepared.piece->copies[contact.first].box.middle(Axis::z) >=
                                  prepared.piece->copies[contact.second].box.middle(Axis::z);
        drawn.holds = first_on_top ? contact.first : contact.second;
        drawn.end_grain = first_on_top ? face.end_grain_first : face.end_grain_second;
        drawn.penetration = std::min(kButtonDepth, 0.8 * size_along(prepared, drawn.holds, face.normal));
    } else {
        return std::nullopt;
    }
    take_row(prepared, c, drawn);
    return drawn;
}

/// A demand held against what the fasteners are allowed.
struct FastenerUse {
    double shear = 0, pull = 0, shear_allowed = 0, pull_allowed = 0, use = 0;
    bool shallow = false; ///< less than 4 D in the wood: codes count nothing, an estimate stands in
};

FastenerUse use_of_fasteners(const Prepared& prepared, const DrawnFasteners& drawn, const FastenerCapacity& capacity,
                             const JointDemand& demand)
{
    FastenerUse u;
    // The force on the first part against the normal out of it draws it off the second.
    const double along =
        demand.force[0] * drawn.through[0] + demand.force[1] * drawn.through[1] + demand.force[2] * drawn.through[2];
    u.pull = std::max(0.0, along);
    const double whole =
        std::sqrt(demand.force[0] * demand.force[0] + demand.force[1] * demand.force[1] + demand.force[2] * demand.force[2]);
    u.shear = std::sqrt(std::max(0.0, whole * whole - along * along));

    const double share = duration_factor(*prepared.facts, demand.duration).value * drawn.count;
    const bool shallow = capacity.lateral && capacity.lateral->value() == 0;
    // A button's screw is short by nature and only keeps the button where it is.
    u.shallow = shallow && drawn.penetration > 0 && drawn.kind != FastenerKind::button;
    u.shear_allowed =
        (shallow && drawn.penetration > 0 ? capacity.lateral_shallow : capacity.lateral.value_or(Force{})).value() * share;
    u.pull_allowed = capacity.withdrawal_allowable.value() * share;
    if (u.shear > kNoFastenerForce)
        u.use += u.shear_allowed > 0 ? u.shear / u.shear_allowed : std::numeric_limits<double>::infinity();
    if (u.pull > kNoFastenerForce)
        u.use += u.pull_allowed > 0 ? u.pull / u.pull_allowed : std::numeric_limits<double>::infinity();
    return u;
}

/// What of the drawing is wrong whatever the load: tips through the wood, too close to each other or the end.
std::optional<std::string> placed_wrong(const Prepared& prepared, const DrawnFasteners& drawn, const FastenerDistances& wanted)
{
    if (drawn.kind == FastenerKind::button) return std::nullopt;
    if (drawn.beyond > kTouch)
        return fmt::format("the screws come out on the far side by {}", size_words(prepared, drawn.beyond));
    if (drawn.penetration < kTouch) return std::string("the screws do not reach the second part at all");
    if (drawn.spacing > 0 && drawn.spacing < in_metres(wanted.across))
        return fmt::format("the screws stand {} apart, closer than four diameters, {}: the wood may split",
                           size_words(prepared, drawn.spacing), size_words(prepared, in_metres(wanted.across)));
    if (drawn.to_end > 0 && drawn.to_end < in_metres(wanted.edge))
        return fmt::format(
            "the outer screws stand {} from the edge of the face, closer than three diameters, {}: the wood may split",
            size_words(prepared, drawn.to_end), size_words(prepared, in_metres(wanted.edge)));
    return std::nullopt;
}

std::string hole_words(const Prepared& prepared, const FastenerCapacity& capacity)
{
    return fmt::format("pilot {}, {} under the head", small_words(prepared, in_metres(capacity.pilot)),
                       small_words(prepared, in_metres(capacity.clearance)));
}

std::string counted(const DrawnFasteners& drawn)
{
    const std::string_view name = name_of(drawn.kind);
    return fmt::format("{} {}{}", drawn.count, name, drawn.count == 1 ? "" : "s");
}

Finding judge_fasteners(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn,
                        const FastenerCapacity& capacity, const JointDemand& demand, Working working)
{
    const FastenerUse u = use_of_fasteners(prepared, drawn, capacity, demand);
    const std::string first = prepared.piece->part_of(contact.first).id, second = prepared.piece->part_of(contact.second).id;
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name, prepared.state_of(drawn.holds).species);
    if (std::isfinite(u.use)) f.utilisation = u.use;
    f.verdict = u.use <= 1                ? (u.shallow && u.shear > 0 ? Verdict::warn : Verdict::pass)
                : u.use <= kBeyondAllowed ? Verdict::warn
                                          : Verdict::fail;
    // A small pull that nothing is allowed for is what fails, not the larger force across.
    const bool pull_told = u.pull > u.shear || (u.pull > kNoFastenerForce && u.pull_allowed <= 0);
    const std::string asked = pull_told ? fmt::format("a pull of {}", write_force(newtons(u.pull), prepared.units))
                                        : fmt::format("{} across them", write_force(newtons(u.shear), prepared.units));
    f.headline = fmt::format(
        "{} between {} and {} {} {} with {}: {}; {}.", counted(drawn), first, second,
        f.verdict == Verdict::pass ? (drawn.count == 1 ? "bears" : "bear")
        : f.verdict == Verdict::warn
            ? (drawn.count == 1 ? "is loaded beyond what is allowed by" : "are loaded beyond what is allowed by")
            : (drawn.count == 1 ? "is too weak for" : "are too weak for"),
        asked, demand.name,
        std::isfinite(u.use) ? fmt::format("{:.0f} % used", u.use * 100) : std::string("nothing may be relied on that way"),
        hole_words(prepared, capacity));
    if (f.verdict == Verdict::warn && u.use <= 1) {
        f.headline = fmt::format("{} between {} and {} bear{} {} with {} ({:.0f} % of an estimate), but they go in less than "
                                 "four diameters, where codes count nothing.",
                                 counted(drawn), first, second, drawn.count == 1 ? "s" : "", asked, demand.name, u.use * 100);
        f.remedy = "thinner screws reach deeper in their diameters; or longer ones where the wood is thick enough";
    } else if (f.verdict != Verdict::pass) {
        f.remedy =
            drawn.end_grain && u.pull > 0
                ? "screw into side grain instead, or let a cross dowel into the end: end grain holds nothing against a pull"
                : fmt::format("{}use longer or thicker ones",
                              std::isfinite(u.use)
                                  ? fmt::format("use {} of them, or ", static_cast<int>(std::ceil(drawn.count * u.use)))
                                  : std::string());
    }
    f.values = {{"shear", u.shear, "N"},
                {"shear_allowed", u.shear_allowed, "N"},
                {"pull", u.pull, "N"},
                {"pull_allowed", u.pull_allowed, "N"},
                {"pilot", capacity.pilot.value(), "m"},
                {"penetration", drawn.penetration, "m"}};
    f.working = std::move(working);
    f.working.push_back(
        {fmt::format("Demand: {}", demand.name), "F", demand.sum, std::hypot(u.shear, u.pull), "N", demand.source});
    const Datum<double> duration = duration_factor(*prepared.facts, demand.duration);
    if (std::isfinite(u.use))
        f.working.push_back(
            {"Share used of what all of them are allowed for that duration", "u = V/(n V_a k_dur) + N/(n N_a k_dur)",
             fmt::format("n = {}, k_dur = {}", drawn.count, write_number(duration.value, 3)), u.use, "1", duration.cite.text()});
    gather_sources(f);
    return f;
}

Finding misplaced(const Prepared& prepared, const Contact& contact, const FastenerCapacity& capacity, const std::string& why,
                  bool fails)
{
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.verdict = fails ? Verdict::fail : Verdict::warn;
    f.headline = fmt::format("Between {} and {} {}.", prepared.piece->part_of(contact.first).id,
                             prepared.piece->part_of(contact.second).id, why);
    f.remedy =
        fails ? std::string("choose their length so that at least seven diameters of thread, and no tip, are in the second part")
              : fmt::format("fewer or thinner screws, further apart; {}", hole_words(prepared, capacity));
    f.working.push_back({"Distances with pilot holes", "4 D across, 3 D to an edge", "", capacity.distances.across.value(), "m",
                         prepared.facts->number("spacing_across").cite.text()});
    gather_sources(f);
    return f;
}

Finding clamps_only(const Prepared& prepared, const Contact& contact, const DrawnFasteners& drawn)
{
    Finding f;
    f.check = "fastener";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
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
    std::vector<Finding> findings;
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
        const auto capacity =
            fastener_capacity(*prepared.facts, holding_wood(prepared, drawn->holds), species,
                              {drawn->kind, metres(drawn->diameter), metres(drawn->penetration), drawn->end_grain}, &working);
        if (!capacity) {
            keep_worst(findings, cannot_tell("fastener", subject,
                                             fmt::format("The fasteners of {} cannot be judged: no density is known for {}.",
                                                         subject, species),
                                             "give [[wood]] properties with density"));
            continue;
        }
        if (const auto why = placed_wrong(prepared, *drawn, capacity->distances))
            keep_worst(findings,
                       misplaced(prepared, contact, *capacity, *why, drawn->beyond > kTouch || drawn->penetration < kTouch));
        if (prepared.piece->joints[*contact.joint].glue) {
            keep_worst(findings, clamps_only(prepared, contact, *drawn));
            continue;
        }
        for (const JointDemand& demand : joint_demand(prepared, c))
            keep_worst(findings, judge_fasteners(prepared, contact, *drawn, *capacity, demand, working));
    }
    return findings;
}

} // namespace jointwright
