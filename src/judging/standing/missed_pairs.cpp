#include "judging/standing/missed_pairs.hpp"

#include "judging/finding_tools.hpp"
#include "piece/contacts/contact_patches.hpp"
#include "piece/model/turn.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

namespace jointwright {

namespace {

using kernel::Vec;

constexpr double kNearMiss = 0.003;        // m: copies of one part that nearly touch were meant to
constexpr double kOtherReach = 0.013;      // m: half an inch and a little, for joints that have no tenon
constexpr double kUnstated = 0.025;        // m: a tenon whose length is not stated
constexpr double kMostSteps = 60;          // of that search
constexpr double kStep = 0.001;            // m: of the search between turned or shaped bodies
constexpr double kBlocks = 0.5;            // share of the way between two that something else must fill to part them
constexpr std::size_t kMostPairs = 40'000; // of copies looked at for one joint

/// How far apart two copies may stand that are still meant to be joined.
double reach_of(const Joint& joint)
{
    if (joint.kind == JointKind::tenon) return std::max(kNearMiss, joint.tenon ? in_metres(joint.tenon->length) : kUnstated);
    if (joint.kind == JointKind::dowel && joint.dowels) return std::max(kNearMiss, in_metres(joint.dowels->length) / 2);
    return kOtherReach;
}

/// Where the first would have to go to touch the second.
struct Miss {
    double gap = 0;
    Axis axis = Axis::x;
    double sign = 1;
};

/// The way between two boxes that overlap in the other two directions.
std::optional<Miss> miss_of_boxes(const Box& a, const Box& b, double reach)
{
    std::optional<Miss> miss;
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
        const std::size_t i = index_of(axis);
        const double up = b.lo[i] - a.hi[i], down = a.lo[i] - b.hi[i], gap = std::max(up, down);
        if (gap <= kTouch) {
            if (gap > -kTouch) return std::nullopt; // edge to edge at most
            continue;
        }
        if (miss || gap > reach) return std::nullopt; // apart in two directions, or too far
        miss = Miss{gap, axis, up > down ? 1.0 : -1.0};
    }
    return miss;
}

bool near_boxes(const Box& a, const Box& b, double reach)
{
    for (std::size_t i = 0; i < 3; ++i)
        if (b.lo[i] - a.hi[i] > reach || a.lo[i] - b.hi[i] > reach) return false;
    return true;
}

/// True when a body moved by so much shares space with another.
bool meets_moved(const Body& a, const Body& b, const Vec& by)
{
    for (kernel::Cell cell : a.solid.cells) {
        for (kernel::Polygon& face : cell.faces)
            for (Vec& p : face.corners) p += by;
        for (kernel::HalfSpace& side : cell.sides) side.offset += side.normal.dot(by);
        for (const kernel::Cell& other : b.solid.cells)
            if (!kernel::clip(cell, other.sides).empty()) return true;
    }
    return false;
}

/// The same between bodies that are turned, tapered or notched: by moving one towards the other.
std::optional<Miss> miss_of_bodies(const Body& a, const Body& b, double reach)
{
    std::optional<Miss> nearest;
    const double step = std::max(kStep, reach / kMostSteps);
    for (const Axis axis : {Axis::x, Axis::y, Axis::z})
        for (const double sign : {1.0, -1.0}) {
            Vec way = Vec::Zero();
            way[static_cast<int>(index_of(axis))] = sign;
            const double farthest = nearest ? nearest->gap : reach;
            for (double far = step; far <= farthest + step / 2; far += step) {
                if (!meets_moved(a, b, way * far)) continue;
                double lo = far - step, hi = far;
                for (int i = 0; i < 8; ++i) (meets_moved(a, b, way * ((lo + hi) / 2)) ? hi : lo) = (lo + hi) / 2;
                if (hi > kTouch && hi <= farthest) nearest = Miss{hi, axis, sign};
                break;
            }
        }
    return nearest;
}

bool is_shaped(const Part& part) { return part.turn || part.taper || !part.notches.empty(); }

/// Pairs of copies that touch, the lower one first.
using PairSet = std::set<std::pair<std::size_t, std::size_t>>;

/// Looks at the pairs of one joint.
class JointLook {
public:
    JointLook(const Prepared& prepared, std::size_t joint, const std::vector<Box>& boxes, const PairSet& joined)
        : prepared_(prepared), piece_(*prepared.piece), joint_(piece_.joints[joint]), boxes_(boxes), joined_(joined),
          first_(piece_.copies_named(joint_.first)), second_(piece_.copies_named(joint_.second)), reach_(reach_of(joint_))
    {
        for (const Contact& c : prepared.layout->contacts) {
            if (c.joint != joint) continue;
            partners_[c.first].push_back(c.second);
            partners_[c.second].push_back(c.first);
        }
    }

