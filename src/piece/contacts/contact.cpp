#include "piece/contacts/contact.hpp"

#include "measure/write.hpp"
#include "piece/contacts/contact_patches.hpp"
#include "piece/contacts/contact_slivers.hpp"
#include "piece/contacts/crowded_faults.hpp"
#include "piece/contacts/tenon_faults.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace jointwright {

double Contact::area() const
{
    double sum = 0;
    for (const Patch& p : patches) sum += p.area;
    return sum;
}

std::optional<double> Contact::grain_angle() const { return patches.empty() ? std::nullopt : patches.front().grain_angle; }

namespace {

constexpr double kWidestHinged = 0.05;        // m: what hinges may bridge
constexpr int kListedOverlaps = 20;           // of one pair of parts: further ones are not worked out
constexpr std::size_t kMostPairs = 1'000'000; // of copies near each other: a sound piece of 10,000 copies has far fewer

/// Pairs of copies whose boxes come within touching distance, by a sweep along the axis in which the piece is longest.
/// Stops at kMostPairs: parts heaped on each other.
/// @param reach  how far apart they may be and still be near: hinges bridge a gap
std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const Piece& piece, double reach)
{
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    if (piece.copies.empty()) return pairs;
    std::vector<Box> boxes;
    for (const Copy& copy : piece.copies) boxes.push_back(bounds_of(piece.parts[copy.part], copy));
    Box all = boxes.front();
    for (const Box& box : boxes)
        for (std::size_t i = 0; i < 3; ++i) {
            all.lo[i] = std::min(all.lo[i], box.lo[i]);
            all.hi[i] = std::max(all.hi[i], box.hi[i]);
        }
    std::size_t axis = 0;
    for (std::size_t i = 1; i < 3; ++i)
        if (all.hi[i] - all.lo[i] > all.hi[axis] - all.lo[axis]) axis = i;

    std::vector<std::size_t> order(piece.copies.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return boxes[a].lo[axis] < boxes[b].lo[axis]; });
    std::vector<std::size_t> open;
    for (const std::size_t now : order) {
        const Box& box = boxes[now];
        std::erase_if(open, [&](std::size_t other) { return boxes[other].hi[axis] < box.lo[axis] - reach; });
        for (const std::size_t other : open) {
            const Box& o = boxes[other];
            bool near = true;
            for (std::size_t i = 0; i < 3; ++i) near = near && o.hi[i] >= box.lo[i] - reach && o.lo[i] <= box.hi[i] + reach;
            if (near) pairs.emplace_back(std::min(now, other), std::max(now, other));
            if (pairs.size() >= kMostPairs) break;
        }
        open.push_back(now);
        if (pairs.size() >= kMostPairs) break;
    }
    std::sort(pairs.begin(), pairs.end());
    return pairs;
}

/// Which joints name a pair of copies, and in which order.
class JointIndex {
public:
    explicit JointIndex(const Piece& piece) : piece_(piece)
    {
        for (const Joint& joint : piece.joints) {
            first_.push_back(members(joint.first));
            second_.push_back(members(joint.second));
        }
    }
    /// The joints at a pair; `swapped` says whether the pair stands the other way round in `between`.
    std::vector<std::pair<std::size_t, bool>> at(std::size_t a, std::size_t b) const
    {
        std::vector<std::pair<std::size_t, bool>> found;
        for (std::size_t j = 0; j < first_.size(); ++j) {
            if (first_[j].count(a) && second_[j].count(b))
                found.emplace_back(j, false);
            else if (first_[j].count(b) && second_[j].count(a))
                found.emplace_back(j, true);
        }
        return found;
    }
    const std::set<std::size_t>& first(std::size_t joint) const { return first_[joint]; }
    const std::set<std::size_t>& second(std::size_t joint) const { return second_[joint]; }

private:
    std::set<std::size_t> members(const std::string& name) const
    {
        const auto found = piece_.copies_named(name);
        return {found.begin(), found.end()};
    }
    const Piece& piece_;
    std::vector<std::set<std::size_t>> first_, second_;
};

