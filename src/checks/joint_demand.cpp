#include "checks/joint_demand.hpp"

#include "checks/check_tools.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace jointwright {

namespace {

constexpr int kSlices = 16;    // of a spread load
constexpr double kNoForce = 1; // N or N m: less is rounding

/// A force down at a place along a part.
struct DownAt {
    double at = 0, force = 0;
};

void add_spread(std::vector<DownAt>& loads, double from, double to, double force)
{
    const int n = to - from > kTouch ? kSlices : 1;
    for (int i = 0; i < n; ++i) loads.push_back({from + (to - from) * (i + 0.5) / n, force / n});
}

/// Extent of a contact along an axis, cheeks and edges of tenons left out.
std::pair<double, double> reach_along(const Contact& contact, Axis axis)
{
    const std::size_t i = index_of(axis);
    double lo = contact.patches.front().bounds.lo[i], hi = contact.patches.front().bounds.hi[i];
    bool any = false;
    for (const Patch& p : contact.patches) {
        if (p.role == Patch::Role::cheek || p.role == Patch::Role::edge) continue;
        lo = any ? std::min(lo, p.bounds.lo[i]) : p.bounds.lo[i];
        hi = any ? std::max(hi, p.bounds.hi[i]) : p.bounds.hi[i];
        any = true;
    }
    return {lo, hi};
}

/// What presses down on one copy, by load case: its own loads and what others hand down to it.
class LoadsOn {
public:
    LoadsOn(const Prepared& prepared, std::size_t copy) : prepared_(prepared), copy_(copy)
    {
        for (const BearingForce& force : prepared.statics.forces)
            if (force.below == copy) (force.load_case == 0 ? lasting_ : passing_).push_back(&force);
    }

    std::vector<DownAt> in_case(std::size_t index) const
    {
        const LoadCases& cases = prepared_.statics.cases;
        std::vector<DownAt> loads;
        for (const CopyLoad& load : cases.lasting)
            if (load.copy == copy_) add_spread(loads, load.from, load.to, load.force);
        for (const CopyLoad& load : cases.cases[index].loads)
            if (load.copy == copy_) add_spread(loads, load.from, load.to, load.force);
        std::set<std::size_t> told; // forces of a passing case hold what stays
        if (index > 0)
            for (const BearingForce* force : passing_)
                if (force->load_case == index) {
                    told.insert(force->contact);
                    hand(loads, *force);
                }
        for (const BearingForce* force : lasting_)
            if (!told.contains(force->contact)) hand(loads, *force);
        return loads;
    }

private:
    void hand(std::vector<DownAt>& loads, const BearingForce& force) const
    {
        const auto [from, to] = reach_along(prepared_.layout->contacts[force.contact], prepared_.piece->part_of(copy_).grain);
        add_spread(loads, from, to, force.force);
    }

