#pragma once
// SI doubles: metres on the paper. Straight lines put together from pieces: what cancels is left out, what repeats is drawn once.

#include <cstddef>
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
