// More glue, less glue, another glue, or buttons in its place.

#include "judging/finding_tools.hpp"
#include "review/remedies/remedy_way.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace jointwright {

namespace {

using Table = DesignEdit::Table;

constexpr std::string_view kEverydayGlue = "PVA"; // where the design names no glue
constexpr double kLeastGlued = 0.015;             // m: less is a spot, not a joint
constexpr double kButtonSpacing = 0.3;            // m; common practice, no source
constexpr std::size_t kMostGlues = 4;

bool takes_glue(JointKind kind) { return kind != JointKind::screws && kind != JointKind::buttons && kind != JointKind::groove; }

/// What keeps a part in place without glue; a top that only rests on its aprons is not held, nor is a dry tenon.
bool holds_by_shape(JointKind kind)
{
    return kind == JointKind::groove || kind == JointKind::housing || kind == JointKind::sliding_dovetail;
}

/// The glue that most joints of the design have.
std::string usual_glue(const Piece& piece)
{
    std::map<std::string, int> count;
    for (const Joint& joint : piece.joints)
        if (joint.glue) ++count[*joint.glue];
    const auto most =
        std::max_element(count.begin(), count.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == count.end() ? std::string(kEverydayGlue) : most->first;
}

std::string pair_words(const RemedyBench& bench, const Finding& finding, std::string_view between)
{
    return fmt::format("the {} {} the {}", bench.piece.parts[finding.about.parts[0]].id, between,
                       bench.piece.parts[finding.about.parts[1]].id);
}

std::vector<std::size_t> glued_joints(const RemedyBench& bench, const Finding& finding)
{
    std::vector<std::size_t> joints = finding.about.joints;
    std::erase_if(joints, [&](std::size_t j) { return !bench.piece.joints[j].glue; });
    return joints;
}

void glue_all(const RemedyBench& bench, const std::vector<std::size_t>& joints, const std::string& glue,
              std::vector<DesignEdit>& edits)
{
    for (const std::size_t j : joints) edits.push_back(text_edit(Table::joint, id_of(bench.piece.joints[j]), "glue", glue));
}

/// Every line of one glue in the piece with another: a maker opens one bottle.
std::vector<DesignEdit> with_other_glue(const RemedyBench& bench, const std::string& now, const std::string& other)
{
    std::vector<DesignEdit> edits;
    for (const Joint& joint : bench.piece.joints)
        if (joint.glue == now) edits.push_back(text_edit(Table::joint, id_of(joint), "glue", other));
    for (const Part& part : bench.piece.parts)
        if (part.glued_up && part.glued_up->glue == now) edits.push_back(text_edit(Table::part, part.id, "glued_up.glue", other));
    return edits;
}

std::optional<std::string> glue_now(const RemedyBench& bench, const Finding& finding)
{
    for (const std::size_t j : finding.about.joints)
        if (bench.piece.joints[j].glue) return bench.piece.joints[j].glue;
    for (const std::size_t p : finding.about.parts)
        if (const auto& up = bench.piece.parts[p].glued_up; up && up->glue) return up->glue;
    return std::nullopt;
}

/// How much damp a glue bears.
int rank_of(const GlueRecord& glue) { return glue.wet_use == "wet" ? 2 : glue.wet_use == "damp" ? 1 : 0; }

RemedyWay of_glue(const RemedyBench& bench, const std::string& now, const std::string& other)
{
    RemedyWay way;
    way.edits = [=, &bench](int) { return with_other_glue(bench, now, other); };
    way.says = [=](int) { return fmt::format("use {} in place of {}", other, now); };
    return way;
}

/// Every other glue for which `wanted` is true, in the order of the tables.
template <class Wanted>
std::vector<const GlueRecord*> other_glues(const RemedyBench& bench, const std::string& now, Wanted wanted)
{
    std::vector<const GlueRecord*> found;
    for (const Listing& listing : bench.facts.glues()) {
        const GlueRecord* glue = bench.facts.find_glue(listing.name);
        if (glue != nullptr && glue->name != now && wanted(*glue)) found.push_back(glue);
    }
    return found;
}

Ways ways_of(const RemedyBench& bench, const std::string& now, std::vector<const GlueRecord*> glues)
{
    Ways ways;
    for (const GlueRecord* glue : glues)
        if (ways.size() < kMostGlues) ways.push_back(of_glue(bench, now, glue->name));
    return ways;
}

/// Faces that lie level with one part on the other, as a top on its aprons.
bool lies_on(const RemedyBench& bench, std::size_t joint)
{
    const JointKind kind = bench.piece.joints[joint].kind;
    if (kind != JointKind::face && kind != JointKind::butt && kind != JointKind::edge) return false;
    return std::any_of(bench.layout.contacts.begin(), bench.layout.contacts.end(),
                       [&](const Contact& c) { return c.joint == joint && main_axis_of(c.patches.front().normal) == Axis::z; });
}

double longest_face(const RemedyBench& bench, const std::vector<std::size_t>& joints)
{
    double longest = 0;
    for (const Contact& c : bench.layout.contacts) {
        if (!c.joint || std::find(joints.begin(), joints.end(), *c.joint) == joints.end()) continue;
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) longest = std::max(longest, c.patches.front().bounds.size(axis));
    }
    return longest;
}

} // namespace