    const Prepared& prepared_;
    std::size_t copy_;
    std::vector<const BearingForce*> lasting_, passing_;
};

/// Turning of a part's end at a bearing.
struct EndMoment {
    double value = 0;   ///< N m, without sign
    bool bound = false; ///< no more than this
    double span = 0;    ///< between the supports [m]
    double share = 1;   ///< of the moment of an end held wholly rigid that an upright post can hold at most
};

/// The most that an upright post holds of a rail's end moment: S/(S + 2 k), S = 4 E I/h of the post below the joint, its foot held fast, k = E I/L of the
/// rail. Slope and deflection; both ends turned alike is the worst. 1 where the post lies.
double share_held(const Prepared& prepared, std::size_t rail, const Bearing& here, double span)
{
    const Piece& piece = *prepared.piece;
    const auto &rail_modulus = prepared.state_of(rail).loaded.modulus_along,
               &post_modulus = prepared.state_of(here.below).loaded.modulus_along;
    if (piece.part_of(here.below).grain != Axis::z || !rail_modulus || !post_modulus || span <= 0) return 1;
    const Axis along = piece.part_of(rail).grain, across = along == Axis::x ? Axis::y : Axis::x;
    const Box& post = piece.copies[here.below].box;
    const double height = piece.copies[rail].box.middle(Axis::z) - post.lo[2];
    if (height <= 0) return 1;
    const double depth = post.size(along),
                 stiffness = 4 * post_modulus->value.value() * post.size(across) * depth * depth * depth / 12 / height;
    double inertia = 1e30; // of the rail where it is weakest: the softer the rail, the more of its moment the post holds
    for (const NetStretch& stretch : prepared.statics.stretches[rail]) inertia = std::min(inertia, stretch.inertia);
    if (inertia > 1e29) return 1;
    return stiffness / (stiffness + 2 * rail_modulus->value.value() * inertia / span);
}

EndMoment end_moment(const Prepared& prepared, std::size_t copy, const Bearing& here, const std::vector<DownAt>& loads)
{
    const Box& box = prepared.piece->copies[copy].box;
    const double place = (here.from + here.to) / 2, same = box.size(Axis::z);
    std::optional<double> below, above; // the neighbouring supports
    for (const Bearing& b : prepared.statics.path.bearings[copy]) {
        const double at = (b.from + b.to) / 2;
        if (at < place - same) below = std::max(below.value_or(at), at);
        if (at > place + same) above = std::min(above.value_or(at), at);
    }
    EndMoment end;
    if (!below && !above) { // stands out from this one support
        for (const DownAt& load : loads) end.value += load.force * (load.at - place);
        end.value = std::abs(end.value);
        return end;
    }
    end.bound = true;
    for (const auto& far : {below, above}) {
        if (!far) continue;
        const double span = std::abs(*far - place);
        double sum = 0;
        for (const DownAt& load : loads) {
            const double a = (load.at - place) * (*far > place ? 1 : -1), b = span - a;
            if (a > 0 && b > 0) sum += load.force * a * b * b / (span * span);
        }
        const double share = share_held(prepared, copy, here, span);
        if (std::abs(sum) * share <= end.value) continue;
        end = {std::abs(sum) * share, true, span, share};
    }
    return end;
}

bool is_lying(const Prepared& prepared, std::size_t copy) { return prepared.piece->part_of(copy).grain != Axis::z; }

/// A joint that turns with its parts: glued, or cut so that shape turns them together.
bool keeps_square(const Prepared& prepared, const Contact& contact)
{
    if (!contact.joint) return false;
    const Joint& joint = prepared.piece->joints[*contact.joint];
    return joint.glue || joint.kind == JointKind::tenon || joint.kind == JointKind::bridle || joint.kind == JointKind::lap;
}

/// The worst of each kind of load case that a bearing hands down, with the turning of the part's end.
void add_bearings(const Prepared& prepared, std::size_t c, std::size_t upper, const Bearing& bearing,
                  std::vector<JointDemand>& demands)
{
    const Contact& contact = prepared.layout->contacts[c];
    const auto& cases = prepared.statics.cases.cases;
    const bool turns = is_lying(prepared, upper) && prepared.statics.is_beam[upper] && keeps_square(prepared, contact);
    const LoadsOn loads(prepared, upper);
    const double sign = upper == contact.first ? 1 : -1;
    const std::size_t about = prepared.piece->part_of(upper).grain == Axis::x ? 1 : 0;
    for (int kind = 0; kind < 4; ++kind) { // lasting, sitting, short service, proof
        JointDemand worst;
        double most = -1;
        for (const BearingForce& force : prepared.statics.forces) {
            if (force.contact != c || force.upper != upper) continue;
            const LoadCase& load_case = cases[force.load_case];
            if ((load_case.proof ? 3 : static_cast<int>(load_case.duration)) != kind) continue;
            const EndMoment end = turns ? end_moment(prepared, upper, bearing, loads.in_case(force.load_case)) : EndMoment{};
            // One scale for both, so that the worst case is one case: a newton metre weighs as a force on a lever of 50 mm.
            const double weight = std::hypot(force.force, end.value / 0.05);
            if (weight <= most) continue;
            most = weight;
            worst = {load_case.name,  load_case.proof, load_case.duration, {0, 0, sign * force.force}, {}, end.bound, "",
                     load_case.source};
            worst.moment[about] = sign * end.value;
            worst.sum = fmt::format("{} N handed down", write_number(force.force, 4));
            if (end.value > kNoForce)
                worst.sum +=
                    end.bound
                        ? fmt::format("; its end turned by at most {} N m: Σ F a b²/L² of an end held rigid, L = {}, × {} as the "
                                      "post gives",
                                      write_number(end.value, 3), size_words(prepared, end.span), write_number(end.share, 2))
                        : fmt::format("; turned by {} N m, as nothing else holds it up", write_number(end.value, 3));
        }
        if (most > kNoForce) demands.push_back(std::move(worst));
    }
}

/// Lying parts on standing ones, along an axis: the joints that keep the piece from racking that way.
bool keeps_from_racking(const Prepared& prepared, const Contact& contact, Axis axis)
{
    if (!keeps_square(prepared, contact)) return false;
    const auto stands = [&](std::size_t i) { return !is_lying(prepared, i) && prepared.statics.path.on_floor[i]; };
    const auto lies = [&](std::size_t i) { return prepared.piece->part_of(i).grain == axis; };
    return (stands(contact.first) && lies(contact.second)) || (stands(contact.second) && lies(contact.first));
}

void add_push(const Prepared& prepared, std::size_t c, std::vector<JointDemand>& demands)
{
    const Piece& piece = *prepared.piece;
    if (piece.use != Use::seat && piece.use != Use::table) return;
    const auto& contacts = prepared.layout->contacts;
    for (const Axis axis : {Axis::x, Axis::y}) {
        if (!keeps_from_racking(prepared, contacts[c], axis)) continue;
        const auto n = static_cast<double>(std::count_if(
            contacts.begin(), contacts.end(), [&](const Contact& other) { return keeps_from_racking(prepared, other, axis); }));
        double floor = 1e30, top = -1e30;
        for (const Copy& copy : piece.copies) floor = std::min(floor, copy.box.lo[2]);
        for (std::size_t i = 0; i < piece.copies.size(); ++i)
            if (prepared.carried[i]) top = std::max(top, piece.copies[i].box.hi[2]);
        if (top < floor) return;
        const Datum<double>& push = prepared.facts->number("push_" + std::string(name_of(piece.limits.level)));
        JointDemand demand{"the top pushed sideways", true, LoadDuration::short_term, {}, {}, false, "", push.cite.text()};
        demand.moment[axis == Axis::x ? 1 : 0] = push.value * (top - floor) / n;
        demand.sum = fmt::format("{} N at a height of {}, shared alike by {} joints", write_number(push.value, 4),
                                 size_words(prepared, top - floor), n);
        demands.push_back(std::move(demand));
    }
}

/// A part that people bear on, lying on what bears it, is taken hold of to lift the whole piece.
void add_lift(const Prepared& prepared, std::size_t c, std::size_t upper, std::vector<JointDemand>& demands)
{
    const Contact& contact = prepared.layout->contacts[c];
    const bool level = std::any_of(contact.patches.begin(), contact.patches.end(), [](const Patch& p) {
        return std::abs(p.normal[2]) > 0.9 && p.role != Patch::Role::cheek && p.role != Patch::Role::edge;
    });
    if (!contact.joint || !level || !prepared.carried[upper]) return;
    double places = 0;
    for (const Bearing& b : prepared.statics.path.bearings[upper]) places += prepared.layout->contacts[b.contact].joint ? 1 : 0;
    if (places == 0) return;
    const Datum<double>& jerk = prepared.facts->number("lift_factor");
    const double lift = jerk.value * prepared.whole_mass() * kStandardGravity / places;
    JointDemand demand{fmt::format("the whole piece lifted by {}", prepared.piece->label(upper, true)),
                       true,
                       LoadDuration::short_term,
                       {},
                       {},
                       false,
                       "",
                       jerk.cite.text()};
    demand.force[2] = upper == contact.first ? -lift : lift;
    demand.sum =
        fmt::format("{} × {} kg over {} places", write_number(jerk.value, 2), write_number(prepared.whole_mass(), 3), places);
    demands.push_back(std::move(demand));
}

} // namespace