    void look(std::vector<Finding>& findings)
    {
        if (first_.size() * second_.size() > kMostPairs) return;
        const std::size_t most_first = most(first_), most_second = most(second_);
        for (const std::size_t a : first_)
            for (const std::size_t b : second_) {
                if (a == b || joined_.count({std::min(a, b), std::max(a, b)}) || !near_boxes(boxes_[a], boxes_[b], reach_))
                    continue;
                const auto miss = miss_of(a, b);
                if (!miss || blocked(a, b, *miss)) continue;
                const bool alike = piece_.copies[a].part == piece_.copies[b].part;
                if (alike && (miss->gap > kNearMiss || a > b)) continue;
                const bool fewer = places(a) < most_first || places(b) < most_second;
                if (!alike && !fewer && !held_behind(a, b, *miss)) continue;
                keep_worst(findings, finding(a, b, *miss, alike));
            }
    }

private:
    std::size_t places(std::size_t copy) const
    {
        const auto found = partners_.find(copy);
        return found == partners_.end() ? 0 : found->second.size();
    }
    std::size_t most(const std::vector<std::size_t>& copies) const
    {
        std::size_t best = 0;
        for (const std::size_t copy : copies) best = std::max(best, places(copy));
        return best;
    }

    std::optional<Miss> miss_of(std::size_t a, std::size_t b) const
    {
        if (!is_shaped(piece_.part_of(a)) && !is_shaped(piece_.part_of(b))) return miss_of_boxes(boxes_[a], boxes_[b], reach_);
        return miss_of_bodies(body_of(piece_.part_of(a), piece_.copies[a]), body_of(piece_.part_of(b), piece_.copies[b]), reach_);
    }

    /// One of the two has a place of this joint at its other end: it was meant to reach from one to the other.
    bool held_behind(std::size_t a, std::size_t b, const Miss& miss) const
    {
        const std::size_t i = index_of(miss.axis);
        const auto behind = [&](std::size_t copy, double sign) {
            const auto found = partners_.find(copy);
            if (found == partners_.end()) return false;
            return std::any_of(found->second.begin(), found->second.end(), [&](std::size_t partner) {
                const double middle = boxes_[partner].middle(miss.axis);
                return sign > 0 ? middle < boxes_[copy].lo[i] + kTouch : middle > boxes_[copy].hi[i] - kTouch;
            });
        };
        return behind(a, miss.sign) || behind(b, -miss.sign);
    }

    /// Something else fills most of the way between them.
    bool blocked(std::size_t a, std::size_t b, const Miss& miss) const
    {
        const std::size_t g = index_of(miss.axis);
        const Box &from = boxes_[a], &to = boxes_[b];
        Box way;
        double across = 1;
        for (std::size_t i = 0; i < 3; ++i) {
            way.lo[i] = std::max(from.lo[i], to.lo[i]);
            way.hi[i] = std::min(from.hi[i], to.hi[i]);
            if (i == g) std::swap(way.lo[i], way.hi[i]);
            if (way.hi[i] - way.lo[i] < kTouch) return false;
            if (i != g) across *= way.hi[i] - way.lo[i];
        }
        for (std::size_t k = 0; k < boxes_.size(); ++k) {
            if (k == a || k == b) continue;
            double filled = 1;
            for (std::size_t i = 0; i < 3; ++i) {
                const double over = std::min(way.hi[i], boxes_[k].hi[i]) - std::max(way.lo[i], boxes_[k].lo[i]);
                filled *= over <= kTouch ? 0 : i == g ? 1 : over;
            }
            if (filled >= kBlocks * across) return true;
        }
        return false;
    }

    Finding finding(std::size_t a, std::size_t b, const Miss& miss, bool alike) const
    {
        Point way{};
        way[index_of(miss.axis)] = 1;
        const std::string gap = small_words(prepared_, miss.gap);
        Finding f;
        f.check = "stands";
        f.subject = piece_.part_of(a).id + " / " + piece_.part_of(b).id;
        f.verdict = alike ? Verdict::warn : Verdict::fail;
        f.comes_first = !alike;
        f.where = piece_.label(a) + " and " + piece_.label(b);
        f.about.copies = {a, b};
        f.headline = fmt::format("{} and {} stand {} apart along {} ({}): the {} stated between these parts does not act here.",
                                 piece_.label(a), piece_.label(b), gap, name_of(miss.axis), way_words(way), name_of(joint_.kind));
        f.remedy = alike ? "check where both are placed"
                         : fmt::format("draw {} up to {}: longer, or moved, by {} along {}; or name in `between` only the copies "
                                       "that are meant",
                                       piece_.label(a), piece_.label(b), gap, name_of(miss.axis));
        f.values = {{"gap", miss.gap, "m"}};
        f.weight = miss.gap;
        return f;
    }

    const Prepared& prepared_;
    const Piece& piece_;
    const Joint& joint_;
    const std::vector<Box>& boxes_;
    const PairSet& joined_;
    std::vector<std::size_t> first_, second_;
    double reach_;
    std::map<std::size_t, std::vector<std::size_t>> partners_;
};

} // namespace

void add_missed_pairs(const Prepared& prepared, std::vector<Finding>& findings)
{
    std::vector<Box> boxes;
    for (const Copy& copy : prepared.piece->copies) boxes.push_back(bounds_of(prepared.piece->parts[copy.part], copy));
    PairSet joined;
    for (const Contact& c : prepared.layout->contacts) joined.insert({std::min(c.first, c.second), std::max(c.first, c.second)});
    for (std::size_t j = 0; j < prepared.piece->joints.size(); ++j) JointLook(prepared, j, boxes, joined).look(findings);
}

} // namespace jointwright