Ways glue_instead_of_dry(const RemedyBench& bench, const Finding& finding)
{
    std::vector<std::size_t> dry = finding.about.joints;
    std::erase_if(dry, [&](std::size_t j) { return bench.piece.joints[j].glue || !takes_glue(bench.piece.joints[j].kind); });
    if (dry.empty() || finding.about.parts.size() != 2) return {};
    RemedyWay way;
    way.edits = [=, &bench, glue = usual_glue(bench.piece)](int) {
        std::vector<DesignEdit> edits;
        glue_all(bench, dry, glue, edits);
        return edits;
    };
    way.says = [pair = pair_words(bench, finding, "to"), glue = usual_glue(bench.piece)](int) {
        return fmt::format("glue {} with {}, dry now", pair, glue);
    };
    return {std::move(way)};
}

Ways all_glued(const RemedyBench& bench, const Finding&)
{
    std::vector<std::size_t> dry;
    for (std::size_t j = 0; j < bench.piece.joints.size(); ++j)
        if (!bench.piece.joints[j].glue && takes_glue(bench.piece.joints[j].kind)) dry.push_back(j);
    if (dry.empty()) return {};
    std::string names;
    for (const std::size_t j : dry)
        names += (names.empty() ? "" : " and ") +
                 fmt::format("the {} to the {}", bench.piece.joints[j].first, bench.piece.joints[j].second);
    RemedyWay way;
    way.edits = [=, &bench, glue = usual_glue(bench.piece)](int) {
        std::vector<DesignEdit> edits;
        glue_all(bench, dry, glue, edits);
        return edits;
    };
    way.says = [names, glue = usual_glue(bench.piece)](int) { return fmt::format("glue {} with {}, dry now", names, glue); };
    return {std::move(way)};
}

Ways glued_at_the_middle(const RemedyBench& bench, const Finding& finding)
{
    const auto joints = glued_joints(bench, finding);
    if (joints.empty() || finding.about.parts.size() != 2) return {};
    const Joint& joint = bench.piece.joints[joints.front()];
    const auto glued = value_of(finding, "glued_length");
    if (!glued && !joint.glued) return {};
    const double step = bench.glued_step(), now = joint.glued ? in_metres(joint.glued->length) : *glued;
    RemedyWay way;
    way.most = static_cast<int>((now - kLeastGlued) / step);
    if (way.most < 1) return {};
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const std::size_t j : joints)
            edits.push_back(
                length_edit(Table::joint, id_of(bench.piece.joints[j]), "glued.length", metres(bench.below(now, step, k))));
        return edits;
    };
    const bool middle = !joint.glued || joint.glued->at == GluedAt::middle;
    way.says = [=, &bench, pair = pair_words(bench, finding, "to")](int k) {
        return fmt::format("glue {} over {} {}only, {} now, and let the rest slide", pair, bench.words(bench.below(now, step, k)),
                           middle ? "at the middle " : "", bench.words(now));
    };
    const double use = std::max(1.0, finding.utilisation.value_or(1));
    way.guess = std::clamp(static_cast<int>(std::ceil((now - now / use) / step - 1e-6)), 1, way.most);
    return {std::move(way)};
}