std::string sizes_text(const Box& box, LengthUnit unit)
{
    return fmt::format("{} along x, {} along y, {} along z", write_length(metres(box.size(Axis::x)), unit),
                       write_length(metres(box.size(Axis::y)), unit), write_length(metres(box.size(Axis::z)), unit));
}

Axis shortest_axis(const Box& box)
{
    Axis best = Axis::x;
    for (const Axis a : {Axis::y, Axis::z})
        if (box.size(a) < box.size(best)) best = a;
    return best;
}

Fault overlap_fault(const Piece& piece, std::size_t a, std::size_t b, const SharedSpace& shared, const Joint* joint)
{
    const Axis axis = shortest_axis(shared.bounds);
    Fault fault;
    fault.id = "parts-overlap";
    fault.spot = joint ? joint->spot : piece.part_of(std::max(a, b)).spot;
    fault.says = fmt::format("{} and {} share space: {} along {} (in all {})", piece.label(a), piece.label(b),
                             write_length(metres(shared.bounds.size(axis)), piece.units), name_of(axis),
                             sizes_text(shared.bounds, piece.units));
    if (joint) {
        fault.says += fmt::format("; a joint of kind \"{}\" is drawn touching", name_of(joint->kind));
        fault.fix = "kind = \"housing\"   # or lap, tenon, groove: kinds that say which part is cut";
    } else {
        fault.fix = fmt::format(
            "[[joint]]\nbetween = [\"{}\", \"{}\"]\nkind = \"housing\"   # or move one of them by {} along {}",
            piece.part_of(a).id, piece.part_of(b).id, write_length(metres(shared.bounds.size(axis)), piece.units), name_of(axis));
    }
    fault.note = "parts that share space need a joint that says which of them gives way";
    return fault;
}

/// How far apart two boxes stand, and along which axis most.
std::pair<double, Axis> gap_between(const Box& a, const Box& b)
{
    double widest = -1;
    Axis axis = Axis::x;
    for (const Axis k : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t i = index_of(k);
        const double gap = std::max(b.lo[i] - a.hi[i], a.lo[i] - b.hi[i]);
        if (gap > widest) {
            widest = gap;
            axis = k;
        }
    }
    return {std::max(widest, 0.0), axis};
}

Fault apart_fault(const Piece& piece, const Joint& joint, const JointIndex& index, std::size_t j)
{
    Fault fault;
    fault.id = "joint-apart";
    fault.spot = joint.spot;
    double nearest = std::numeric_limits<double>::infinity();
    std::string where;
    for (const std::size_t a : index.first(j))
        for (const std::size_t b : index.second(j)) {
            if (a == b) continue;
            const auto [gap, axis] =
                gap_between(bounds_of(piece.part_of(a), piece.copies[a]), bounds_of(piece.part_of(b), piece.copies[b]));
            if (gap >= nearest) continue;
            nearest = gap;
            where = gap > kTouch ? fmt::format("{} and {} are nearest, {} apart along {}", piece.label(a), piece.label(b),
                                               write_small_length(metres(gap), piece.units), name_of(axis))
                                 : fmt::format("{} and {} meet at an edge or a corner only, or in a notch or taper",
                                               piece.label(a), piece.label(b));
        }
    if (where.empty()) where = "there is only one copy of it";
    if (joint.kind == JointKind::hinge && nearest > kTouch && nearest <= kWidestHinged)
        fault.fix = fmt::format("hinges = {{ count = 2, gap = \"{}\" }}", write_small_length(metres(nearest), piece.units));
    fault.says = fmt::format("{} and {} touch nowhere: {}", joint.first, joint.second, where);
    fault.note =
        "faces within 0.1 mm of each other touch; a joint needs parts that touch or, for kinds that cut one part, share space";
    return fault;
}

