// Other sizes of joints: tenons, mortises, grooves, slips.

#include "review/remedies/remedy_way.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWallBehind = 0.005;    // m: wood left at the bottom of a mortise; common practice, no source
constexpr double kMostOfThickness = 0.5; // of the rail: a thicker tenon leaves no shoulders; common practice, no source
constexpr double kSplineThick = 0.003;   // m: a saw's kerf

/// A joint of the piece with the two parts that it is between.
struct PlacedJoint {
    std::size_t index = 0, first = 0, second = 0; ///< parts
};

/// The joints that a finding is about; of a part all those that it takes part in; of the whole piece those into upright parts.
std::vector<PlacedJoint> joints_of(const RemedyBench& bench, const Finding& finding)
{
    std::vector<PlacedJoint> joints;
    for (const Contact& contact : bench.layout.contacts) {
        if (!contact.joint) continue;
        const PlacedJoint placed{*contact.joint, bench.piece.copies[contact.first].part, bench.piece.copies[contact.second].part};
        const auto& about = finding.about;
        bool wanted = bench.piece.parts[placed.second].grain == Axis::z;
        if (about.parts.size() == 1)
            wanted = placed.first == about.parts.front() || placed.second == about.parts.front();
        else if (!about.parts.empty())
            wanted = std::find(about.joints.begin(), about.joints.end(), placed.index) != about.joints.end();
        const bool known =
            std::any_of(joints.begin(), joints.end(), [&](const PlacedJoint& j) { return j.index == placed.index; });
        if (wanted && !known) joints.push_back(placed);
    }
    return joints;
}

std::vector<PlacedJoint> tenons_of(const RemedyBench& bench, const Finding& finding)
{
    std::vector<PlacedJoint> tenons = joints_of(bench, finding);
    std::erase_if(tenons, [&](const PlacedJoint& j) { return !bench.piece.joints[j.index].tenon; });
    return tenons;
}

double along(const Part& part, Axis axis)
{
    if (axis == part.grain) return in_metres(part.length);
    return in_metres(axis == part.face ? part.thickness : part.width);
}

/// "the long rail and the end rail", each once.
std::string first_names(const RemedyBench& bench, const std::vector<PlacedJoint>& joints)
{
    std::vector<std::string> names;
    for (const PlacedJoint& j : joints)
        if (const std::string& id = bench.piece.parts[j.first].id; std::find(names.begin(), names.end(), id) == names.end())
            names.push_back(id);
    return fmt::format("the {}", fmt::join(names, " and the "));
}

/// A length of a joint that grows or shrinks.
struct JointLength {
    const char* key;
    double (*now)(const Joint&); ///< [m]
    const char* says;            ///< "make the tenons of {} {} long, {} now"
};

RemedyWay stepped(const RemedyBench& bench, const std::vector<PlacedJoint>& joints, const JointLength& length, double step,
                  bool grows)
{
    const auto at = [=, &bench](double now, int k) { return grows ? bench.above(now, step, k) : bench.below(now, step, k); };
    const double now = length.now(bench.piece.joints[joints.front().index]);
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const PlacedJoint& j : joints) {
            const double wanted = at(length.now(bench.piece.joints[j.index]), k);
            if (wanted <= 0) return std::vector<DesignEdit>{};
            edits.push_back(
                length_edit(DesignEdit::Table::joint, id_of(bench.piece.joints[j.index]), length.key, metres(wanted)));
        }
        return edits;
    };
    way.says = [=, &bench, names = first_names(bench, joints)](int k) {
        return fmt::format(fmt::runtime(length.says), names, bench.words(at(now, k)), bench.words(now));
    };
    return way;
}

double tenon_length(const Joint& joint) { return in_metres(joint.tenon->length); }
double tenon_width(const Joint& joint) { return in_metres(joint.tenon->width); }
double tenon_thickness(const Joint& joint) { return in_metres(joint.tenon->thickness); }

