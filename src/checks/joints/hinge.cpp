#include "checks/joints/hinge.hpp"

#include "bond/fastener.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/joint_demand.hpp"
#include "judging/joints/screw_fallback.hpp"
#include "measure/write.hpp"
#include "piece/contacts/hinge_line.hpp"
#include "piece/contacts/hung.hpp"
#include "wood/resistance.hpp"

#include <Eigen/Geometry>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

using Vec = Eigen::Vector3d;

constexpr double kBeyondAllowed = 4.0 / 3; // the proportional limit over the allowable, as for other screws
constexpr double kUndoubted = 0.25;        // of the estimate for screws that go in less deep than codes ask (estimated)
constexpr double kOneLine = 0.03;          // m: pins farther from each other's line are on two

Vec vec_of(const Point& p) { return {p[0], p[1], p[2]}; }

/// What the hardest used hinge of one contact bears.
struct HingeForce {
    double pull = 0, slide = 0;   ///< off the second part, and within the face [N]
    double turned = 0, lever = 0; ///< N m shared by the hinges, and between the outer two [m]
};

/// The leaf is stiff against its hinges: each bears an equal share of the force, and by its place on the line what turns the leaf. One alone bears no turning.
std::vector<HingeForce> forces_of(const HingeLine& line, const JointDemand& demand, const Point& middle)
{
    Vec centre = Vec::Zero();
    for (const Point& p : line.places) centre += vec_of(p) / static_cast<double>(line.places.size());
    const Vec force = vec_of(demand.force), through = vec_of(line.through), along = vec_of(line.along);
    Vec moment = vec_of(demand.moment) + (vec_of(middle) - centre).cross(force);
    moment -= moment.dot(along) * along; // about the pins nothing turns
    double squares = 0;
    for (const Point& p : line.places) squares += (vec_of(p) - centre).squaredNorm();
    std::vector<HingeForce> forces;
    for (const Point& p : line.places) {
        const Vec arm = vec_of(p) - centre;
        Vec own = force / static_cast<double>(line.places.size());
        if (squares > 0) own += moment.cross(arm) / squares;
        const double off = own.dot(through);
        forces.push_back({std::max(0.0, off), (own - off * through).norm(), squares > 0 ? moment.norm() : 0.0,
                          (vec_of(line.places.back()) - vec_of(line.places.front())).norm()});
    }
    return forces;
}

/// The screws in one leaf of a hinge.
struct LeafScrews {
    std::size_t copy = 0;
    double shear = 0, pull = 0; ///< allowed for loads of ordinary duration, all of them [N]
    bool shallow = false;
    Length pilot{};
    Working working;
};

std::optional<LeafScrews> screws_in(const Prepared& prepared, const Contact& contact, bool first, const Joint::Screws& screws)
{
    LeafScrews leaf;
    leaf.copy = first ? contact.first : contact.second;
    const Patch& face = contact.patches.front();
    const FastenerKind kind = screws.kind == ScrewKind::lag_screw || screws.kind == ScrewKind::bolt ? FastenerKind::lag_screw
                              : screws.kind == ScrewKind::nail                                      ? FastenerKind::nail
                                                                                                    : FastenerKind::wood_screw;
    const auto capacity = fastener_capacity(
        *prepared.facts, holding_wood(prepared, leaf.copy), prepared.state_of(leaf.copy).species,
        {kind, screws.diameter, screws.length, first ? face.end_grain_first : face.end_grain_second}, &leaf.working);
    if (!capacity) return std::nullopt;
    const double lateral = capacity->lateral.value_or(Force{}).value();
    leaf.shallow = lateral <= 0;
    leaf.shear = screws.count * (leaf.shallow ? capacity->lateral_shallow.value() : lateral);
    leaf.pull = screws.count * capacity->withdrawal_allowable.value();
    leaf.pilot = capacity->pilot;
    return leaf;
}

