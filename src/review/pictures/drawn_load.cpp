#include "review/pictures/drawn_load.hpp"

#include "judging/members/member_strength.hpp"
#include "mechanics/structure/structure.hpp"
#include "piece/model/lying.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWorthDrawing = 0.02; // utilisation: what hardly bends has no shape to show
constexpr int kPointsBetween = 3;      // of a line, between two nodes: a beam bends between them
constexpr double kArrowsApart = 0.1;   // m, along a spread load
constexpr int kMostArrows = 12;        // of all loads together, but one each

Point point_of(const kernel::Vec3& v) { return {v.x(), v.y(), v.z()}; }

std::optional<std::size_t> largest_of(const std::vector<Finding>& findings, std::string_view check)
{
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        if (findings[i].check != check || findings[i].utilisation.value_or(0) < kWorthDrawing) continue;
        if (!best || *findings[i].utilisation > *findings[*best].utilisation) best = i;
    }
    return best;
}

/// Moves points of a copy; along is the way of its grain.
class LineMaker {
public:
    LineMaker(const Structure& frame, std::size_t copy, const kernel::FrameSolution& solution)
        : frame_(frame), copy_(copy), solution_(solution)
    {
    }

    void add(MovedLine& line, double along, double across) const
    {
        line.at_rest.push_back(point_of(frame_.lines()[copy_].point(along, across)));
        line.moved_by.push_back(point_of(frame_.movement(copy_, along, across, solution_)));
    }

    MovedLine with_grain(double across) const
    {
        MovedLine line;
        for (const double s : filled(frame_.member(copy_).along)) add(line, s, across);
        return line;
    }

    MovedLine across_grain(double along) const
    {
        MovedLine line;
        for (const double t : frame_.member(copy_).across) add(line, along, t);
        return line;
    }

private:
    /// A plate is straight between its grid lines, a beam is not.
    std::vector<double> filled(const std::vector<double>& nodes) const
    {
        if (!frame_.member(copy_).across.empty()) return nodes;
        std::vector<double> all{nodes.front()};
        for (std::size_t i = 1; i < nodes.size(); ++i)
            for (int k = 1; k <= kPointsBetween + 1; ++k)
                all.push_back(nodes[i - 1] + (nodes[i] - nodes[i - 1]) * k / (kPointsBetween + 1));
        return all;
    }

    const Structure& frame_;
    std::size_t copy_;
    const kernel::FrameSolution& solution_;
};

void add_lines(std::vector<MovedLine>& lines, const Structure& frame, std::size_t copy, const kernel::FrameSolution& solution)
{
    const StructureMember& member = frame.member(copy);
    if (!member.built || member.along.size() < 2) return;
    const LineMaker maker(frame, copy, solution);
    if (member.across.empty()) {
        lines.push_back(maker.with_grain(0));
        return;
    }
    for (const double t : {member.across.front(), 0.0, member.across.back()}) lines.push_back(maker.with_grain(t));
    for (const double s : {member.along.front(), (member.along.front() + member.along.back()) / 2, member.along.back()})
        lines.push_back(maker.across_grain(s));
}

/// Where a load acts: on the face of the copy that it meets first.
MovedLine acting(const Prepared& prepared, const CopyLoad& load, int most)
{
    const Copy& copy = prepared.piece->copies[load.copy];
    const Part& part = prepared.piece->part_of(load.copy);
    const Lying lying(part, copy);
    const double whole = load.to - load.from;
    const int arrows = std::clamp(static_cast<int>(std::lround(whole / kArrowsApart)), 1, most);
    const kernel::Vec3 force(load.direction[0], load.direction[1], load.direction[2]);
    MovedLine line;
    for (int i = 0; i < arrows; ++i) {
        kernel::Vec3 on(
            lying.place(load.from + whole * (i + 0.5) / arrows, lying.upright() ? lying.middle() : load.across).data());
        for (const Axis axis : {Axis::x, Axis::y, Axis::z}) {
            const kernel::Vec3 way(lying.direct(axis).data());
            if (axis == part.grain || std::abs(way.dot(force)) < 0.5) continue;
            const double now = way.dot(on - kernel::Vec3(lying.place(lying.from(), lying.middle()).data()));
            on += ((way.dot(force) < 0 ? 1 : -1) * copy.box.size(axis) / 2 - now) * way;
        }
        const Point at = point_of(on);
        line.at_rest.push_back(at);
        line.moved_by.push_back(load.direction);
    }
    return line;
}

} // namespace

std::optional<std::size_t> governing_load_finding(const std::vector<Finding>& findings)
{
    const auto sag = largest_of(findings, "sag");
    return sag ? sag : largest_of(findings, "bending");
}

std::optional<DrawnLoad> drawn_load(const Prepared& prepared, std::size_t combination, const std::vector<Finding>& findings)
{
    const auto finding = governing_load_finding(findings);
    if (!finding || !prepared.statics.frame) return std::nullopt;
    const About& about = findings[*finding].about;
    const std::optional<std::size_t> index = about.load_case;
    if (!index || about.combination != combination) return std::nullopt;
    const LoadCases& cases = prepared.statics.cases;
    const LoadCase& load_case = cases.cases[*index];
    std::vector<CopyLoad> loads = cases.lasting;
    loads.insert(loads.end(), load_case.loads.begin(), load_case.loads.end());
    const Structure& frame = *prepared.statics.frame;
    const auto solved = frame.solve({loads}, {prepared.statics.floors[*index]});
    if (!solved.front().settled) return std::nullopt;
    DrawnLoad drawn;
    drawn.finding = *finding;
    drawn.words = load_case.name;
    for (std::size_t i = 0; i < prepared.piece->copies.size(); ++i) add_lines(drawn.lines, frame, i, solved.front());
    const int most = std::max(1, kMostArrows / std::max(1, static_cast<int>(load_case.loads.size())));
    for (const CopyLoad& load : load_case.loads) drawn.acts.push_back(acting(prepared, load, most));
    return drawn;
}

} // namespace jointwright