/// The depth of a groove must hold what is drawn in it.
std::optional<Fault> groove_fault(const Piece& piece, const Contact& contact)
{
    const Joint& joint = piece.joints[*contact.joint];
    if (!joint.groove_depth || !contact.shared) return std::nullopt;
    const Box& in = piece.copies[contact.first].box;
    double drawn = 0;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t i = index_of(axis);
        // The first sticks out of the groove on one side only.
        const bool low = in.lo[i]<contact.shared->lo[i] - kTouch, high = in.hi[i]> contact.shared->hi[i] + kTouch;
        if (low != high) drawn = contact.shared->size(axis);
    }
    if (drawn <= in_metres(*joint.groove_depth) + kTouch) return std::nullopt;
    Fault f;
    f.id = "out-of-range";
    f.spot = joint.spot;
    f.says = fmt::format("the groove is {} deep, but {} is drawn {} into {}", write_length(*joint.groove_depth, piece.units),
                         piece.label(contact.first), write_length(metres(drawn), piece.units), piece.label(contact.second));
    f.fix = fmt::format("groove = {{ depth = {} }}   # and more for room to move",
                        write_number(number_in(metres(drawn), piece.units), 7));
    f.note = "the depth cut less what is drawn in it is the room to move";
    return f;
}

/// Kinds that are drawn sharing space, or resting in a notch of the second.
bool must_share(JointKind kind)
{
    switch (kind) {
    case JointKind::housing:
    case JointKind::groove:
    case JointKind::sliding_dovetail:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::lap:
    case JointKind::mitre: return true;
    default: return false;
    }
}

/// A housing, lap or the like whose parts merely touch: the maker forgot to sink them.
std::optional<Fault> only_touching_fault(const Piece& piece, const std::vector<Contact>& contacts, std::size_t j)
{
    const Joint& joint = piece.joints[j];
    if (!must_share(joint.kind)) return std::nullopt;
    const Contact* touching = nullptr;
    for (const Contact& c : contacts) {
        if (c.joint != j) continue;
        if (c.shared || !piece.part_of(c.second).notches.empty()) return std::nullopt;
        touching = &c;
    }
    if (!touching) return std::nullopt;
    Fault f;
    f.id = "joint-apart";
    f.spot = joint.spot;
    f.says = fmt::format("{} and {} only touch, but a {} is drawn sharing space", piece.label(touching->first),
                         piece.label(touching->second), name_of(joint.kind));
    f.fix = "kind = \"face\"   # or draw one part sunk into the other";
    f.note = "where two parts share space the joint's kind says which of them is cut; parts that touch are glued or dry faces";
    return f;
}

/// Faces that nothing but what presses on them holds together.
bool only_rests(const Joint* joint)
{
    if (!joint) return true;
    return !joint->glue && (joint->kind == JointKind::edge || joint->kind == JointKind::face || joint->kind == JointKind::butt);
}

double thinnest_of(const Part& part)
{
    return std::min({in_metres(part.length), in_metres(part.width), in_metres(part.thickness)});
}

Fault twice_fault(const Piece& piece, std::size_t a, std::size_t b, std::size_t first_joint, std::size_t second_joint)
{
    Fault fault;
    fault.id = "joined-twice";
    fault.spot = piece.joints[second_joint].spot;
    fault.says = fmt::format("{} and {} are joined already by the joint in line {}", piece.label(a), piece.label(b),
                             piece.joints[first_joint].spot.line);
    fault.note = "no two copies are joined twice";
    return fault;
}

/// Pairs of copies of two parts that share space without a joint that lets them.
struct Overlaps {
    int count = 0;
    std::size_t fault = 0; ///< the message about the first of them
};

} // namespace