constexpr JointLength kTenonLength{"tenon.length", tenon_length, "make the tenons of {} {} long, {} now"};
constexpr JointLength kTenonWidth{"tenon.width", tenon_width, "make the tenons of {} {} wide, {} now"};
constexpr JointLength kTenonThickness{"tenon.thickness", tenon_thickness, "make the tenons of {} {} thick, {} now"};

/// Steps up to the least room that any of the tenons has.
int steps_up_to(const RemedyBench& bench, const std::vector<PlacedJoint>& tenons, double (*now)(const Joint&),
                const std::function<double(const PlacedJoint&)>& most)
{
    int steps = 1000;
    for (const PlacedJoint& j : tenons)
        steps = std::min(steps, static_cast<int>((most(j) - now(bench.piece.joints[j.index])) / bench.shop_step() + 1e-6));
    return steps;
}

Ways grown_tenon(const RemedyBench& bench, const Finding& finding, const JointLength& length, double power,
                 const std::function<double(const PlacedJoint&)>& most)
{
    const auto tenons = tenons_of(bench, finding);
    if (tenons.empty()) return {};
    const int steps = steps_up_to(bench, tenons, length.now, most);
    if (steps < 1) return {};
    RemedyWay way = stepped(bench, tenons, length, bench.shop_step(), true);
    way.most = steps;
    way.guess = steps_to_limit(finding, length.now(bench.piece.joints[tenons.front().index]), bench.shop_step(), power);
    return {std::move(way)};
}

} // namespace

Ways longer_tenon(const RemedyBench& bench, const Finding& finding)
{
    return grown_tenon(bench, finding, kTenonLength, 1, [&](const PlacedJoint& j) {
        return along(bench.piece.parts[j.second], bench.piece.parts[j.first].grain) - kWallBehind;
    });
}

Ways shorter_tenon(const RemedyBench& bench, const Finding& finding)
{
    const auto tenons = tenons_of(bench, finding);
    if (tenons.empty()) return {};
    RemedyWay way = stepped(bench, tenons, kTenonLength, bench.shop_step(), false);
    way.most = static_cast<int>(tenon_length(bench.piece.joints[tenons.front().index]) / bench.shop_step() / 2);
    if (way.most < 1) return {};
    return {std::move(way)};
}

Ways wider_tenon(const RemedyBench& bench, const Finding& finding)
{
    return grown_tenon(bench, finding, kTenonWidth, 1.5, [&](const PlacedJoint& j) {
        const Part& rail = bench.piece.parts[j.first];
        return in_metres(std::max(rail.width, rail.thickness));
    });
}

Ways thicker_tenon(const RemedyBench& bench, const Finding& finding)
{
    return grown_tenon(bench, finding, kTenonThickness, 1, [&](const PlacedJoint& j) {
        const Part& rail = bench.piece.parts[j.first];
        return kMostOfThickness * in_metres(std::min(rail.width, rail.thickness));
    });
}

Ways more_clearance(const RemedyBench& bench, const Finding& finding)
{
    const auto joints = joints_of(bench, finding);
    if (joints.empty() || finding.about.joints.empty()) return {};
    static constexpr JointLength kClearance{"clearance", [](const Joint& joint) { return in_metres(joint.clearance); },
                                            "cut the recess for {} with {} of room on each side, {} now"};
    RemedyWay way = stepped(bench, joints, kClearance, bench.fine_step(), true);
    way.most = 10;
    const double now = in_metres(bench.piece.joints[joints.front().index].clearance);
    const double today = value_of(finding, "clearance_today").value_or(value_of(finding, "room_each_end_today").value_or(now));
    way.guess = std::max(1, static_cast<int>(std::ceil((today - now) / bench.fine_step() - 1e-6)));
    return {std::move(way)};
}

