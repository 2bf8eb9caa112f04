#include "report/drawing_lines.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright::drawing {

namespace {

constexpr double kApart = 1e-6;    // metres: lines farther apart are two
constexpr double kAskew = 1e-6;    // sine of the angle between two directions
constexpr double kShortest = 1e-6; // metres

struct Event {
    double at;
    int sense, count;
};

} // namespace

void LineSet::add(const Dot& from, const Dot& to)
{
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (!(length > kShortest)) return;
    const double x = (to.x - from.x) / length, y = (to.y - from.y) / length;
    auto direction = std::find_if(directions_.begin(), directions_.end(),
                                  [&](const Direction& d) { return std::abs(d.x * y - d.y * x) < kAskew; });
    if (direction == directions_.end()) {
        directions_.push_back({x, y, {}});
        direction = directions_.end() - 1;
    }
    const double a = direction->x * from.x + direction->y * from.y, b = direction->x * to.x + direction->y * to.y;
    const double offset = direction->x * (from.y + to.y) / 2 - direction->y * (from.x + to.x) / 2;
    direction->runs.push_back({offset, std::min(a, b), std::max(a, b), a < b ? 1 : -1});
}

std::vector<Stroke> LineSet::swept(Keep keep) const
{
    std::vector<Stroke> strokes;
    for (const Direction& direction : directions_) {
        std::vector<Run> runs = direction.runs;
        std::sort(runs.begin(), runs.end(), [](const Run& a, const Run& b) { return a.offset < b.offset; });
        for (std::size_t i = 0; i < runs.size();) {
            std::vector<Event> events;
            const double offset = runs[i].offset;
            for (double last = offset; i < runs.size() && runs[i].offset - last < kApart; ++i) {
                last = runs[i].offset;
                events.push_back({runs[i].from, runs[i].sense, 1});
                events.push_back({runs[i].to, -runs[i].sense, -1});
            }
            std::sort(events.begin(), events.end(), [](const Event& a, const Event& b) { return a.at < b.at; });
            int sense = 0, count = 0;
            for (std::size_t k = 0; k + 1 < events.size(); ++k) {
                sense += events[k].sense;
                count += events[k].count;
                const double from = events[k].at, to = events[k + 1].at;
                if (to - from <= kShortest || (keep == Keep::unbalanced ? sense == 0 : count == 0)) continue;
                const auto dot = [&](double t) {
                    return Dot{direction.x * t - direction.y * offset, direction.y * t + direction.x * offset};
                };
                Stroke stroke{dot(from), dot(to), count};
                // Boundaries keep the sense of the area: its inside lies to the left.
                if (keep == Keep::unbalanced && sense < 0) std::swap(stroke.from, stroke.to);
                const bool joins =
                    !strokes.empty() && strokes.back().times == count &&
                    std::hypot(strokes.back().to.x - stroke.from.x, strokes.back().to.y - stroke.from.y) < kApart &&
                    keep == Keep::covered;
                if (joins)
                    strokes.back().to = stroke.to;
                else
                    strokes.push_back(stroke);
            }
        }
    }
    return strokes;
}

std::vector<Stroke> LineSet::boundary() const { return swept(Keep::unbalanced); }
std::vector<Stroke> LineSet::cover() const { return swept(Keep::covered); }

} // namespace jointwright::drawing