double use_of(const HingeForce& force, const LeafScrews& leaf, double duration)
{
    constexpr double nothing = 1; // N: less is rounding
    double use = 0;
    for (const auto& [asked, allowed] : {std::pair{force.slide, leaf.shear}, std::pair{force.pull, leaf.pull}}) {
        if (asked <= nothing) continue;
        if (allowed <= 0) return 1e6;
        use += asked / (allowed * duration);
    }
    return use;
}

std::string asked_words(const Prepared& prepared, const HingeForce& force)
{
    return fmt::format("a pull of {} and {} across its screws", write_force(newtons(force.pull), prepared.units),
                       write_force(newtons(force.slide), prepared.units));
}

void add_demand(Finding& f, const HingeLine& line, const HingeForce& force, const JointDemand& demand)
{
    f.values = {
        {"pull", force.pull, "N"}, {"shear", force.slide, "N"}, {"turned", force.turned, "N m"}, {"lever", force.lever, "m"}};
    f.working.push_back({"What turns the leaf off its post is a couple between its hinges; of its weight each bears a share",
                         "H = M z_max/Σz², V = F/n",
                         fmt::format("n = {}, M = {} N m, {} m between the outer ones", line.places.size(),
                                     write_number(force.turned, 3), write_number(force.lever, 3)),
                         std::hypot(force.pull, force.slide), "N", demand.source});
}

Finding unknown_screws(const Prepared& prepared, const Contact& contact, const HingeLine& line, const HingeForce& force,
                       const JointDemand& demand)
{
    const std::string subject = pair_subject(prepared, contact);
    Finding f = cannot_tell("fastener", subject,
                            fmt::format("Each hinge of {} has to bear {} with {}; which screws hold them is not told.", subject,
                                        asked_words(prepared, force), demand.name),
                            "screws = { diameter = 4, length = 30, count = 3 }   # as many as are in one leaf of a hinge");
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.weight = force.pull + force.slide;
    add_demand(f, line, force, demand);
    gather_sources(f);
    return f;
}

Finding judge_hinges(const Prepared& prepared, const Contact& contact, const HingeLine& line, const HingeForce& force,
                     const JointDemand& demand, const LeafScrews& leaf)
{
    const Datum<double> duration = duration_factor(*prepared.facts, demand.duration);
    const std::string subject = pair_subject(prepared, contact);
    const std::string& holds = prepared.piece->part_of(leaf.copy).id;
    const double use = use_of(force, leaf, duration.value);
    const bool nothing = use >= 1e6;
    Finding f;
    f.check = "fastener";
    f.subject = subject;
    f.where = fmt::format("{}, {}, {}", pair_place(prepared, contact), demand.name, prepared.state_of(leaf.copy).species);
    f.about.copies = {contact.first, contact.second};
    if (!nothing) f.utilisation = use;
    f.fails_from = kBeyondAllowed;
    // Hinge screws are short: no code counts them, and every cabinet hangs on them. So long as a quarter of the estimate bears it, nothing is said.
    const bool doubted = leaf.shallow && use > kUndoubted;
    f.verdict = use > kBeyondAllowed ? Verdict::fail : use > 1 || doubted ? Verdict::warn : Verdict::pass;
    const std::string share = nothing ? "nothing may be relied on that way" : fmt::format("{:.0f} % used", use * 100);
    const char* words = f.verdict == Verdict::pass   ? "hold"
                        : f.verdict == Verdict::fail ? "are too weak"
                        : use <= 1                   ? "hold by an estimate, but go in less deep than codes ask"
                                                     : "are loaded beyond what is customary";
    f.headline =
        fmt::format("The screws of the hinges between {} {} in {}: each hinge has {} with {}, {}; pilot {}.", subject, words,
                    holds, asked_words(prepared, force), demand.name, share, small_words(prepared, in_metres(leaf.pilot)));
    if (f.verdict != Verdict::pass)
        f.remedy = "longer or thicker screws, or more in each leaf; a hinge more, or the outer ones farther apart; strap hinges "
                   "that are bolted "
                   "through";
    f.working = leaf.working;
    add_demand(f, line, force, demand);
    f.values.push_back({"shear_allowed", leaf.shear * duration.value, "N"});
    f.values.push_back({"pull_allowed", leaf.pull * duration.value, "N"});
    f.working.push_back({"Share used of what the screws of one leaf are allowed for that duration",
                         "u = V/(V_a k_dur) + H/(N_a k_dur)", fmt::format("k_dur = {}", write_number(duration.value, 3)),
                         nothing ? 0 : use, "1", duration.cite.text()});
    gather_sources(f);
    return f;
}