Ways deeper_groove(const RemedyBench& bench, const Finding& finding)
{
    auto joints = joints_of(bench, finding);
    std::erase_if(joints, [&](const PlacedJoint& j) { return !bench.piece.joints[j.index].groove_depth; });
    if (joints.empty()) return {};
    static constexpr JointLength kDepth{"groove.depth", [](const Joint& joint) { return in_metres(*joint.groove_depth); },
                                        "cut the grooves for {} {} deep, {} now"};
    RemedyWay way = stepped(bench, joints, kDepth, bench.shop_step(), true);
    const double now = in_metres(*bench.piece.joints[joints.front().index].groove_depth);
    way.most = std::max(1, static_cast<int>(now / bench.shop_step()));
    const double today = value_of(finding, "groove_depth_today").value_or(now);
    way.guess = std::max(1, static_cast<int>(std::ceil((today - now) / bench.shop_step() - 1e-6)));
    return {std::move(way)};
}

Ways thicker_bridle(const RemedyBench& bench, const Finding& finding)
{
    auto joints = joints_of(bench, finding);
    std::erase_if(joints, [&](const PlacedJoint& j) { return !bench.piece.joints[j.index].bridle_thickness; });
    if (joints.empty()) return {};
    static constexpr JointLength kThickness{"bridle.thickness",
                                            [](const Joint& joint) { return in_metres(*joint.bridle_thickness); },
                                            "make the tongues of {} {} thick, {} now"};
    RemedyWay way = stepped(bench, joints, kThickness, bench.shop_step(), true);
    const Part& rail = bench.piece.parts[joints.front().first];
    const double now = in_metres(*bench.piece.joints[joints.front().index].bridle_thickness),
                 most = kMostOfThickness * in_metres(std::min(rail.width, rail.thickness));
    way.most = static_cast<int>((most - now) / bench.shop_step() + 1e-6);
    way.guess = steps_to_limit(finding, now, bench.shop_step(), 1);
    if (way.most < 1) return {};
    return {std::move(way)};
}

Ways deeper_slip(const RemedyBench& bench, const Finding& finding)
{
    auto joints = joints_of(bench, finding);
    std::erase_if(joints, [&](const PlacedJoint& j) {
        const Joint& joint = bench.piece.joints[j.index];
        return joint.kind != JointKind::mitre || joint.dowels;
    });
    if (joints.empty()) return {};
    const Joint& joint = bench.piece.joints[joints.front().index];
    const double step = bench.shop_step();
    if (joint.keys || joint.spline) {
        static constexpr JointLength kKeys{"key.depth",
                                           [](const Joint& j) { return in_metres(j.keys ? j.keys->depth : Length{}); },
                                           "let the keys at {} in {} deep, {} now"};
        static constexpr JointLength kSpline{"spline.depth",
                                             [](const Joint& j) { return in_metres(j.spline ? j.spline->depth : Length{}); },
                                             "let the splines at {} in {} deep, {} now"};
        const JointLength& length = joint.keys ? kKeys : kSpline;
        std::erase_if(joints, [&](const PlacedJoint& j) { return length.now(bench.piece.joints[j.index]) <= 0; });
        RemedyWay way = stepped(bench, joints, length, step, true);
        way.most = std::max(1, static_cast<int>(length.now(joint) / step));
        way.guess = steps_to_limit(finding, length.now(joint), step, 1);
        return {std::move(way)};
    }
    const double thick = bench.above(kSplineThick, step, bench.units == LengthUnit::inch ? 1 : 0);
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const PlacedJoint& j : joints) {
            const std::string id = id_of(bench.piece.joints[j.index]);
            edits.push_back(length_edit(DesignEdit::Table::joint, id, "spline.thickness", metres(thick)));
            edits.push_back(length_edit(DesignEdit::Table::joint, id, "spline.depth", metres(bench.above(thick, step, k))));
        }
        return edits;
    };
    way.says = [=, &bench, names = first_names(bench, joints)](int k) {
        return fmt::format("let a spline {} thick into the mitres of {}, {} deep in either part", bench.words(thick), names,
                           bench.words(bench.above(thick, step, k)));
    };
    way.most = 20;
    way.guess = std::max(1, static_cast<int>(2 * thick / step));
    return {std::move(way)};
}

Ways deeper_rail_and_tenon(const RemedyBench& bench, const Finding& finding)
{
    if (finding.about.parts.size() != 2 || tenons_of(bench, finding).empty()) return {};
    return deeper_rails(bench, finding);
}

} // namespace jointwright