Ways left_dry(const RemedyBench& bench, const Finding& finding)
{
    auto joints = glued_joints(bench, finding);
    std::erase_if(joints, [&](std::size_t j) { return !holds_by_shape(bench.piece.joints[j].kind); });
    if (joints.empty() || finding.about.parts.size() != 2) return {};
    RemedyWay way;
    way.edits = [=, &bench](int) {
        std::vector<DesignEdit> edits;
        for (const std::size_t j : joints)
            for (const char* key : {"glue", "glued"}) edits.push_back(take_away(Table::joint, id_of(bench.piece.joints[j]), key));
        return edits;
    };
    way.says = [pair = pair_words(bench, finding, "and")](int) { return fmt::format("leave the joint of {} dry", pair); };
    way.may_end = true;
    return {std::move(way)};
}

Ways buttons_instead(const RemedyBench& bench, const Finding& finding)
{
    auto joints = glued_joints(bench, finding);
    std::erase_if(joints, [&](std::size_t j) { return !lies_on(bench, j); });
    if (joints.empty() || finding.about.parts.size() != 2) return {};
    RemedyWay way;
    way.edits = [=, &bench](int k) {
        std::vector<DesignEdit> edits;
        for (const std::size_t j : joints) {
            const std::string id = id_of(bench.piece.joints[j]);
            for (const char* key : {"glue", "glued", "clearance"}) edits.push_back(take_away(Table::joint, id, key));
            edits.push_back(text_edit(Table::joint, id, "kind", "buttons"));
            edits.push_back(count_edit(Table::joint, id, "buttons.count", 1 + k));
        }
        return edits;
    };
    way.says = [pair = pair_words(bench, finding, "on")](int k) {
        return fmt::format("hold {} by {} buttons in place of glue", pair, 1 + k);
    };
    way.most = 9;
    way.guess = std::clamp(static_cast<int>(std::ceil(longest_face(bench, joints) / kButtonSpacing)), 1, way.most);
    way.may_end = true;
    return {std::move(way)};
}

Ways glue_for_damp(const RemedyBench& bench, const Finding& finding)
{
    const auto now = glue_now(bench, finding);
    const GlueRecord* glue = now ? bench.facts.find_glue(*now) : nullptr;
    if (glue == nullptr) return {};
    auto glues = other_glues(bench, *now, [&](const GlueRecord& other) { return rank_of(other) >= rank_of(*glue); });
    std::stable_partition(glues.begin(), glues.end(),
                          [&](const GlueRecord* other) { return rank_of(*other) > rank_of(*glue) || other->gap_filling; });
    return ways_of(bench, *now, glues);
}

Ways slower_glue(const RemedyBench& bench, const Finding& finding)
{
    const auto now = glue_now(bench, finding);
    const GlueRecord* glue = now ? bench.facts.find_glue(*now) : nullptr;
    if (glue == nullptr || !glue->open_time) return {};
    auto glues = other_glues(bench, *now, [&](const GlueRecord& other) {
        return rank_of(other) >= rank_of(*glue) && other.open_time && other.open_time->value > glue->open_time->value &&
               (!other.pressure || other.gap_filling);
    });
    std::stable_sort(glues.begin(), glues.end(),
                     [](const GlueRecord* a, const GlueRecord* b) { return a->open_time->value < b->open_time->value; });
    Ways ways = ways_of(bench, *now, glues);
    for (RemedyWay& way : ways) way.may_end = true; // another stage may then be the longest, under its own name
    return ways;
}

} // namespace jointwright