/// The distance of another contact's pins from the line of one; large where they run another way.
double off_line(const HingeLine& a, const HingeLine& b)
{
    if (std::abs(vec_of(a.along).dot(vec_of(b.along))) < 0.99) return 1e3;
    const Vec apart = vec_of(b.places.front()) - vec_of(a.places.front());
    return (apart - apart.dot(vec_of(a.along)) * vec_of(a.along)).norm();
}

/// The place to which the forces of a joint are referred.
Point middle_of(const Prepared& prepared, std::size_t contact)
{
    for (const JointForce& force : prepared.statics.joints)
        if (force.contact == contact) return force.middle;
    return {};
}

/// A leaf that is hinged on two sides: the joint was meant for one copy.
std::optional<Finding> hinged_twice(const Prepared& prepared, std::size_t index, const std::vector<std::size_t>& groups)
{
    const auto& contacts = prepared.layout->contacts;
    const Piece& piece = *prepared.piece;
    const Contact& contact = contacts[index];
    const HingeLine line = hinge_line(piece.joints[*contact.joint], contact);
    for (std::size_t c = 0; c < index; ++c) {
        const Contact& other = contacts[c];
        if (!other.joint || piece.joints[*other.joint].kind != JointKind::hinge || groups[other.first] != groups[contact.first])
            continue;
        const double apart = off_line(line, hinge_line(piece.joints[*other.joint], other));
        if (apart < kOneLine) continue;
        Finding f;
        f.check = "fastener";
        f.subject = pair_subject(prepared, contact);
        f.verdict = Verdict::fail;
        f.where = fmt::format("{} and {}", pair_place(prepared, other), pair_place(prepared, contact));
        f.about.copies = {other.first, other.second, contact.first, contact.second};
        f.headline = fmt::format("{} hangs on hinges along two lines: it cannot be opened.", piece.label(contact.first, true));
        f.remedy = fmt::format("name the one copy that the hinges are on: between = [\"{}\", \"{}\"]", piece.label(other.first),
                               piece.label(other.second));
        return f;
    }
    return std::nullopt;
}

} // namespace

std::vector<Finding> hinge_findings(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const auto& contacts = prepared.layout->contacts;
    const Piece& piece = *prepared.piece;
    std::vector<std::size_t> groups;
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const Contact& contact = contacts[c];
        if (!contact.joint || piece.joints[*contact.joint].kind != JointKind::hinge) continue;
        if (groups.empty()) groups = joined_groups(piece, contacts);
        if (auto twice = hinged_twice(prepared, c, groups)) {
            keep_worst(findings, *std::move(twice));
            continue;
        }
        const Joint& joint = piece.joints[*contact.joint];
        const HingeLine line = hinge_line(joint, contact);
        const Point middle = middle_of(prepared, c);
        for (const JointDemand& demand : joint_demand(prepared, c))
            for (const HingeForce& force : forces_of(line, demand, middle)) {
                if (!joint.screws) {
                    keep_worst(findings, unknown_screws(prepared, contact, line, force, demand));
                    continue;
                }
                for (const bool first : {true, false}) {
                    const auto leaf = screws_in(prepared, contact, first, *joint.screws);
                    const std::size_t copy = first ? contact.first : contact.second;
                    if (leaf)
                        keep_worst(findings, judge_hinges(prepared, contact, line, force, demand, *leaf));
                    else
                        keep_worst(findings,
                                   cannot_tell("fastener", pair_subject(prepared, contact),
                                               fmt::format("The hinges of {} cannot be judged: no density is known for {}.",
                                                           pair_subject(prepared, contact), prepared.state_of(copy).species),
                                               "give [[wood]] properties with density"));
                }
            }
    }
    return findings;
}

} // namespace jointwright
