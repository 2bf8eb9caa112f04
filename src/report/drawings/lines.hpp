#pragma once
// SI doubles: metres on the paper. Straight lines put together from pieces: what cancels is left out, what repeats is drawn once.

#include <cstddef>
#include <optional>
#include <vector>

namespace jointwright::drawing {

/// A point of the paper.
struct Dot {
    double x = 0, y = 0;
};

/// A straight stroke.
struct Stroke {
    Dot from, to;
    int times = 1; ///< how many of the lines that were put in cover it
};

/// A closed line through points.
using Ring = std::vector<Dot>;

/// A run of points without those that lie within a distance of the straight lines between the others; the first and the last stay.
std::vector<Dot> thinned(const std::vector<Dot>& points, double within);

/// The closed lines that strokes make when each begins where another ends, as those of LineSet::boundary do; points on a straight line between
/// their neighbours are left out. Nothing when some stroke leads nowhere.
std::optional<std::vector<Ring>> closed_rings(const std::vector<Stroke>& strokes);

/// Lines that lie in each other to within a micrometre count as one.
class LineSet {
public:
    /// Adds a line; its sense counts for `boundary` alone.
    void add(const Dot& from, const Dot& to);
    bool empty() const { return directions_.empty(); }

    /// What is left of the edges of areas that were put in ring by ring, all the same way round: where two areas meet, their edges run
    /// against each other and vanish, however their corners lie.
    std::vector<Stroke> boundary() const;
    /// Every place that a line covers, once, with how often it was covered.
    std::vector<Stroke> cover() const;

private:
    struct Run {
        double offset, from, to;
        int sense;
    };
    struct Direction {
        double x, y;
        std::vector<Run> runs;
    };
    enum class Keep { unbalanced, covered };
    std::vector<Stroke> swept(Keep keep) const;
    std::vector<Direction> directions_;
};

} // namespace jointwright::drawing