std::vector<JointDemand> joint_demand(const Prepared& prepared, std::size_t c)
{
    const Contact& contact = prepared.layout->contacts[c];
    std::vector<JointDemand> demands;
    if (prepared.statics.cases.cases.empty()) return demands;
    for (const std::size_t upper : {contact.first, contact.second})
        for (const Bearing& bearing : prepared.statics.path.bearings[upper])
            if (bearing.contact == c) {
                add_bearings(prepared, c, upper, bearing, demands);
                add_lift(prepared, c, upper, demands);
            }
    add_push(prepared, c, demands);
    return demands;
}

std::vector<std::string> joint_demand_assumptions(const Prepared& prepared)
{
    if (prepared.statics.cases.cases.empty()) return {};
    std::vector<std::string> assumed = {"how much loads from above turn the joints at a rail's ends is not solved with the whole "
                                        "frame yet: the most that it can be is taken, "
                                        "the end held by a post whose foot stands fast"};
    const auto& contacts = prepared.layout->contacts;
    const bool racks = std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
        return keeps_from_racking(prepared, contact, Axis::x) || keeps_from_racking(prepared, contact, Axis::y);
    });
    if (racks && (prepared.piece->use == Use::seat || prepared.piece->use == Use::table))
        assumed.push_back("a sideways push is shared alike by all joints between standing and lying parts that keep the piece "
                          "from racking that way");
    return assumed;
}

} // namespace jointwright
