#include "report/drawings/lines.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace jointwright::drawing {

namespace {

constexpr double kApart = 1e-6;    // metres: lines farther apart are two
constexpr double kAskew = 1e-6;    // sine of the angle between two directions
constexpr double kShortest = 1e-6; // metres

constexpr double kMeets = 5e-6; // metres: ends of strokes of a boundary that are one corner

struct Event {
    double at;
    int sense, count;
};

/// Which strokes begin near a point; each is given out once.
class Starts {
public:
    explicit Starts(const std::vector<Stroke>& strokes) : strokes_(strokes), order_(strokes.size()), used_(strokes.size())
    {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::sort(order_.begin(), order_.end(), [&](auto a, auto b) { return strokes_[a].from.x < strokes_[b].from.x; });
    }

    bool is_used(std::size_t i) const { return used_[i]; }
    void use(std::size_t i) { used_[i] = true; }

    std::optional<std::size_t> take_at(const Dot& p)
    {
        const auto first = std::lower_bound(order_.begin(), order_.end(), p.x - kMeets,
                                            [&](std::size_t i, double x) { return strokes_[i].from.x < x; });
        for (auto it = first; it != order_.end() && strokes_[*it].from.x <= p.x + kMeets; ++it) {
            if (used_[*it] || std::abs(strokes_[*it].from.y - p.y) > kMeets) continue;
            use(*it);
            return *it;
        }
        return std::nullopt;
    }

private:
    const std::vector<Stroke>& strokes_;
    std::vector<std::size_t> order_;
    std::vector<bool> used_;
};

bool same_corner(const Dot& a, const Dot& b) { return std::abs(a.x - b.x) <= kMeets && std::abs(a.y - b.y) <= kMeets; }

/// The ring without the points that lie on a straight line between their neighbours.
Ring corners_alone(const Ring& ring)
{
    Ring corners;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Dot& a = corners.empty() ? ring.back() : corners.back();
        const Dot& b = ring[i];
        const Dot& c = ring[(i + 1) % ring.size()];
        const double off = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        if (std::abs(off) > kApart * std::hypot(c.x - a.x, c.y - a.y)) corners.push_back(b);
    }
    return corners;
}

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

std::vector<Dot> thinned(const std::vector<Dot>& points, double within)
{
    const auto near_line = [&](std::size_t from, std::size_t to) {
        const Dot &a = points[from], &b = points[to];
        const double x = b.x - a.x, y = b.y - a.y, length = std::hypot(x, y);
        for (std::size_t i = from + 1; i < to; ++i) {
            const double dx = points[i].x - a.x, dy = points[i].y - a.y;
            const double off = length > 0 ? std::abs(dx * y - dy * x) / length : std::hypot(dx, dy);
            if (off > within) return false;
        }
        return true;
    };
    std::vector<Dot> kept;
    for (std::size_t i = 0; i < points.size();) {
        kept.push_back(points[i]);
        std::size_t next = i + 1;
        while (next + 1 < points.size() && near_line(i, next + 1)) ++next;
        i = next;
    }
    return kept;
}

std::optional<std::vector<Ring>> closed_rings(const std::vector<Stroke>& strokes)
{
    std::vector<Ring> rings;
    Starts starts(strokes);
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        if (starts.is_used(i)) continue;
        starts.use(i);
        Ring ring{strokes[i].from};
        for (Dot at = strokes[i].to; !same_corner(at, ring.front());) {
            const auto next = starts.take_at(at);
            if (!next) return std::nullopt;
            ring.push_back(strokes[*next].from);
            at = strokes[*next].to;
        }
        ring = corners_alone(ring);
        if (ring.size() > 2) rings.push_back(std::move(ring));
    }
    return rings;
}

std::vector<Stroke> LineSet::boundary() const { return swept(Keep::unbalanced); }
std::vector<Stroke> LineSet::cover() const { return swept(Keep::covered); }

} // namespace jointwright::drawing