ContactSearch find_contacts(const Piece& piece)
{
    ContactSearch search;
    const JointIndex index(piece);
    std::vector<std::optional<Body>> bodies(piece.copies.size());
    const auto body = [&](std::size_t i) -> const Body& {
        if (!bodies[i]) bodies[i] = body_of(piece.part_of(i), piece.copies[i]);
        return *bodies[i];
    };
    std::vector<bool> acts(piece.joints.size(), false), bad(piece.joints.size(), false), told(piece.joints.size(), false);
    std::map<std::pair<std::size_t, std::size_t>, Overlaps> overlaps; // by pair of parts: one message each

    double reach = kTouch;
    for (const Joint& joint : piece.joints)
        if (joint.hinges) reach = std::max(reach, kTouch + in_metres(joint.hinges->gap));
    for (const auto& [a, b] : near_pairs(piece, reach)) {
        const auto joints = index.at(a, b);
        if (joints.empty()) {
            const auto listed = overlaps.find({piece.copies[a].part, piece.copies[b].part});
            if (listed != overlaps.end() && listed->second.count > kListedOverlaps) continue;
        }
        const auto shared = shared_space(body(a), body(b));
        const Joint* joint = joints.empty() ? nullptr : &piece.joints[joints[0].first];
        const bool turned = piece.part_of(a).turn || piece.part_of(b).turn;
        if (shared && (!joint || !may_share(joint->kind, turned))) {
            if (joint) bad[joints[0].first] = true;
            Overlaps& so_far = overlaps[{piece.copies[a].part, piece.copies[b].part}];
            if (so_far.count++ == 0) {
                so_far.fault = search.faults.size();
                search.faults.push_back(overlap_fault(piece, a, b, *shared, joint));
            }
            continue;
        }
        Contact contact;
        contact.first = a;
        contact.second = b;
        if (joint) {
            if (joints[0].second) std::swap(contact.first, contact.second);
            contact.joint = joints[0].first;
            contact.patches = joint_patches(body(contact.first), body(contact.second), *joint, shared);
        } else {
            contact.patches = touching_patches(body(a), body(b));
            std::stable_sort(contact.patches.begin(), contact.patches.end(),
                             [](const Patch& p, const Patch& q) { return p.area > q.area + 1e-12; });
        }
        if (contact.patches.empty()) continue;
        if (only_rests(joint)) mark_slivers(contact, std::min(thinnest_of(piece.part_of(a)), thinnest_of(piece.part_of(b))));
        if (joints.size() > 1 && !bad[joints[1].first]) {
            bad[joints[1].first] = true;
            search.faults.push_back(twice_fault(piece, a, b, joints[0].first, joints[1].first));
        }
        if (shared) {
            contact.shared = shared->bounds;
            contact.shared_volume = shared->volume;
        }
        if (contact.joint && !told[*contact.joint])
            for (auto& fault : {tenon_fault(piece, contact), groove_fault(piece, contact), crowded_fault(piece, contact)})
                if (fault && !told[*contact.joint]) {
                    told[*contact.joint] = true; // once for each joint, whichever copies it is at
                    search.faults.push_back(*fault);
                }
        if (contact.joint) acts[*contact.joint] = true;
        search.contacts.push_back(std::move(contact));
    }
    for (std::size_t j = 0; j < piece.joints.size(); ++j)
        if (acts[j] && !bad[j])
            if (auto fault = only_touching_fault(piece, search.contacts, j)) search.faults.push_back(std::move(*fault));
    for (std::size_t j = 0; j < piece.joints.size(); ++j)
        if (!acts[j] && !bad[j]) search.faults.push_back(apart_fault(piece, piece.joints[j], index, j));
    // Further pairs of the same two parts are counted, not listed.
    for (const auto& [parts, found] : overlaps) {
        const int more = found.count - 1;
        if (more == 1) search.faults[found.fault].says += " and so does one more pair of these parts";
        if (more > 1)
            search.faults[found.fault].says +=
                fmt::format(" and so do {}{} more pairs of these parts", found.count > kListedOverlaps ? "at least " : "", more);
    }
    return search;
}

} // namespace jointwright
